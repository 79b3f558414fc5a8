package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import org.halflight.photo.SamplePictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Photographs are shown upright and small, whatever their size; what cannot be shown is said. */
class PhotoImageTest {
  private static final int RED = 1;
  private static final int BLUE = 2;

  @TempDir private Path folder;

  /** Which colour is at the top left and at the bottom right after turning upright. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 2, 80, 60",
    "2, 2, 1, 80, 60",
    "3, 2, 1, 80, 60",
    "4, 1, 2, 80, 60",
    "5, 1, 2, 45, 60",
    "6, 1, 2, 45, 60",
    "7, 2, 1, 45, 60",
    "8, 2, 1, 45, 60"
  })
  void isUprightAsTheCameraWasHeld(int orientation, int first, int last, int wide, int high)
      throws IOException {
    Path file =
        Files.write(folder.resolve("a.jpg"), SamplePictures.jpeg(400, 300, orientation, "", ""));
    BufferedImage shown = PhotoImage.of(file, "a.jpg", 80, 60).image().orElseThrow();
    assertThat(shown.getWidth()).isEqualTo(wide);
    assertThat(shown.getHeight()).isEqualTo(high);
    assertThat(colour(shown, 4, 4)).isEqualTo(first);
    assertThat(colour(shown, wide - 5, high - 5)).isEqualTo(last);
  }

  @Test
  void aSmallPictureIsNotBlownUp() throws IOException {
    Path file = Files.write(folder.resolve("a.png"), SamplePictures.picture("png", 30, 20));
    BufferedImage shown = PhotoImage.of(file, "a.png", 800, 600).image().orElseThrow();
    assertThat(shown.getWidth()).isEqualTo(30);
  }

  /** 20,000 by 20,000 pixels would be 1.6 GB; the tests have less. */
  @Test
  void aHugePictureIsShownFromFewOfItsPixels() throws IOException {
    Path file = folder.resolve("huge.png");
    grey(file, 20_000, 20_000);
    BufferedImage shown = PhotoImage.of(file, "huge.png", 100, 100).image().orElseThrow();
    assertThat(shown.getWidth()).isEqualTo(100);
  }

  @Test
  void whatCannotBeShownIsSaid() throws IOException {
    byte[] whole = SamplePictures.jpeg(400, 300, 1, "", "");
    byte[] waves = whole.clone();
    int frame = frame(waves);
    waves[frame + 1] = (byte) 0xc2;
    ByteBuffer.wrap(waves).putShort(frame + 5, (short) 20_000).putShort(frame + 7, (short) 20_000);
    said("a.jpg", waves, "too large to unpack, 400 megapixels");
    said("b.jpg", Arrays.copyOf(whole, frame + 2), "the picture is damaged");
    said("c.gif", SamplePictures.picture("gif", 9, 9), "this kind of picture cannot be shown");
    assertThat(PhotoImage.of(folder.resolve("gone.jpg"), "gone.jpg", 9, 9).said())
        .isEqualTo("gone.jpg: the file is missing");
  }

  private void said(String name, byte[] content, String why) throws IOException {
    PhotoImage image = PhotoImage.of(Files.write(folder.resolve(name), content), name, 99, 99);
    assertThat(image.image()).isEmpty();
    assertThat(image.said()).isEqualTo(name + ": kept, not shown (" + why + ")");
  }

  private static int frame(byte[] jpeg) {
    for (int i = 2; ; i++) {
      if ((jpeg[i] & 0xff) == 0xff && (jpeg[i + 1] & 0xff) == 0xc0) {
        return i;
      }
    }
  }

  private static int colour(BufferedImage image, int x, int y) {
    Color at = new Color(image.getRGB(x, y));
    return at.getRed() > at.getBlue() ? RED : BLUE;
  }

  /** Writes a grey PNG row by row. */
  private static void grey(Path file, int wide, int high) throws IOException {
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    try (OutputStream packed = new DeflaterOutputStream(data)) {
      byte[] row = new byte[1 + (wide + 7) / 8];
      for (int i = 0; i < high; i++) {
        packed.write(row);
      }
    }
    byte[] head = ByteBuffer.allocate(13).putInt(wide).putInt(high).put((byte) 1).array();
    try (OutputStream out = Files.newOutputStream(file)) {
      out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
      chunk(out, "IHDR", head);
      chunk(out, "IDAT", data.toByteArray());
      chunk(out, "IEND", new byte[0]);
    }
  }

  private static void chunk(OutputStream out, String name, byte[] content) throws IOException {
    byte[] named = name.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(named);
    crc.update(content);
    out.write(ByteBuffer.allocate(4).putInt(content.length).array());
    out.write(named);
    out.write(content);
    out.write(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
  }
}
