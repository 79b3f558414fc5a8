package org.halflight.calibration;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.halflight.signal.Channel;
import org.halflight.stats.Sample;

/**
 * The mean delay of one channel in one direction at one level.
 *
 * @param channel which
 * @param rising on rising or on falling light
 * @param place {@code -ln(1 - q)} on rising, {@code -ln q} on falling light: the delay of a
 *     one-pole lag there, in time constants
 * @param seconds mean delay
 * @param standardUncertainty of that by the stamps alone
 * @param levelReach by how much {@code place} changes with the level
 */
record DelayCell(
    Channel channel,
    boolean rising,
    double place,
    double seconds,
    double standardUncertainty,
    double levelReach) {

  /** The cells of pulses, each direction of each channel at each level. */
  static List<DelayCell> of(List<SeenPulse> pulses) {
    List<DelayCell> cells = new ArrayList<>();
    for (boolean rising : new boolean[] {true, false}) {
      Map<List<Object>, List<Double>> byLevel = new LinkedHashMap<>();
      for (SeenPulse pulse : pulses) {
        byLevel
            .computeIfAbsent(
                List.of(pulse.channel(), rising ? pulse.riseLevel() : pulse.fallLevel()),
                key -> new ArrayList<>())
            .add(rising ? pulse.riseDelaySeconds() : pulse.fallDelaySeconds());
      }
      byLevel.forEach((key, delays) -> cells.add(cell(key, rising, delays)));
    }
    return cells;
  }

  private static DelayCell cell(List<Object> key, boolean rising, List<Double> delays) {
    double beyond = rising ? 1 - (double) key.get(1) : (double) key.get(1);
    double[] values = delays.stream().mapToDouble(Double::doubleValue).toArray();
    return new DelayCell(
        (Channel) key.get(0),
        rising,
        -Math.log(beyond),
        Sample.of(values).mean().get(),
        StampStep.ofMean(values, StampStep.SECONDS),
        1 / beyond);
  }

  /** Standard uncertainty with that of the level, for a lag. */
  double uncertainty(double lagSeconds, double levelUncertainty) {
    return Math.hypot(standardUncertainty, lagSeconds * levelReach * levelUncertainty);
  }
}
