package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.halflight.extratest.LightLeak;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/** How far below full light the shut blades are, as bars of stops from full light downwards. */
final class LeakPicture implements Picture {
  private static final double BAR_REACH = 0.22;

  private final String note;
  private final List<Bar> bars = new ArrayList<>();

  private record Bar(String state, LightLeak.Reading reading) {
    boolean isLeak() {
      return reading.found() == LightLeak.Found.LEAK;
    }

    OptionalDouble stops() {
      return switch (reading.found()) {
        case LEAK -> reading.belowFullStops();
        case NOTHING -> reading.floorStops();
        case SHUTTER_OPEN, COVERED_BRIGHTER -> OptionalDouble.empty();
      };
    }
  }

  LeakPicture(LightLeak leak, String note) {
    this.note = note;
    leak.uncocked().ifPresent(reading -> bars.add(new Bar(Words.say("leak.uncocked"), reading)));
    leak.cocked().ifPresent(reading -> bars.add(new Bar(Words.say("leak.cocked"), reading)));
  }

  /** Whether there is anything to draw: full light was set, and a reading says something. */
  boolean isThere() {
    return bars.stream().anyMatch(bar -> bar.stops().isPresent());
  }

  @Override
  public JFreeChart chart(Theme theme) {
    DotPlot plot =
        new DotPlot(
            Frame.names("", bars.stream().map(Bar::state).toList()),
            Words.say("leak.picture.axis"),
            theme);
    double most = bars.stream().flatMapToDouble(bar -> bar.stops().stream()).reduce(1, Math::max);
    plot.bars(Words.say("leak.picture.floor"), tops(false), theme.asLeft(), BAR_REACH);
    plot.bars(Words.say("leak.picture.leak"), tops(true), theme.asFound(), BAR_REACH);
    plot.wholeSteps();
    plot.range(0, Math.ceil(1.1 * most));
    return plot.chart(Words.say("leak.picture.title"), note);
  }

  private List<double[]> tops(boolean leaks) {
    List<double[]> tops = new ArrayList<>();
    for (int i = 0; i < bars.size(); i++) {
      if (bars.get(i).isLeak() == leaks && bars.get(i).stops().isPresent()) {
        tops.add(new double[] {i, bars.get(i).stops().getAsDouble()});
      }
    }
    return tops;
  }

  @Override
  public DataTable table() {
    return new DataTable(
        Words.say("leak.picture.title"),
        List.of(
            Words.say("leak.table.state"),
            Words.say("leak.table.found"),
            Words.say("leak.table.stops"),
            Words.say("leak.table.floor"),
            Words.say("leak.table.counts")),
        bars.stream().map(LeakPicture::row).toList(),
        note);
  }

  private static List<String> row(Bar bar) {
    return List.of(
        bar.state(),
        Words.of("leak.word", bar.reading().found()),
        stops(bar.reading().belowFullStops()),
        stops(bar.reading().floorStops()),
        String.format(Locale.ROOT, "%.2f", bar.reading().differenceCounts()));
  }

  private static String stops(OptionalDouble stops) {
    return stops.isPresent()
        ? String.format(Locale.ROOT, "%.1f", stops.getAsDouble())
        : Words.say("table.nothing");
  }
}
