package org.halflight.chart;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.LengthConstraintType;
import org.jfree.chart.block.RectangleConstraint;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.title.Title;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.Range;
import org.jspecify.annotations.Nullable;

/**
 * A chart as its size wants it. Letters are never smaller than the small ones of the theme, so in a
 * small picture something has to go: first the note, then the names of the axes, then entries of
 * the key from its end. The plot is never lower than the key. Ticks are written as far as there is
 * room for them. What is left out is in the table twin.
 */
final class FittedChart {
  private static final double USUAL_HEIGHT = 360;
  private static final double USUAL_WIDTH = 520;
  private static final double LEAST_PADDING = 4;

  /** In letters of the theme: what the plot must keep for the note, and for names of the axes. */
  private static final double ROOM_FOR_NOTE = 14;

  private static final double ROOM_FOR_NAMES = 8;
  private static final double NAME_FROM_WIDTH = 26;

  /** Of what is left for plot and key. */
  private static final double MOST_KEY = 0.42;

  /** Of what is left for strip, plot and key. */
  private static final double MOST_STRIP = 0.25;

  /** Names of lanes that are wider stand within the plot. */
  private static final double WIDEST_NAME = 0.42;

  private static final double WIDEST_NAMES = 0.6;

  private static final double TICK_LINE = 1.35;
  private static final double TICK_GAP = 0.7;

  private final JFreeChart chart;
  private final Graphics2D graphics;
  private final Theme theme;
  private final double width;
  private double room;

  private FittedChart(JFreeChart chart, Graphics2D graphics, Rectangle2D area, Theme theme) {
    this.chart = chart;
    this.graphics = graphics;
    this.theme = theme;
    double part =
        Math.min(1, Math.min(area.getHeight() / USUAL_HEIGHT, area.getWidth() / USUAL_WIDTH));
    RectangleInsets padding =
        new RectangleInsets(
            padding(16, part), padding(18, part), padding(12, part), padding(22, part));
    chart.setPadding(padding);
    width = area.getWidth() - padding.getLeft() - padding.getRight();
    room = area.getHeight() - padding.getTop() - padding.getBottom();
  }

  private static double padding(double usual, double part) {
    return Math.max(LEAST_PADDING, usual * part * part);
  }

  /** Fits a chart to the area that it is drawn in. */
  static void fit(JFreeChart chart, Graphics2D graphics, Rectangle2D area, Theme theme) {
    if (chart.getPlot() instanceof XYPlot plot) {
      new FittedChart(chart, graphics, area, theme).fit(plot);
    }
  }

  private void fit(XYPlot plot) {
    headline(chart.getTitle());
    boolean lying = PlotOrientation.HORIZONTAL.equals(plot.getOrientation());
    ValueAxis foot = lying ? plot.getRangeAxis() : plot.getDomainAxis();
    ValueAxis side = lying ? plot.getDomainAxis() : plot.getRangeAxis();
    room -= TICK_LINE * letters() + 10;
    if (plot.getDomainAxis(1) instanceof EdgeStrip strip) {
      room -= strip.arrange(graphics, width, MOST_STRIP * room);
    }
    for (Object each : new ArrayList<>(chart.getSubtitles())) {
      if (each instanceof TextTitle note) {
        double height = height(note);
        if (room - height < ROOM_FOR_NOTE * letters()) {
          chart.removeSubtitle(note);
        } else {
          room -= height;
        }
      }
    }
    double plotWidth = width - lanes(plot, side);
    double name = foot.getLabel() == null ? 0 : TICK_LINE * letters() + 8;
    if (room - name < ROOM_FOR_NAMES * letters()
        || textWidth(foot.getLabel(), theme.letters()) > plotWidth) {
      foot.setLabel(null);
    } else {
      room -= name;
    }
    key(plot);
    if (width < NAME_FROM_WIDTH * letters() || textWidth(side.getLabel(), theme.letters()) > room) {
      side.setLabel(null);
    }
    if (side.getLabel() != null) {
      plotWidth -= 2 * letters();
    }
    ticks(side, room / (TICK_LINE * letters()));
    if (foot instanceof NameAxis names) {
      if (columns(names, plotWidth) > 1) {
        names.shorten();
      }
      names.setTickUnit(new NumberTickUnit(columns(names, plotWidth)));
    } else if (foot instanceof NumberAxis numbers) {
      ticks(numbers, plotWidth / (widestTick(numbers) + TICK_GAP * letters()));
    }
  }

  private double letters() {
    return theme.letterSize();
  }

  /** The largest letters that need one line; else the smallest, which wrap. */
  private void headline(TextTitle title) {
    double most = room < 0.7 * USUAL_HEIGHT ? 1 : 1.3;
    for (double times : new double[] {1.3, 1.15, 1, Theme.SMALL}) {
      title.setFont(theme.headline().deriveFont((float) (letters() * times)));
      if (times <= most && textWidth(title.getText(), title.getFont()) + 10 < width) {
        break;
      }
    }
    title.setPadding(new RectangleInsets(0, 4, room < USUAL_HEIGHT / 2 ? 2 : 6, 0));
    room -= height(title);
  }

