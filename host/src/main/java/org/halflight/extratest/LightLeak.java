package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;

/**
 * Light that passes the shut blades, cocked and not: the lamp on, less the same with the lamp
 * covered. No light may pass closed blades (L. P. Clerc, Photography, Theory and Practice, sect.
 * 139). Seen at the centre of the picture only.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run
 * @param uncocked shut and not cocked; empty where it was skipped
 * @param cocked shut and cocked, likewise
 */
public record LightLeak(
    int run, Optional<Phase> phase, Optional<Reading> uncocked, Optional<Reading> cocked)
    implements ExtraTest {
  /** Covers 95 cases of 100 where the uncertainty is normal (JCGM 100, table G.1: 1.96). */
  public static final double COVERAGE = 1.96;

  /** Above this share of full light the shutter was not shut. Our choice: a leak is no hole. */
  public static final double OPEN_SHARE = 0.2;

  /** An hour in the light of the lamp. */
  public static final double HOUR_SECONDS = 3600;

  /** What a difference says. */
  public enum Found {
    /** Nothing above the floor. */
    NOTHING,
    /** Light passes. */
    LEAK,
    /** So much light that the shutter was open. */
    SHUTTER_OPEN,
    /** Brighter with the lamp covered: it was not, or the room's light got in. */
    COVERED_BRIGHTER
  }

  /**
   * The difference that one state of the shutter made.
   *
   * @param differenceCounts lamp on less lamp covered
   * @param uncertaintyCounts standard uncertainty of it
   * @param spanCounts full-open light less lamp covered; empty where full light was not set
   * @param blocks milliseconds of light with the lamp on
   */
  public record Reading(
      double differenceCounts, double uncertaintyCounts, OptionalDouble spanCounts, int blocks) {
    /** What it says. */
    public Found found() {
      double least = COVERAGE * uncertaintyCounts;
      if (differenceCounts < -least) {
        return Found.COVERED_BRIGHTER;
      }
      if (differenceCounts <= least) {
        return Found.NOTHING;
      }
      return spanCounts.isPresent() && differenceCounts > OPEN_SHARE * spanCounts.getAsDouble()
          ? Found.SHUTTER_OPEN
          : Found.LEAK;
    }

    /** How far below full light the leak is, in stops; empty without a leak or full light. */
    public OptionalDouble belowFullStops() {
      return found() == Found.LEAK ? below(differenceCounts) : OptionalDouble.empty();
    }

    /** The least leak that this reading would have shown, in stops below full light. */
    public OptionalDouble floorStops() {
      return below(COVERAGE * uncertaintyCounts);
    }

    private OptionalDouble below(double counts) {
      return spanCounts.isPresent() && spanCounts.getAsDouble() > 0 && counts > 0
          ? OptionalDouble.of(Math.log(spanCounts.getAsDouble() / counts) / Math.log(2))
          : OptionalDouble.empty();
    }
  }

  /** The leak test of one run: the last reading of each kind; empty where it lacks one side. */
  static Optional<LightLeak> of(ExtraTests.Of run, List<LightReading> readings) {
    Optional<LightReading> covered = last(readings, What.LAMP_COVERED);
    if (covered.isEmpty()) {
      return Optional.empty();
    }
    Optional<Reading> uncocked =
        last(readings, What.SHUT_UNCOCKED).map(shut -> difference(shut, covered.get()));
    Optional<Reading> cocked =
        last(readings, What.SHUT_COCKED).map(shut -> difference(shut, covered.get()));
    return uncocked.isEmpty() && cocked.isEmpty()
        ? Optional.empty()
        : Optional.of(new LightLeak(run.number(), run.phase(), uncocked, cocked));
  }

  private static Reading difference(LightReading shut, LightReading covered) {
    return new Reading(
        shut.counts() - covered.counts(),
        Math.hypot(shut.standardUncertaintyCounts(), covered.standardUncertaintyCounts()),
        shut.fullCounts().isPresent()
            ? OptionalDouble.of(shut.fullCounts().getAsDouble() - covered.counts())
            : OptionalDouble.empty(),
        shut.blocks());
  }

  private static Optional<LightReading> last(List<LightReading> readings, What what) {
    return readings.stream().filter(r -> r.what() == what).reduce((first, second) -> second);
  }

  /** Both readings that there are. */
  public List<Reading> read() {
    return Stream.of(uncocked, cocked).flatMap(Optional::stream).toList();
  }

  /**
   * The exposure with the shutter open that an hour of a leak in the light of this lamp comes to,
   * in seconds.
   */
  public static double hourSeconds(double belowFullStops) {
    return HOUR_SECONDS * Math.pow(2, -belowFullStops);
  }

  @Override
  public String what() {
    return "light-leak";
  }

  @Override
  public CheckItem item() {
    return CheckItem.BLADES;
  }

  @Override
  public CheckState state() {
    if (read().stream().anyMatch(reading -> reading.found() == Found.LEAK)) {
      return CheckState.FAULT;
    }
    return read().stream().allMatch(reading -> reading.found() == Found.NOTHING)
        ? CheckState.OK
        : CheckState.NOT_TESTED;
  }

  @Override
  public List<String> lacks() {
    List<String> lacks = new ArrayList<>();
    if (uncocked.isEmpty()) {
      lacks.add("leak-uncocked");
    }
    if (cocked.isEmpty()) {
      lacks.add("leak-cocked");
    }
    return lacks;
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    uncocked.ifPresent(reading -> add(reading, "not cocked", values));
    cocked.ifPresent(reading -> add(reading, "cocked", values));
    return values;
  }

  private static void add(Reading reading, String at, List<ExtraTestValue> values) {
    values.add(ExtraTestValue.single("leak-difference", at, reading.differenceCounts(), "counts"));
    values.add(
        ExtraTestValue.single("leak-uncertainty", at, reading.uncertaintyCounts(), "counts"));
    reading
        .belowFullStops()
        .ifPresent(
            stops ->
                values.add(ExtraTestValue.single("leak-below-full-light", at, stops, "stops")));
    reading
        .floorStops()
        .ifPresent(
            stops ->
                values.add(ExtraTestValue.single("floor-below-full-light", at, stops, "stops")));
  }
}
