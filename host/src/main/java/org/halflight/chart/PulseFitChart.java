package org.halflight.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.SeenPulse;
import org.halflight.signal.Channel;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberTickUnit;

/** How much too long reference pulses came out against their width, and what the fit leaves. */
public final class PulseFitChart implements Picture {
  /** Dots of the two channels lie beside each other, by this factor of the width. */
  private static final double BESIDE = 1.06;

  /** The step of the stamps. */
  private static final double STEP_MICROS = 0.0625;

  private final List<SeenPulse> pulses;
  private final ChainFit fit;
  private final boolean residuals;
  private final String note;

  /**
   * @param residuals whether the fit is taken out
   */
  public PulseFitChart(List<SeenPulse> pulses, ChainFit fit, boolean residuals, String note) {
    this.pulses = List.copyOf(pulses);
    this.fit = fit;
    this.residuals = residuals;
    this.note = note;
  }

  @Override
  public JFreeChart chart(Theme theme) {
    LogAxis domain = new LogAxis(Words.say("calibration.chart.width"));
    domain.setTickUnit(new NumberTickUnit(1));
    domain.setNumberFormatOverride(Frame.plain());
    double[] widths = pulses.stream().mapToDouble(pulse -> 1e3 * pulse.trueSeconds()).toArray();
    domain.setRange(
        Arrays.stream(widths).min().orElse(1) / 1.7, Arrays.stream(widths).max().orElse(1) * 7);
    DotPlot plot = new DotPlot(domain, axis(), theme);
    add(plot, Channel.CENTRE_LOW, theme.asFound(), 1 / BESIDE);
    add(plot, Channel.CENTRE_HIGH, theme.asLeft(), BESIDE);
    plot.level(0, theme.quietInk(), false);
    if (residuals) {
      plot.level(
          STEP_MICROS, theme.quietInk(), true, Words.say("calibration.chart.step", STEP_MICROS));
      plot.level(-STEP_MICROS, theme.quietInk(), true);
    } else {
      expected(plot, Channel.CENTRE_LOW, theme.asFound());
      expected(plot, Channel.CENTRE_HIGH, theme.asLeft());
    }
    return plot.chart(Words.say("calibration.chart"), note);
  }

  /** What the fit expects at each level, the same for all widths. */
  private void expected(DotPlot plot, Channel channel, Color colour) {
    Map<Double, SeenPulse> byLevel = new TreeMap<>();
    own(channel).forEach(pulse -> byLevel.putIfAbsent(pulse.level(), pulse));
    byLevel.forEach(
        (level, pulse) ->
            plot.level(
                1e6 * fit.expectedExcessSeconds(pulse),
                colour,
                true,
                Words.say(
                    "calibration.chart.level", String.format(Locale.ROOT, "%.0f", 100 * level))));
  }

  private void add(DotPlot plot, Channel channel, Color colour, double beside) {
    List<SeenPulse> own = own(channel);
    plot.dots(
        name(channel),
        own.stream().mapToDouble(pulse -> beside * 1e3 * pulse.trueSeconds()).toArray(),
        values(own).toArray(),
        colour);
  }

  private String axis() {
    return Words.say(residuals ? "calibration.chart.residual" : "calibration.chart.excess");
  }

  private static String name(Channel channel) {
    return Words.say(
        channel == Channel.CENTRE_LOW ? "profile.channel.low" : "profile.channel.high");
  }

  private List<SeenPulse> own(Channel channel) {
    return pulses.stream().filter(pulse -> pulse.channel() == channel).toList();
  }

  private DoubleStream values(List<SeenPulse> own) {
    return own.stream().mapToDouble(this::micros);
  }

  private double micros(SeenPulse pulse) {
    if (!residuals) {
      return 1e6 * pulse.excessSeconds();
    }
    return 1e6 * (pulse.excessSeconds() - fit.expectedExcessSeconds(pulse));
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (SeenPulse pulse : pulses) {
      rows.add(
          List.of(
              name(pulse.channel()),
              String.format(Locale.ROOT, "%.3f", pulse.level()),
              String.format(Locale.ROOT, "%.4f", 1e3 * pulse.trueSeconds()),
              String.format(Locale.ROOT, "%.2f", micros(pulse))));
    }
    return new DataTable(
        Words.say("calibration.chart"),
        List.of(
            Words.say("calibration.table.channel"),
            Words.say("calibration.table.level"),
            Words.say("calibration.chart.width"),
            axis()),
        rows,
        note);
  }
}
