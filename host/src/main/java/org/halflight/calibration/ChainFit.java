package org.halflight.calibration;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.FrontEndLag;
import org.halflight.profile.WidthLine;
import org.halflight.signal.Channel;
import org.halflight.stats.Sample;

/**
 * Delays, lag and lines of a front end from reference pulses at several levels.
 *
 * <p>A one-pole lag {@code tau} behind a square pulse delays the rise through level q by {@code
 * -tau ln(1 - q)} and the fall by {@code -tau ln q}; comparator and stamp add delays that do not
 * depend on the level, and the comparator a little that grows on slow flanks. So the delays of one
 * channel and direction at several levels tell the lag. Where each channel was tried at one level
 * only, its two width excesses leave tau and the difference of the comparators mixed; then both are
 * taken as equal, and the fit says so.
 *
 * @param delays of each channel, lag left out
 * @param lines of measured against true widths with the slope fixed at 1, the lag's part left out
 * @param lag of the front end, absent where one channel at one level was all there is
 * @param lagIsSeparate whether the lag comes from several levels of a channel
 * @param flankSeconds what the comparators add on slow flanks, at level 0 of a rise; taken from
 *     what is known of comparators as much as from the pulses
 * @param slope whether widths follow what the board made; absent where all pulses had one width
 * @param shortestTrustworthySeconds the shortest width from which on all channels agree with their
 *     line within half a percent; absent where not even the longest does
 */
public record ChainFit(
    Map<Channel, EdgeDelays> delays,
    Map<Channel, WidthLine> lines,
    Optional<FrontEndLag> lag,
    boolean lagIsSeparate,
    double flankSeconds,
    Optional<SlopeTest> slope,
    OptionalDouble shortestTrustworthySeconds) {
  /** Least pulses in each channel. */
  public static final int LEAST = 5;

  /** A pulse is trusted when it agrees with the line within this share of its width. */
  public static final double TRUSTED_SHARE = 0.005;

  /** Shorter against the lag, a pulse has not reached its full light. */
  private static final double LEAST_LAGS = 20;

  /** What pulses come to. */
  public sealed interface Outcome {}

  /** A fit. */
  public record Fitted(ChainFit fit) implements Outcome {}

  /** Too few pulses of a channel. */
  public record TooFew(Channel channel, int pulses) implements Outcome {}

  public ChainFit {
    delays = Map.copyOf(delays);
    lines = Map.copyOf(lines);
  }

  /**
   * Fits pulses of one or more channels.
   *
   * @param spanCounts light of the LED less dark, in counts of the ten-bit converter
   */
  public static Outcome of(List<SeenPulse> pulses, double spanCounts) {
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
    Optional<LagFit> separate = separate(pulses, spanCounts);
    Optional<LagFit> known = separate.or(() -> LagFit.ofTwoChannels(pulses, spanCounts));
    LagFit fit = known.orElseGet(() -> LagFit.none(pulses));
    Map<Channel, WidthLine> lines = new EnumMap<>(Channel.class);
    byChannel.forEach((channel, own) -> lines.put(channel, line(own, fit)));
    return new Fitted(
        new ChainFit(
            fit.delays(),
            lines,
            known.map(LagFit::lag),
            separate.isPresent(),
            fit.flankSeconds(),
            SlopeTest.of(pulses, fit.lag().seconds()),
            shortest(byChannel, fit)));
  }

  /** The lag of several levels, from pulses that are long against it. */
  private static Optional<LagFit> separate(List<SeenPulse> pulses, double spanCounts) {
    return LagFit.of(pulses, spanCounts)
        .flatMap(
            first -> {
              double least = LEAST_LAGS * first.lag().seconds();
              List<SeenPulse> lasting =
                  pulses.stream().filter(pulse -> pulse.trueSeconds() >= least).toList();
              return lasting.size() == pulses.size() || lasting.isEmpty()
                  ? Optional.of(first)
                  : LagFit.of(lasting, spanCounts);
            });
  }

  /** The delays of a channel. */
  public EdgeDelays delays(Channel channel) {
    return Objects.requireNonNull(delays.get(channel));
  }

  /** How much longer than it is a pulse should come out by this fit. */
  public double expectedExcessSeconds(SeenPulse pulse) {
    return delays(pulse.channel()).widthOffsetSeconds()
        + lag.map(FrontEndLag::seconds).orElse(0.0) * pulse.stretch()
        + flankSeconds * LagFit.slowness(pulse);
  }

  private static WidthLine line(List<SeenPulse> own, LagFit fit) {
    double[] excess = own.stream().mapToDouble(pulse -> withoutLag(pulse, fit)).toArray();
    double u = StampStep.ofMean(excess, StampStep.WIDTH_SECONDS);
    return new WidthLine(
        Sample.of(excess).mean().get(),
        1,
        u * u,
        0,
        0,
        Sample.of(excess).sd().get(),
        excess.length - 1.0);
  }

  private static double withoutLag(SeenPulse pulse, LagFit fit) {
    return pulse.excessSeconds()
        - fit.lag().seconds() * pulse.stretch()
        - fit.flankSeconds() * LagFit.slowness(pulse);
  }

  private static OptionalDouble shortest(Map<Channel, List<SeenPulse>> byChannel, LagFit fit) {
    double trusted = 0;
    for (List<SeenPulse> own : byChannel.values()) {
      // Long pulses say what the offset is; short ones are on trial.
      double offset =
          Sample.of(own.stream().mapToDouble(p -> withoutLag(p, fit)).toArray()).median().get();
      TreeMap<Double, List<Double>> byWidth = new TreeMap<>();
      own.forEach(
          pulse ->
              byWidth
                  .computeIfAbsent(pulse.trueSeconds(), width -> new ArrayList<>())
                  .add(withoutLag(pulse, fit) - offset));
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
}
