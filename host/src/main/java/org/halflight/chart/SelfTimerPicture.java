package org.halflight.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.halflight.extratest.SelfTimer;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** How long the self-timer ran, release by release, with the mean. */
final class SelfTimerPicture implements Picture {
  /** At least so much is shown on either side, so that an even timer looks even. */
  private static final double LEAST_REACH_SECONDS = 0.5;

  private final SelfTimer timer;
  private final String note;

  SelfTimerPicture(SelfTimer timer, String note) {
    this.timer = timer;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    int n = timer.seconds().size();
    DotPlot plot =
        new DotPlot(
            Frame.counted(Words.say("selfTimer.picture.release"), n),
            Words.say("selfTimer.picture.seconds"),
            theme);
    double[] release = new double[n];
    Arrays.setAll(release, i -> i + 1);
    double[] seconds = timer.seconds().stream().mapToDouble(Double::doubleValue).toArray();
    double mean = timer.times().orElseThrow().mean().get();
    plot.joined(Words.say("selfTimer.picture.each"), release, seconds, theme.asLeft(), true);
    plot.line(
        Words.say("selfTimer.picture.mean"),
        new double[] {0.5, n + 0.5},
        new double[] {mean, mean},
        theme.asFound());
    double reach =
        Math.max(
            LEAST_REACH_SECONDS,
            1.25 * Arrays.stream(seconds).map(each -> Math.abs(each - mean)).max().orElse(0));
    plot.range(mean - reach, mean + reach);
    return plot.chart(Words.say("selfTimer.picture.title"), note);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (double seconds : timer.seconds()) {
      rows.add(
          List.of(String.valueOf(rows.size() + 1), String.format(Locale.ROOT, "%.3f s", seconds)));
    }
    return new DataTable(
        Words.say("selfTimer.picture.title"),
        List.of(Words.say("selfTimer.picture.release"), Words.say("selfTimer.picture.seconds")),
        rows,
        note);
  }
}
