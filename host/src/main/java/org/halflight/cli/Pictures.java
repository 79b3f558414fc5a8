package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.trouble.Trouble;

/** Pictures into files. */
final class Pictures {
  private static final int WIDTH = 1200;
  private static final int HEIGHT = 700;
  private static final double SCALE = 2;

  private Pictures() {}

  /** Makes a folder for pictures where it is not there. */
  static void folder(Path path) {
    try {
      Files.createDirectories(path);
    } catch (IOException e) {
      throw new Trouble(
          "The folder " + path + " cannot be made: " + e.getMessage() + ". Give another name.", e);
    }
  }

  static void write(Picture picture, Path path) {
    try {
      Files.write(path, PictureImage.png(picture, WIDTH, HEIGHT, SCALE));
    } catch (IOException e) {
      throw new Trouble(
          "The picture " + path + " cannot be written: " + e.getMessage() + ". Give another name.",
          e);
    }
  }
}
