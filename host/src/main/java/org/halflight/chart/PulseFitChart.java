package org.halflight.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.SeenPulse;
import org.halflight.signal.Channel;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.LogAxis;

/** How much too long reference pulses came out against their width, and what the fit leaves. */
public final class PulseFitChart implements Picture {
  private final List<SeenPulse> pulses;
  private final ChainFit fit;
  private final boolean residuals;
  private final Labels labels;
  private final String note;

  /**
   * What stands beside the picture.
   *
   * @param title headline
   * @param axis of the excess or of the residual, in microseconds
   * @param low name of the low channel
   * @param high name of the high channel
   */
  public record Labels(String title, String axis, String low, String high) {}

  /**
   * @param residuals whether the fit is taken out
   */
  public PulseFitChart(
      List<SeenPulse> pulses, ChainFit fit, boolean residuals, Labels labels, String note) {
    this.pulses = List.copyOf(pulses);
    this.fit = Objects.requireNonNull(fit);
    this.residuals = residuals;
    this.labels = Objects.requireNonNull(labels);
    this.note = Objects.requireNonNull(note);
  }

  @Override
  public JFreeChart chart(Theme theme) {
    LogAxis domain = new LogAxis("ms");
    DotPlot plot = new DotPlot(domain, labels.axis(), theme);
    add(plot, labels.low(), Channel.CENTRE_LOW, theme.asFound());
    add(plot, labels.high(), Channel.CENTRE_HIGH, theme.asLeft());
    plot.level(0, theme.quietInk(), false);
    return plot.chart(labels.title(), note);
  }

  private void add(DotPlot plot, String name, Channel channel, Color colour) {
    List<SeenPulse> own = own(channel);
    plot.dots(
        name,
        own.stream().mapToDouble(pulse -> 1e3 * pulse.trueSeconds()).toArray(),
        values(own).toArray(),
        colour);
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
  public TableTwin table() {
    List<List<String>> rows = new ArrayList<>();
    for (SeenPulse pulse : pulses) {
      rows.add(
          List.of(
              pulse.channel() == Channel.CENTRE_LOW ? labels.low() : labels.high(),
              String.format(Locale.ROOT, "%.3f", pulse.level()),
              String.format(Locale.ROOT, "%.4f", 1e3 * pulse.trueSeconds()),
              String.format(Locale.ROOT, "%.2f", micros(pulse))));
    }
    return new TableTwin(
        labels.title(), List.of("channel", "level", "ms", labels.axis()), rows, note);
  }
}
