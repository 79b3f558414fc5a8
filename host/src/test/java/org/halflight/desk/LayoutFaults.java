package org.halflight.desk;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.swing.AbstractButton;
import javax.swing.CellRendererPane;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JLayeredPane;
import javax.swing.JList;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
import javax.swing.JSlider;
import javax.swing.JSpinner;
import javax.swing.JTabbedPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JViewport;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.halflight.chart.Picture;
import org.halflight.chart.PictureImage;

/**
 * What is wrong with a window as it is laid out: texts cut off, shortened by dots or drawn over
 * each other, letters too faint, components over each other or beyond their parent, controls
 * without a name for a screen reader, targets at the bench too small for a hand with a tool in it.
 *
 * <p>The window is painted into an image, and every text is looked at as it is drawn; so labels,
 * cells of tables, icons and painted components are all judged alike. For the window's own thread.
 */
final class LayoutFaults {
  /** Least contrast of letters, and of letters of {@link #LARGE_MM}; after WCAG 2.1, 1.4.3. */
  static final double CONTRAST = 4.5;

  static final double CONTRAST_LARGE = 3;
  private static final double LARGE_MM = 20;

  /** Smallest letters, in parts of those of the desktop; our own limit. */
  private static final double LEAST_LETTERS = 0.7;

  /** Height of the caps of letters as a part of their size; that of letters drawn as shapes. */
  private static final double CAPS = 0.73;

  /** Least height and width of what is clicked at the bench; our own limit. */
  static final double TARGET_MM = 12;

  /** Letters may touch by so much: the edge of their ink is faint. */
  private static final double TOUCH = 1;

  /** So much of a letter may be cut off: where it ends is known to a pixel only. */
  private static final double CUT = 2;

  /** The ring around what has the focus may lie beyond the parent: a layout aligns without it. */
  private static final int RING = 3;

  private final JComponent root;
  private final List<String> faults = new ArrayList<>();

  private LayoutFaults(JComponent root) {
    this.root = root;
  }

  /** The faults of what is showing in a window, one a line. */
  static List<String> of(JComponent root) {
    LayoutFaults faults = new LayoutFaults(root);
    faults.components(root);
    faults.texts();
    return faults.faults.stream().distinct().toList();
  }

