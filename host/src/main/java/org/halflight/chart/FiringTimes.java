package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Firings at no marked speed one after the other: their times upwards, a stop apart each line. Each
 * has its time beside it where there is room. Rejected ones are crossed out.
 *
 * @param firings in their order, at least one
 * @param note where they come from; may be empty
 */
public record FiringTimes(List<Firing> firings, String note) implements Picture {
  /** Key of the data of firings that count, and of those that do not. */
  public static final String FIRINGS = "firing";

  /** Key of the data of rejected firings. */
  public static final String REJECTED = "rejected";

  private static final double LEAST_STOPS = 1;
  private static final double AIR = 0.08;

  /**
   * One firing.
   *
   * @param number counts the firings of the session
   * @param outcome what came of it
   * @param seconds effective time; empty where it has none
   * @param rejection why the person does not count it; empty where it counts
   */
  public record Firing(
      int number, Outcome outcome, OptionalDouble seconds, Optional<String> rejection) {
    static Firing of(FiringResult result) {
      return new Firing(
          result.number(), result.outcome(), result.effectiveSeconds(), result.rejection());
    }
  }

  public FiringTimes {
    firings = List.copyOf(firings);
    if (firings.isEmpty()) {
      throw new IllegalArgumentException("a row of times has at least one firing");
    }
  }

  @Override
  public JFreeChart chart(Theme theme) {
    NumberAxis order = Frame.counted(Words.say("chart.times.order"), firings.size());
    EdgeStrip strip = new EdgeStrip(order.getRange(), theme);
    NumberAxis times = new NumberAxis(Words.say("chart.times.time"));
    times.setRange(range());
    times.setTickUnit(new NumberTickUnit(1, Frame.format(stop -> Numbers.time(Math.pow(2, stop)))));
    XYPlot plot = Frame.withStrip(Frame.bare(order, times, theme), strip);
    Labels labels = new Labels(theme);
    for (int i = 0; i < firings.size(); i++) {
      Firing firing = firings.get(i);
      int x = i + 1;
      if (firing.seconds().isPresent()) {
        double y = stops(firing);
        labels.keepOff(x, y);
        labels.beside(time(firing), x, y);
        firing.rejection().ifPresent(reason -> labels.beside(reason, x, y));
      } else {
        strip.add(
            x,
            EdgeStrip.Line.of(
                firing.rejection().orElseGet(() -> Sentences.outcome(firing.outcome()))));
        strip.add(
            x,
            firing.rejection().isPresent()
                ? EdgeStrip.Line.of(Marks.CROSSED_OUT, false, theme.quietInk())
                : EdgeStrip.Line.of(Marks.of(firing.outcome()), false, theme.asFound()));
      }
    }
    plot.setDataset(data());
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    Keys.dress(renderer, 0, Marks.CIRCLE, theme.background(), theme.asFound(), theme);
    Keys.dress(renderer, 1, Marks.CROSSED_OUT, theme.background(), theme.quietInk(), theme);
    plot.setRenderer(renderer);
    plot.addAnnotation(labels.annotation());
    return Frame.chart(title(), plot, legend(theme), note, theme);
  }

  @Override
  public DataTable table() {
    return new DataTable(
        title(),
        List.of(
            Words.say("chart.times.number"),
            Words.say("chart.outcome"),
            Words.say("chart.times.millis"),
            Words.say("chart.times.fraction"),
            Words.say("chart.rejection")),
        firings.stream().map(FiringTimes::row).toList(),
        note);
  }

  private static List<String> row(Firing firing) {
    boolean timed = firing.seconds().isPresent();
    return List.of(
        String.valueOf(firing.number()),
        Sentences.outcome(firing.outcome()),
        timed ? Numbers.millis(firing.seconds().getAsDouble()) : Words.say("chart.noTime"),
        timed ? Numbers.fraction(firing.seconds().getAsDouble()) : "",
        firing.rejection().orElse(""));
  }

  private static String title() {
    return Words.say("chart.times.title");
  }

  private static String time(Firing firing) {
    double seconds = firing.seconds().orElseThrow();
    return Numbers.isReadInSeconds(seconds)
        ? Numbers.time(seconds)
        : Words.say("chart.times.both", Numbers.time(seconds), Numbers.fraction(seconds));
  }

  private static double stops(Firing firing) {
    return Math.log(firing.seconds().orElseThrow()) / Math.log(2);
  }

  private Range range() {
    double[] stops =
        firings.stream()
            .filter(f -> f.seconds().isPresent())
            .mapToDouble(FiringTimes::stops)
            .toArray();
    double low = java.util.Arrays.stream(stops).min().orElse(-LEAST_STOPS) - LEAST_STOPS;
    double high = java.util.Arrays.stream(stops).max().orElse(0) + LEAST_STOPS;
    double air = AIR * (high - low);
    return new Range(low - air, high + air);
  }

  private DefaultXYDataset data() {
    DefaultXYDataset data = new DefaultXYDataset();
    for (boolean rejected : new boolean[] {false, true}) {
      List<double[]> points = new ArrayList<>();
      for (int i = 0; i < firings.size(); i++) {
        Firing firing = firings.get(i);
        if (firing.seconds().isPresent() && firing.rejection().isPresent() == rejected) {
          points.add(new double[] {i + 1, stops(firing)});
        }
      }
      data.addSeries(rejected ? REJECTED : FIRINGS, Frame.columns(points));
    }
    return data;
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    legend.add(
        Keys.mark(
            Words.say("chart.firing"), Marks.CIRCLE, theme.background(), theme.asFound(), theme));
    if (firings.stream().anyMatch(firing -> firing.rejection().isPresent())) {
      legend.add(Keys.rejected(theme));
    }
    return legend;
  }
}
