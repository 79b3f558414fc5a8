package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.session.LinkageLimits;
import org.halflight.words.AdvanceTimingWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** The trials of the linkage in a row, the newest last, with the good zone shaded. */
final class AdvanceTimingPicture implements Picture {
  /** A trial without an interval stands this far above the foot, as a share of the height. */
  private static final double FOOT = 0.03;

  private final AdvanceTiming linkage;
  private final String note;

  AdvanceTimingPicture(AdvanceTiming linkage, String note) {
    this.linkage = linkage;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    int n = linkage.trials().size();
    DotPlot plot =
        new DotPlot(
            Frame.counted(Words.say("timing.picture.trial"), n),
            Words.say("timing.picture.interval"),
            theme);
    double least = 1e3 * linkage.limits().leastSeconds();
    double most = 1e3 * linkage.limits().mostSeconds();
    List<double[]> told = new ArrayList<>();
    List<double[]> not = new ArrayList<>();
    double low = Math.min(least, 0);
    double high = Math.max(most, 0);
    for (int i = 0; i < n; i++) {
      if (linkage.trials().get(i).interval().isPresent()) {
        double millis = 1e3 * linkage.trials().get(i).interval().get().seconds();
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
    plot.band(least, most);
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
    for (AdvanceTrial trial : linkage.trials()) {
      rows.add(
          List.of(
              String.valueOf(rows.size() + 1),
              trial.interval().map(told -> AdvanceTimingWords.signed(told)).orElse(""),
              AdvanceTimingWords.by(trial),
              AdvanceTimingWords.inShort(linkage, trial)));
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("timing.table.trial"),
            Words.say("timing.table.interval"),
            Words.say("timing.table.by"),
            Words.say("timing.table.verdict")),
        rows,
        note);
  }

  private String title() {
    return Words.say(
        linkage.limits().equals(LinkageLimits.USUAL)
            ? "timing.picture.title"
            : "timing.picture.titleAsked",
        AdvanceTimingWords.limit(linkage.limits().leastSeconds()),
        AdvanceTimingWords.limit(linkage.limits().mostSeconds()));
  }
}
