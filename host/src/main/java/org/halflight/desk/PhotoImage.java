package org.halflight.desk;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.halflight.photo.PictureHead;
import org.halflight.words.Words;

/**
 * A photograph as it is shown, upright and no larger than asked for. Of a large one only every
 * second, third, ... pixel is unpacked, so that its size costs time and no memory. Made off the
 * window's thread.
 *
 * @param image empty where it cannot be shown
 * @param said why not; empty otherwise
 */
record PhotoImage(Optional<BufferedImage> image, String said) {
  /** A progressive JPEG is unpacked whole, with several bytes a pixel (our own limit). */
  private static final long MOST_PIXELS_IN_WAVES = 60_000_000;

  /**
   * Reads a photograph.
   *
   * @param name what it is called
   * @param wide most pixels across, as it is shown
   * @param high most pixels upwards
   */
  static PhotoImage of(Path file, String name, int wide, int high) {
    if (!Files.isRegularFile(file)) {
      return not("missing", name);
    }
    try {
      Optional<PictureHead> head = PictureHead.read(file);
      if (head.isEmpty()) {
        return not("broken", name);
      }
      if (head.get().kind() == PictureHead.Kind.OTHER) {
        return not("kind", name);
      }
      if (head.get().isInWaves() && head.get().pixels() > MOST_PIXELS_IN_WAVES) {
        return not("large", name, head.get().pixels() / 1_000_000);
      }
      return new PhotoImage(Optional.of(read(file, head.get(), wide, high)), "");
    } catch (IOException | RuntimeException | OutOfMemoryError broken) {
      return not("broken", name);
    }
  }

  private static PhotoImage not(String why, Object... parts) {
    return new PhotoImage(Optional.empty(), Words.say("photo.notShown." + why, parts));
  }

  private static BufferedImage read(Path file, PictureHead head, int wide, int high)
      throws IOException {
    boolean lies = head.orientation() > 4;
    double scale =
        Math.min(
            1,
            Math.min(
                (double) wide / (lies ? head.height() : head.width()),
                (double) high / (lies ? head.width() : head.height())));
    // Twice as many pixels as are shown, so that the last step can smooth.
    int step = Math.max(1, (int) Math.floor(1 / (2 * scale)));
    try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
      String format = head.kind().name().toLowerCase(Locale.ROOT);
      Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        ImageReadParam param = reader.getDefaultReadParam();
        param.setSourceSubsampling(step, step, 0, 0);
        return upright(reader.read(0, param), head.orientation(), scale * step);
      } finally {
        reader.dispose();
      }
    }
  }

  /** Turns as Exif says: 2 mirrored, 3 upside down, 6 and 8 on its side, the others mirrored. */
  private static BufferedImage upright(BufferedImage raw, int orientation, double scale) {
    double w = raw.getWidth() * scale;
    double h = raw.getHeight() * scale;
    AffineTransform turn =
        switch (orientation) {
          case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
          case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
          case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
          case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
          case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
          case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
          case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
          default -> new AffineTransform();
        };
    boolean lies = orientation > 4;
    BufferedImage shown =
        new BufferedImage(
            Math.max(1, (int) Math.round(lies ? h : w)),
            Math.max(1, (int) Math.round(lies ? w : h)),
            BufferedImage.TYPE_INT_ARGB);
    Graphics2D g = shown.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    turn.scale(scale, scale);
    g.drawImage(raw, turn, null);
    g.dispose();
    return shown;
  }
}
