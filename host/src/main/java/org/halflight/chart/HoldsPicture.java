package org.halflight.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.extratest.Holds;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** How B and T follow the finger: the delays of opening and closing, release by release. */
final class HoldsPicture implements Picture {
  private final Holds holds;
  private final String note;

  HoldsPicture(Holds holds, String note) {
    this.holds = holds;
    this.note = note;
  }

  /** Whether any delay is known; without a release sensor there is nothing to draw. */
  boolean isThere() {
    return holds.shots().stream()
        .anyMatch(
            shot ->
                shot.openingDelaySeconds().isPresent() || shot.closingDelaySeconds().isPresent());
  }

  @Override
  public JFreeChart chart(Theme theme) {
    DotPlot plot =
        new DotPlot(
            Frame.names(Words.say("hold.picture.release"), names()),
            Words.say("hold.picture.millis"),
            theme);
    double most =
        Math.max(
            dots(
                plot,
                "hold.picture.opening",
                Holds.Shot::openingDelaySeconds,
                -0.08,
                theme.asFound()),
            dots(
                plot,
                "hold.picture.closing",
                Holds.Shot::closingDelaySeconds,
                0.08,
                theme.asLeft()));
    double hang = 1e3 * Holds.HANG_SECONDS;
    if (most > 0.5 * hang) {
      plot.level(hang, theme.quietInk(), true, Words.say("hold.picture.hangs"));
      most = Math.max(most, hang);
    }
    plot.range(Math.min(0, -0.04 * most), 1.15 * most);
    return plot.chart(Words.say("hold.picture.title"), note);
  }

  private double dots(
      DotPlot plot,
      String key,
      Function<Holds.Shot, OptionalDouble> delay,
      double beside,
      Color colour) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < holds.shots().size(); i++) {
      OptionalDouble seconds = delay.apply(holds.shots().get(i));
      if (seconds.isPresent()) {
        points.add(new double[] {i + beside, 1e3 * seconds.getAsDouble()});
      }
    }
    plot.dots(Words.say(key), points, colour);
    return points.stream().mapToDouble(point -> point[1]).max().orElse(1);
  }

  private List<String> names() {
    List<String> names = new ArrayList<>();
    for (Holds.Shot shot : holds.shots()) {
      names.add(Sentences.untimedTest(shot.check()) + " " + (names.size() + 1));
    }
    return names;
  }

  @Override
  public DataTable table() {
    List<String> names = names();
    List<List<String>> rows = new ArrayList<>();
    for (Holds.Shot shot : holds.shots()) {
      rows.add(
          List.of(
              names.get(rows.size()),
              shot.openSeconds().isPresent()
                  ? Numbers.running(shot.openSeconds().getAsDouble())
                  : Words.say("table.nothing"),
              time(shot.openingDelaySeconds()),
              time(shot.closingDelaySeconds())));
    }
    return new DataTable(
        Words.say("hold.picture.title"),
        List.of(
            Words.say("hold.picture.release"),
            Words.say("hold.table.open"),
            Words.say("hold.picture.opening"),
            Words.say("hold.picture.closing")),
        rows,
        note);
  }

  private static String time(OptionalDouble seconds) {
    return seconds.isPresent() ? Numbers.time(seconds.getAsDouble()) : Words.say("table.nothing");
  }
}
