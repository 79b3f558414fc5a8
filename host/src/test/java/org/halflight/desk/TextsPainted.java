package org.halflight.desk;

import com.formdev.flatlaf.util.Graphics2DProxy;
import java.awt.AlphaComposite;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.font.GlyphVector;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.text.AttributedCharacterIterator;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.RepaintManager;

/**
 * What draws into an image and keeps every text that it is given: its ink, how much of the
 * component's ground was open to it, its colour and the colour beneath.
 */
final class TextsPainted extends Graphics2DProxy {
  private static final int SAMPLES_A_SIDE = 24;

  /** No colour of an image without transparency. */
  private static final Color NO_INK = new Color(0, true);

  /**
   * A text as it came to the image. Places are in pixels of the image before scaling.
   *
   * @param text empty where only its shape was given
   * @param ink around what is seen of its letters, were nothing cut off
   * @param clip where drawing was open
   * @param colour of the letters
   * @param ground the most frequent colour beneath
   * @param size of the font
   */
  record Text(
      String text, Rectangle2D ink, Rectangle2D clip, Color colour, Color ground, double size) {
    /** What of the ink is not cut off. */
    Rectangle2D seen() {
      return ink.createIntersection(clip);
    }
  }

  private final Graphics2D image;
  private final BufferedImage pixels;
  private final double scale;
  private final List<Text> texts;

  private TextsPainted(Graphics2D image, BufferedImage pixels, double scale, List<Text> texts) {
    super(image);
    this.image = image;
    this.pixels = pixels;
    this.scale = scale;
    this.texts = texts;
  }

  /** The texts of a component and all within it, painted as on a screen of its scale. */
  static List<Text> of(JComponent component, BufferedImage[] painted) {
    double scale =
        component.getGraphicsConfiguration() == null
            ? 1
            : component.getGraphicsConfiguration().getDefaultTransform().getScaleX();
    RepaintManager manager = RepaintManager.currentManager(component);
    boolean buffered = manager.isDoubleBufferingEnabled();
    manager.setDoubleBufferingEnabled(false);
    try {
      return of(component.getWidth(), component.getHeight(), scale, component::paint, painted);
    } finally {
      manager.setDoubleBufferingEnabled(buffered);
    }
  }

  /** The texts of anything that draws itself; its image comes into the array. */
  static List<Text> of(
      int width, int height, double scale, Consumer<Graphics2D> paints, BufferedImage[] painted) {
    BufferedImage pixels =
        new BufferedImage(
            Math.max(1, (int) Math.ceil(width * scale)),
            Math.max(1, (int) Math.ceil(height * scale)),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = pixels.createGraphics();
    graphics.scale(scale, scale);
    graphics.setClip(0, 0, width, height);
    List<Text> texts = new ArrayList<>();
    TextsPainted keeps = new TextsPainted(graphics, pixels, scale, texts);
    paints.accept(keeps);
    keeps.dispose();
    painted[0] = pixels;
    return texts;
  }

  @Override
  public Graphics create() {
    return new TextsPainted((Graphics2D) image.create(), pixels, scale, texts);
  }

  @Override
  public Graphics create(int x, int y, int width, int height) {
    return new TextsPainted((Graphics2D) image.create(x, y, width, height), pixels, scale, texts);
  }

  @Override
  public void drawString(String text, int x, int y) {
    drawString(text, (float) x, (float) y);
  }

  @Override
  public void drawString(String text, float x, float y) {
    if (!text.isEmpty()) {
      Font font = getFont();
      keep(text, font.createGlyphVector(getFontRenderContext(), text), x, y, font.getSize2D());
    }
    super.drawString(text, x, y);
  }

  @Override
  public void drawChars(char[] chars, int offset, int length, int x, int y) {
    drawString(new String(chars, offset, length), x, y);
  }

  @Override
  public void drawString(AttributedCharacterIterator text, int x, int y) {
    drawString(text, (float) x, (float) y);
  }

  @Override
  public void drawString(AttributedCharacterIterator text, float x, float y) {
    if (text.getBeginIndex() < text.getEndIndex()) {
      TextLayout layout = new TextLayout(text, getFontRenderContext());
      StringBuilder words = new StringBuilder();
      for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
        words.append(c);
      }
      text.first();
      keep(words.toString(), moved(layout.getBounds(), x, y), layout.getAscent());
    }
    super.drawString(text, x, y);
  }

