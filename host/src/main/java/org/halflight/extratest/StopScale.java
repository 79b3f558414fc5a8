package org.halflight.extratest;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LightLevels;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;

/**
 * The light that each marked stop lets through against its marking, with the shutter held open:
 * stopping down from the widest and opening up again. All stops are held against the first one.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run
 * @param stops in the order of the way down, the widest first
 * @param toleranceStops how far a stop may be off its marking
 * @param driftStops how much brighter the first stop read at the end than at the start, less than 0
 *     for darker; empty where it was not returned to
 * @param trouble why there is no verdict; empty where there is one
 */
public record StopScale(
    int run,
    Optional<Phase> phase,
    List<AtStop> stops,
    double toleranceStops,
    OptionalDouble driftStops,
    Optional<Trouble> trouble)
    implements ExtraTest {
  /** The first stop comes back this near, or lamp or sensor has moved. Our choice. */
  public static final double DRIFT_LIMIT_STOPS = 0.05;

  /** Less light than this above the dark says too little: 4 counts, a tenth of a stop unsure. */
  public static final double LEAST_COUNTS = 4;

  private static final double COVERAGE = LightLeak.COVERAGE;

  /** Why there is no verdict on any stop. */
  public enum Trouble {
    /** No dark level: the light was not set and the lamp not covered. */
    NO_DARK_LEVEL,
    /** No light at the first stop. */
    SHUTTER_NOT_OPEN,
    /** Only one stop was read. */
    ONE_STOP,
    /** The first stop is at the end of the scale. */
    FIRST_SATURATED,
    /** No light any more when the first stop was read again. */
    SHUTTER_CLOSED,
    /** The light was not the same at the end as at the start. */
    LAMP_MOVED
  }

  /** How a stop is. */
  public enum Verdict {
    /** The one that the others are held against. */
    FIRST,
    WITHIN,
    /** More light than marked. */
    BRIGHT,
    /** Less light than marked. */
    DARK,
    /** The limit lies within the uncertainty. */
    TOO_CLOSE_TO_CALL,
    /** Too little light above the dark for a figure. */
    TOO_DARK,
    /** At the end of the converter's scale. */
    SATURATED
  }

  /**
   * One stop.
   *
   * @param number as engraved
   * @param markedStops how far below the first it is by its marking
   * @param downStops light against the first in stops, stopping down; below 0 is less; empty where
   *     it was not read that way or has no figure
   * @param upStops the same, opening up
   * @param uncertaintyStops standard uncertainty of one such figure
   * @param verdict how it is, the worse way counting
   */
  public record AtStop(
      FNumber number,
      double markedStops,
      OptionalDouble downStops,
      OptionalDouble upStops,
      double uncertaintyStops,
      Verdict verdict) {
    /** Light against the marking in stops, both ways in the mean; above 0 is too much light. */
    public OptionalDouble errorStops() {
      OptionalDouble light = mean(downStops, upStops);
      return light.isPresent()
          ? OptionalDouble.of(light.getAsDouble() + markedStops)
          : OptionalDouble.empty();
    }

    /** The larger of the errors of both ways, by its size. */
    public OptionalDouble worstStops() {
      OptionalDouble error = OptionalDouble.empty();
      for (OptionalDouble light : List.of(downStops, upStops)) {
        if (light.isPresent()) {
          double its = light.getAsDouble() + markedStops;
          error =
              error.isEmpty() || Math.abs(its) > Math.abs(error.getAsDouble())
                  ? OptionalDouble.of(its)
                  : error;
        }
      }
      return error;
    }

    /** Whether the worse of two ways is that of opening up. */
    public boolean isWorseOpeningUp() {
      return downStops.isPresent()
          && upStops.isPresent()
          && Math.abs(upStops.getAsDouble() + markedStops)
              > Math.abs(downStops.getAsDouble() + markedStops);
    }

    /** How much more light it lets through on the way up than on the way down: backlash. */
    public OptionalDouble backlashStops() {
      return downStops.isPresent() && upStops.isPresent()
          ? OptionalDouble.of(upStops.getAsDouble() - downStops.getAsDouble())
          : OptionalDouble.empty();
    }

    private static OptionalDouble mean(OptionalDouble one, OptionalDouble other) {
      if (one.isPresent() && other.isPresent()) {
        return OptionalDouble.of((one.getAsDouble() + other.getAsDouble()) / 2);
      }
      return one.isPresent() ? one : other;
    }
  }

  /**
   * From one stop to the next.
   *
   * @param from the wider
   * @param to the smaller
   * @param markedStops by the markings
   * @param measuredStops by the light
   */
  public record Click(FNumber from, FNumber to, double markedStops, double measuredStops) {
    /** How much further apart they are than marked, in stops. */
    public double errorStops() {
      return measuredStops - markedStops;
    }
  }

  public StopScale {
    stops = List.copyOf(stops);
  }

  /** The last trial of a run; empty where no stop was read. */
  static Optional<StopScale> of(
      ExtraTests.Of run, List<LightReading> readings, double toleranceStops) {
    List<LightReading> trial = lastTrial(readings);
    return trial.isEmpty()
        ? Optional.empty()
        : Optional.of(new StopTrial(trial, dark(readings), toleranceStops).scale(run));
  }

  /** From where the stop was last turned down again after it had been turned up. */
  private static List<LightReading> lastTrial(List<LightReading> readings) {
    List<LightReading> trial = new ArrayList<>();
    for (LightReading reading : readings) {
      if (reading.what() != What.STOP || FNumber.find(reading.at()).isEmpty()) {
        continue;
      }
      boolean anew =
          !trial.isEmpty() && !reading.opening() && trial.get(trial.size() - 1).opening();
      boolean again =
          !trial.isEmpty() && !reading.opening() && reading.at().equals(trial.get(0).at());
      if (anew || again) {
        trial.clear();
      }
      trial.add(reading);
    }
    return trial;
  }

  private static OptionalDouble dark(List<LightReading> readings) {
    Optional<LightReading> covered =
        readings.stream()
            .filter(r -> r.what() == What.LAMP_COVERED)
            .reduce((first, second) -> second);
    if (covered.isPresent()) {
      return OptionalDouble.of(covered.get().counts());
    }
    return readings.stream()
        .filter(r -> r.darkCounts().isPresent())
        .reduce((first, second) -> second)
        .map(LightReading::darkCounts)
        .orElse(OptionalDouble.empty());
  }

  /** Works out one trial. */
  private static final class StopTrial {
    private final List<LightReading> trial;
    private final OptionalDouble dark;
    private final double toleranceStops;
    private final LightReading first;

    StopTrial(List<LightReading> trial, OptionalDouble dark, double toleranceStops) {
      this.trial = trial;
      this.dark = dark;
      this.toleranceStops = toleranceStops;
      this.first = trial.get(0);
    }

    StopScale scale(ExtraTests.Of run) {
      Optional<Trouble> before = beforeAnyFigure();
      if (before.isPresent()) {
        return new StopScale(
            run.number(), run.phase(), List.of(), toleranceStops, OptionalDouble.empty(), before);
      }
      Optional<LightReading> back = last(first.at(), true);
      OptionalDouble drift = back.map(again -> ratio(light(again))).orElse(OptionalDouble.empty());
      Optional<Trouble> atTheEnd =
          back.isPresent() && drift.isEmpty()
              ? Optional.of(Trouble.SHUTTER_CLOSED)
              : drift.isPresent() && Math.abs(drift.getAsDouble()) > DRIFT_LIMIT_STOPS
                  ? Optional.of(Trouble.LAMP_MOVED)
                  : Optional.empty();
      return new StopScale(run.number(), run.phase(), atStops(), toleranceStops, drift, atTheEnd);
    }

    private Optional<Trouble> beforeAnyFigure() {
      if (dark.isEmpty()) {
        return Optional.of(Trouble.NO_DARK_LEVEL);
      }
      if (first.counts() - dark.getAsDouble() < LEAST_COUNTS) {
        return Optional.of(Trouble.SHUTTER_NOT_OPEN);
      }
      if (first.counts() > LightLevels.SATURATED_COUNTS) {
        return Optional.of(Trouble.FIRST_SATURATED);
      }
      boolean one = trial.stream().map(LightReading::at).distinct().count() < 2;
      return one ? Optional.of(Trouble.ONE_STOP) : Optional.empty();
    }

    private List<AtStop> atStops() {
      Map<String, FNumber> numbers = new LinkedHashMap<>();
      trial.forEach(r -> numbers.put(r.at(), FNumber.find(r.at()).orElseThrow()));
      List<AtStop> stops = new ArrayList<>();
      for (FNumber number : numbers.values()) {
        stops.add(atStop(number));
      }
      return stops;
    }

    private AtStop atStop(FNumber number) {
      boolean isFirst = number.equals(FNumber.find(first.at()).orElseThrow());
      double marked =
          number.apertureValue() - FNumber.find(first.at()).orElseThrow().apertureValue();
      Optional<LightReading> down = last(number.engraved(), false);
      Optional<LightReading> up = last(number.engraved(), true);
      OptionalDouble downStops = down.map(this::stops).orElse(OptionalDouble.empty());
      OptionalDouble upStops = up.map(this::stops).orElse(OptionalDouble.empty());
      double uncertainty =
          down.or(() -> up).map(this::uncertaintyStops).orElse(Double.POSITIVE_INFINITY);
      AtStop open = new AtStop(number, marked, downStops, upStops, uncertainty, Verdict.TOO_DARK);
      Verdict verdict =
          isFirst
              ? Verdict.FIRST
              : open.worstStops().isPresent()
                  ? verdict(open.worstStops().getAsDouble(), uncertainty)
                  : isSaturated(down.or(() -> up).orElseThrow())
                      ? Verdict.SATURATED
                      : Verdict.TOO_DARK;
      return new AtStop(number, marked, downStops, upStops, uncertainty, verdict);
    }

    private Verdict verdict(double error, double uncertainty) {
      double unsure = COVERAGE * uncertainty;
      if (Math.abs(error) + unsure <= toleranceStops) {
        return Verdict.WITHIN;
      }
      if (Math.abs(error) - unsure > toleranceStops) {
        return error > 0 ? Verdict.BRIGHT : Verdict.DARK;
      }
      return Verdict.TOO_CLOSE_TO_CALL;
    }

    private Optional<LightReading> last(String at, boolean opening) {
      return trial.stream()
          .filter(r -> r.at().equals(at) && r.opening() == opening)
          .reduce((one, other) -> other);
    }

    /** Light against the first reading, in stops; empty where it is too dark or saturated. */
    private OptionalDouble stops(LightReading reading) {
      return isSaturated(reading) ? OptionalDouble.empty() : ratio(light(reading));
    }

    private OptionalDouble ratio(double light) {
      return light < LEAST_COUNTS
          ? OptionalDouble.empty()
          : OptionalDouble.of(Math.log(light / light(first)) / Math.log(2));
    }

    private double light(LightReading reading) {
      return reading.counts() - dark.getAsDouble();
    }

    private double uncertaintyStops(LightReading reading) {
      double light = reading.counts() - dark.getAsDouble();
      if (!(light > 0)) {
        return Double.POSITIVE_INFINITY;
      }
      // The dark level is as unsure as a reading, and both readings lean on it.
      double own =
          Math.hypot(reading.standardUncertaintyCounts(), first.standardUncertaintyCounts());
      double firsts = first.standardUncertaintyCounts() / (first.counts() - dark.getAsDouble());
      return Math.hypot(own / light, firsts) / Math.log(2);
    }

    private static boolean isSaturated(LightReading reading) {
      return reading.counts() > LightLevels.SATURATED_COUNTS;
    }
  }

  /** From stop to stop, where both have a figure. */
  public List<Click> clicks() {
    List<Click> clicks = new ArrayList<>();
    for (int i = 1; i < stops.size(); i++) {
      AtStop from = stops.get(i - 1);
      AtStop to = stops.get(i);
      if (from.errorStops().isPresent() && to.errorStops().isPresent()) {
        double marked = to.markedStops() - from.markedStops();
        clicks.add(
            new Click(
                from.number(),
                to.number(),
                marked,
                marked - to.errorStops().getAsDouble() + from.errorStops().getAsDouble()));
      }
    }
    return clicks;
  }

  /** The stops with a verdict. */
  public List<AtStop> having(Verdict verdict) {
    return stops.stream().filter(stop -> stop.verdict() == verdict).toList();
  }

  @Override
  public String what() {
    return "stop-scale";
  }

  @Override
  public CheckItem item() {
    return CheckItem.STOP_BLADES;
  }

  @Override
  public CheckState state() {
    if (trouble.isPresent()) {
      return CheckState.NOT_TESTED;
    }
    if (!having(Verdict.BRIGHT).isEmpty() || !having(Verdict.DARK).isEmpty()) {
      return CheckState.FAULT;
    }
    return having(Verdict.WITHIN).isEmpty() || !having(Verdict.TOO_CLOSE_TO_CALL).isEmpty()
        ? CheckState.NOT_TESTED
        : CheckState.OK;
  }

  @Override
  public List<String> lacks() {
    List<String> lacks = new ArrayList<>();
    if (!having(Verdict.TOO_DARK).isEmpty() || !having(Verdict.SATURATED).isEmpty()) {
      lacks.add("stops-not-read");
    }
    if (driftStops.isEmpty()) {
      lacks.add("stops-not-returned");
    }
    return lacks;
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    for (AtStop stop : stops) {
      String at = "f/" + stop.number().engraved();
      values.add(ExtraTestValue.single("exact-f-number", at, stop.number().exact(), "f-number"));
      put("light-stopping-down", at, stop.downStops(), values);
      put("light-opening-up", at, stop.upStops(), values);
      put("error-of-the-stop", at, stop.errorStops(), values);
      put("backlash", at, stop.backlashStops(), values);
      if (Double.isFinite(stop.uncertaintyStops())) {
        put("stop-uncertainty", at, OptionalDouble.of(stop.uncertaintyStops()), values);
      }
    }
    put("light-come-back", "", driftStops, values);
    if (stops.isEmpty()) {
      values.add(ExtraTestValue.single("stops-read", "", 0, "count"));
    }
    return values;
  }

  private static void put(
      String quantity, String at, OptionalDouble stops, List<ExtraTestValue> values) {
    stops.ifPresent(value -> values.add(ExtraTestValue.single(quantity, at, value, "stops")));
  }
}
