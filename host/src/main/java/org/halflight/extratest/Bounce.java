package org.halflight.extratest;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.halflight.exposure.Exposure;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.AllTheLight;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.ReboundOfRun;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;

/**
 * Light outside the main opening: blades that rebound after closing, light before the opening, and
 * light while cocking. A closing rebound gives a second, faint image, and no light may pass closed
 * blades (L. P. Clerc, Photography, Theory and Practice, sect. 139).
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run
 * @param speeds each marked speed that was timed, slow to fast
 * @param cockings times that light came while cocking
 * @param leaks how many of them came though the blades should have stayed shut
 */
public record Bounce(int run, Optional<Phase> phase, List<AtSpeed> speeds, int cockings, int leaks)
    implements ExtraTest {
  /**
   * Over-exposure by bounce from which blades are at fault, in stops: 7 % more light, a second
   * image under four stops fainter than the first. Our choice; there is no standard's limit.
   */
  public static final double FAULT_STOPS = 0.1;

  /** Less light than this share of the exposure is not told from none. Our choice. */
  public static final double LEAST_SHARE = 0.001;

  /** The quantity: light after closing as a share of the main opening. */
  public static final String AFTER_CLOSING = "light-after-closing";

  /** The quantity: how much more exposure that is. */
  public static final String OVER_EXPOSURE = "over-exposure-by-bounce";

  /** The quantity: light before the main opening as a share of it. */
  public static final String BEFORE_OPENING = "light-before-opening";

  /**
   * What one marked speed came to.
   *
   * @param late light after closing as a share of the main opening, over the firings, as {@link
   *     AllTheLight} has it: so much of the time that verdicts are about is rebound
   * @param early light before the opening, likewise
   * @param curves how many of the firings had a light curve, which sees fainter light
   */
  public record AtSpeed(MarkedSpeed speed, Sample late, Sample early, int curves) {
    /** Mean light after closing as a share of the main opening. */
    public double lateShare() {
      return late.mean().get();
    }

    /** How much more exposure that is, in stops: {@code log2(1 + share)}. */
    public double overExposureStops() {
      return Bounce.overExposureStops(lateShare());
    }
  }

  public Bounce {
    speeds = List.copyOf(speeds);
  }

  /** The bounce of one run; empty where nothing was timed and nothing came while cocking. */
  static Optional<Bounce> of(ExtraTests.Of run, List<FiringResult> firings) {
    Map<MarkedSpeed, List<FiringResult>> bySpeed =
        firings.stream()
            .filter(FiringResult::answersTheQuestion)
            // Bounce is seen also where nothing decides the time yet.
            .filter(firing -> firing.exposure() instanceof Exposure.Timed)
            .filter(firing -> firing.shown().isPresent())
            .collect(
                groupingBy(
                    firing -> firing.shown().orElseThrow(),
                    () ->
                        new TreeMap<>(
                            Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed()),
                    toList()));
    List<AtSpeed> speeds = new ArrayList<>();
    ReboundOfRun ofRun = ReboundOfRun.of(firings);
    bySpeed.forEach((speed, its) -> speeds.add(at(speed, its, ofRun)));
    List<FiringResult> cocked =
        firings.stream().filter(f -> f.outcome() == Outcome.LIGHT_WHILE_COCKING).toList();
    int leaks = (int) cocked.stream().filter(f -> f.notes().leak()).count();
    return speeds.isEmpty() && cocked.isEmpty()
        ? Optional.empty()
        : Optional.of(new Bounce(run.number(), run.phase(), speeds, cocked.size(), leaks));
  }

  private static AtSpeed at(MarkedSpeed speed, List<FiringResult> firings, ReboundOfRun ofRun) {
    List<AllTheLight> light =
        firings.stream().map(f -> AllTheLight.of(f, ofRun.secondsAt(speed))).toList();
    return new AtSpeed(
        speed,
        Sample.of(light.stream().map(AllTheLight::reboundShare).toList()),
        Sample.of(light.stream().map(AllTheLight::earlyShare).toList()),
        (int) firings.stream().filter(f -> f.reboundSeen().isPresent()).count());
  }

  /** The over-exposure in stops by light outside the opening that is a share of the exposure. */
  public static double overExposureStops(double share) {
    if (!(share >= 0)) {
      throw new IllegalArgumentException("a share of light is 0 or more, not " + share);
    }
    return Math.log1p(share) / Math.log(2);
  }

  /** The speed with the most light after closing. */
  public Optional<AtSpeed> worst() {
    return speeds.stream().max(Comparator.comparingDouble(AtSpeed::lateShare));
  }

  /** The speeds with light before their opening. */
  public List<AtSpeed> early() {
    return speeds.stream().filter(at -> at.early().mean().get() >= LEAST_SHARE).toList();
  }

  @Override
  public String what() {
    return "bounce";
  }

  @Override
  public CheckItem item() {
    return CheckItem.BLADES;
  }

  @Override
  public CheckState state() {
    boolean bounces = worst().filter(at -> at.overExposureStops() >= FAULT_STOPS).isPresent();
    if (bounces || leaks > 0) {
      return CheckState.FAULT;
    }
    return speeds.isEmpty() ? CheckState.NOT_TESTED : CheckState.OK;
  }

  /** Edges alone do not see light below the low level, a fifth of full light. */
  @Override
  public List<String> lacks() {
    return speeds.stream().anyMatch(at -> at.curves() > 0) ? List.of() : List.of("bounce-curve");
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    for (AtSpeed at : speeds) {
      String speed = at.speed().label();
      values.add(ExtraTestValue.ofShares(AFTER_CLOSING, speed, at.late()));
      values.add(ExtraTestValue.single(OVER_EXPOSURE, speed, at.overExposureStops(), "stops"));
      values.add(ExtraTestValue.ofShares(BEFORE_OPENING, speed, at.early()));
    }
    if (cockings > 0) {
      values.add(ExtraTestValue.single("light-while-cocking", "", cockings, "count"));
      values.add(ExtraTestValue.single("leaks-while-cocking", "", leaks, "count"));
    }
    return values;
  }
}
