package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.stats.Sample;

/**
 * Whether measured widths follow the widths that the board made. LED and stamps hang on one clock,
 * so the slope is 1 by construction, and whatever differs is a fault: a wrap of the timer that was
 * lost, a wrong tick rate, a sensor that slides while the light is on.
 *
 * <p>The mean excess at each width, weighted by its uncertainty, on a line common to all channels
 * and levels, each with its own offset. Where the means scatter around it by more than they should,
 * the uncertainty grows with them (the ratio of Birge).
 *
 * @param slopeError slope less 1
 * @param standardUncertainty of that
 * @param p the chance of such a slope where it is 1
 * @param bendP the chance of such a scatter of the means around the line where it is straight
 * @param findable the least error of the slope that nine of ten such tests find at {@link #ALPHA}
 */
public record SlopeTest(
    double slopeError, double standardUncertainty, double p, double bendP, double findable) {
  /** Chance of an alarm where nothing is wrong. */
  public static final double ALPHA = 0.001;

  /** A slope this far off is 0.00003 stop: less does not matter, however surely it is found. */
  public static final double MATTERS = 20e-6;

  private static final double POWER = 0.9;

  /**
   * A pulse this long against the lag has reached its full light but for 2 in a thousand million.
   */
  private static final double LEAST_LAGS = 20;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Mean excess at a width. */
  private record Point(double width, double excess, double weight) {}

  /** Whether it is found that matters. */
  public boolean isFault() {
    return p < ALPHA && Math.abs(slopeError) > MATTERS;
  }

  /**
   * Tests pulses.
   *
   * @param lagSeconds of the front end; pulses that are short against it are left out
   * @return empty where no channel and level has two widths, one twice the other
   */
  static Optional<SlopeTest> of(List<SeenPulse> pulses, double lagSeconds) {
    Map<String, Map<Double, List<Double>>> groups = new TreeMap<>();
    for (SeenPulse pulse : pulses) {
      if (pulse.trueSeconds() >= LEAST_LAGS * lagSeconds) {
        groups
            .computeIfAbsent(pulse.channel() + " " + pulse.level(), key -> new TreeMap<>())
            .computeIfAbsent(pulse.trueSeconds(), width -> new ArrayList<>())
            .add(pulse.excessSeconds());
      }
    }
    double squares = 0;
    double products = 0;
    int points = 0;
    int used = 0;
    List<List<Point>> all = new ArrayList<>();
    for (Map<Double, List<Double>> byWidth : groups.values()) {
      List<Point> own = points(byWidth);
      if (own.size() < 2 || own.get(own.size() - 1).width() < 2 * own.get(0).width()) {
        continue;
      }
      all.add(own);
      used++;
      points += own.size();
      double[] means = means(own);
      for (Point point : own) {
        double away = point.width() - means[0];
        squares += point.weight() * away * away;
        products += point.weight() * away * (point.excess() - means[1]);
      }
    }
    if (used == 0) {
      return Optional.empty();
    }
    double slope = products / squares;
    double chiSquare = 0;
    for (List<Point> own : all) {
      double[] means = means(own);
      for (Point point : own) {
        double left = point.excess() - means[1] - slope * (point.width() - means[0]);
        chiSquare += point.weight() * left * left;
      }
    }
    int degrees = points - used - 1;
    double birge = degrees > 0 ? Math.max(1, Math.sqrt(chiSquare / degrees)) : 1;
    double u = birge / Math.sqrt(squares);
    return Optional.of(
        new SlopeTest(
            slope,
            u,
            2 * NORMAL.cumulativeProbability(-Math.abs(slope) / u),
            degrees > 0
                ? 1 - new ChiSquaredDistribution(null, degrees).cumulativeProbability(chiSquare)
                : 1,
            u
                * (NORMAL.inverseCumulativeProbability(1 - ALPHA / 2)
                    + NORMAL.inverseCumulativeProbability(POWER))));
  }

  private static List<Point> points(Map<Double, List<Double>> byWidth) {
    List<Point> points = new ArrayList<>();
    byWidth.forEach(
        (width, excess) -> {
          double[] values = excess.stream().mapToDouble(Double::doubleValue).toArray();
          double u = StampStep.ofMean(values, StampStep.WIDTH_SECONDS);
          points.add(new Point(width, Sample.of(values).mean().get(), 1 / (u * u)));
        });
    return points;
  }

  /** Weighted means of width and excess. */
  private static double[] means(List<Point> own) {
    double weights = own.stream().mapToDouble(Point::weight).sum();
    return new double[] {
      own.stream().mapToDouble(p -> p.weight() * p.width()).sum() / weights,
      own.stream().mapToDouble(p -> p.weight() * p.excess()).sum() / weights
    };
  }
}
