package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;
import org.halflight.files.OutFile;
import org.halflight.files.Reasons;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

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
      throw new Trouble(Words.say("file.noFolderMade", path, Reasons.of(e)), e);
    }
  }

  static void write(Picture picture, OutFile to) {
    to.write(PictureImage.png(picture, WIDTH, HEIGHT, SCALE));
  }

  /** Writes a picture and says so. */
  static void write(Picture picture, OutFile to, Terminal terminal) {
    write(picture, to);
    terminal.written(to.path());
  }
}
