package org.halflight.desk;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import javax.swing.UIManager;

/** The letters that the program ships, for a window that looks the same on every computer. */
final class ShippedLetters {
  private static final String FAMILY = "DejaVu Sans";
  private static final float SIZE = 13;
  private static final String SAMPLE = "Shutter 1/250 s, \u00b10.14 \u00b5s";

  private ShippedLetters() {}

  /** Has every window of this program use them. */
  static void install() {
    for (String file : new String[] {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"}) {
      GraphicsEnvironment.getLocalGraphicsEnvironment().registerFont(load(file));
    }
    UIManager.put("defaultFont", new Font(FAMILY, Font.PLAIN, 1).deriveFont(SIZE));
  }

  private static Font load(String file) {
    try (InputStream font =
        ShippedLetters.class.getResourceAsStream("/org/halflight/report/fonts/" + file)) {
      return Font.createFont(Font.TRUETYPE_FONT, font);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException broken) {
      throw new IllegalStateException(broken);
    }
  }

  /** Why pictures cannot be compared here; empty where the computer's letters are the shipped. */
  static Optional<String> areOthers() {
    FontRenderContext exact = new FontRenderContext(null, true, true);
    Font here = new Font(Font.SANS_SERIF, Font.PLAIN, 100);
    return load("DejaVuSans.ttf")
            .deriveFont(100f)
            .createGlyphVector(exact, SAMPLE)
            .getOutline()
            .getBounds2D()
            .equals(here.createGlyphVector(exact, SAMPLE).getOutline().getBounds2D())
        ? Optional.empty()
        : Optional.of(
            "The charts of the window use the sans serif of this computer, which is not DejaVu Sans"
                + " 2.37, so kept pictures cannot be compared."
                + " On Debian: apt-get install fonts-dejavu-core");
  }
}
