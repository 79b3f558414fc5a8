package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a kept picture forgives, and what it does not. */
class ScreenDifferenceTest {
  private static final Color INK = new Color(0x565E67);
  private static final Object SMOOTH = RenderingHints.VALUE_TEXT_ANTIALIAS_ON;
  private static final BufferedImage KEPT = screen("all is well", 60, INK, SMOOTH);

  static Object[] otherRenderers() {
    return new Object[] {
      RenderingHints.VALUE_TEXT_ANTIALIAS_ON,
      RenderingHints.VALUE_TEXT_ANTIALIAS_OFF,
      RenderingHints.VALUE_TEXT_ANTIALIAS_GASP,
      RenderingHints.VALUE_TEXT_ANTIALIAS_LCD_HRGB
    };
  }

  @ParameterizedTest
  @MethodSource("otherRenderers")
  void lettersSmoothedOtherwiseAreTheSame(Object smoothing) {
    assertThat(difference(screen("all is well", 60, INK, smoothing)).blocks()).isEmpty();
  }

  @Test
  void onePixelIsForgivenAndSixAreNot() {
    assertThat(difference(screen("all is well", 61, INK, SMOOTH)).isNone()).isTrue();
    assertThat(difference(screen("all is well", 66, INK, SMOOTH)).isNone()).isFalse();
  }

  @Test
  void aWordThatIsMissingIsFound() {
    assertThat(difference(screen("all is", 60, INK, SMOOTH)).isNone()).isFalse();
    assertThat(difference(screen("all well", 60, INK, SMOOTH)).isNone()).isFalse();
  }

  @Test
  void anotherColourIsFound() {
    assertThat(difference(screen("all is well", 60, new Color(0xB56A00), SMOOTH)).isNone())
        .isFalse();
  }

  @Test
  void anotherSizeIsADifference() {
    BufferedImage small = new BufferedImage(40, 40, BufferedImage.TYPE_INT_RGB);
    assertThat(difference(small).isNone()).isFalse();
  }

  @Test
  void theMarkedPictureHasAFrameAroundTheDifference() {
    BufferedImage other = screen("all is ill", 60, INK, SMOOTH);
    BufferedImage marked = difference(other).marked(other);
    int frames = 0;
    for (int x = 0; x < marked.getWidth(); x++) {
      for (int y = 0; y < marked.getHeight(); y++) {
        frames += marked.getRGB(x, y) == 0xFFFF00FF ? 1 : 0;
      }
    }
    assertThat(frames).isPositive();
    assertThat(marked.getRGB(250, 90)).isEqualTo(other.getRGB(250, 90));
  }

  private static ScreenDifference difference(BufferedImage actual) {
    return ScreenDifference.of(KEPT, actual);
  }

  private static BufferedImage screen(String words, int x, Color ink, Object smoothing) {
    BufferedImage image = new BufferedImage(300, 100, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, smoothing);
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, 300, 100);
    g.setColor(ink);
    g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 14));
    g.drawString(words, x, 40);
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 30));
    g.drawString("1/125", 60, 85);
    g.dispose();
    return image;
  }
}
