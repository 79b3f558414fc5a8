package org.halflight.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;

/**
 * What a run is asked to do.
 *
 * @param camera the owner's label of the camera; may be empty
 * @param phase where in the work it stands
 * @param dial key of the dial, see {@link Dial#key}; {@link Dial#CUSTOM} where nobody said which
 *     speeds are on it
 * @param order the speeds to fire, in order
 * @param reference how the markings are read
 * @param firingsPerSpeed good firings wanted of each, from 1
 * @param untimedTests B, T and the like where they are wanted, after the speeds
 * @param customs what the camera wants
 * @param conditions what was noted about the set-up
 * @param criteria what its verdicts are about
 * @param mostTries after so many tries a speed is done, whatever they brought
 */
public record RunSetup(
    String camera,
    Phase phase,
    String dial,
    List<MarkedSpeed> order,
    Reference reference,
    int firingsPerSpeed,
    List<UntimedTest> untimedTests,
    CameraCustoms customs,
    RunConditions conditions,
    AcceptanceCriteria criteria,
    int mostTries) {
  /** Numbers of firings that are offered: a look, then those that a verdict is worth having of. */
  public static final List<Integer> PLANS = List.of(3, 5, 7, 10);

  /** Earlier versions gave up a speed after so many tries, whatever was planned. */
  public static final int TRIES_OF_OLD = 10;

  private static final int LEAST_SPARE_TRIES = 5;

  public RunSetup {
    Objects.requireNonNull(camera);
    Objects.requireNonNull(phase);
    Objects.requireNonNull(dial);
    Objects.requireNonNull(reference);
    Objects.requireNonNull(customs);
    Objects.requireNonNull(conditions);
    Objects.requireNonNull(criteria);
    order = List.copyOf(order);
    untimedTests = List.copyOf(untimedTests);
    if (order.isEmpty() && untimedTests.isEmpty()) {
      throw new IllegalArgumentException("a run has at least one speed or check");
    }
    if (firingsPerSpeed < 1) {
      throw new IllegalArgumentException("a run wants at least one firing of each speed");
    }
    if (mostTries < 1) {
      throw new IllegalArgumentException("a run tries a speed at least once: " + mostTries);
    }
  }

  /** A run whose tries follow its plan. */
  public RunSetup(
      String camera,
      Phase phase,
      String dial,
      List<MarkedSpeed> order,
      Reference reference,
      int firingsPerSpeed,
      List<UntimedTest> untimedTests,
      CameraCustoms customs,
      RunConditions conditions,
      AcceptanceCriteria criteria) {
    this(
        camera,
        phase,
        dial,
        order,
        reference,
        firingsPerSpeed,
        untimedTests,
        customs,
        conditions,
        criteria,
        mostTries(firingsPerSpeed));
  }

  /** A run whose verdicts are about the usual things. */
  public RunSetup(
      String camera,
      Phase phase,
      String dial,
      List<MarkedSpeed> order,
      Reference reference,
      int firingsPerSpeed,
      List<UntimedTest> untimedTests,
      CameraCustoms customs,
      RunConditions conditions) {
    this(
        camera,
        phase,
        dial,
        order,
        reference,
        firingsPerSpeed,
        untimedTests,
        customs,
        conditions,
        AcceptanceCriteria.USUAL);
  }

  /** A run of speeds only, with nothing noted. */
  public RunSetup(
      String camera,
      Phase phase,
      String dial,
      List<MarkedSpeed> order,
      Reference reference,
      int firingsPerSpeed) {
    this(
        camera,
        phase,
        dial,
        order,
        reference,
        firingsPerSpeed,
        List.of(),
        CameraCustoms.NONE,
        RunConditions.NONE);
  }

  /**
   * The most tries of a speed for a plan: half as many again, and five more at least, before it is
   * called erratic. Our choice; a plan of five has had its ten from the beginning.
   */
  public static int mostTries(int firingsPerSpeed) {
    return Math.max(
        TRIES_OF_OLD, firingsPerSpeed + Math.max(LEAST_SPARE_TRIES, firingsPerSpeed / 2));
  }

  /** The same run, given up after another number of tries. */
  public RunSetup withMostTries(int tries) {
    return new RunSetup(
        camera,
        phase,
        dial,
        order,
        reference,
        firingsPerSpeed,
        untimedTests,
        customs,
        conditions,
        criteria,
        tries);
  }

  /** Whether another set-up asks for the same, however many tries each allows. */
  public boolean asksTheSameAs(RunSetup other) {
    return withMostTries(other.mostTries).equals(other);
  }

  /** The same run under other conditions. */
  public RunSetup withConditions(RunConditions conditions) {
    return new RunSetup(
        camera,
        phase,
        dial,
        order,
        reference,
        firingsPerSpeed,
        untimedTests,
        customs,
        conditions,
        criteria,
        mostTries);
  }

  /** The same run with verdicts about something else. */
  public RunSetup withCriteria(AcceptanceCriteria criteria) {
    return new RunSetup(
        camera,
        phase,
        dial,
        order,
        reference,
        firingsPerSpeed,
        untimedTests,
        customs,
        conditions,
        criteria,
        mostTries);
  }

  /**
   * What a speed of this run is held against: what was chosen for it, else trade custom on the dial
   * of the run, however few of its speeds were fired. The one rule for all that shows a verdict.
   */
  public Tolerance tolerance(MarkedSpeed speed) {
    return criteria.tolerances().of(speed, markings());
  }

  /**
   * The dial that the speeds are on: the one that it was set up for, or one of just these speeds
   * where that is not known.
   */
  public Dial markings() {
    Optional<Dial> known = Dial.ofKey(dial).filter(each -> each.speeds().containsAll(order));
    if (known.isPresent() || order.isEmpty()) {
      return known.orElseGet(() -> Dial.builtIn().get(0));
    }
    List<MarkedSpeed> sorted =
        order.stream()
            .distinct()
            .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
            .toList();
    return new Dial(Dial.CUSTOM, sorted, reference);
  }

  /** All settings in the order in which they are shown, each once; the speeds first. */
  public List<DialSetting> settings() {
    List<DialSetting> settings = new ArrayList<>();
    order.forEach(speed -> settings.add(new DialSetting.Speed(speed)));
    untimedTests.forEach(test -> settings.add(new DialSetting.Untimed(test)));
    return settings.stream().distinct().toList();
  }
}
