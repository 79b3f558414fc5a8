package org.halflight.box;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.halflight.bench.CalibrationPlan;
import org.halflight.bench.EdgeTrainRun;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigWork;
import org.halflight.calibration.EdgeTrain;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.link.serial.SerialPorts;
import org.halflight.profile.ClockRate;
import org.halflight.rig.RigSelector;
import org.halflight.session.FiringResult;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.RampTravel;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.workflow.CalibrationSentences;

/**
 * What calibration is worth on the real firmware in its simulator, with everything wrong at once:
 * the clock, the front end, the comparators, and three lamps. Calibrated by its own reference LED
 * and a generator on the contact input through a pseudo-terminal, then fired in a session that uses
 * the profile. All figures are simulated; when commands reach the board depends on the machine, so
 * they differ a little from run to run.
 */
public final class CalibratedOnTheBoard {
  /** The clock of the bench, 3450 ppm fast, gains 1 ppm a minute. */
  static final double FAST_PPM = 3450;

  static final double LAG_SECONDS = 2e-6;

  private static final List<String> BENCH =
      List.of(
          "clock 3450 1",
          "light all 40 4000",
          "led all 3800",
          "lag all 2",
          "delay low 1 5",
          "delay high 3.5 5",
          "offset low 9",
          "offset high -14",
          "hysteresis 12",
          BenchInABox.NAMED);

  /** The usual plan with fewer pulses and the clock left out. */
  private static final CalibrationPlan PLAN =
      new CalibrationPlan(
          CalibrationPlan.USUAL.levels(), CalibrationPlan.USUAL.widthSeconds(), 5, 0, true);

  private static final double RAMP_SECONDS = 1e-3;
  private static final double[] LAMPS = {1, 0.75, 0.5};
  private static final List<String> SPEEDS = List.of("1/500", "1/60", "1");
  private static final int FIRINGS = 3;
  static final double LEVEL = 0.95;
  static final String HEADING = "## A calibrated rig on its real firmware";

  /** A mean error with what is stated for it, as shares of the true effective time. */
  record Deviation(double error, double expanded) {}

  /** One row of the table. */
  record Row(String speed, double lamp, Deviation before, Deviation after) {}

  /** What came of it. */
  record Outcome(RigCalibration.Calibrated calibration, List<Row> rows) {}

  private CalibratedOnTheBoard() {}

  /** Calibrates a bench and fires. */
  static Outcome run(Path folder) throws IOException, InterruptedException {
    try (BenchInABox box = BenchInABox.start(folder, BENCH)) {
      RigCalibration.Calibrated calibrated = calibrate(box);
      List<Row> rows = new ArrayList<>();
      for (String speed : SPEEDS) {
        box.curve(name(speed), curve(speed));
      }
      try (BoxBench bench =
          new BoxBench(box, folder.resolve("fired.session"), List.of(box.port()))) {
        bench.connect();
        bench.handle(
            new SessionInput.ProfileInUse(
                calibrated.profile(), LocalDate.EPOCH, OptionalInt.empty()));
        for (double lamp : LAMPS) {
          box.say(String.format(Locale.ROOT, "lamp +0 %.2f", lamp));
          bench.setLight();
          for (String speed : SPEEDS) {
            rows.add(row(bench, calibrated, speed, lamp));
          }
        }
      }
      return new Outcome(calibrated, List.copyOf(rows));
    }
  }

  private static RigCalibration.Calibrated calibrate(BenchInABox box) throws IOException {
    try (RigWork work =
        new RigWork(
            new LiveFeed(
                new SerialPorts(List.of(box.port())), RigSelector.of("BOX-0001"), box::nanos))) {
      while (work.greeting().isEmpty()) {
        work.step();
      }
      List<RigCalibration.Stage> stages = new ArrayList<>();
      RigCalibration.Outcome outcome =
          new RigCalibration(work, PLAN, 29, stages::add).run(LocalDate.EPOCH);
      if (outcome instanceof RigCalibration.Refused refused) {
        throw new AssertionError(
            "at " + stages + ": " + CalibrationSentences.refused(refused.refusal()));
      }
      return withGenerator(box, work, (RigCalibration.Calibrated) outcome);
    }
  }

  /** A generator on the contact input is done sooner than pings. It is silent again behind this. */
  private static RigCalibration.Calibrated withGenerator(
      BenchInABox box, RigWork work, RigCalibration.Calibrated by) throws IOException {
    long silentNanos = box.nanos() + 14_000_000_000L;
    box.say("burst +0.2 contact 2400 5000");
    EdgeTrainRun.Heard heard =
        (EdgeTrainRun.Heard)
            new EdgeTrainRun(
                    work, new EdgeTrain(100, 1, ClockRate.Source.GENERATOR), Channel.CONTACT)
                .run(5, share -> {});
    while (box.nanos() < silentNanos) {
      work.step();
    }
    return new RigCalibration.Calibrated(
        by.profile().withClock(((EdgeTrain.Found) heard.found()).rate()),
        by.pulses(),
        by.fit(),
        by.rampedExcessSeconds(),
        by.clock());
  }

