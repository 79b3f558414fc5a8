package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import org.halflight.extratest.Bounce;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** Light after closing at each marked speed, as over-exposure in stops. */
final class BouncePicture implements Picture {
  private final Bounce bounce;
  private final String note;

  BouncePicture(Bounce bounce, String note) {
    this.bounce = bounce;
    this.note = bounce.cockings() == 0 ? note : whileCocking(bounce) + " " + note;
  }

  private static String whileCocking(Bounce bounce) {
    return Words.count(
        bounce.leaks() > 0 ? "bounce.leak" : "bounce.cocking",
        Math.max(bounce.leaks(), bounce.cockings()),
        Math.max(bounce.leaks(), bounce.cockings()));
  }

  @Override
  public JFreeChart chart(Theme theme) {
    int n = bounce.speeds().size();
    DotPlot plot =
        new DotPlot(
            Frame.names(
                Words.say("bounce.picture.speed"),
                bounce.speeds().stream().map(at -> at.speed().label()).toList()),
            Words.say("bounce.picture.stops"),
            theme);
    List<double[]> each = new ArrayList<>();
    double[] place = new double[n];
    double[] mean = new double[n];
    double most = Bounce.FAULT_STOPS;
    for (int i = 0; i < n; i++) {
      Bounce.AtSpeed at = bounce.speeds().get(i);
      place[i] = i;
      mean[i] = at.overExposureStops();
      for (double share : at.late().values()) {
        each.add(new double[] {i, Bounce.overExposureStops(share)});
        most = Math.max(most, Bounce.overExposureStops(share));
      }
    }
    plot.line(Words.say("bounce.picture.mean"), place, mean, theme.asLeft());
    plot.dots(Words.say("bounce.picture.each"), each, theme.asFound());
    plot.level(Bounce.FAULT_STOPS, theme.quietInk(), true);
    plot.range(-0.04 * most, 1.1 * most);
    return plot.chart(title(), note);
  }

  @Override
  public DataTable table() {
    return new DataTable(
        title(),
        List.of(
            Words.say("bounce.table.speed"),
            Words.say("bounce.table.share"),
            Words.say("bounce.table.stops"),
            Words.say("bounce.table.early"),
            Words.say("bounce.table.firings")),
        bounce.speeds().stream()
            .map(
                at ->
                    List.of(
                        Numbers.speed(at.speed()),
                        Numbers.percent(at.lateShare()),
                        Numbers.plainStops(at.overExposureStops()),
                        Numbers.percent(at.early().mean().get()),
                        String.valueOf(at.late().n())))
            .toList(),
        note);
  }

  private String title() {
    return Words.say("bounce.picture.title", Numbers.plainStops(Bounce.FAULT_STOPS));
  }
}
