package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Ellipse2D;
import java.util.ArrayList;
import java.util.List;
import javax.accessibility.AccessibleRole;
import org.halflight.words.Words;

/**
 * A block of the column that is read from two metres: lines of text, each so many millimetres high.
 * What does not fit shrinks, then wraps; nothing is ever cut.
 */
abstract class ColumnBlock extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  /** Left and right of the text, in millimetres. */
  private static final double MARGIN = 3.5;

  /** In the far view a block that is so wide shows its letters as large as its height allows. */
  private static final double FAR_WIDTH = 75;

  /** One line shrinks so far before it wraps; where there is room for rows, hardly at all. */
  private static final double SHRINKS_TO = 0.6;

  private static final double WRAPS_FROM = 0.9;

  /** Free below the last line, in millimetres. */
  private static final double FOOT = 2.5;

  /** Smaller lines make room for the large ones first. */
  private static final double LARGE = 15;

  private static final double SMALL = 8;

  /** Lines that are lower are as small as they may be already. */
  private static final double LEAST_CAPS = 4;

  private static final double BETWEEN_ROWS = 0.5;
  private static final double BELOW_LETTERS = 0.28;
  private static final double STEP = 0.96;
  private static final double LEAST = 0.2;
  private static final String UNDER_THE_LINE = ".*[gjpqyQ(),;/].*";

  /**
   * A line of the block.
   *
   * @param caps height of its capitals in millimetres
   * @param gap above it in millimetres
   * @param rows that it may wrap into
   * @param good of {@code wanted} circles before the text are filled
   */
  record Line(
      String text,
      double caps,
      double gap,
      int rows,
      boolean bold,
      Color ink,
      int good,
      int wanted) {
    Line(String text, double caps, double gap, int rows, boolean bold, Color ink) {
      this(text, caps, gap, rows, bold, ink, 0, 0);
    }
  }

  /** A line as it fits: its rows, all in one font. */
  private record Fitted(Line line, List<String> rows, Font font, double caps, double gap) {
    private double height() {
      boolean reachesBelow = !rows.isEmpty() && rows.get(rows.size() - 1).matches(UNDER_THE_LINE);
      return gap
          + rows.size() * caps
          + (rows.size() - 1) * BETWEEN_ROWS * caps
          + (reachesBelow ? BELOW_LETTERS * caps : 0);
    }
  }

  private final double natural;
  private boolean far;

  /**
   * @param natural its height beside the pictures, in millimetres
   */
  ColumnBlock(String name, double natural, Look look) {
    super(AccessibleRole.LABEL, name, look);
    this.natural = natural;
    setOpaque(true);
  }

  /** Shows it as large as its place allows, or in millimetres again. */
  final void far(boolean on) {
    far = on;
    repaint();
  }

  /** A click on it does something. */
  final void onClick(Runnable doing) {
    setToolTipText(Words.say("desk.column.tip"));
    setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            doing.run();
          }
        });
  }

  @Override
  public final Dimension getPreferredSize() {
    return new Dimension(Look.mm(this, 100), Look.mm(this, natural));
  }

  /** A millimetre in pixels, here and now. */
  final double unit() {
    double usual = Look.mm(this, 100) / 100.0;
    return far ? Math.max(usual, Math.min(getHeight() / natural, getWidth() / FAR_WIDTH)) : usual;
  }

  /** Draws lines from the top, or so that the last one ends at the bottom. */
  final void paintLines(Graphics2D g, List<Line> lines, boolean atBottom) {
    paintLines(g, lines, atBottom, 0, getHeight());
  }

  /** The same in a part of the block, from {@code top} down. */
  final void paintLines(Graphics2D g, List<Line> lines, boolean atBottom, int top, int height) {
    double unit = unit();
    int left = (int) (MARGIN * unit);
    int room = getWidth() - 2 * left;
    List<Line> shown = lines.stream().filter(line -> !line.text().isEmpty()).toList();
    List<Fitted> fitted = fit(g, shown, unit, room, height - (atBottom ? FOOT : 1) * unit);
    double whole = fitted.stream().mapToDouble(Fitted::height).sum();
    double y = top + (atBottom ? Math.max(0, height - FOOT * unit - whole) : 0);
    for (Fitted each : fitted) {
      double baseline = y + each.gap();
      for (String row : each.rows()) {
        baseline += each.caps();
        int x = left + (int) pips(g, each, left, baseline);
        g.setColor(each.line().ink());
        drawShape(g, each.font(), row, x, (int) Math.round(baseline));
        baseline += BETWEEN_ROWS * each.caps();
      }
      y += each.height();
    }
  }

  private static List<Fitted> fit(
      Graphics2D g, List<Line> lines, double unit, int room, double height) {
    double small = 1;
    double all = 1;
    while (true) {
      List<Fitted> fitted = new ArrayList<>();
      for (Line line : lines) {
        double times = unit * all * (line.caps() < LARGE ? small : 1);
        fitted.add(fit(g, line, times, room));
      }
      if (fitted.stream().mapToDouble(Fitted::height).sum() <= height || all < LEAST) {
        return fitted;
      }
      if (small > SHRINKS_TO) {
        small *= STEP;
      } else {
        all *= STEP;
      }
    }
  }

  private static Fitted fit(Graphics2D g, Line line, double times, int room) {
    double caps = line.caps() * times;
    Font font = font(g, line, caps);
    int pips = (int) pipsWidth(line, caps);
    double one = (room - pips) / (double) Math.max(1, width(g, font, line.text()));
    double shrunk = Math.min(1, one);
    List<String> rows = List.of(line.text());
    boolean shrinks = line.caps() >= LARGE || (line.caps() <= SMALL && line.caps() >= LEAST_CAPS);
    double least = shrinks ? SHRINKS_TO : WRAPS_FROM;
    if (shrunk < least && line.rows() > 1 && line.text().contains(" ")) {
      shrunk = 1;
      rows = wrapped(g, font, line.text(), room);
      while (shrunk > LEAST && !(rows.size() <= line.rows() && fits(g, font, rows, room))) {
        shrunk *= STEP;
        font = font(g, line, caps * shrunk);
        rows = wrapped(g, font, line.text(), room);
      }
    } else if (shrunk < 1) {
      font = font.deriveFont((float) (font.getSize2D() * shrunk));
      // Smaller letters are not narrower in the same measure on every screen.
      while (shrunk > LEAST && width(g, font, line.text()) > room - pips) {
        shrunk *= STEP;
        font = font.deriveFont((float) (font.getSize2D() * STEP));
      }
    }
    return new Fitted(line, rows, font, caps * shrunk, line.gap() * times);
  }

  private static boolean fits(Graphics2D g, Font font, List<String> rows, int room) {
    return rows.stream().allMatch(row -> width(g, font, row) <= room);
  }

  private static List<String> wrapped(Graphics2D g, Font font, String text, int room) {
    List<String> rows = new ArrayList<>();
    String row = "";
    for (String word : text.split(" ", -1)) {
      String longer = row.isEmpty() ? word : row + " " + word;
      if (!row.isEmpty() && width(g, font, longer) > room) {
        rows.add(row);
        row = word;
      } else {
        row = longer;
      }
    }
    rows.add(row);
    return rows;
  }

  private static Font font(Graphics2D g, Line line, double caps) {
    Font bold = ofHeight(g, (int) Math.round(caps));
    return line.bold() ? bold : bold.deriveFont(Font.PLAIN);
  }

  private static double pipsWidth(Line line, double caps) {
    return line.wanted() == 0 ? 0 : line.wanted() * 1.4 * caps + 0.6 * caps;
  }

  /** Filled and hollow circles; gives how much room they take. */
  private double pips(Graphics2D g, Fitted line, int left, double baseline) {
    double size = line.caps();
    g.setStroke(new BasicStroke((float) (size / 7)));
    for (int i = 0; i < line.line().wanted(); i++) {
      Ellipse2D pip =
          new Ellipse2D.Double(
              left + i * 1.4 * size + size / 14,
              baseline - size + size / 14,
              size * 6 / 7,
              size * 6 / 7);
      g.setColor(i < line.line().good() ? look().done() : look().quietInk());
      if (i < line.line().good()) {
        g.fill(pip);
      }
      g.draw(pip);
    }
    return pipsWidth(line.line(), size);
  }
}