  private static Row row(
      BoxBench bench, RigCalibration.Calibrated calibrated, String speed, double lamp)
      throws IOException {
    List<Exposure.Timed> before = new ArrayList<>();
    OptionalDouble span = OptionalDouble.empty();
    List<Exposure.Timed> after = new ArrayList<>();
    for (int i = 0; i < FIRINGS; i++) {
      FiringResult fired = bench.fire(name(speed));
      LevelPair levels = fired.levels().orElseThrow();
      span = fired.profileUse().state().lightSpanCounts();
      // The session measures with the profile; without it is what the raw edges say.
      after.add((Exposure.Timed) fired.exposure());
      before.add((Exposure.Timed) LeafExposureMethod.measure(fired.firing(), levels, fired.rate()));
    }
    return new Row(
        speed,
        lamp,
        error(speed, before, RigKnowledge.UNCALIBRATED),
        error(speed, after, RigKnowledge.of(calibrated.profile(), span)));
  }

  private static Deviation error(String speed, List<Exposure.Timed> timed, RigKnowledge rig)
      throws IOException {
    double truth = curve(speed).integralSeconds();
    double[] seconds = timed.stream().mapToDouble(Exposure.Timed::effectiveSeconds).toArray();
    double[] stops = new double[seconds.length];
    for (int i = 0; i < stops.length; i++) {
      stops[i] = Math.log(seconds[i]) / Math.log(2);
    }
    double mean = Sample.of(seconds).mean().get();
    UncertaintyBudget budget =
        UncertaintyBudget.of(
            mean,
            RampTravel.of(timed).orElseThrow(),
            rig,
            Sample.of(stops).sd().get(),
            timed.size());
    return new Deviation(mean / truth - 1, budget.expandedSeconds(LEVEL) / truth);
  }

  private static String name(String speed) {
    return "s" + speed.replace('/', '_');
  }

  /** A leaf shutter with straight ramps of 1 ms, right to the time behind the marking. */
  private static LightCurve curve(String speed) {
    double open = MarkedSpeed.parse(speed).exactSeconds() - RAMP_SECONDS;
    return new LightCurve(
        new double[] {0, RAMP_SECONDS, RAMP_SECONDS + open, 2 * RAMP_SECONDS + open},
        new double[] {0, 1, 1, 0});
  }

  /**
   * Runs it and writes the section of docs/validation.md. Takes more than a minute and the tools of
   * the firmware.
   *
   * @param folder an empty folder for its files
   */
  public static List<String> page(Path folder) throws IOException, InterruptedException {
    return page(run(folder));
  }

  static List<String> page(Outcome outcome) {
    List<String> lines = new ArrayList<>();
    lines.add(HEADING);
    lines.add("");
    lines.add(
        "**Simulated**: the firmware itself in its simulator, read through a pseudo-terminal as a rig");
    lines.add(
        "is (`CalibrationOnTheBoardTest`). The board's clock is 3450 ppm fast and gains 1 ppm a minute; the front end lags by 2 \u00b5s. The comparators have fixed delays of 1 and 3.5 \u00b5s and react later to slower light. They switch 9 mV above and 14 mV below their thresholds, with a hysteresis of 12 mV. Ramps are straight, 1 ms. The rig was calibrated once by the reference LED and a generator of 100 Hz. Then the light was set, and the shutter fired three times a speed with three lamps. 'Stated' is the expanded uncertainty (95 %) by");
    lines.add(
        "the budget, with allowances for an uncalibrated rig, and with the profile. When commands reach");
    lines.add("the board depends on the machine, so the last digits differ from run to run.");
    lines.add("");
    lines.add("| effective time | lamp | uncalibrated | stated | calibrated | stated |");
    lines.add("|---|---|---|---|---|---|");
    for (Row row : outcome.rows()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s s | %.0f %% | %+.3f %% | %.3f %% | %+.4f %% | %.4f %% |",
              row.speed().equals("1") ? "1" : "1/" + Math.round(1 / seconds(row.speed())),
              100 * row.lamp(),
              100 * row.before().error(),
              100 * row.before().expanded(),
              100 * row.after().error(),
              100 * row.after().expanded()));
    }
    lines.add("");
    return lines;
  }

  private static double seconds(String speed) {
    return MarkedSpeed.parse(speed).exactSeconds();
  }
}
