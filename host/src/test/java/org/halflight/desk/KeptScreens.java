package org.halflight.desk;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * Pictures of the main screens, kept so that a change of them is seen. As a program it makes them
 * anew, to be looked at before they are committed.
 */
final class KeptScreens {
  /** Where {@link DeskFit} leaves the screens of today. */
  static final String ACTUAL = "kept";

  private static final Path KEPT = Path.of("fixtures", "screens");
  private static final String PNG = ".png";

  /** Sixteen steps of each colour make a small file. */
  private static final int STEP = 17;

  /** A short program is not worth a second compiler. */
  static final List<String> QUICK = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

  private KeptScreens() {}

  /** Makes the kept pictures anew. */
  public static void main(String[] args) throws Exception {
    // In the test's own folder: the rig's place shows where files are.
    Path folder = cleared("usual");
    System.out.println(run(folder));
    Files.createDirectories(KEPT);
    for (Path each : pictures(KEPT)) {
      Files.delete(each);
    }
    for (Path each : pictures(folder.resolve(ACTUAL))) {
      Files.move(each, KEPT.resolve(each.getFileName()));
    }
  }

  /** Has the screens drawn as they are kept; the other sizes are those of the test. */
  static String run(Path folder) throws Exception {
    try (Display display = new Display()) {
      return display.run(
          Stream.concat(
                  QUICK.stream(),
                  Stream.of("-Duser.language=en", "-Duser.country=GB", "-Duser.timezone=UTC"))
              .toList(),
          DeskFit.class,
          folder.toString(),
          "keep",
          "1366x768",
          "1024x640",
          "1920x1080");
    }
  }

  /**
   * Compares the screens of today with the kept ones. Of each that differs, the expected, the
   * actual and one with the difference marked are left beside them.
   *
   * @return what differs, one a line
   */
  static List<String> compare(Path folder) throws IOException {
    List<String> differences = new ArrayList<>();
    List<Path> today = pictures(folder.resolve(ACTUAL));
    for (Path kept : pictures(KEPT)) {
      if (today.stream().noneMatch(each -> each.getFileName().equals(kept.getFileName()))) {
        differences.add(kept + " is of a screen that is not drawn any more");
      }
    }
    for (Path each : today) {
      Path kept = KEPT.resolve(each.getFileName());
      if (!Files.exists(kept)) {
        differences.add("there is no " + kept + ": see DEVELOPERS.md for how to keep it");
        continue;
      }
      BufferedImage expected = ImageIO.read(kept.toFile());
      BufferedImage actual = ImageIO.read(each.toFile());
      ScreenDifference difference = ScreenDifference.of(expected, actual);
      if (!difference.isNone()) {
        String name = String.valueOf(each.getFileName()).replace(PNG, "");
        Path beside = folder.resolve("differences");
        write(expected, beside.resolve(name + "-expected" + PNG));
        write(actual, beside.resolve(name + "-actual" + PNG));
        write(difference.marked(actual), beside.resolve(name + "-marked" + PNG));
        differences.add(
            difference.blocks().size()
                + " blocks of "
                + kept
                + " differ, the first at "
                + difference.blocks().get(0).getLocation()
                + "; see "
                + beside);
      }
    }
    return differences;
  }

  /** An empty folder for a window. */
  static Path cleared(String name) throws IOException {
    Path folder = Path.of("target", "desk-fit", name);
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
    return Files.createDirectories(folder);
  }

  private static List<Path> pictures(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(PNG)).sorted().toList();
    }
  }

  /** Writes a picture in few colours. */
  static void write(BufferedImage image, Path file) {
    BufferedImage few =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int colour = image.getRGB(x, y);
        few.setRGB(x, y, step(colour >> 16) << 16 | step(colour >> 8) << 8 | step(colour));
      }
    }
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      ImageIO.write(few, "png", file.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int step(int channel) {
    return Math.round((channel & 0xFF) / (float) STEP) * STEP;
  }
}
