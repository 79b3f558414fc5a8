package org.halflight.calibration;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.FrontEndLag;
import org.halflight.signal.Channel;

/**
 * Lag, slowness on flanks, and fixed delays from the mean delays at several levels: {@code delay =
 * fixed + tau place + g exp(place / 2)}, with a fixed delay for each channel and direction, by
 * least squares weighted with the uncertainty of each mean, {@code g} held by {@link SlowFlank}.
 * Where the means scatter by more than their uncertainty, the uncertainties grow with them.
 *
 * @param lag tau
 * @param flankSeconds g
 * @param delays fixed delays of each channel
 */
record LagFit(FrontEndLag lag, double flankSeconds, Map<Channel, EdgeDelays> delays) {
  /** Levels nearer to each other than this, as -ln q, say nothing about the lag. */
  static final double LEAST_SPREAD = 0.2;

  /**
   * What two comparators may differ by in their fixed widths, where nothing else tells them from
   * the lag: as much as the whole delay of a common one.
   */
  private static final double COMPARATORS_UNLIKE_SECONDS = 1e-6;

  /** Light, dark and threshold are each read in whole counts. */
  private static final double LEVEL_UNCERTAINTY_COUNTS = 0.5;

  private static final int ROUNDS = 4;

  /** Cells of one channel and direction with their weights and weighted means. */
  private static final class Group {
    private final List<DelayCell> cells;
    private final double[] weight;
    private double weights;
    private double place;
    private double factor;
    private double delay;

    Group(List<DelayCell> cells, double lag, double levelUncertainty) {
      this.cells = cells;
      weight = new double[cells.size()];
      for (int i = 0; i < weight.length; i++) {
        DelayCell cell = cells.get(i);
        double u = cell.uncertainty(lag, levelUncertainty);
        weight[i] = 1 / (u * u);
        weights += weight[i];
        place += weight[i] * cell.place();
        factor += weight[i] * SlowFlank.factor(cell.place());
        delay += weight[i] * cell.seconds();
      }
      place /= weights;
      factor /= weights;
      delay /= weights;
    }
  }

  /** Fits pulses; empty where the levels of each channel lie too near to each other. */
  static Optional<LagFit> of(List<SeenPulse> pulses, double spanCounts) {
    Map<List<Object>, List<DelayCell>> cells = grouped(pulses);
    double widest =
        cells.values().stream()
            .mapToDouble(
                own ->
                    own.stream().mapToDouble(DelayCell::place).max().orElseThrow()
                        - own.stream().mapToDouble(DelayCell::place).min().orElseThrow())
            .max()
            .orElseThrow();
    if (widest < 2 * LEAST_SPREAD) {
      return Optional.empty();
    }
    LagFit fit = round(cells, new SlowFlank(0, 0), 0, spanCounts);
    for (int i = 0; i < ROUNDS; i++) {
      double lag = Math.max(0, fit.lag().seconds());
      fit = round(cells, SlowFlank.before(lag, spanCounts), lag, spanCounts);
    }
    return Optional.of(fit);
  }

