package org.halflight.files;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.function.Supplier;
import org.halflight.words.Words;

/**
 * Where faults of the program itself leave their details: a file of bounded size beside the record.
 * A person reads one sentence, which names it. Safe for use by several threads; it never throws.
 */
public final class FaultLog {
  /** The file, in the folder of the record. */
  public static final String NAME = "halflight.log";

  /** At this size the file becomes that of before, and a new one begins. */
  static final int MOST_BYTES = 256 * 1024;

  /** Of one fault; a stack that overflowed is thousands of lines long. */
  private static final int MOST_CHARACTERS_EACH = 16 * 1024;

  private final Path file;
  private final Supplier<Instant> now;

  /**
   * @param folder where the record lies; made when there is something to write
   */
  public FaultLog(Path folder, Supplier<Instant> now) {
    this.file = folder.resolve(NAME);
    this.now = now;
  }

  /** Keeps the details of a fault after which the program goes on, and says so in one sentence. */
  public String goesOn(Throwable fault, String where) {
    return Words.say("fault.goesOn", where, kept(fault, where));
  }

  /** The same of a fault that ends the program or the command. */
  public String ends(Throwable fault, String where) {
    return Words.say("fault.ends", where, kept(fault, where));
  }

  /** Where the details are. */
  private synchronized String kept(Throwable fault, String where) {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      if (!Files.exists(file)) {
        makePrivate();
      } else if (Files.size(file) > MOST_BYTES) {
        Files.move(
            file, file.resolveSibling(NAME + ".before"), StandardCopyOption.REPLACE_EXISTING);
        makePrivate();
      }
      Files.writeString(
          file, details(fault, where), StandardCharsets.UTF_8, StandardOpenOption.APPEND);
      return file.toString();
    } catch (IOException | RuntimeException notKept) {
      return Words.say("fault.noLog", Reasons.of(notKept));
    }
  }

  private void makePrivate() throws IOException {
    Files.createFile(file);
    if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    }
  }

  private String details(Throwable fault, String where) {
    StringWriter trace = new StringWriter();
    fault.printStackTrace(new PrintWriter(trace));
    String text = trace.toString();
    return now.get()
        + " "
        + where
        + ", thread "
        + Thread.currentThread().getName()
        + "\n"
        + text.substring(0, Math.min(text.length(), MOST_CHARACTERS_EACH))
        + "\n";
  }
}
