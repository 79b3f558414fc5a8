package org.halflight.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.FrontEndLag;
import org.halflight.profile.WidthLine;
import org.halflight.signal.Channel;
import org.halflight.stats.LineFit;
import org.halflight.stats.Sample;

/**
 * Delays, lag and lines of a front end from reference pulses at several levels.
 *
 * <p>A one-pole lag {@code tau} behind a square pulse delays the rise through level q by {@code
 * -tau ln(1 - q)} and the fall by {@code -tau ln q}; comparator and stamp add delays that do not
 * depend on the level. So the delays of one channel and direction at several levels make a line of
 * slope tau. Where each channel was tried at one level only, its two width excesses leave tau and
 * the difference of the comparators mixed; then both are taken as equal, and the fit says so.
 *
 * @param delays of each channel, lag left out
 * @param lines of measured against true widths with the slope fixed at 1, the lag's part left out
 * @param lag of the front end, absent where one channel at one level was all there is
 * @param lagIsSeparate whether the lag comes from several levels of a channel
 * @param slopeP the least chance, over channels and levels, of such a slope where it is 1;
 *     corrected for their number. Absent where all pulses had one width
 * @param shortestTrustworthySeconds the shortest width from which on all channels agree with their
 *     line within half a percent; absent where not even the longest does
 */
