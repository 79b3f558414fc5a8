package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.words.AdvanceTimingWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** The intervals that earlier versions measured, the newest last, without good or bad. */
final class AdvanceTimingPicture implements Picture {
  /** A trial without an interval stands this far above the foot, as a share of the height. */
  private static final double FOOT = 0.03;

  private final AdvanceTiming timing;
  private final String note;

  AdvanceTimingPicture(AdvanceTiming timing, String note) {
    this.timing = timing;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    int n = timing.trials().size();
    DotPlot plot =
        new DotPlot(
            Frame.counted(Words.say("timing.picture.trial"), n),
            Words.say("timing.picture.interval"),
            theme);
    List<double[]> told = new ArrayList<>();
    List<double[]> not = new ArrayList<>();
    double low = -1;
    double high = 1;
    for (int i = 0; i < n; i++) {
      if (timing.trials().get(i).interval().isPresent()) {
        double millis = 1e3 * timing.trials().get(i).interval().get().seconds();
        told.add(new double[] {i + 1, millis});
        low = Math.min(low, millis);
        high = Math.max(high, millis);
      } else {
        not.add(new double[] {i + 1, 0});
      }
    }
    double spare = 0.12 * (high - low);
    double foot = low - spare + FOOT * (high - low + 2 * spare);
    not.forEach(point -> point[1] = foot);
    // What is added first is drawn last, on top.
    List<double[]> newest = told.stream().filter(point -> point[0] == n).toList();
    if (!newest.isEmpty()) {
      plot.joined(Words.say("timing.picture.newest"), newest, theme.asLeft(), true);
    }
    plot.joined(Words.say("timing.picture.told"), told, theme.asFound(), false);
    if (!not.isEmpty()) {
      plot.dots(Words.say("timing.picture.not"), not, theme.quietInk());
    }
    plot.level(0, theme.quietInk(), false);
    plot.range(low - spare, high + spare);
    return plot.chart(title(), note);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (AdvanceTrial trial : timing.trials()) {
      rows.add(
          List.of(
              String.valueOf(rows.size() + 1),
              trial.interval().map(AdvanceTimingWords::signed).orElse(""),
              AdvanceTimingWords.by(trial),
              AdvanceTimingWords.reason(trial)));
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("timing.table.trial"),
            Words.say("timing.table.interval"),
            Words.say("timing.table.by"),
            Words.say("timing.table.reason")),
        rows,
        note);
  }

  private static String title() {
    return Words.say("timing.picture.title");
  }
}
