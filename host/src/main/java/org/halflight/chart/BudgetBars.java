package org.halflight.chart;

import java.awt.BasicStroke;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.halflight.uncertainty.Basis;
import org.halflight.uncertainty.BudgetRow;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.BudgetWords;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * What the mean of a speed is uncertain by: its largest parts, the largest on top. Each bar is the
 * share of the part in the mean square of the error, with every bias at its bound. Parts that
 * nobody has measured on this rig are hatched boxes, the others full bars.
 */
public final class BudgetBars implements Picture {
  /** Key of the data of parts that were measured. */
  public static final String MEASURED = "measured";

  /** Key of the data of parts that are an allowance for any rig. */
  public static final String ALLOWED = "allowance";

  private static final double PERCENT = 100;

  /** More names do not fit beside the bars in a small window; the table has all parts. */
  static final int MOST_BARS = 6;

  private final SpeedSummary speed;
  private final UncertaintyBudget budget;
  private final List<BudgetRow> rows;

  /** The largest of them. */
  private final List<BudgetRow> bars;

  private final String note;

  private BudgetBars(SpeedSummary speed, UncertaintyBudget budget, String note) {
    this.speed = speed;
    this.budget = budget;
    this.note = note;
    rows =
        budget.rows().stream()
            .sorted(Comparator.comparingDouble(budget::share).reversed())
            .toList();
    bars = rows.subList(0, Math.min(MOST_BARS, rows.size()));
  }

  /** The bars of a speed; empty below two timed firings. */
  public static Optional<BudgetBars> of(SpeedSummary speed, String note) {
    return speed.budget().map(budget -> new BudgetBars(speed, budget, note));
  }

  /** Whether a part is known for this rig or these firings, and not allowed for any. */
  public static boolean isMeasured(BudgetRow row) {
    return row.doubt().basis() != Basis.ALLOWANCE;
  }

  /**
   * The chart. Its data set has a row for {@link #MEASURED} and one for {@link #ALLOWED}: x is the
   * share in percent, y the place from 0 at the top.
   */
  @Override
  public JFreeChart chart(Theme theme) {
    NumberAxis share = new NumberAxis(BudgetWords.axis());
    double most = bars.isEmpty() ? PERCENT : PERCENT * budget.share(bars.get(0));
    // A little air behind the longest bar, and never so little that a small part looks large.
    double reach = Math.max(50, Math.min(PERCENT, Math.ceil((most + 2) / 10) * 10));
    share.setRange(new Range(0, reach));
    share.setTickUnit(new NumberTickUnit(reach > 60 ? 20 : 10));
    XYPlot plot =
        Frame.bare(share, places(bars.stream().map(BudgetWords::part).toList(), theme), theme);
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, false);
    plot.setDataset(data());
    plot.setRenderer(renderer);
    plot.setRangeGridlinesVisible(false);
    plot.setDomainGridlinesVisible(true);
    plot.setDomainGridlinePaint(theme.grid());
    plot.setDomainGridlineStroke(new BasicStroke(1));
    plot.setAxisOffset(new RectangleInsets(0, 2, 4, 8));
    // The numbers beside the bars, in line with each other.
    plot.setRangeAxis(
        1, places(bars.stream().map(row -> BudgetWords.size(budget, row)).toList(), theme));
    plot.setRangeAxisLocation(1, AxisLocation.BOTTOM_OR_RIGHT);
    for (int i = 0; i < bars.size(); i++) {
      renderer.addAnnotation(
          new PlotAnnotation(
              new ShareBar(i, PERCENT * budget.share(bars.get(i)), isMeasured(bars.get(i)), theme)),
          Layer.FOREGROUND);
    }
    return Frame.chart(BudgetWords.title(speed), plot, legend(theme), note, theme);
  }

  @Override
  public DataTable table() {
    return new DataTable(
        BudgetWords.title(speed),
        BudgetWords.headings(),
        BudgetWords.rows(new UncertaintyBudget(budget.effectiveSeconds(), rows)),
        note);
  }

  private static SymbolAxis places(List<String> words, Theme theme) {
    SymbolAxis axis = Frame.names(null, words);
    axis.setInverted(true);
    Frame.dress(axis, theme);
    return axis;
  }

  private DefaultXYDataset data() {
    DefaultXYDataset data = new DefaultXYDataset();
    for (boolean measured : new boolean[] {true, false}) {
      List<Integer> own =
          java.util.stream.IntStream.range(0, bars.size())
              .filter(i -> isMeasured(bars.get(i)) == measured)
              .boxed()
              .toList();
      data.addSeries(
          measured ? MEASURED : ALLOWED,
          new double[][] {
            own.stream().mapToDouble(i -> PERCENT * budget.share(bars.get(i))).toArray(),
            own.stream().mapToDouble(Integer::doubleValue).toArray()
          });
    }
    return data;
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    if (bars.stream().anyMatch(BudgetBars::isMeasured)) {
      legend.add(Keys.band(BudgetWords.measured(), theme.asLeft(), theme));
    }
    if (!bars.stream().allMatch(BudgetBars::isMeasured)) {
      legend.add(Keys.hatching(BudgetWords.allowed(), theme.asFound(), theme));
    }
    return legend;
  }
}
