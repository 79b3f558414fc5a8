package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Image;
import java.awt.image.BufferedImage;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.halflight.desk.view.GuideHtml;
import org.junit.jupiter.api.Test;

/** Drawings of the guide as the window shows them. */
class GuidePicturesTest {
  private static final Path DOCS = Path.of("docs");

  @Test
  void everyDrawingOfTheGuideCanBeDrawn() throws Exception {
    for (Path folder : List.of(DOCS, DOCS.resolve("images"))) {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.filter(each -> each.toString().endsWith(".svg")).toList()) {
          BufferedImage image = SvgImage.of(Files.readAllBytes(file), 300);
          int[] pixels =
              image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
          assertThat(Arrays.stream(pixels).distinct().count()).as("%s", file).isGreaterThan(10);
        }
      }
    }
  }

  @Test
  void aPageFindsItsDrawingsAndLoadsEverythingElseAsUsual() throws Exception {
    URL folder = DOCS.toUri().toURL();
    GuidePictures pictures =
        GuidePictures.of(
            GuideHtml.of("![a](wiring-starter.svg) ![b](no.svg) ![c](images/start.png)"), folder);
    assertThat(pictures.size()).isOne();
    Image drawing = pictures.get(new URL(folder, "wiring-starter.svg"));
    assertThat(drawing).isInstanceOf(BufferedImage.class);
    assertThat(drawing.getWidth(null)).isEqualTo(GuideHtml.DRAWING_WIDTH);
    assertThat(pictures.get(new URL(folder, "images/start.png"))).isNotNull();
  }

  @Test
  void areasLinesAndLettersAreWhereTheyBelong() throws Exception {
    String drawing =
        "<svg width=\"100\" height=\"50\"><rect x=\"0\" y=\"0\" width=\"50\" height=\"50\""
            + " fill=\"#f00\"/><path d=\"M60 25 h40\" fill=\"none\" stroke=\"#00f\""
            + " stroke-width=\"4\"/></svg>";
    BufferedImage image = SvgImage.of(drawing.getBytes(StandardCharsets.UTF_8), 200);
    assertThat(image.getHeight()).isEqualTo(100);
    assertThat(image.getRGB(50, 50)).isEqualTo(0xFFFF0000);
    assertThat(image.getRGB(160, 50)).isEqualTo(0xFF0000FF);
    assertThat(image.getRGB(110, 50)).isEqualTo(0xFFFFFFFF);
    String odd = "<svg width=\"1\" height=\"1\"><image/></svg>";
    assertThatThrownBy(() -> SvgImage.of(odd.getBytes(StandardCharsets.UTF_8), 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
