package org.halflight.chart;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.DiscWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** The slots of a disc: by how much each came out too long, and how sure disc and rig are. */
public final class DiscChart implements Picture {
  private static final double WHISKER = 0.05;
  private static final double BOX = 0.22;
  private static final double AIR = 1.2;

  private final DiscComparison comparison;
  private final String note;

  public DiscChart(DiscComparison comparison, String note) {
    this.comparison = comparison;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    List<DiscComparison.Row> rows = comparison.rows();
    DotPlot plot =
        new DotPlot(
            Frame.names(Words.say("disc.chart.slot"), rows.stream().map(DiscChart::name).toList()),
            Words.say("disc.chart.axis"),
            theme);
    double[] x = new double[rows.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = i;
    }
    double[] micros = micros(DiscComparison.Row::errorSeconds);
    plot.boxes(
        Words.say("disc.chart.rig"),
        x,
        micros(row -> -row.rigSeconds()),
        micros(DiscComparison.Row::rigSeconds),
        theme.tolerance(),
        BOX);
    plot.dots(Words.say("disc.chart.measured"), x, micros, theme.asLeft());
    plot.whiskers(
        x,
        micros(row -> row.errorSeconds() - row.discSeconds()),
        micros(row -> row.errorSeconds() + row.discSeconds()),
        theme.asLeft(),
        WHISKER);
    plot.level(0, theme.quietInk(), false);
    double most = 0;
    for (DiscComparison.Row row : rows) {
      most = Math.max(most, 1e6 * (Math.abs(row.errorSeconds()) + row.discSeconds()));
      most = Math.max(most, 1e6 * row.rigSeconds());
    }
    plot.range(-AIR * most, AIR * most);
    return plot.chart(title(), note);
  }

  private double[] micros(ToDoubleFunction<DiscComparison.Row> seconds) {
    return comparison.rows().stream()
        .mapToDouble(row -> 1e6 * seconds.applyAsDouble(row))
        .toArray();
  }

  private static String name(DiscComparison.Row row) {
    return Words.say("disc.slot", String.format(Locale.ROOT, "%.1f", row.slot().degrees()));
  }

  private String title() {
    return Words.of("disc.chart.title", comparison.verdict());
  }

  @Override
  public DataTable table() {
    return new DataTable(title(), DiscWords.headings(), DiscWords.rows(comparison), note);
  }
}
