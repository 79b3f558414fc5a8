package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.AdjustedAt;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.SpringSettling;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.stats.SharedScatter;
import org.halflight.stats.Student;

/**
 * Two speeds that are adjusted at once: how far off each is since the last adjustment, and whether
 * that brought it closer.
 *
 * <p>Means of the firings before and after an adjustment are compared, of two against two as a
 * rule. The scatter of one firing is taken as the same all through the run: it is pooled over the
 * firings of the speed between any two adjustments, around the mean of each such stretch (the mean
 * square within groups of an analysis of variance, with the sum of their {@code n - 1} as degrees
 * of freedom). Where the other speed, pooled with it, scatters more, that holds for both, so that
 * two firings which happen to agree prove nothing. The standard error of the difference is {@code s
 * sqrt(1/n1 + 1/n2)}, and it is beyond the scatter from Student's t of 95 % on.
 *
 * @param first the slower speed
 * @param second the faster one
 */
public record TwoAtOnce(Side first, Side second) {
  /** No shutter scatters less than this for certain, in stops: our own limit. */
  static final double LEAST_SCATTER_STOPS = 0.01;

  /** What an adjustment did to a speed. */
  public enum Change {
    /** The mean is nearer to the marking, by more than the scatter. */
    CLOSER,
    /** It is further off, by more than the scatter. */
    FURTHER,
    /** It went past the marking and is about as far off on its other side. */
    ACROSS,
    /** Nothing beyond the scatter. */
    NO_CHANGE,
    /** There is no adjustment, or firings before or after it are missing. */
    NOT_YET
  }

  /**
   * One of the two speeds.
   *
   * @param firings timed since the last adjustment
   * @param errorStops their mean error
   * @param plusMinusStops half the interval of that mean at 95 %, by the pooled scatter
   * @param change what the last adjustment did
   * @param beforeStops mean error before it
   * @param isWithin whether the speed is within tolerance by its decision rule
   */
  public record Side(
      MarkedSpeed speed,
      int firings,
      OptionalDouble errorStops,
      OptionalDouble plusMinusStops,
      Change change,
      OptionalDouble beforeStops,
      boolean isWithin) {
    /** Whether it has the firings that an adjustment is followed by. */
    public boolean isFired() {
      return firings >= TwoSpeeds.FIRINGS;
    }
  }

  /** Whether both are within tolerance: no more adjusting. */
  public boolean isEnough() {
    return first.isWithin() && second.isWithin();
  }

  /** Whether both were fired since the last adjustment, so that the next one may follow. */
  public boolean isFired() {
    return first.isFired() && second.isFired();
  }

  /** The side of a speed. */
  public Optional<Side> at(MarkedSpeed speed) {
    return first.speed().equals(speed)
        ? Optional.of(first)
        : second.speed().equals(speed) ? Optional.of(second) : Optional.empty();
  }

  /**
   * Of a session.
   *
   * @param setup of the run
   * @param run counts from 1
   * @param results all firings of the session
   * @param adjusted all adjustments of the session
   */
  public static TwoAtOnce of(
      TwoSpeeds two,
      RunSetup setup,
      int run,
      List<FiringResult> results,
      List<AdjustedAt> adjusted) {
    List<List<FiringResult>> one = stretches(two.first(), run, results, adjusted);
    List<List<FiringResult>> other = stretches(two.second(), run, results, adjusted);
    return of(
        two,
        one.stream().map(TwoAtOnce::errors).toList(),
        other.stream().map(TwoAtOnce::errors).toList(),
        isWithin(one, setup),
        isWithin(other, setup));
  }

  /** The same of one speed that is adjusted by itself. */
  public static Side alone(
      MarkedSpeed speed,
      RunSetup setup,
      int run,
      List<FiringResult> results,
      List<AdjustedAt> adjusted) {
    List<List<FiringResult>> one = stretches(speed, run, results, adjusted);
    List<Sample> errors = one.stream().map(TwoAtOnce::errors).toList();
    return side(speed, errors, within(errors), isWithin(one, setup));
  }

  /**
   * On plain values.
   *
   * @param one errors of the first speed in stops: a sample for each stretch between adjustments,
   *     the last since the last adjustment; some may be empty
   * @param other the same of the second speed
   */
  public static TwoAtOnce of(
      TwoSpeeds two,
      List<Sample> one,
      List<Sample> other,
      boolean isFirstWithin,
      boolean isSecondWithin) {
    Optional<SharedScatter> ofOne = within(one);
    Optional<SharedScatter> ofOther = within(other);
    return new TwoAtOnce(
        side(two.first(), one, scatter(ofOne, ofOther), isFirstWithin),
        side(two.second(), other, scatter(ofOther, ofOne), isSecondWithin));
  }

