package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a screen shows something else than a kept picture of it. Compared are the mean colours of
 * blocks, so that letters may be smoothed by another renderer, and each block may lie a pixel
 * beside its place; but no label may move further, no word be missing, no colour be another.
 *
 * @param blocks that differ, in pixels of both pictures
 */
record ScreenDifference(List<Rectangle> blocks) {
  private static final int BLOCK = 8;

  /** Greatest difference of a mean, of 255, in any of red, green and blue. */
  private static final int MOST_LEVELS = 12;

  /** So many blocks may differ: the end of a line, the edge of a round. */
  private static final int MOST_BLOCKS = 2;

  /** Compares two pictures; of another size all of it differs. */
  static ScreenDifference of(BufferedImage expected, BufferedImage actual) {
    if (expected.getWidth() != actual.getWidth() || expected.getHeight() != actual.getHeight()) {
      Rectangle all = new Rectangle(0, 0, actual.getWidth(), actual.getHeight());
      return new ScreenDifference(List.of(all, all, all));
    }
    Sums before = new Sums(expected);
    Sums now = new Sums(actual);
    List<Rectangle> blocks = new ArrayList<>();
    for (int y = 0; y + BLOCK <= expected.getHeight(); y += BLOCK) {
      for (int x = 0; x + BLOCK <= expected.getWidth(); x += BLOCK) {
        if (!isThere(before, now, x, y)) {
          blocks.add(new Rectangle(x, y, BLOCK, BLOCK));
        }
      }
    }
    return new ScreenDifference(List.copyOf(blocks));
  }

  private static boolean isThere(Sums before, Sums now, int x, int y) {
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        boolean same = true;
        for (int channel = 0; channel < 3; channel++) {
          same &=
              Math.abs(before.mean(channel, x, y) - now.mean(channel, x + dx, y + dy))
                  <= MOST_LEVELS;
        }
        if (same) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether both pictures show the same. */
  boolean isNone() {
    return blocks.size() <= MOST_BLOCKS;
  }

  /** A picture with a frame around each block that differs. */
  BufferedImage marked(BufferedImage actual) {
    BufferedImage marked =
        new BufferedImage(actual.getWidth(), actual.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g = marked.createGraphics();
    g.drawImage(actual, 0, 0, null);
    g.setColor(new Color(0xFF00FF));
    g.setStroke(new BasicStroke(1));
    blocks.forEach(block -> g.drawRect(block.x, block.y, block.width - 1, block.height - 1));
    g.dispose();
    return marked;
  }

  /** Sums of all pixels above and left of a place, so that any mean costs four looks. */
  private static final class Sums {
    private final long[][][] sums;
    private final int width;
    private final int height;

    Sums(BufferedImage image) {
      width = image.getWidth();
      height = image.getHeight();
      sums = new long[3][height + 1][width + 1];
      int[] row = new int[width];
      for (int y = 0; y < height; y++) {
        image.getRGB(0, y, width, 1, row, 0, width);
        for (int channel = 0; channel < 3; channel++) {
          long left = 0;
          for (int x = 0; x < width; x++) {
            left += (row[x] >> (16 - 8 * channel)) & 0xFF;
            sums[channel][y + 1][x + 1] = sums[channel][y][x + 1] + left;
          }
        }
      }
    }

    double mean(int channel, int x, int y) {
      int left = Math.max(0, Math.min(width - BLOCK, x));
      int top = Math.max(0, Math.min(height - BLOCK, y));
      long[][] of = sums[channel];
      return (double)
              (of[top + BLOCK][left + BLOCK]
                  - of[top][left + BLOCK]
                  - of[top + BLOCK][left]
                  + of[top][left])
          / (BLOCK * BLOCK);
    }
  }
}
