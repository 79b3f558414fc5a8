package org.halflight.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** The workshop's picture for the top of a page: PNG or JPEG. */
public final class Logo {
  /** A picture for a few centimetres of paper is far smaller (our own limit). */
  static final long MOST_BYTES = 5_000_000;

  /** What unpacks to more fills the memory (our own limit). */
  static final long MOST_PIXELS = 20_000_000;

  private static final Set<String> FORMATS = Set.of("png", "jpeg");

  private final Path file;
  private final byte[] bytes;

  private Logo(Path file, byte[] bytes) {
    this.file = file;
    this.bytes = bytes;
  }

  /**
   * Reads and checks a picture.
   *
   * @param typed the name of its file
   * @throws Trouble when it is not there, too large, or no picture
   */
  public static Logo read(String typed) {
    Path file;
    try {
      file = Path.of(typed);
    } catch (InvalidPathException noName) {
      throw new Trouble(Words.say("page.logo.missing", typed));
    }
    try {
      if (!Files.isRegularFile(file)) {
        throw new Trouble(Words.say("page.logo.missing", file));
      }
      if (Files.size(file) > MOST_BYTES) {
        throw new Trouble(
            Words.say(
                "page.logo.tooLarge",
                file,
                (Files.size(file) + 999_999) / 1_000_000,
                MOST_BYTES / 1_000_000));
      }
      byte[] bytes = Files.readAllBytes(file);
      if (!isPicture(file, bytes)) {
        throw new Trouble(Words.say("page.logo.noPicture", file));
      }
      return new Logo(file, bytes);
    } catch (IOException | SecurityException unreadable) {
      throw new Trouble(Words.say("page.logo.missing", file));
    }
  }

  /** Looks at the head of the file only: nothing is unpacked yet. */
  private static boolean isPicture(Path file, byte[] bytes) throws IOException {
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      while (readers.hasNext()) {
        ImageReader reader = readers.next();
        try {
          if (FORMATS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
            reader.setInput(in);
            long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
            if (pixels > MOST_PIXELS) {
              throw new Trouble(
                  Words.say(
                      "page.logo.tooWide", file, pixels / 1_000_000, MOST_PIXELS / 1_000_000));
            }
            return true;
          }
        } catch (IOException | IllegalArgumentException | IllegalStateException broken) {
          return false;
        } finally {
          reader.dispose();
        }
      }
      return false;
    }
  }

  /**
   * The picture for a document.
   *
   * @throws Trouble when it breaks off or is broken inside
   */
  PDImageXObject in(PDDocument document) {
    try {
      return PDImageXObject.createFromByteArray(document, bytes, "logo");
    } catch (IOException | RuntimeException broken) {
      throw new Trouble(Words.say("page.logo.noPicture", file));
    }
  }
}
