package org.halflight.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Where libraries of machine code are unpacked before they are loaded: a folder that only this
 * process uses and only this user may write into. Code from a folder that others may write into is
 * code of others.
 *
 * <p>The folder goes when the process ends. A process that was killed leaves its own; the next one
 * to begin removes it. Safe for use by several threads.
 */
public final class NativeLibraries {
  /** A folder to unpack into in the place of the usual one, for disks that no code may run from. */
  private static final String PROPERTY = "halflight.native";

  private static final String LOCK = "lock";
  private static final int ATTEMPTS = 8;
  private static final int STICKY = 01000;

  private static Optional<Path> base = Optional.empty();
  private static Optional<Path> own = Optional.empty();

  /** Held as long as the process lives: they tell others that its folder is in use. */
  private static final List<FileChannel> LOCKS = new ArrayList<>();

  private NativeLibraries() {}

  /**
   * Says where to make the folder, before it is asked for the first time. Otherwise it is made with
   * a name that nobody can foresee in the temporary folder.
   *
   * @param cache folder of this user for what may be made anew
   */
  public static synchronized void keepIn(Path cache) {
    base = Optional.of(cache.resolve("native"));
  }

  /**
   * The folder of this process.
   *
   * @throws Trouble when it cannot be made, or would lie where others may write
   */
  public static synchronized Path folder() {
    if (own.isEmpty()) {
      String given = System.getProperty(PROPERTY, "");
      Path in = given.isBlank() ? base.orElse(null) : Path.of(given);
      try {
        if (in != null) {
          PrivateFiles.makeFolder(in);
          removeLeftovers(in);
        }
        own = Optional.of(make(in));
        Path mine = own.get();
        Runtime.getRuntime()
            .addShutdownHook(new Thread(() -> remove(mine), "halflight-native-libraries"));
      } catch (IOException e) {
        throw new Trouble(
            Words.say(
                "files.native.cannotMake",
                in == null ? System.getProperty("java.io.tmpdir", "") : in,
                Reasons.of(e),
                PROPERTY),
            e);
      }
    }
    return own.get();
  }

  /** Makes the folder of a process in another one, which is looked at first. */
  static Path make(@Nullable Path in) throws IOException {
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      Path made =
          in == null
              ? Files.createTempDirectory("halflight-", PrivateFiles.ofFolder(Path.of("")))
              : Files.createTempDirectory(in, "p", PrivateFiles.ofFolder(in));
      if (in != null && PrivateFiles.hasRights(in)) {
        needPrivate(in, Files.getOwner(made));
      }
      Optional<FileChannel> held = hold(made);
      if (held.isPresent()) {
        LOCKS.add(held.get());
        return made;
      }
    }
    throw new IOException(Words.say("files.native.removed"));
  }

  /** Locks a new folder; empty where another process took it for a leftover just now. */
  private static Optional<FileChannel> hold(Path made) throws IOException {
    Path file = made.resolve(LOCK);
    try {
      PrivateFiles.make(file);
      FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
      if (channel.tryLock() != null) {
        return Optional.of(channel);
      }
      channel.close();
      return Optional.empty();
    } catch (NoSuchFileException removed) {
      return Optional.empty();
    }
  }

  /** Refuses a folder that others may write into, or that somebody else could put in its place. */
  private static void needPrivate(Path folder, UserPrincipal me) throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      throw refusal(folder);
    }
    Path real = folder.toRealPath();
    if (!Files.getOwner(real).equals(me)) {
      throw refusal(folder);
    }
    Set<PosixFilePermission> only = PosixFilePermissions.fromString("rwx------");
    if (!only.containsAll(Files.getPosixFilePermissions(real))) {
      throw refusal(folder);
    }
    for (Path above = real.getParent(); above != null; above = above.getParent()) {
      if (!isTrusted(above, me)) {
        throw refusal(above);
      }
    }
  }

  /** Of this user or of the system, and nobody else may rename what is in it. */
  private static boolean isTrusted(Path folder, UserPrincipal me) throws IOException {
    Map<String, Object> unix = Files.readAttributes(folder, "unix:mode,uid,owner");
    boolean ours = me.equals(unix.get("owner")) || Integer.valueOf(0).equals(unix.get("uid"));
    boolean sticky = unix.get("mode") instanceof Integer mode && (mode & STICKY) != 0;
    return ours
        && (sticky
            || !Files.getPosixFilePermissions(folder).contains(PosixFilePermission.OTHERS_WRITE));
  }

  private static Trouble refusal(Path folder) {
    return new Trouble(Words.say("files.native.open", folder, PROPERTY));
  }

  /** Removes the folders of processes that are no more. */
  static void removeLeftovers(Path in) {
    try (DirectoryStream<Path> folders = Files.newDirectoryStream(in, "p*")) {
      for (Path folder : folders) {
        if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS) && !isInUse(folder)) {
          remove(folder);
        }
      }
    } catch (IOException unreadable) {
      // What is left costs some room, and nothing else.
      return;
    }
  }

  private static boolean isInUse(Path folder) {
    try (FileChannel channel =
            FileChannel.open(
                folder.resolve(LOCK), StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
        FileLock taken = channel.tryLock()) {
      return taken == null;
    } catch (NoSuchFileException | NotDirectoryException none) {
      return false;
    } catch (OverlappingFileLockException own) {
      return true;
    } catch (IOException unknown) {
      return true;
    }
  }

  private static void remove(Path folder) {
    List<Path> all;
    try (Stream<Path> files = Files.walk(folder)) {
      all = files.sorted(Comparator.reverseOrder()).toList();
    } catch (IOException | java.io.UncheckedIOException gone) {
      return;
    }
    for (Path each : all) {
      try {
        Files.deleteIfExists(each);
      } catch (IOException inUse) {
        // A library that is loaded on Windows: the next process removes it.
      }
    }
  }
}
