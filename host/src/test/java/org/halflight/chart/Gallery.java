package org.halflight.chart;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import javax.imageio.ImageIO;

/** Draws the invented pictures into a folder, in both themes, to be looked at. */
public final class Gallery {
  private Gallery() {}

  /** {@code FOLDER WIDTH HEIGHT SPEEDS}. */
  public static void main(String[] words) throws IOException {
    Path folder = Files.createDirectories(Path.of(words[0]));
    int width = Integer.parseInt(words[1]);
    int height = Integer.parseInt(words[2]);
    Map<String, Picture> all = InventedPictures.all(Integer.parseInt(words[3]), 7);
    int columns = 3;
    int rows = (all.size() + columns - 1) / columns;
    for (Theme theme : new Theme[] {Theme.LIGHT, Theme.DARK}) {
      BufferedImage sheet =
          new BufferedImage(columns * (width + 8), rows * (height + 8), BufferedImage.TYPE_INT_RGB);
      int i = 0;
      for (Picture picture : all.values()) {
        BufferedImage one = PictureImage.draw(picture, theme.withLetterSize(13), width, height, 1);
        sheet
            .createGraphics()
            .drawImage(one, i % columns * (width + 8), i / columns * (height + 8), null);
        i++;
      }
      String name = theme.equals(Theme.LIGHT) ? "light" : "dark";
      ImageIO.write(sheet, "png", folder.resolve(name + "-" + width + ".png").toFile());
    }
  }
}
