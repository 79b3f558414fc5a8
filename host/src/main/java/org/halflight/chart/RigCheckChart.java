package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.calibration.RigCheck;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** Reference pulses of a rig check, one by one and as moving average, between their limits. */
public final class RigCheckChart implements Picture {
  private final RigCheck check;
  private final String note;

  public RigCheckChart(RigCheck check, String note) {
    this.check = check;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    int n = check.points().size();
    double[] number = new double[n];
    double[] values = new double[n];
    double[] averages = new double[n];
    for (int i = 0; i < n; i++) {
      number[i] = i + 1.0;
      values[i] = 1e6 * check.points().get(i).value();
      averages[i] = 1e6 * check.points().get(i).average();
    }
    DotPlot plot =
        new DotPlot(
            Frame.counted(Words.say("check.chart.pulse"), n), Words.say("check.chart.axis"), theme);
    plot.dots(Words.say("check.chart.values"), number, values, theme.asFound());
    plot.line(Words.say("check.chart.average"), number, averages, theme.asLeft());
    double centre = 1e6 * check.limits().centre();
    double reach = 1e6 * RigCheck.averageReach(check.limits());
    double upper = check.limits().at(RigCheck.SINGLE_DEVIATIONS);
    plot.level(centre, theme.quietInk(), false);
    plot.level(
        1e6 * upper,
        theme.asFound(),
        true,
        Words.say("check.chart.limit", ProfileWords.micros(upper)));
    plot.level(1e6 * check.limits().at(-RigCheck.SINGLE_DEVIATIONS), theme.asFound(), true);
    plot.level(
        centre + reach,
        theme.asLeft(),
        true,
        Words.say("check.chart.averageLimit", String.format(Locale.ROOT, "%.2f", centre + reach)));
    plot.level(centre - reach, theme.asLeft(), true);
    return plot.chart(title(), note);
  }

  private String title() {
    return Words.say(
        check.inControl() ? "check.chart.inControl" : "check.chart.outOfControl",
        Words.say("check.chart"));
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < check.points().size(); i++) {
      rows.add(
          List.of(
              String.valueOf(i + 1),
              ProfileWords.micros(check.points().get(i).value()),
              ProfileWords.micros(check.points().get(i).average())));
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("check.chart.pulse"),
            Words.say("check.chart.values"),
            Words.say("check.chart.average")),
        rows,
        note);
  }
}