  /** The contrast of two colours, from 1 to 21; formula of WCAG 2.1, relative luminance of sRGB. */
  static double contrast(Color one, Color other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  // Texts.

  private void texts() {
    BufferedImage[] image = new BufferedImage[1];
    List<TextsPainted.Text> texts = new ArrayList<>(TextsPainted.of(root, image));
    double scale = (double) image[0].getWidth() / root.getWidth();
    shapes(root, image[0], scale, texts);
    pictures(root, texts);
    for (TextsPainted.Text text : texts) {
      text(text);
    }
    for (int i = 0; i < texts.size(); i++) {
      for (int j = 0; j < i; j++) {
        overlap(texts.get(j), texts.get(i));
      }
    }
  }

  private void text(TextsPainted.Text text) {
    Component owner = TextsPainted.owner(root, text);
    if (text.text().endsWith("...") || (text.text().endsWith("\u2026") && !isWhole(owner, text))) {
      fault(owner, "shortened", text);
    }
    if (text.size() < LEAST_LETTERS * Look.letters().getSize2D()) {
      fault(owner, String.format(Locale.ROOT, "letters of %.1f", text.size()), text);
    }
    if (isCut(owner, text)) {
      fault(owner, "cut off", text);
    }
    if (owner.isEnabled() && !text.seen().isEmpty()) {
      double contrast = contrast(text.colour(), text.ground());
      boolean large = text.ink().getHeight() >= Look.mm(root, LARGE_MM) - 1;
      if (contrast < (large ? CONTRAST_LARGE : CONTRAST)) {
        fault(owner, String.format(Locale.ROOT, "contrast %.1f", contrast), text);
      }
    }
  }

  /** Dots that are in the component's own words shorten nothing. */
  private static boolean isWhole(Component owner, TextsPainted.Text text) {
    return (owner instanceof AbstractButton button && text.text().equals(button.getText()))
        || (owner instanceof JLabel label && text.text().equals(label.getText()))
        || owner instanceof JTextComponent;
  }

  private static boolean isCut(Component owner, TextsPainted.Text text) {
    Rectangle2D ink = text.ink();
    Rectangle2D clip = text.clip();
    boolean wide = ink.getMinX() < clip.getMinX() - CUT || ink.getMaxX() > clip.getMaxX() + CUT;
    boolean high = ink.getMinY() < clip.getMinY() - CUT || ink.getMaxY() > clip.getMaxY() + CUT;
    Container scrolls = SwingUtilities.getAncestorOfClass(JScrollPane.class, owner);
    if (scrolls instanceof JScrollPane pane) {
      wide &= !pane.getHorizontalScrollBar().isVisible();
      high = false;
    }
    // A field scrolls by its caret.
    return (wide && !(owner instanceof JTextField)) || high;
  }

  private void overlap(TextsPainted.Text one, TextsPainted.Text other) {
    Rectangle2D both = one.seen().createIntersection(other.seen());
    if (both.getWidth() > TOUCH && both.getHeight() > TOUCH && !isSame(one, other)) {
      fault(TextsPainted.owner(root, other), "drawn over '" + one.text() + "'", other);
    }
  }

  /** A text drawn twice for a halo. */
  private static boolean isSame(TextsPainted.Text one, TextsPainted.Text other) {
    return one.text().equals(other.text())
        && Math.abs(one.ink().getX() - other.ink().getX()) < 4
        && Math.abs(one.ink().getY() - other.ink().getY()) < 4;
  }

  private void shapes(
      Container in, BufferedImage image, double scale, List<TextsPainted.Text> texts) {
    for (Component each : in.getComponents()) {
      if (!each.isVisible()) {
        continue;
      }
      if (each instanceof PaintedComponent painted) {
        Rectangle clip = painted.getVisibleRect();
        for (PaintedComponent.DrawnText drawn : painted.drawnTexts()) {
          Rectangle2D ink = inRoot(painted, drawn.box());
          Rectangle2D device =
              new Rectangle2D.Double(
                  ink.getX() * scale - 2,
                  ink.getY() * scale - 2,
                  ink.getWidth() * scale + 4,
                  ink.getHeight() * scale + 4);
          texts.add(
              new TextsPainted.Text(
                  drawn.text(),
                  ink,
                  inRoot(painted, clip),
                  drawn.ink(),
                  TextsPainted.ground(image, device, drawn.ink()),
                  ink.getHeight() / CAPS));
        }
      }
      if (each instanceof Container inner) {
        shapes(inner, image, scale, texts);
      }
    }
  }

  /** Pictures reach the screen as pixels; here they are drawn once more, for their texts. */
  private void pictures(Container in, List<TextsPainted.Text> texts) {
    for (Component each : in.getComponents()) {
      if (!each.isVisible()) {
        continue;
      }
      if (each instanceof PictureCanvas canvas) {
        canvas.picture().ifPresent(picture -> picture(canvas, picture, texts));
      }
      if (each instanceof Container inner) {
        pictures(inner, texts);
      }
    }
  }

  private void picture(PictureCanvas canvas, Picture picture, List<TextsPainted.Text> texts) {
    Rectangle2D area = new Rectangle2D.Double(0, 0, canvas.getWidth(), canvas.getHeight());
    TextsPainted.of(
            canvas.getWidth(),
            canvas.getHeight(),
            1,
            g -> {
              g.setRenderingHint(
                  RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
              PictureImage.draw(picture, canvas.look().theme(), g, area, null);
            },
            new BufferedImage[1])
        .forEach(
            text ->
                texts.add(
                    new TextsPainted.Text(
                        text.text(),
                        inRoot(canvas, text.ink()),
                        inRoot(canvas, text.clip()),
                        text.colour(),
                        text.ground(),
                        text.size())));
  }

  private Rectangle2D inRoot(Component of, Rectangle2D box) {
    Rectangle at = SwingUtilities.convertRectangle(of, new Rectangle(0, 0), root);
    return new Rectangle2D.Double(
        at.x + box.getX(), at.y + box.getY(), box.getWidth(), box.getHeight());
  }

  private void fault(Component owner, String what, TextsPainted.Text text) {
    faults.add(what + ": '" + text.text() + "' in " + name(owner) + " at " + box(text.ink()));
  }

  // Components.

  private void components(Container in) {
    List<Component> showing = new ArrayList<>();
    for (Component each : in.getComponents()) {
      if (!each.isVisible() || each instanceof CellRendererPane) {
        continue;
      }
      component(in, each);
      if (!(in instanceof JLayeredPane) && !each.getBounds().isEmpty()) {
        for (Component other : showing) {
          Rectangle both = each.getBounds().intersection(other.getBounds());
          if (both.width > 1 && both.height > 1) {
            faults.add(name(each) + " lies over " + name(other) + " by " + box(both));
          }
        }
        showing.add(each);
      }
    }
  }

  private void component(Container in, Component each) {
    Rectangle bounds = each.getBounds();
    if (!(in instanceof JViewport)
        && !bounds.isEmpty()
        && !new Rectangle(-RING, -RING, in.getWidth() + 2 * RING, in.getHeight() + 2 * RING)
            .contains(bounds)) {
      faults.add(name(each) + " reaches beyond " + name(in) + ": " + box(bounds));
    }
    boolean scrolls = SwingUtilities.getAncestorOfClass(JViewport.class, each) != null;
    if (bounds.isEmpty() && hasWords(each) && !scrolls) {
      faults.add(name(each) + " has no room");
    }
    if (each instanceof JTextArea area
        && !scrolls
        && area.getPreferredSize().height > area.getHeight() + TOUCH) {
      faults.add("lines cut off: '" + area.getText() + "' in " + name(each));
    }
    if (isControl(each)) {
      String said = each.getAccessibleContext().getAccessibleName();
      if (said == null || said.isBlank()) {
        faults.add(name(each) + " has no name for a screen reader");
      }
    }
    if (each instanceof AbstractButton
        && SwingUtilities.getAncestorOfClass(BenchPlace.class, each) != null) {
      int least = Look.mm(root, TARGET_MM) - 1;
      if (each.getWidth() < least || each.getHeight() < least) {
        faults.add(name(each) + " is too small to hit: " + box(bounds) + ", not " + least);
      }
    }
    if (each instanceof Container inner
        && !(each instanceof JComboBox || each instanceof JScrollBar || each instanceof JSpinner)) {
      components(inner);
    }
  }

  private static boolean hasWords(Component each) {
    return (each instanceof JLabel label && label.getText() != null && !label.getText().isBlank())
        || (each instanceof AbstractButton button
            && button.getText() != null
            && !button.getText().isBlank());
  }

  private static boolean isControl(Component each) {
    return each instanceof AbstractButton
        || each instanceof JTextComponent
        || each instanceof JComboBox
        || each instanceof JTable
        || each instanceof JList
        || each instanceof JSlider
        || each instanceof JSpinner
        || each instanceof JTabbedPane
        || each instanceof PaintedComponent;
  }

  /** What a component is called in a fault. */
  static String name(Component of) {
    String words =
        of instanceof JLabel label
            ? " '" + label.getText() + "'"
            : of instanceof AbstractButton button ? " '" + button.getText() + "'" : "";
    return of.getClass().getSimpleName() + (of.getName() == null ? "" : " " + of.getName()) + words;
  }

  private static String box(Rectangle2D box) {
    return String.format(
        Locale.ROOT,
        "%.0f,%.0f %.0fx%.0f",
        box.getX(),
        box.getY(),
        box.getWidth(),
        box.getHeight());
  }
}
