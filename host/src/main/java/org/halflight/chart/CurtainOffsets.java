package org.halflight.chart;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;

/**
 * How much longer the centre was exposed than marked, against the marked time, at the speeds of a
 * slit. Flat above zero is a late latch; through zero and rising is the speed of the curtains.
 *
 * @param speeds in any order, at least one
 * @param offsetSeconds of the fit, at a marked time of nothing: the latch
 * @param share of the fit, of the marked time: the speed; above 0 slow
 * @param note where the numbers come from; may be empty
 */
public record CurtainOffsets(
    List<At> speeds, OptionalDouble offsetSeconds, OptionalDouble share, String note)
    implements Picture {
  /** An offset up to here is as good as none. Our own limit. */
  private static final double LIMIT_MILLIS = 0.1;

  /** Of what is shown, below and above: words stand there. */
  private static final double AIR = 0.25;

  /**
   * A speed.
   *
   * @param markedSeconds the time that it is to be
   * @param excessSeconds mean time at the centre less that
   * @param plusMinusSeconds what the mean is uncertain by
   */
  public record At(
      MarkedSpeed speed, double markedSeconds, double excessSeconds, double plusMinusSeconds) {}

  public CurtainOffsets {
    speeds = speeds.stream().sorted(Comparator.comparingDouble(At::markedSeconds)).toList();
    if (speeds.isEmpty()) {
      throw new IllegalArgumentException("offsets are of at least one speed");
    }
  }

  @Override
  public JFreeChart chart(Theme theme) {
    double longest = 1e3 * speeds.get(speeds.size() - 1).markedSeconds();
    NumberAxis domain = new NumberAxis(Words.say("chart.curtain.marked"));
    DotPlot plot = new DotPlot(domain, Words.say("chart.curtain.excess"), theme);
    double low = -LIMIT_MILLIS;
    double high = LIMIT_MILLIS;
    for (At at : speeds) {
      low = Math.min(low, 1e3 * (at.excessSeconds() - at.plusMinusSeconds()));
      high = Math.max(high, 1e3 * (at.excessSeconds() + at.plusMinusSeconds()));
    }
    plot.band(-LIMIT_MILLIS, LIMIT_MILLIS);
    if (offsetSeconds.isPresent() && share.isPresent()) {
      double offset = 1e3 * offsetSeconds.getAsDouble();
      double end = offset + share.getAsDouble() * longest;
      low = Math.min(low, Math.min(offset, end));
      high = Math.max(high, Math.max(offset, end));
      plot.line(
          Words.say("chart.curtain.fit"),
          new double[] {0, longest},
          new double[] {offset, end},
          theme.quietInk());
    }
    double[] marked = speeds.stream().mapToDouble(at -> 1e3 * at.markedSeconds()).toArray();
    double[] excess = speeds.stream().mapToDouble(at -> 1e3 * at.excessSeconds()).toArray();
    double[] reach = speeds.stream().mapToDouble(at -> 1e3 * at.plusMinusSeconds()).toArray();
    double[] from = new double[reach.length];
    double[] to = new double[reach.length];
    for (int i = 0; i < reach.length; i++) {
      from[i] = excess[i] - reach[i];
      to[i] = excess[i] + reach[i];
      plot.words(speeds.get(i).speed().label(), marked[i], to[i], theme.ink());
    }
    plot.whiskers(marked, from, to, theme.asLeft(), 0.008 * longest);
    plot.dots(Words.say("chart.curtain.speeds"), marked, excess, theme.asLeft());
    plot.level(0, theme.ink(), false);
    domain.setRange(0, 1.08 * longest);
    plot.range(low - AIR * (high - low), high + AIR * (high - low));
    plot.signed("0.0#");
    return plot.chart(title(), note);
  }

  private String title() {
    return offsetSeconds.isPresent() && share.isPresent()
        ? Words.say(
            "chart.curtain.offsets.fitted",
            signed(1e3 * offsetSeconds.getAsDouble(), "0.00"),
            signed(100 * share.getAsDouble(), "0.0"))
        : Words.say("chart.curtain.offsets");
  }

  private static String signed(double value, String pattern) {
    return Frame.signed(pattern).format(value);
  }

  @Override
  public DataTable table() {
    return new DataTable(
        title(),
        List.of(
            Words.say("chart.speed"),
            Words.say("chart.curtain.marked"),
            Words.say("chart.curtain.excess")),
        speeds.stream()
            .map(
                at ->
                    List.of(
                        Words.say("chart.seconds", at.speed().label()),
                        String.format(Locale.ROOT, "%.2f", 1e3 * at.markedSeconds()),
                        Words.say(
                            "chart.curtain.plusMinus",
                            signed(1e3 * at.excessSeconds(), "0.00"),
                            String.format(Locale.ROOT, "%.2f", 1e3 * at.plusMinusSeconds()))))
            .toList(),
        note);
  }
}
