package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.FDistribution;
import org.halflight.stats.BrownForsythe;
import org.halflight.stats.Figure;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.halflight.stats.Sample;
import org.halflight.stats.ScatterRatio;

/**
 * Sets the scatter of two runs side by side. Five firings of one speed hardly ever resolve it; five
 * firings each of five speeds that belong together do: each firing is taken from the median of its
 * own speed, and the distances of all speeds of a group are tested together (Brown and Forsythe).
 * The groups are fixed beforehand, not picked from what was fired.
 *
 * <p>Of each speed one firing is left out of that test, since it says nothing of its own: of an odd
 * number the middle one, which is its own median, of an even number one of the middle two, which
 * are equally far from it. Left in, the first kind makes the test find less than it says, and the
 * second more (structural zeros, Hines and Hines 2000; from memory). docs/validation.md counts the
 * false alarms.
 */
final class ScatterOfRuns {
  /**
   * Least firings of one speed in each run for a test at that speed: with four, equal distances in
   * pairs make the test find far too much at the small chances that count here.
   */
  static final int LEAST_AT_ONE_SPEED = 7;

  /** Least firings of a speed in each run for its part in a group. */
  static final int LEAST_IN_GROUP = 4;

  private ScatterOfRuns() {}

  /** One speed; of repeated runs the first, since the others lie elsewhere. */
  static ScatterComparison atOneSpeed(ComparedFirings firings, FindingPower power) {
    Sample before = firings.isEnough() ? firings.before().get(0) : Sample.of();
    Sample after = firings.isEnough() ? firings.after().get(0) : Sample.of();
    int fewest = before.n();
    return new ScatterComparison(
        before.sd(),
        after.sd(),
        ScatterRatio.of(before, after, SpeedSummary.LEVEL)
            .map(
                known ->
                    new ScatterComparison.Ratio(
                        known.ratio(), known.interval().low(), known.interval().high())),
        fewest < LEAST_AT_ONE_SPEED
            ? new NotEnoughFirings<>(fewest, LEAST_AT_ONE_SPEED)
            : BrownForsythe.of(List.of(before, after)).map(BrownForsythe::p),
        OptionalDouble.empty(),
        fewest,
        RunComparison.SCATTER_ALPHA,
        power);
  }

  /** Several speeds together; those with fewer than four firings in one run are left out. */
  static ScatterComparison overSpeeds(List<ComparedFirings> speeds, FindingPower power) {
    List<Sample> before = new ArrayList<>();
    List<Sample> after = new ArrayList<>();
    for (ComparedFirings speed : speeds) {
      for (int run = 0; run < speed.before().size(); run++) {
        if (speed.before().get(run).n() >= LEAST_IN_GROUP) {
          before.add(speed.before().get(run));
          after.add(speed.after().get(run));
        }
      }
    }
    if (before.size() < 2) {
      return new ScatterComparison(
          new NotEnoughFirings<>(0, LEAST_IN_GROUP),
          new NotEnoughFirings<>(0, LEAST_IN_GROUP),
          new NotEnoughFirings<>(0, LEAST_IN_GROUP),
          new NotEnoughFirings<>(0, LEAST_IN_GROUP),
          OptionalDouble.empty(),
          0,
          RunComparison.GROUP_SCATTER_ALPHA,
          power);
    }
    Figure<Double> sdBefore = pooled(before);
    Figure<Double> sdAfter = pooled(after);
    return new ScatterComparison(
        sdBefore,
        sdAfter,
        ratio(sdBefore, degrees(before), sdAfter, degrees(after)),
        test(before, after),
        OptionalDouble.empty(),
        Math.min(firings(before), firings(after)),
        RunComparison.GROUP_SCATTER_ALPHA,
        power);
  }

  private static Figure<ScatterComparison.Ratio> ratio(
      Figure<Double> before, int degreesBefore, Figure<Double> after, int degreesAfter) {
    if (!(before.get() > 0) || !(after.get() > 0)) {
      return new NoScatter<>();
    }
    double ratio = after.get() / before.get();
    FDistribution f = new FDistribution(null, degreesAfter, degreesBefore);
    double tail = (1 - SpeedSummary.LEVEL) / 2;
    return new Known<>(
        new ScatterComparison.Ratio(
            ratio,
            ratio / Math.sqrt(f.inverseCumulativeProbability(1 - tail)),
            ratio / Math.sqrt(f.inverseCumulativeProbability(tail))));
  }

  /** The standard deviation within the speeds, whatever their means. */
  static Figure<Double> pooled(List<Sample> samples) {
    double squares = 0;
    for (Sample sample : samples) {
      double sd = sample.sd().get();
      squares += sd * sd * (sample.n() - 1);
    }
    return new Known<>(Math.sqrt(squares / degrees(samples)));
  }

  /** The chance of such scatters of two groups of speeds where both scatter alike. */
  static Figure<Double> test(List<Sample> before, List<Sample> after) {
    return BrownForsythe.of(List.of(fromOwnMedians(before), fromOwnMedians(after)))
        .map(BrownForsythe::p);
  }

  private static Sample fromOwnMedians(List<Sample> samples) {
    List<Double> all = new ArrayList<>();
    boolean upper = false;
    for (Sample sample : samples) {
      double median = sample.median().get();
      double[] sorted = sample.sorted();
      boolean odd = sample.n() % 2 == 1;
      // Of an even number the lower and the upper one in turn, so that neither side is favoured.
      int left = odd || upper ? sample.n() / 2 : sample.n() / 2 - 1;
      upper = odd ? upper : !upper;
      for (int i = 0; i < sorted.length; i++) {
        if (i != left) {
          all.add(sorted[i] - median);
        }
      }
    }
    return Sample.of(all);
  }

  private static int firings(List<Sample> samples) {
    return samples.stream().mapToInt(Sample::n).sum();
  }

  private static int degrees(List<Sample> samples) {
    return samples.stream().mapToInt(sample -> sample.n() - 1).sum();
  }
}
