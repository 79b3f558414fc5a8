package org.halflight.session;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.halflight.speeds.MarkedSpeed;

/**
 * What is to be fired and tried in a run.
 *
 * @param order the speeds to fire, in order
 * @param firingsPerSpeed good firings wanted of each, from 1
 * @param untimedTests B, T and the like where they are wanted, after the speeds
 * @param mostTries after so many tries a speed is done, whatever they brought
 */
public record RunPlan(
    List<MarkedSpeed> order, int firingsPerSpeed, List<UntimedTest> untimedTests, int mostTries) {
  /** Numbers of firings that are offered: a look, then those that a verdict is worth having of. */
  public static final List<Integer> OFFERED = List.of(3, 5, 7, 10);

  /** Earlier versions gave up a speed after so many tries, whatever was planned. */
  public static final int TRIES_OF_OLD = 10;

  private static final int LEAST_SPARE_TRIES = 5;

  private static final int FIRINGS_OF_STAGE = 3;

  /** A pinched shutter that hangs is not fired for ever. */
  private static final int TRIES_OF_STAGE = 5;

  public RunPlan {
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

  /**
   * A plan whose tries follow from it: half as many again, and five more at least, before a speed
   * is called erratic. Our choice; a plan of five has had its ten from the beginning.
   */
  public RunPlan(List<MarkedSpeed> order, int firingsPerSpeed, List<UntimedTest> untimedTests) {
    this(
        order,
        firingsPerSpeed,
        untimedTests,
        Math.max(TRIES_OF_OLD, firingsPerSpeed + Math.max(LEAST_SPARE_TRIES, firingsPerSpeed / 2)));
  }

  /**
   * The plan of a stage of assembly: B, the slowest speed three times, and the top speed, which
   * {@link RunSetup#firingsWanted} fires once.
   *
   * @param dial speeds, at least two
   */
  public static RunPlan ofStage(List<MarkedSpeed> dial) {
    Comparator<MarkedSpeed> byTime = Comparator.comparingDouble(MarkedSpeed::exactSeconds);
    return new RunPlan(
        List.of(Collections.max(dial, byTime), Collections.min(dial, byTime)),
        FIRINGS_OF_STAGE,
        List.of(UntimedTest.B),
        TRIES_OF_STAGE);
  }

  /** The same plan, given up after another number of tries. */
  RunPlan withMostTries(int tries) {
    return new RunPlan(order, firingsPerSpeed, untimedTests, tries);
  }

  /** All settings in the order in which they are shown, each once; the speeds first. */
  List<DialSetting> settings() {
    return Stream.concat(speeds(), tests()).distinct().toList();
  }

  /** The same with the speeds last. */
  List<DialSetting> settingsTestsFirst() {
    return Stream.concat(tests(), speeds()).distinct().toList();
  }

  private Stream<DialSetting> speeds() {
    return order.stream().map(DialSetting.Speed::new);
  }

  private Stream<DialSetting> tests() {
    return untimedTests.stream().map(DialSetting.Untimed::new);
  }
}