  /** The key has as many of its entries, from the first, as leave the plot higher than it is. */
  private void key(XYPlot plot) {
    LegendTitle key =
        chart.getSubtitles().stream()
            .filter(LegendTitle.class::isInstance)
            .map(LegendTitle.class::cast)
            .findFirst()
            .orElseThrow();
    double gap = room < USUAL_HEIGHT / 2 ? 2 : 10;
    key.setPadding(new RectangleInsets(0, 2, gap, 0));
    List<LegendItem> items = new ArrayList<>();
    LegendItemCollection all = plot.getLegendItems();
    for (int i = 0; i < all.getItemCount(); i++) {
      if (textWidth(all.get(i).getLabel(), theme.smallLetters()) + 4 * letters() < width) {
        items.add(all.get(i));
      }
    }
    for (; !items.isEmpty(); items.remove(items.size() - 1)) {
      LegendItemCollection shown = new LegendItemCollection();
      items.forEach(shown::add);
      plot.setFixedLegendItems(shown);
      double height = height(key);
      if (height <= MOST_KEY * room) {
        room -= height;
        return;
      }
    }
    chart.removeSubtitle(key);
  }

  /** What the words beside the plot take; those of lanes stand within it where they are long. */
  private double lanes(XYPlot plot, ValueAxis side) {
    if (!(side instanceof SymbolAxis names)) {
      return 4 * letters();
    }
    if (room / names.getSymbols().length < TICK_LINE * letters()) {
      names.setTickLabelFont(theme.smallLetters());
      names.setTickLabelInsets(new RectangleInsets(0, 4, 0, 6));
    }
    double left = widest(names);
    double right = 0;
    if (plot.getRangeAxis(1) instanceof SymbolAxis beyond) {
      right = widest(beyond);
      if (left + right > WIDEST_NAMES * width) {
        beyond.setVisible(false);
        right = 0;
      }
    }
    if (left > WIDEST_NAME * width) {
      names.setTickLabelsVisible(false);
      Labels labels = new Labels(theme);
      for (int lane = 0; lane < names.getSymbols().length; lane++) {
        labels.ofLane(names.getSymbols()[lane], lane);
      }
      plot.addAnnotation(labels.annotation());
      left = 0;
    }
    return left + right;
  }

  /** How many columns a name takes; so many names stand without one between them. */
  private double columns(SymbolAxis names, double plotWidth) {
    double column = plotWidth / names.getSymbols().length;
    return Math.max(1, Math.ceil((widest(names) + TICK_GAP * letters()) / column));
  }

  private double widest(SymbolAxis axis) {
    return Stream.of(axis.getSymbols())
        .mapToDouble(name -> textWidth(name, theme.letters()))
        .max()
        .orElse(0);
  }

  /** So few ticks that they fit: each whole multiple of the usual step that reads well. */
  private void ticks(ValueAxis axis, double most) {
    if (!(axis instanceof NumberAxis numbers)
        || axis instanceof SymbolAxis
        || axis.isAutoTickUnitSelection()) {
      return;
    }
    NumberTickUnit unit = numbers.getTickUnit();
    double length = numbers.getRange().getLength();
    for (double times : new double[] {1, 2, 4, 5, 10, 20, 50, 100, 200, 500, 1000}) {
      double step = unit.getSize() * times;
      if (length / step <= most || times == 1000) {
        if (times > 1) {
          numbers.setTickUnit(new FormattedUnit(step, unit));
        }
        return;
      }
    }
  }

  /** A longer step, written as the usual one is. */
  private static final class FormattedUnit extends NumberTickUnit {
    private static final long serialVersionUID = 1L;
    private final NumberTickUnit usual;

    FormattedUnit(double size, NumberTickUnit usual) {
      super(size);
      this.usual = usual;
    }

    @Override
    public String valueToString(double value) {
      return usual.valueToString(value);
    }
  }

  private double widestTick(NumberAxis axis) {
    NumberTickUnit unit = axis.getTickUnit();
    Range range = axis.getRange();
    return Math.max(
        textWidth(unit.valueToString(range.getLowerBound()), theme.letters()),
        textWidth(unit.valueToString(Math.floor(range.getUpperBound())), theme.letters()));
  }

  private double height(Title title) {
    return title
        .arrange(
            graphics,
            new RectangleConstraint(
                width,
                new Range(0, width),
                LengthConstraintType.RANGE,
                1e4,
                new Range(0, 1e4),
                LengthConstraintType.RANGE))
        .getHeight();
  }

  private double textWidth(@Nullable String text, Font font) {
    return text == null
        ? 0
        : graphics.getFontMetrics(font).getStringBounds(text, graphics).getWidth();
  }
}
