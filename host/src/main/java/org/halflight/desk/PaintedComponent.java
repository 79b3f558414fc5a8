package org.halflight.desk;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/**
 * A component that paints itself and still has a name, a role and a description when read aloud.
 */
abstract class PaintedComponent extends JComponent implements LookListener {
  private static final long serialVersionUID = 1L;

  /**
   * A text that was drawn as shapes.
   *
   * @param box around its ink, in pixels of the component
   */
  record DrawnText(String text, Rectangle2D box, Color ink) {}

  private final transient AccessibleRole role;
  private final transient List<DrawnText> drawn = new ArrayList<>();
  private transient Look look;

  /**
   * @param name what it is called aloud
   */
  PaintedComponent(AccessibleRole role, String name, Look look) {
    this.role = role;
    this.look = look;
    getAccessibleContext().setAccessibleName(name);
  }

  /** Paints it, with smooth lines and letters, on nothing. */
  abstract void paint(Graphics2D g);

  @Override
  protected final void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    drawn.clear();
    try {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      g.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      paint(g);
    } finally {
      g.dispose();
    }
  }

  final Look look() {
    return look;
  }

  @Override
  public void look(Look another) {
    look = another;
    repaint();
  }

  /**
   * Draws large letters as shapes: the same pixels whatever the text cache does. Whoever checks
   * that texts fit finds them in {@link #drawnTexts}.
   */
  final void drawShape(Graphics2D g, Font font, String text, int x, int y) {
    Shape shape = font.createGlyphVector(g.getFontRenderContext(), text).getOutline(x, y);
    g.fill(shape);
    drawn.add(new DrawnText(text, shape.getBounds2D(), g.getColor()));
  }

  /** The texts that were drawn as shapes when it was painted last. */
  final List<DrawnText> drawnTexts() {
    return List.copyOf(drawn);
  }

  /** The large letters, with digits so many pixels high. */
  static Font ofHeight(Graphics2D g, int digitHeight) {
    Font base = Look.letters().deriveFont(Font.BOLD, 100f);
    double height =
        base.createGlyphVector(g.getFontRenderContext(), "0").getVisualBounds().getHeight();
    return base.deriveFont((float) (100 * Math.max(8, digitHeight) / height));
  }

  static int width(Graphics2D g, Font font, String text) {
    return text.isEmpty()
        ? 0
        : (int) Math.ceil(font.getStringBounds(text, g.getFontRenderContext()).getWidth());
  }

  /** The largest of a font that fits. */
  static Font fitted(Graphics2D g, Font font, String text, int room) {
    int width = width(g, font, text);
    return width <= room ? font : font.deriveFont(font.getSize2D() * room / width);
  }

  @Override
  public final AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext =
          new AccessibleJComponent() {
            private static final long serialVersionUID = 1L;

            @Override
            public AccessibleRole getAccessibleRole() {
              return role;
            }
          };
    }
    return accessibleContext;
  }

  /** What it shows now, as it is read aloud. */
  final void speak(String description) {
    getAccessibleContext().setAccessibleDescription(description);
  }
}