  private static Side side(
      MarkedSpeed speed, List<Sample> stretches, Optional<SharedScatter> scatter, boolean within) {
    Sample now = stretches.get(stretches.size() - 1);
    Optional<Sample> before =
        stretches.subList(0, stretches.size() - 1).stream()
            .filter(each -> each.n() > 0)
            .reduce((earlier, later) -> later);
    boolean isKnown = now.n() >= TwoSpeeds.FIRINGS && scatter.isPresent();
    return new Side(
        speed,
        now.n(),
        mean(now),
        isKnown ? OptionalDouble.of(reach(scatter.get(), 1.0 / now.n())) : OptionalDouble.empty(),
        isKnown && before.isPresent()
            ? change(
                before.get().mean().get(),
                now.mean().get(),
                reach(scatter.get(), 1.0 / now.n() + 1.0 / before.get().n()))
            : Change.NOT_YET,
        before.map(TwoAtOnce::mean).orElse(OptionalDouble.empty()),
        within);
  }

  private static Change change(double before, double now, double reach) {
    double closer = Math.abs(before) - Math.abs(now);
    if (Math.abs(closer) > reach) {
      return closer > 0 ? Change.CLOSER : Change.FURTHER;
    }
    return Math.abs(now - before) > reach ? Change.ACROSS : Change.NO_CHANGE;
  }

  /** What a difference must exceed. */
  private static double reach(SharedScatter scatter, double oneOverFirings) {
    return Student.quantile((1 + SpeedSummary.LEVEL) / 2, scatter.degrees())
        * scatter.sd()
        * Math.sqrt(oneOverFirings);
  }

  /** Of one speed beside another: its own where it scatters more than both together. */
  private static Optional<SharedScatter> scatter(
      Optional<SharedScatter> own, Optional<SharedScatter> other) {
    if (own.isEmpty() || other.isEmpty()) {
      return own.or(() -> other);
    }
    double degrees = own.get().degrees() + other.get().degrees();
    double pooled =
        (own.get().variance() * own.get().degrees()
                + other.get().variance() * other.get().degrees())
            / degrees;
    return own.get().variance() > pooled ? own : Optional.of(new SharedScatter(pooled, degrees));
  }

  private static Optional<SharedScatter> within(List<Sample> stretches) {
    List<Sample> scattered = stretches.stream().filter(each -> each.n() > 1).toList();
    return scattered.isEmpty()
        ? Optional.empty()
        : Optional.of(SharedScatter.within(scattered))
            .map(
                its ->
                    new SharedScatter(
                        Math.max(its.variance(), LEAST_SCATTER_STOPS * LEAST_SCATTER_STOPS),
                        its.degrees()));
  }

  private static OptionalDouble mean(Sample sample) {
    return sample.n() == 0 ? OptionalDouble.empty() : OptionalDouble.of(sample.mean().get());
  }

  private static Sample errors(List<FiringResult> firings) {
    return Sample.of(firings.stream().map(each -> each.errorStops().orElseThrow()).toList());
  }

  /** Timed firings of a speed between adjustments; the last stretch is since the last one. */
  private static List<List<FiringResult>> stretches(
      MarkedSpeed speed, int run, List<FiringResult> results, List<AdjustedAt> adjusted) {
    List<AdjustedAt> ofRun = adjusted.stream().filter(each -> each.run() == run).toList();
    List<FiringResult> timed =
        results.stream()
            .filter(each -> each.run() == run && each.shown().equals(Optional.of(speed)))
            .filter(each -> each.isGood() && each.errorStops().isPresent())
            .toList();
    List<List<FiringResult>> stretches = new ArrayList<>();
    int from = 0;
    for (int at = 0; at <= ofRun.size(); at++) {
      int begin = from;
      int end = at < ofRun.size() ? ofRun.get(at).afterFiring() : Integer.MAX_VALUE;
      stretches.add(
          timed.stream().filter(each -> each.number() > begin && each.number() <= end).toList());
      from = at < ofRun.size() ? SpringSettling.lastUncounted(ofRun.get(at), results) : end;
    }
    return stretches;
  }

  private static boolean isWithin(List<List<FiringResult>> stretches, RunSetup setup) {
    List<FiringResult> now = stretches.get(stretches.size() - 1);
    return now.size() >= TwoSpeeds.FIRINGS
        && SpeedSummary.underWay(now, setup).verdict() == Verdict.WITHIN;
  }
}