  @Override
  public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
    keep("", glyphs, x, y, glyphs.getFont().getSize2D());
    super.drawGlyphVector(glyphs, x, y);
  }

  private void keep(String text, GlyphVector glyphs, float x, float y, double size) {
    keep(text, moved(glyphs.getVisualBounds(), x, y), size);
  }

  private static Rectangle2D moved(Rectangle2D bounds, float x, float y) {
    return new Rectangle2D.Double(
        bounds.getX() + x, bounds.getY() + y, bounds.getWidth(), bounds.getHeight());
  }

  private void keep(String text, Rectangle2D inked, double size) {
    if (inked.isEmpty()) {
      return;
    }
    AffineTransform toImage = getTransform();
    Rectangle2D ink = toImage.createTransformedShape(inked).getBounds2D();
    Shape open = getClip();
    Rectangle2D clip =
        open == null
            ? new Rectangle2D.Double(0, 0, pixels.getWidth(), pixels.getHeight())
            : toImage.createTransformedShape(open).getBounds2D();
    if (clip.isEmpty()) {
      return;
    }
    Color ground = ground(pixels, ink.createIntersection(clip), NO_INK);
    texts.add(
        new Text(text, unscaled(ink), unscaled(clip), opaque(getColor(), ground), ground, size));
  }

  private Rectangle2D unscaled(Rectangle2D box) {
    return new Rectangle2D.Double(
        box.getX() / scale, box.getY() / scale, box.getWidth() / scale, box.getHeight() / scale);
  }

  private Color opaque(Color ink, Color ground) {
    double alpha = ink.getAlpha() / 255.0;
    if (getComposite() instanceof AlphaComposite composite) {
      alpha *= composite.getAlpha();
    }
    return new Color(
        mixed(ink.getRed(), ground.getRed(), alpha),
        mixed(ink.getGreen(), ground.getGreen(), alpha),
        mixed(ink.getBlue(), ground.getBlue(), alpha));
  }

  private static int mixed(int ink, int ground, double alpha) {
    return (int) Math.round(alpha * ink + (1 - alpha) * ground);
  }

  /**
   * The most frequent colour in a part of an image.
   *
   * @param ink that is in the image already and is no ground
   */
  static Color ground(BufferedImage pixels, Rectangle2D in, Color ink) {
    Rectangle area =
        in.getBounds().intersection(new Rectangle(pixels.getWidth(), pixels.getHeight()));
    Map<Integer, Integer> counts = new HashMap<>();
    for (int i = 0; i < SAMPLES_A_SIDE && !area.isEmpty(); i++) {
      for (int j = 0; j < SAMPLES_A_SIDE; j++) {
        int colour =
            pixels.getRGB(
                area.x + i * area.width / SAMPLES_A_SIDE,
                area.y + j * area.height / SAMPLES_A_SIDE);
        if (colour != ink.getRGB()) {
          counts.merge(colour, 1, Integer::sum);
        }
      }
    }
    return counts.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(each -> new Color(each.getKey()))
        .orElse(Color.WHITE);
  }

  /** The component that a text belongs to: the deepest where drawing was open to it. */
  static Component owner(JComponent root, Text text) {
    Component found =
        javax.swing.SwingUtilities.getDeepestComponentAt(
            root, (int) text.clip().getCenterX(), (int) text.clip().getCenterY());
    return found == null ? root : found;
  }
}
