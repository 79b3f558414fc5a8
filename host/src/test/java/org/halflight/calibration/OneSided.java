package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;
import java.util.random.RandomGenerator;
import org.halflight.stats.LineFit;

/** Simulated stamps of a clock, one a second, with delays of the host. */
public final class OneSided {
  private OneSided() {}

  /**
   * @param slope seconds that the host gains in a second of the board
   * @param delay seconds, drawn anew for each stamp
   */
  public static List<ClockStamp> stamps(int n, double slope, DoubleSupplier delay) {
    List<ClockStamp> stamps = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double board = i;
      stamps.add(new ClockStamp(board, 1000 + board * (1 + slope) + delay.getAsDouble()));
    }
    return stamps;
  }

  /** Exponential delays. */
  public static DoubleSupplier exponential(RandomGenerator random, double meanSeconds) {
    return () -> meanSeconds * random.nextExponential();
  }

  /** A frame of 1 ms, exponential 100 us on top, and a stall of mean 6 ms in 3 of 100. */
  public static DoubleSupplier usb(RandomGenerator random) {
    return () ->
        1e-3 * random.nextDouble()
            + 100e-6 * random.nextExponential()
            + (random.nextDouble() < 0.03 ? 6e-3 * random.nextExponential() : 0);
  }

  /** Errors in ppm of the slopes of hull, median slopes and least squares. */
  public static double[] slopeErrors(List<ClockStamp> stamps, double slope) {
    double[] board = stamps.stream().mapToDouble(ClockStamp::boardSeconds).toArray();
    double[] ahead = stamps.stream().mapToDouble(ClockStamp::differenceSeconds).toArray();
    return new double[] {
      1e6 * (HullLine.of(stamps, StampSide.HOST_LATE).slope() - slope),
      1e6 * (EarlyStamps.medianLine(stamps).slope() - slope),
      1e6 * (LineFit.of(board, ahead).slope() - slope)
    };
  }
}
