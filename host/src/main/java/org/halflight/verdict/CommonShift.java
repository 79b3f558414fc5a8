package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Holm;
import org.halflight.stats.Interval;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Sample;

/**
 * What the shifts of all speeds have in common, told apart from what single speeds have on their
 * own: the median over the speeds is the centre, and speeds that are shown to lie elsewhere
 * (Student's t, Holm over the speeds) stand aside. Of the rest the most shifted one is left out, so
 * that no single speed can make a whole dial move; the mean of the others is the common shift.
 *
 * @param stops mean of the speeds that keep together, without the most shifted one
 * @param interval of that mean, with the confidence of {@link SpeedSummary#LEVEL}
 * @param p the chance of a mean at least as far from zero where there is no common shift
 * @param together the speeds that keep together, more than half of all
 * @param leftOut the most shifted of these
 * @param apart the speeds that lie elsewhere
 */
public record CommonShift(
    double stops,
    Interval interval,
    double p,
    List<MarkedSpeed> together,
    MarkedSpeed leftOut,
    List<MarkedSpeed> apart) {
  /** Fewer speeds than this have nothing in common that one of them could stand apart from. */
  public static final int LEAST_SPEEDS = 3;

  /** Chance of setting any speed apart where all keep together. */
  private static final double ALPHA = 0.05;

  public CommonShift {
    together = List.copyOf(together);
    apart = List.copyOf(apart);
  }

  /**
   * The common shift of some shifts.
   *
   * @return empty with fewer than {@value #LEAST_SPEEDS} speeds, where half of them or more stand
   *     apart, and where the mean of the rest is not a value that each of them may well have
   */
  static Optional<CommonShift> of(List<Estimate> speeds) {
    if (speeds.size() < LEAST_SPEEDS) {
      return Optional.empty();
    }
    double centre = Sample.of(speeds.stream().map(Estimate::stops).toList()).median().get();
    double[] p =
        Holm.adjusted(speeds.stream().mapToDouble(speed -> speed.pAgainst(centre)).toArray());
    List<Estimate> together = new ArrayList<>();
    List<MarkedSpeed> apart = new ArrayList<>();
    for (int i = 0; i < p.length; i++) {
      if (p[i] <= ALPHA) {
        apart.add(speeds.get(i).speed());
      } else {
        together.add(speeds.get(i));
      }
    }
    if (2 * together.size() <= speeds.size()) {
      return Optional.empty();
    }
    CommonShift common = mean(together, apart);
    return agree(together, common.stops()) ? Optional.of(common) : Optional.empty();
  }

  /**
   * Whether every speed may well have this value. A speed that scatters widely never stands apart,
   * yet it can pull the mean to where none of the others is; that mean is nothing they share.
   */
  private static boolean agree(List<Estimate> speeds, double common) {
    double[] p =
        Holm.adjusted(speeds.stream().mapToDouble(speed -> speed.pAgainst(common)).toArray());
    return Arrays.stream(p).allMatch(each -> each > ALPHA);
  }

  private static CommonShift mean(List<Estimate> together, List<MarkedSpeed> apart) {
    Estimate most =
        together.stream().max(Comparator.comparingDouble(s -> Math.abs(s.stops()))).orElseThrow();
    List<Estimate> rest = together.stream().filter(speed -> !speed.equals(most)).toList();
    double n = rest.size();
    double sum = 0;
    double scatter = 0;
    double perDegree = 0;
    double rig = 0;
    for (Estimate speed : rest) {
      sum += speed.stops();
      // Only what is a speed's own becomes less over more of them: a run lies off at all of them.
      double share = speed.ownVariance() / (n * n) + speed.runVariance() / n;
      scatter += share;
      perDegree += share * share / speed.scatterDegrees();
      rig += speed.rigVariance() / n;
    }
    double variance = scatter + rig;
    // Degrees of freedom after Welch and Satterthwaite: the speeds scatter differently.
    MeanShift mean =
        MeanShift.of(
            sum / n, Math.sqrt(variance), variance * variance / perDegree, SpeedSummary.LEVEL);
    return new CommonShift(
        mean.shift(),
        mean.interval(),
        mean.p(),
        together.stream().map(Estimate::speed).toList(),
        most.speed(),
        apart);
  }
}