public record ChainFit(
    Map<Channel, EdgeDelays> delays,
    Map<Channel, WidthLine> lines,
    Optional<FrontEndLag> lag,
    boolean lagIsSeparate,
    OptionalDouble slopeP,
    OptionalDouble shortestTrustworthySeconds) {
  /** Least pulses in each channel. */
  public static final int LEAST = 5;

  /** A pulse is trusted when it agrees with the line within this share of its width. */
  public static final double TRUSTED_SHARE = 0.005;

  /** A delay is known no better than this: the stamp's own step of 62.5 ns, evenly spread. */
  private static final double LEAST_UNCERTAINTY_SECONDS = 62.5e-9 / Math.sqrt(12);

  /** Levels nearer to each other than this, as -ln q, say nothing about the lag. */
  private static final double LEAST_SPREAD = 0.2;

  /** What pulses come to. */
  public sealed interface Outcome {}

  /** A fit. */
  public record Fitted(ChainFit fit) implements Outcome {}

  /** Too few pulses of a channel. */
  public record TooFew(Channel channel, int pulses) implements Outcome {}

  /** Delays of one direction: where they were measured on the scale of the lag, and what. */
  private static final class Delays {
    private final double[] place;
    private final double[] delay;

    private Delays(List<SeenPulse> pulses, boolean rising) {
      place =
          pulses.stream().mapToDouble(p -> -Math.log(rising ? 1 - p.level() : p.level())).toArray();
      delay =
          pulses.stream()
              .mapToDouble(p -> rising ? p.riseDelaySeconds() : p.fallDelaySeconds())
              .toArray();
    }

    static Delays of(List<SeenPulse> pulses, boolean rising) {
      return new Delays(pulses, rising);
    }
  }

  public ChainFit {
    delays = Map.copyOf(delays);
    lines = Map.copyOf(lines);
  }

  /** Fits pulses of one or more channels. */
  public static Outcome of(List<SeenPulse> pulses) {
    Map<Channel, List<SeenPulse>> byChannel = new EnumMap<>(Channel.class);
    pulses.forEach(
        pulse ->
            byChannel.computeIfAbsent(pulse.channel(), channel -> new ArrayList<>()).add(pulse));
    for (Map.Entry<Channel, List<SeenPulse>> of : byChannel.entrySet()) {
      if (of.getValue().size() < LEAST) {
        return new TooFew(of.getKey(), of.getValue().size());
      }
    }
    if (byChannel.isEmpty()) {
      return new TooFew(Channel.CENTRE_LOW, 0);
    }
    Optional<FrontEndLag> separate = lagOfLevels(byChannel);
    Optional<FrontEndLag> lag = separate.or(() -> lagOfTwoChannels(byChannel));
    double tau = lag.map(FrontEndLag::seconds).orElse(0.0);
    double tauU = lag.map(FrontEndLag::standardUncertaintySeconds).orElse(0.0);
    Map<Channel, EdgeDelays> delays = new EnumMap<>(Channel.class);
    Map<Channel, WidthLine> lines = new EnumMap<>(Channel.class);
    byChannel.forEach(
        (channel, own) -> {
          double[] rise = withoutLag(Delays.of(own, true), tau, tauU);
          double[] fall = withoutLag(Delays.of(own, false), tau, tauU);
          delays.put(channel, new EdgeDelays(rise[0], rise[1], fall[0], fall[1]));
          lines.put(channel, line(own, tau));
        });
    return new Fitted(
        new ChainFit(
            delays, lines, lag, separate.isPresent(), slopeP(byChannel), shortest(byChannel, tau)));
  }

  /** Slope of delay against place within each channel and direction, common to all. */
  private static Optional<FrontEndLag> lagOfLevels(Map<Channel, List<SeenPulse>> byChannel) {
    List<Delays> groups = new ArrayList<>();
    byChannel.values().forEach(own -> groups.add(Delays.of(own, true)));
    byChannel.values().forEach(own -> groups.add(Delays.of(own, false)));
    double squares = 0;
    double products = 0;
    double greatestSpread = 0;
    for (Delays group : groups) {
      double meanPlace = mean(group.place);
      double meanDelay = mean(group.delay);
      for (int i = 0; i < group.place.length; i++) {
        double away = group.place[i] - meanPlace;
        squares += away * away;
        products += away * (group.delay[i] - meanDelay);
        greatestSpread = Math.max(greatestSpread, Math.abs(away));
      }
    }
    if (greatestSpread < LEAST_SPREAD) {
      return Optional.empty();
    }
    double tau = products / squares;
    double residuals = 0;
    int degrees = -groups.size() - 1;
    for (Delays group : groups) {
      double meanPlace = mean(group.place);
      double meanDelay = mean(group.delay);
      for (int i = 0; i < group.place.length; i++) {
        double away = group.delay[i] - meanDelay - tau * (group.place[i] - meanPlace);
        residuals += away * away;
        degrees++;
      }
    }
    double sd = Math.max(LEAST_UNCERTAINTY_SECONDS, Math.sqrt(residuals / Math.max(1, degrees)));
    return Optional.of(new FrontEndLag(tau, sd / Math.sqrt(squares)));
  }

  /** From the width excesses of both levels of the centre, its comparators taken as equal. */
  private static Optional<FrontEndLag> lagOfTwoChannels(Map<Channel, List<SeenPulse>> byChannel) {
    List<SeenPulse> low = byChannel.getOrDefault(Channel.CENTRE_LOW, List.of());
    List<SeenPulse> high = byChannel.getOrDefault(Channel.CENTRE_HIGH, List.of());
    if (low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    double reach = stretch(low) - stretch(high);
    if (Math.abs(reach) < LEAST_SPREAD) {
      return Optional.empty();
    }
    double[] lowExcess = low.stream().mapToDouble(SeenPulse::excessSeconds).toArray();
    double[] highExcess = high.stream().mapToDouble(SeenPulse::excessSeconds).toArray();
    double u =
        Math.hypot(meanUncertainty(lowExcess), meanUncertainty(highExcess)) / Math.abs(reach);
    return Optional.of(new FrontEndLag((mean(lowExcess) - mean(highExcess)) / reach, u));
  }

  /** By how many tau a square pulse comes out longer at the levels of these pulses. */
  private static double stretch(List<SeenPulse> pulses) {
    return pulses.stream()
        .mapToDouble(pulse -> LagEstimate.stretch(pulse.level(), pulse.level()))
        .average()
        .orElseThrow();
  }

  private static double[] withoutLag(Delays delays, double tau, double tauUncertainty) {
    double[] left = new double[delays.delay.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = delays.delay[i] - tau * delays.place[i];
    }
    return new double[] {
      mean(left), Math.hypot(meanUncertainty(left), mean(delays.place) * tauUncertainty)
    };
  }

  private static WidthLine line(List<SeenPulse> own, double tau) {
    double[] excess = new double[own.size()];
    for (int i = 0; i < excess.length; i++) {
      SeenPulse pulse = own.get(i);
      excess[i] = withoutLag(pulse, tau);
    }
    double u = meanUncertainty(excess);
    return new WidthLine(
        mean(excess), 1, u * u, 0, 0, Sample.of(excess).sd().get(), excess.length - 1.0);
  }

  private static double withoutLag(SeenPulse pulse, double tau) {
    return pulse.excessSeconds() - tau * LagEstimate.stretch(pulse.level(), pulse.level());
  }

  private static OptionalDouble slopeP(Map<Channel, List<SeenPulse>> byChannel) {
    double least = 1;
    int tests = 0;
    for (List<SeenPulse> own : byChannel.values()) {
      Map<Double, List<SeenPulse>> byLevel = new TreeMap<>();
      own.forEach(p -> byLevel.computeIfAbsent(p.level(), level -> new ArrayList<>()).add(p));
      for (List<SeenPulse> same : byLevel.values()) {
        double[] widths = same.stream().mapToDouble(SeenPulse::trueSeconds).toArray();
        if (widths.length >= LineFit.LEAST
            && Arrays.stream(widths).max().getAsDouble()
                > 2 * Arrays.stream(widths).min().getAsDouble()) {
          LineFit fit =
              LineFit.of(widths, same.stream().mapToDouble(SeenPulse::excessSeconds).toArray());
          // The excess has slope zero where the widths have slope one, and keeps more digits.
          least = Math.min(least, fit.slopeP(0));
          tests++;
        }
      }
    }
    return tests == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.min(1, least * tests));
  }

  private static OptionalDouble shortest(Map<Channel, List<SeenPulse>> byChannel, double tau) {
    double trusted = 0;
    for (List<SeenPulse> own : byChannel.values()) {
      // Long pulses say what the offset is; short ones are on trial.
      double offset =
          Sample.of(own.stream().mapToDouble(p -> withoutLag(p, tau)).toArray()).median().get();
      TreeMap<Double, List<Double>> byWidth = new TreeMap<>();
      own.forEach(
          pulse ->
              byWidth
                  .computeIfAbsent(pulse.trueSeconds(), width -> new ArrayList<>())
                  .add(withoutLag(pulse, tau) - offset));
      double shortest = Double.POSITIVE_INFINITY;
      for (Map.Entry<Double, List<Double>> at : byWidth.descendingMap().entrySet()) {
        double off = Math.abs(Sample.of(at.getValue()).mean().get());
        if (off > TRUSTED_SHARE * at.getKey()) {
          break;
        }
        shortest = at.getKey();
      }
      trusted = Math.max(trusted, shortest);
    }
    return Double.isInfinite(trusted) ? OptionalDouble.empty() : OptionalDouble.of(trusted);
  }

  private static double mean(double[] values) {
    return Sample.of(values).mean().get();
  }

  private static double meanUncertainty(double[] values) {
    return Math.max(
        LEAST_UNCERTAINTY_SECONDS, Sample.of(values).sd().get() / Math.sqrt(values.length));
  }
}
