package org.halflight.desk;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.util.Optional;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import org.halflight.desk.view.NumeralsText;
import org.halflight.desk.view.TwoText;
import org.halflight.words.Words;

/**
 * The last firing in numerals whose height is a sixth of the window's at least, to be read from two
 * metres.
 */
final class NumeralsPanel extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  /** Height of the digits as a share of the window's. */
  static final double SHARE_OF_WINDOW = 1 / 6.0;

  private static final double WORDS_AT_LEAST = 0.3;

  /** Of two speeds side by side: heads and figures as parts of the height of one figure. */
  private static final double HEAD_SHARE = 0.22;

  private static final double FIGURE_SHARE = 0.68;

  private transient NumeralsText text = NumeralsText.NOTHING;
  private transient Optional<TwoText> two = Optional.empty();
  private transient Consumer<NumeralsText> afterPaint = painted -> {};

  NumeralsPanel(Look look) {
    super(AccessibleRole.LABEL, Words.say("desk.numerals.name"), look);
    setName("numerals");
    setOpaque(true);
  }

  void show(NumeralsText shown) {
    if (!shown.equals(text)) {
      text = shown;
      speak(shown.spoken());
      repaint();
    }
  }

  /** Shows two speeds side by side instead; empty for the last firing again. */
  void show(Optional<TwoText> shown) {
    if (!shown.equals(two)) {
      two = shown;
      speak(shown.map(TwoText::spoken).orElseGet(text::spoken));
      repaint();
    }
  }

  NumeralsText text() {
    return text;
  }

  /** Hears of every text when its pixels are drawn. */
  void afterPaint(Consumer<NumeralsText> hearer) {
    afterPaint = hearer;
  }

  /** Height of the digits that the window asks for, in pixels. */
  static int digitHeight(JComponent inWindow) {
    var root = SwingUtilities.getRoot(inWindow);
    int window = root == null ? 720 : root.getHeight();
    return (int) Math.ceil(window * SHARE_OF_WINDOW) + 1;
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(Look.mm(this, 100), Look.mm(this, 61));
  }

  @Override
  void paint(Graphics2D g) {
    g.setColor(look().ground());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (two.isPresent()) {
      paintTwo(g, two.get());
    } else {
      paintText(g);
    }
    afterPaint.accept(text);
  }

  /** Two columns: the speed and what the adjustment did, the figure, how well it is known. */
  private void paintTwo(Graphics2D g, TwoText both) {
    int digits = digitHeight(this);
    int column = getWidth() / both.sides().size();
    Font small = Look.letters(1.1);
    for (int i = 0; i < both.sides().size(); i++) {
      TwoText.Side side = both.sides().get(i);
      int left = i * column + Look.px(20);
      int room = column - Look.px(40);
      if (side.isShown()) {
        g.setColor(look().shade());
        g.fillRect(i * column, 0, column, getHeight());
      }
      Font head = ofHeight(g, (int) (digits * HEAD_SHARE));
      int y = Look.px(12) + (int) (digits * HEAD_SHARE);
      g.setColor(look().quietInk());
      drawShape(g, head, side.speed(), left, y);
      int beside = left + width(g, head, side.speed()) + Look.px(20);
      g.setColor(side.isWithin() ? look().done() : look().ink());
      drawShape(g, fitted(g, head, side.word(), left + room - beside), side.word(), beside, y);
      Font figure = fitted(g, ofHeight(g, (int) (digits * FIGURE_SHARE)), side.figure(), room);
      y += Look.px(10) + (int) (digits * FIGURE_SHARE);
      drawShape(g, figure, side.figure(), left, y);
      g.setFont(fitted(g, small, side.detail(), room));
      g.setColor(look().ink());
      g.drawString(side.detail(), left, y + Look.px(4) + g.getFontMetrics(small).getHeight());
    }
  }

  private void paintText(Graphics2D g) {
    int digits = digitHeight(this);
    int left = Look.px(20);
    Font noteFont = Look.letters(1.1);
    int noteHeight = g.getFontMetrics(noteFont).getHeight();
    int baseline = Look.px(10) + noteHeight + digits + (int) (digits * 0.05);
    Color ink = ink();

    g.setFont(noteFont);
    g.setColor(look().quietInk());
    g.drawString(note(), left, Look.px(8) + g.getFontMetrics().getAscent());

    // What stands under words takes some of their height.
    boolean under = !text.figure() && !text.time().isEmpty();
    Font large = ofHeight(g, under ? (int) (digits * 0.6) : digits);
    int beside = beside(g, digits);
    int room = getWidth() - left - Look.px(16) - beside;
    if (!text.figure()) {
      boolean quiet = text.tone() == NumeralsText.Tone.NOTHING;
      large =
          readable(g, quiet ? ofHeight(g, digits / 3) : large, text.large(), getWidth() - 2 * left);
    } else {
      large = readable(g, large, text.large(), Math.max(room, digits));
    }
    g.setColor(ink);
    g.setFont(large);
    int y = under ? baseline - (int) (digits * 0.42) : baseline;
    drawShape(g, large, text.large(), left, y);
    int x = left + width(g, large, text.large());
    if (!text.unit().isEmpty()) {
      Font unit = ofHeight(g, (int) (digits * 0.42));
      g.setFont(unit);
      drawShape(g, unit, text.unit(), x + digits / 8, y);
      x += digits / 8 + width(g, unit, text.unit());
    }
    if (text.figure()) {
      paintBeside(g, digits, x + (int) (digits * 0.32), baseline);
    } else {
      g.setFont(Look.bold(1.6));
      g.drawString(text.time(), left, baseline);
    }
  }

  private void paintBeside(Graphics2D g, int digits, int x, int baseline) {
    Font error = readable(g, besideFont(g, digits), text.error(), getWidth() - x - Look.px(8));
    g.setFont(error);
    g.setColor(ink());
    g.drawString(text.error(), x, baseline - (int) (digits * 0.55));
    Font plain = besideFont(g, digits).deriveFont(Font.PLAIN);
    g.setFont(readable(g, plain, text.time(), getWidth() - x - Look.px(8)));
    boolean quiet =
        text.tone() == NumeralsText.Tone.STALE || text.tone() == NumeralsText.Tone.REJECTED;
    g.setColor(quiet ? look().quietInk() : look().ink());
    g.drawString(text.time(), x, baseline);
  }

  private Font besideFont(Graphics2D g, int digits) {
    return ofHeight(g, (int) (digits * 0.235));
  }

  private int beside(Graphics2D g, int digits) {
    if (text.error().isEmpty() && text.time().isEmpty()) {
      return digits / 2;
    }
    Font font = besideFont(g, digits);
    return digits
        + Math.max(width(g, font, text.error()), width(g, font, text.time()) / 2)
        + Look.px(8);
  }

  private String note() {
    return text.tone() == NumeralsText.Tone.PROVISIONAL
        ? Words.say("desk.numerals.settling", text.note())
        : text.note();
  }

  private Color ink() {
    return switch (text.tone()) {
      case SETTLED, PROVISIONAL -> look().ink();
      case OPEN, OUTCOME -> look().attention();
      case REJECTED, STALE, NOTHING -> look().quietInk();
    };
  }

  /** As large as fits, but never smaller than can be read. */
  private static Font readable(Graphics2D g, Font font, String text, int room) {
    int least = (int) Math.ceil(WORDS_AT_LEAST * width(g, font, text));
    return fitted(g, font, text, Math.max(least, room));
  }
}
