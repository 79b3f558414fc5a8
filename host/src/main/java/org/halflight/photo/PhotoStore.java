package org.halflight.photo;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.halflight.files.FileNames;
import org.halflight.files.Placing;
import org.halflight.files.PrivateFiles;
import org.halflight.files.Reasons;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** The pictures beside a record: a folder for each visit. No file there is ever replaced. */
public final class PhotoStore {
  /** The name of the folder beside the record. */
  public static final String FOLDER = "photos";

  /** What is longer is a film or a mistake (our own limit). */
  static final long MOST_BYTES = 300_000_000;

  private static final int MOST_TRIES = 10_000;

  private final Path folder;

  private PhotoStore(Path folder) {
    this.folder = folder;
  }

  /** The pictures of a record. */
  public static PhotoStore beside(Path record) {
    return new PhotoStore(record.toAbsolutePath().resolveSibling(FOLDER));
  }

  /**
   * Where a picture lies.
   *
   * @param kept as {@link #keep} gave it
   * @throws Trouble when that leads out of the folder: the record was changed
   */
  public Path file(String kept) {
    Path file = folder.resolve(kept).normalize();
    if (!file.startsWith(folder)) {
      throw new Trouble(Words.say("photo.outside", kept));
    }
    return file;
  }

  /**
   * SHA-256 of a file in hexadecimal.
   *
   * @throws Trouble when it cannot be read, or is too long for a picture
   */
  public static String sum(Path file) {
    try {
      long bytes = Files.size(file);
      if (bytes > MOST_BYTES) {
        throw new Trouble(
            Words.say("photo.tooLong", name(file), bytes / 1_000_000, MOST_BYTES / 1_000_000));
      }
      return copy(file, OutputStream.nullOutputStream());
    } catch (IOException unreadable) {
      throw new Trouble(Words.say("photo.unreadable", name(file), Reasons.of(unreadable)));
    }
  }

  /**
   * Copies a picture.
   *
   * @param visit name of the folder of the visit
   * @param sum of the file, as {@link #sum} gave it
   * @return its place in this folder, with slashes
   * @throws Trouble when it cannot be copied, or is not what it was any more
   */
  public String keep(Path from, String visit, String sum) {
    Path into = folder.resolve(visit);
    try {
      PrivateFiles.makeFolder(into);
      for (int i = 1; i < MOST_TRIES; i++) {
        Path to = into.resolve(plain(from, i));
        try {
          Placing.<IOException>create(
              to,
              beside -> {
                try (OutputStream out = Files.newOutputStream(beside)) {
                  if (!copy(from, out).equals(sum)) {
                    throw new Trouble(Words.say("photo.changing", name(from)));
                  }
                }
              });
          return visit + '/' + name(to);
        } catch (FileAlreadyExistsException taken) {
          if (copy(to, OutputStream.nullOutputStream()).equals(sum)) {
            return visit + '/' + name(to);
          }
        }
      }
    } catch (IOException | SecurityException notKept) {
      throw new Trouble(Words.say("photo.notKept", name(from), Reasons.of(notKept)));
    }
    throw new Trouble(Words.say("photo.notKept", name(from), Words.say("file.reason.unknown")));
  }

  /** The name of a file without its folder. */
  public static String name(Path file) {
    return String.valueOf(file.getFileName());
  }

  private static String plain(Path from, int number) {
    String name = name(from);
    int dot = name.lastIndexOf('.');
    String ending = dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
    return FileNames.plain(dot < 0 ? name : name.substring(0, dot), "picture")
        + (number == 1 ? "" : "-" + number)
        + (ending.matches("[a-z0-9]{1,5}") ? "." + ending : "");
  }

  private static String copy(Path from, OutputStream to) throws IOException {
    try (DigestInputStream in = new DigestInputStream(Files.newInputStream(from), sha256())) {
      in.transferTo(to);
      return HexFormat.of().formatHex(in.getMessageDigest().digest());
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException never) {
      throw new IllegalStateException(never);
    }
  }
}