  /**
   * From the width excesses of both levels of the centre, where each was tried at one level: its
   * comparators are taken as equal, and the doubt of that is in the uncertainty. Empty where one of
   * them has no pulses.
   */
  static Optional<LagFit> ofTwoChannels(List<SeenPulse> pulses, double spanCounts) {
    List<SeenPulse> low = of(pulses, Channel.CENTRE_LOW);
    List<SeenPulse> high = of(pulses, Channel.CENTRE_HIGH);
    if (low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    double reach = mean(low, SeenPulse::stretch) - mean(high, SeenPulse::stretch);
    if (Math.abs(reach) < LEAST_SPREAD) {
      return Optional.empty();
    }
    double apart = mean(low, SeenPulse::excessSeconds) - mean(high, SeenPulse::excessSeconds);
    double slow = mean(low, LagFit::slowness) - mean(high, LagFit::slowness);
    SlowFlank flank = SlowFlank.before(apart / reach, spanCounts);
    double tau = (apart - flank.mean() * slow) / reach;
    double u =
        Math.sqrt(
                2 * square(StampStep.WIDTH_SECONDS)
                    + square(flank.standardUncertainty() * slow)
                    + square(COMPARATORS_UNLIKE_SECONDS) / 3)
            / Math.abs(reach);
    return Optional.of(
        with(grouped(pulses), new FrontEndLag(tau, u), flank.mean(), flank.standardUncertainty()));
  }

  /** The fixed delays alone, where nothing tells the lag: they have it in them. */
  static LagFit none(List<SeenPulse> pulses) {
    return with(grouped(pulses), new FrontEndLag(0, 0), 0, 0);
  }

  /** How much longer a pulse comes out by g, in units of g. */
  static double slowness(SeenPulse pulse) {
    return SlowFlank.factor(-Math.log(pulse.fallLevel()))
        - SlowFlank.factor(-Math.log(1 - pulse.riseLevel()));
  }

  private static Map<List<Object>, List<DelayCell>> grouped(List<SeenPulse> pulses) {
    Map<List<Object>, List<DelayCell>> groups = new java.util.LinkedHashMap<>();
    DelayCell.of(pulses)
        .forEach(
            cell ->
                groups
                    .computeIfAbsent(
                        List.of(cell.channel(), cell.rising()), key -> new ArrayList<>())
                    .add(cell));
    return groups;
  }

  private static LagFit round(
      Map<List<Object>, List<DelayCell>> cells, SlowFlank before, double lag, double spanCounts) {
    double levelUncertainty = LEVEL_UNCERTAINTY_COUNTS / spanCounts;
    double xx = 0;
    double xz = 0;
    double zz = 0;
    double xy = 0;
    double zy = 0;
    List<Group> groups = new ArrayList<>();
    for (List<DelayCell> own : cells.values()) {
      Group group = new Group(own, lag, levelUncertainty);
      groups.add(group);
      for (int i = 0; i < own.size(); i++) {
        double x = own.get(i).place() - group.place;
        double z = SlowFlank.factor(own.get(i).place()) - group.factor;
        double y = own.get(i).seconds() - group.delay;
        xx += group.weight[i] * x * x;
        xz += group.weight[i] * x * z;
        zz += group.weight[i] * z * z;
        xy += group.weight[i] * x * y;
        zy += group.weight[i] * z * y;
      }
    }
    double g = 0;
    double tau = xy / xx;
    double varianceTau = 1 / xx;
    double varianceG = 0;
    double covariance = 0;
    if (before.standardUncertainty() > 0) {
      double prior = 1 / square(before.standardUncertainty());
      double determinant = xx * (zz + prior) - xz * xz;
      tau = (xy * (zz + prior) - xz * (zy + prior * before.mean())) / determinant;
      g = (xx * (zy + prior * before.mean()) - xz * xy) / determinant;
      varianceTau = (zz + prior) / determinant;
      varianceG = xx / determinant;
      covariance = -xz / determinant;
    }
    double chiSquare = 0;
    int degrees = -groups.size() - 1;
    for (Group group : groups) {
      for (int i = 0; i < group.weight.length; i++) {
        DelayCell cell = group.cells.get(i);
        double left =
            cell.seconds()
                - group.delay
                - tau * (cell.place() - group.place)
                - g * (SlowFlank.factor(cell.place()) - group.factor);
        chiSquare += group.weight[i] * left * left;
        degrees++;
      }
    }
    double birge = degrees > 0 ? Math.max(1, chiSquare / degrees) : 1;
    Map<Channel, double[]> found = new EnumMap<>(Channel.class);
    for (Group group : groups) {
      double fixed = group.delay - tau * group.place - g * group.factor;
      double variance =
          1 / group.weights
              + square(group.place) * varianceTau
              + square(group.factor) * varianceG
              + 2 * group.place * group.factor * covariance;
      put(found, group.cells.get(0), fixed, Math.sqrt(birge * Math.max(0, variance)));
    }
    return new LagFit(new FrontEndLag(tau, Math.sqrt(birge * varianceTau)), g, delays(found));
  }

  private static LagFit with(
      Map<List<Object>, List<DelayCell>> cells, FrontEndLag lag, double g, double gUncertainty) {
    Map<Channel, double[]> found = new EnumMap<>(Channel.class);
    for (List<DelayCell> own : cells.values()) {
      Group group = new Group(own, 0, 0);
      put(
          found,
          own.get(0),
          group.delay - lag.seconds() * group.place - g * group.factor,
          Math.sqrt(
              1 / group.weights
                  + square(group.place * lag.standardUncertaintySeconds())
                  + square(group.factor * gUncertainty)));
    }
    return new LagFit(lag, g, delays(found));
  }

  private static void put(
      Map<Channel, double[]> found, DelayCell of, double seconds, double uncertainty) {
    double[] both = found.computeIfAbsent(of.channel(), channel -> new double[4]);
    both[of.rising() ? 0 : 2] = seconds;
    both[of.rising() ? 1 : 3] = uncertainty;
  }

  private static Map<Channel, EdgeDelays> delays(Map<Channel, double[]> found) {
    Map<Channel, EdgeDelays> delays = new EnumMap<>(Channel.class);
    found.forEach((channel, d) -> delays.put(channel, new EdgeDelays(d[0], d[1], d[2], d[3])));
    return delays;
  }

  private static List<SeenPulse> of(List<SeenPulse> pulses, Channel channel) {
    return pulses.stream().filter(pulse -> pulse.channel() == channel).toList();
  }

  private static double mean(
      List<SeenPulse> pulses, java.util.function.ToDoubleFunction<SeenPulse> figure) {
    return pulses.stream().mapToDouble(figure).average().orElseThrow();
  }

  private static double square(double value) {
    return value * value;
  }
}
