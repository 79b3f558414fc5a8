package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import javax.imageio.ImageIO;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.Fired;
import org.halflight.verdict.SpeedSummary;
import org.jfree.chart.ChartRenderingInfo;
import org.junit.jupiter.api.Test;

/** All figures here are invented. */
class PictureImageTest {
  private static final SpeedSummary FOUND =
      Fired.asFound()
          .at(
              "1/30",
              Reference.EXACT,
              Map.of(Outcome.STUCK_OPEN, 1, Outcome.DID_NOT_OPEN, 1),
              OptionalDouble.empty(),
              0.6,
              0.7,
              0.65)
          .run()
          .speeds()
          .get(0);
  private static final SpeedSummary LEFT =
      Fired.asLeft().at("1/30", 0.1, 0.0, 0.05).run().speeds().get(0);
  private static final SpeedMap MAP = map(FOUND);

  private static SpeedMap map(SpeedSummary found) {
    SpeedColumn column =
        new SpeedColumn(
            MarkedSpeed.parse("1/30"),
            Tolerance.THIRD,
            found.equals(LEFT)
                ? Map.of(Phase.AS_LEFT, LEFT)
                : Map.of(Phase.AS_FOUND, found, Phase.AS_LEFT, LEFT));
    return new SpeedMap("Invented", List.of(column, column), "a note");
  }

  @Test
  void imageHasTheSizeTimesTheScale() {
    BufferedImage image = PictureImage.draw(MAP, Theme.LIGHT, 640, 400, 1.5);
    assertThat(image.getWidth()).isEqualTo(960);
    assertThat(image.getHeight()).isEqualTo(600);
    assertThatThrownBy(() -> PictureImage.draw(MAP, Theme.LIGHT, 0, 400, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Everything that carries meaning leaves its own colour in the picture, in both themes. */
  @Test
  void bothRunsAndTheBandAreVisible() {
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      Set<Integer> colours = colours(PictureImage.draw(MAP, theme, 1366, 700, 1));
      assertThat(colours)
          .contains(theme.background().getRGB(), theme.asFound().getRGB(), theme.asLeft().getRGB())
          .contains(over(theme.tolerance(), theme.background()));
    }
  }

  @Test
  void exportsAreLight() throws IOException {
    byte[] png = PictureImage.png(MAP, 300, 200, 1);
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    assertThat(image.getWidth()).isEqualTo(300);
    assertThat(new Color(image.getRGB(0, 0))).isEqualTo(Theme.LIGHT.background());
    assertThat(new Color(image.getRGB(299, 199))).isEqualTo(Theme.LIGHT.background());
  }

  /** The strip of counts must take its room from the plot and not lie upon it. */
  @Test
  void countsDoNotLieOnThePlot() {
    SpeedMap without = map(LEFT);
    // Four lines: two headings and a count below each.
    assertThat(plotTop(MAP) - plotTop(without)).isGreaterThan(4 * Theme.LIGHT.letterSize());
  }

  /** WCAG 2.1 asks 4.5 to 1 for text and 3 to 1 for marks. */
  @Test
  void textAndMarksStandOutFromTheGround() {
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      assertThat(contrast(theme.ink(), theme.background())).isGreaterThan(4.5);
      assertThat(contrast(theme.quietInk(), theme.background())).isGreaterThan(4.5);
      assertThat(contrast(theme.asFound(), theme.background())).isGreaterThan(3);
      assertThat(contrast(theme.asLeft(), theme.background())).isGreaterThan(3);
      assertThat(contrast(theme.rest(), theme.background())).isGreaterThan(3);
    }
  }

  /** Words stand on bands and bars as well; those of examples are as dark as others. */
  @Test
  void wordsStandOutFromAllThatTheyLieOn() {
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      for (Theme shown : List.of(theme, theme.faded())) {
        List<Color> grounds =
            List.of(
                shown.background(),
                new Color(over(shown.tolerance(), shown.background())),
                new Color(over(Theme.pale(shown.asFound()), shown.background())),
                new Color(over(Theme.pale(shown.asLeft()), shown.background())),
                new Color(over(Theme.pale(shown.ink()), shown.background())));
        for (Color ground : grounds) {
          assertThat(contrast(shown.ink(), ground)).isGreaterThan(4.5);
          assertThat(contrast(shown.quietInk(), ground)).isGreaterThan(4.5);
        }
      }
      assertThat(contrast(theme.rest(), theme.background())).isGreaterThan(4.5);
    }
  }

  @Test
  void lettersGrowWithTheDesktop() {
    assertThat(Theme.LIGHT.withLetterSize(20).letters().getSize2D()).isEqualTo(20);
    int usual = inked(PictureImage.draw(MAP, Theme.LIGHT, 800, 500, 1));
    int large = inked(PictureImage.draw(MAP, Theme.LIGHT.withLetterSize(24), 800, 500, 1));
    assertThat(large).isGreaterThan(usual);
  }

  private static double plotTop(SpeedMap map) {
    BufferedImage image = new BufferedImage(800, 600, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    ChartRenderingInfo info = new ChartRenderingInfo();
    map.chart(Theme.LIGHT).draw(graphics, new Rectangle2D.Double(0, 0, 800, 600), info);
    graphics.dispose();
    return info.getPlotInfo().getDataArea().getMinY();
  }

  private static int inked(BufferedImage image) {
    int inked = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        inked += image.getRGB(x, y) == Theme.LIGHT.ink().getRGB() ? 1 : 0;
      }
    }
    return inked;
  }

  private static Set<Integer> colours(BufferedImage image) {
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        colours.add(image.getRGB(x, y));
      }
    }
    return colours;
  }

  /** What the same machine makes of a translucent colour on a ground. */
  private static int over(Color top, Color ground) {
    BufferedImage image = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setPaint(ground);
    graphics.fillRect(0, 0, 1, 1);
    graphics.setPaint(top);
    graphics.fillRect(0, 0, 1, 1);
    graphics.dispose();
    return image.getRGB(0, 0);
  }

  private static double contrast(Color a, Color b) {
    double lighter = Math.max(luminance(a), luminance(b));
    double darker = Math.min(luminance(a), luminance(b));
    return (lighter + 0.05) / (darker + 0.05);
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
