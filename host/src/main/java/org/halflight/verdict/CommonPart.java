package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Holm;
import org.halflight.stats.Interval;
import org.halflight.stats.Sample;
import org.halflight.stats.Student;

/**
 * What all speeds have in common, told apart from what single speeds have on their own: the median
 * over the speeds is the centre, speeds that are shown to lie elsewhere (Student's t, Holm over the
 * speeds) stand aside, and the mean of the rest is the common part.
 *
 * @param stops mean of the speeds that keep together
 * @param interval of that mean, with the confidence of {@link SpeedSummary#LEVEL}
 * @param p the chance of a mean at least as far from zero where there is no common part
 * @param together the speeds that keep together, more than half of all
 * @param apart the speeds that lie elsewhere
 */
public record CommonPart(
    double stops,
    Interval interval,
    double p,
    List<MarkedSpeed> together,
    List<MarkedSpeed> apart) {
  /** Fewer speeds than this have nothing in common that one of them could stand apart from. */
  public static final int LEAST_SPEEDS = 3;

  /** Chance of setting any speed apart where all keep together. */
  private static final double ALPHA = 0.05;

  public CommonPart {
    together = List.copyOf(together);
    apart = List.copyOf(apart);
  }

  /**
   * @param leastApartStops a speed stands apart only if it lies at least so far from the centre
   * @return empty with fewer than {@value #LEAST_SPEEDS} speeds, where half of them or more stand
   *     apart, and where the mean of the rest is not a value that each of them may well have
   */
  public static Optional<CommonPart> of(List<Estimate> speeds, double leastApartStops) {
    if (speeds.size() < LEAST_SPEEDS) {
      return Optional.empty();
    }
    double centre = Sample.of(speeds.stream().map(Estimate::stops).toList()).median().get();
    double[] p =
        Holm.adjusted(speeds.stream().mapToDouble(speed -> speed.pAgainst(centre)).toArray());
    List<Estimate> together = new ArrayList<>();
    List<MarkedSpeed> apart = new ArrayList<>();
    for (int i = 0; i < p.length; i++) {
      Estimate speed = speeds.get(i);
      if (p[i] <= ALPHA && Math.abs(speed.stops() - centre) >= leastApartStops) {
        apart.add(speed.speed());
      } else {
        together.add(speed);
      }
    }
    if (2 * together.size() <= speeds.size()) {
      return Optional.empty();
    }
    CommonPart common = mean(together, apart);
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

  private static CommonPart mean(List<Estimate> together, List<MarkedSpeed> apart) {
    double sum = 0;
    double variance = 0;
    double perDegree = 0;
    for (Estimate speed : together) {
      double own = speed.standardError() * speed.standardError();
      sum += speed.stops();
      variance += own;
      perDegree += own * own / speed.degreesOfFreedom();
    }
    int n = together.size();
    double mean = sum / n;
    double standardError = Math.sqrt(variance) / n;
    // Degrees of freedom after Welch and Satterthwaite: the speeds scatter differently.
    double degrees = variance * variance / perDegree;
    double half = standardError * Student.quantile((1 + SpeedSummary.LEVEL) / 2, degrees);
    return new CommonPart(
        mean,
        new Interval(mean - half, mean + half, SpeedSummary.LEVEL),
        2 * Student.below(-Math.abs(mean / standardError), degrees),
        together.stream().map(Estimate::speed).toList(),
        apart);
  }
}
