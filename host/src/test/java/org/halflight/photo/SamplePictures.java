package org.halflight.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** Pictures as phones make them, invented. */
public final class SamplePictures {
  private SamplePictures() {}

  /** A picture whose left half is dark red and right half light blue. */
  public static byte[] picture(String format, int width, int height) throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(new Color(150, 20, 20));
    g.fillRect(0, 0, width / 2, height);
    g.setColor(new Color(150, 190, 250));
    g.fillRect(width / 2, 0, width - width / 2, height);
    g.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, format, out);
    return out.toByteArray();
  }

  /** A JPEG with Exif. */
  public static byte[] jpeg(int width, int height, int orientation, String taken, String offset)
      throws IOException {
    byte[] plain = picture("jpg", width, height);
    byte[] tiff = tiff(orientation, taken, offset);
    ByteBuffer all = ByteBuffer.allocate(plain.length + tiff.length + 10);
    all.put(plain, 0, 2).putShort((short) 0xffe1).putShort((short) (tiff.length + 8));
    all.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(tiff);
    all.put(plain, 2, plain.length - 2);
    return all.array();
  }

  /** The TIFF structure of Exif: orientation, time taken and offset of the clock. */
  static byte[] tiff(int orientation, String taken, String offset) {
    ByteBuffer b = ByteBuffer.allocate(200);
    b.put(new byte[] {'M', 'M', 0, 42}).putInt(8);
    b.putShort((short) 2);
    entry(b, 0x0112, 3, 1, orientation << 16);
    entry(b, 0x8769, 4, 1, 38);
    b.putInt(0);
    b.putShort((short) (offset.isEmpty() ? 1 : 2));
    int data = 38 + 2 + 24 + 4;
    entry(b, 0x9003, 2, taken.length() + 1, data);
    entry(b, 0x9011, 2, offset.length() + 1, data + 24);
    b.putInt(0);
    b.position(data);
    b.put(taken.getBytes(StandardCharsets.US_ASCII));
    b.position(data + 24);
    b.put(offset.getBytes(StandardCharsets.US_ASCII));
    return b.array();
  }

  private static void entry(ByteBuffer b, int tag, int type, int count, int value) {
    b.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
  }
}
