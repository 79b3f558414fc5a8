package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.StopScale;
import org.halflight.extratest.StopScale.AtStop;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** Each marked stop: its light against the marking, stopping down and opening up. */
final class StopScalePicture implements Picture {
  /** Both ways stand side by side, so that neither hides the other. */
  private static final double BESIDE = 0.08;

  private final StopScale scale;
  private final String note;

  StopScalePicture(StopScale scale, String note) {
    this.scale = scale;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    DotPlot plot =
        new DotPlot(
            Frame.names(
                Words.say("stops.picture.axis"),
                scale.stops().stream().map(StopScalePicture::name).toList()),
            Words.say("stops.picture.stops"),
            theme);
    List<double[]> down = points(AtStop::downStops, -BESIDE);
    List<double[]> up = points(AtStop::upStops, BESIDE);
    double most = 1.5 * scale.toleranceStops();
    for (double[] point : down) {
      most = Math.max(most, 1.15 * Math.abs(point[1]));
    }
    for (double[] point : up) {
      most = Math.max(most, 1.15 * Math.abs(point[1]));
    }
    plot.band(-scale.toleranceStops(), scale.toleranceStops());
    plot.joined(Words.say("stops.picture.down"), down, theme.asFound(), true);
    plot.joined(Words.say("stops.picture.up"), up, theme.asLeft(), false);
    plot.level(0, theme.quietInk(), false);
    plot.range(-most, most);
    return plot.chart(title(), note);
  }

  private List<double[]> points(Function<AtStop, OptionalDouble> light, double beside) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < scale.stops().size(); i++) {
      AtStop stop = scale.stops().get(i);
      OptionalDouble stops = light.apply(stop);
      if (stops.isPresent()) {
        points.add(new double[] {i + beside, stops.getAsDouble() + stop.markedStops()});
      }
    }
    return points;
  }

  @Override
  public DataTable table() {
    return new DataTable(
        title(),
        List.of(
            Words.say("stops.table.stop"),
            Words.say("stops.table.exact"),
            Words.say("stops.table.marked"),
            Words.say("stops.table.down"),
            Words.say("stops.table.up"),
            Words.say("stops.table.error"),
            Words.say("stops.table.unsure"),
            Words.say("stops.table.verdict")),
        scale.stops().stream().map(StopScalePicture::row).toList(),
        note);
  }

  private static List<String> row(AtStop stop) {
    return List.of(
        name(stop),
        String.format(Locale.ROOT, "%.4g", stop.number().exact()),
        Numbers.bareSize(stop.markedStops()),
        bare(stop.downStops()),
        bare(stop.upStops()),
        stop.errorStops().isPresent()
            ? Numbers.signedStops(stop.errorStops().getAsDouble())
            : Words.say("table.nothing"),
        Double.isFinite(stop.uncertaintyStops())
            ? Numbers.bareSize(LightLeak.COVERAGE * stop.uncertaintyStops())
            : Words.say("table.nothing"),
        Words.of("stops.verdict", stop.verdict()));
  }

  private static String bare(OptionalDouble stops) {
    return stops.isPresent() ? Numbers.bareStops(stops.getAsDouble()) : Words.say("table.nothing");
  }

  private static String name(AtStop stop) {
    return "f/" + stop.number().engraved();
  }

  private String title() {
    return Words.say("stops.picture.title", Numbers.plainStops(scale.toleranceStops()));
  }
}
