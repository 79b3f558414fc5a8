package org.halflight.desk;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Optional;
import java.util.function.IntConsumer;
import javax.accessibility.AccessibleRole;
import javax.swing.SwingUtilities;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.DarkText;
import org.halflight.desk.view.ScreenView;
import org.halflight.words.Words;

/**
 * Covers the whole window, whatever its colours: black with a few dim letters while the light is
 * read that a screen could disturb; white and black in turn while it is looked whether the screen
 * reaches the sensor. Keys and mouse go on working below it.
 */
final class DarkCover extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  /** Dim, and still 4.5 to 1 on black. */
  private static final Color DIM = new Color(0x7A7A7A);

  private final transient IntConsumer onPainted;
  private transient Optional<ScreenView> screen = Optional.empty();
  private transient Optional<DarkText> dark = Optional.empty();
  private int paintedTurn = -1;

  /**
   * @param onPainted hears which turn of the check of the screen the window shows
   */
  DarkCover(Look look, IntConsumer onPainted) {
    super(AccessibleRole.PANEL, Words.say("desk.dark.name"), look);
    this.onPainted = onPainted;
    setName("darkCover");
    setOpaque(true);
  }

  /** Lies over the window where it is wanted, and is gone where it is not. */
  void show(BenchView view) {
    screen = view.light().screen().filter(its -> its.white().isPresent());
    Optional<DarkText> now = DarkText.of(view);
    if (screen.isEmpty()) {
      paintedTurn = -1;
    }
    boolean wanted = screen.isPresent() || now.isPresent();
    boolean changes = !now.equals(dark) || wanted != isVisible() || screen.isPresent();
    dark = now;
    speak(dark.map(DarkText::sentence).orElse(""));
    if (wanted != isVisible()) {
      setVisible(wanted);
    }
    if (changes) {
      repaint();
    }
  }

  @Override
  void paint(Graphics2D g) {
    boolean white = screen.flatMap(ScreenView::white).orElse(false);
    g.setColor(white ? Color.WHITE : Color.BLACK);
    g.fillRect(0, 0, getWidth(), getHeight());
    screen.ifPresent(this::isPainted);
    dark.filter(its -> screen.isEmpty()).ifPresent(its -> words(g, its));
  }

  /** Once the picture has gone out, the turn may be read. */
  private void isPainted(ScreenView its) {
    if (its.turn() != paintedTurn) {
      paintedTurn = its.turn();
      int turn = paintedTurn;
      SwingUtilities.invokeLater(() -> onPainted.accept(turn));
    }
  }

  private void words(Graphics2D g, DarkText its) {
    g.setColor(DIM);
    int letters = Look.mm(this, 5);
    int y = getHeight() / 2 - letters;
    for (String line : its.lines()) {
      Font font = fitted(g, ofHeight(g, letters), line, getWidth() - Look.mm(this, 20));
      drawShape(g, font, line, (getWidth() - width(g, font, line)) / 2, y);
      y += 2 * letters;
    }
  }
}
