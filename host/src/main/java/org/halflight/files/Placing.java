package org.halflight.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/**
 * Brings a file under its name only when it is whole and on the disk: it is written beside first,
 * for this user's eyes only, and then moved.
 */
public final class Placing {
  private static final String BEGINS = ".halflight-";
  private static final String ENDS = ".part";

  private Placing() {}

  /** Writes a file beside the one that it is to become. */
  @FunctionalInterface
  public interface Writing<X extends Exception> {
    /**
     * Writes it.
     *
     * @param beside an empty file
     */
    void to(Path beside) throws IOException, X;
  }

  /** Puts a new file there, or one in the place of another of the same name. */
  public static void replace(Path target, byte[] content) throws IOException {
    Placing.<RuntimeException>replace(target, beside -> Files.write(beside, content));
  }

  /** The same, written by somebody else. */
  public static <X extends Exception> void replace(Path target, Writing<X> writing)
      throws IOException, X {
    place(
        target,
        writing,
        beside -> {
          keepRights(target, beside);
          try {
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
          } catch (AtomicMoveNotSupportedException notHere) {
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
          }
        });
  }

  /**
   * Puts a new file there.
   *
   * @throws FileAlreadyExistsException when there is one, even if it came only now
   */
  public static <X extends Exception> void create(Path target, Writing<X> writing)
      throws IOException, X {
    place(
        target,
        writing,
        beside -> {
          try {
            // A link is refused where the name is taken; a move would replace what is there.
            Files.createLink(target, beside);
          } catch (FileAlreadyExistsException taken) {
            throw taken;
          } catch (UnsupportedOperationException | IOException noLinksHere) {
            Files.move(beside, target);
          }
        });
  }

  private interface Moving {
    void from(Path beside) throws IOException;
  }

  private static <X extends Exception> void place(Path target, Writing<X> writing, Moving moving)
      throws IOException, X {
    Path beside = Files.createTempFile(target.toAbsolutePath().getParent(), BEGINS, ENDS);
    try {
      writing.to(beside);
      try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      moving.from(beside);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  /** Who may read the file that is replaced may read the new one. */
  private static void keepRights(Path target, Path beside) throws IOException {
    PosixFileAttributeView before =
        Files.getFileAttributeView(target, PosixFileAttributeView.class);
    if (before != null && Files.exists(target)) {
      Files.setPosixFilePermissions(beside, before.readAttributes().permissions());
    }
  }
}
