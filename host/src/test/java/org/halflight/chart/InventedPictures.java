package org.halflight.chart;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.halflight.exposure.CurveMethod;
import org.halflight.exposure.CurvePoints;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.extratest.InventedPresses;
import org.halflight.session.Assembly;
import org.halflight.session.FiringCondition;
import org.halflight.session.FiringConditions;
import org.halflight.session.LinkageStep;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.WindState;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.time.TickRate;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.RejectedFiring;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Stage;
import org.halflight.verdict.UnderConditions;

/** Pictures of invented figures, as crowded as they come at the bench. */
final class InventedPictures {
  private static final List<String> DIAL =
      List.of("8", "4", "2", "1", "1/2", "1/5", "1/10", "1/25", "1/50", "1/100", "1/250", "1/500");

  private InventedPictures() {}

  /** All of them by name, for a dial of so many speeds. */
  static Map<String, Picture> all(int speeds, long seed) {
    Random random = new Random(seed);
    List<String> dial = DIAL.subList(DIAL.size() - speeds, DIAL.size());
    Map<String, Picture> all = new LinkedHashMap<>();
    all.put("map", map(dial, random, Phase.AS_FOUND));
    all.put("map-both", map(dial, random, Phase.AS_FOUND, Phase.AS_LEFT));
    all.put("map-three", map(dial, random, Phase.values()));
    all.put("row", row(speeds, random));
    all.put("row-long", row(3 * speeds, random));
    all.put("times", times(speeds, random));
    all.put("edges", edges());
    all.put("curve", curve());
    all.put("linkage", linkage());
    all.put("stages", stages(Math.min(6, speeds), random));
    all.putAll(InventedCurtainPictures.all());
    BudgetBars.of(fired("1/500", Phase.AS_FOUND, random, 5), "practice: simulated figures")
        .ifPresent(bars -> all.put("budget", bars));
    return all;
  }

  private static SpeedSummary fired(String speed, Phase phase, Random random, int firings) {
    double mean = random.nextGaussian() * 0.4;
    double[] errors =
        IntStream.range(0, firings).mapToDouble(i -> mean + random.nextGaussian() * 0.06).toArray();
    Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
    outcomes.put(Outcome.TIMED, firings);
    if (random.nextInt(3) == 0) {
      outcomes.put(Outcome.STUCK_OPEN, 2);
    }
    if (random.nextInt(5) == 0) {
      outcomes.put(Outcome.DID_NOT_OPEN, 1);
    }
    List<RejectedFiring> rejected =
        random.nextInt(4) == 0
            ? List.of(
                new RejectedFiring(
                    3, Outcome.TIMED, OptionalDouble.of(mean + 0.5), "camera slipped"))
            : List.of();
    return new SpeedSummary(
        MarkedSpeed.parse(speed),
        Reference.EXACT,
        phase,
        new ReleaseCounts(
            outcomes.values().stream().mapToInt(Integer::intValue).sum(),
            outcomes,
            rejected,
            0,
            UnderConditions.NONE,
            0),
        Sample.of(errors),
        OptionalDouble.empty(),
        Tolerance.THIRD,
        HowMeasured.BY_A_MODEL);
  }

  private static SpeedMap map(List<String> dial, Random random, Phase... phases) {
    return new SpeedMap(
        phases.length == 1 ? "Speed map, as found" : "Speed map",
        dial.stream()
            .map(
                speed -> {
                  Map<Phase, SpeedSummary> runs = new EnumMap<>(Phase.class);
                  for (Phase phase : phases) {
                    runs.put(phase, fired(speed, phase, random, 5));
                  }
                  return new SpeedColumn(MarkedSpeed.parse(speed), Tolerance.THIRD, runs);
                })
            .toList(),
        "Practice rig: invented shutter, simulated figures.");
  }

  private static FiringRow row(int releases, Random random) {
    List<FiringRow.Release> all = new ArrayList<>();
    FiringConditions tap = FiringConditions.NONE.with(FiringCondition.WARMED);
    for (int i = 0; i < releases; i++) {
      all.add(
          switch (i % 7) {
            case 3 -> new FiringRow.Release(Outcome.STUCK_OPEN, OptionalDouble.empty(), false);
            case 4 ->
                new FiringRow.Release(
                    Outcome.TIMED,
                    OptionalDouble.of(0.7),
                    false,
                    Optional.of("the camera slipped on the table"));
            case 6 ->
                new FiringRow.Release(
                    Outcome.DID_NOT_OPEN, OptionalDouble.empty(), false, Optional.of("not wound"));
            default ->
                new FiringRow.Release(
                    Outcome.TIMED,
                    OptionalDouble.of(0.2 + random.nextGaussian() * 0.1),
                    i == 0,
                    Optional.empty(),
                    i == 1 ? tap : FiringConditions.NONE,
                    i == 1);
          });
    }
    List<Adjustment> adjustments = new ArrayList<>();
    for (int i = 2; i <= releases; i += 2) {
      adjustments.add(new Adjustment(i, i % 4 == 0 ? "a quarter turn back" : "mainspring + 1/2"));
    }
    return new FiringRow(
        fired("1/100", Phase.ADJUSTING, random, 5),
        "adjusting, since the last adjustment",
        all,
        adjustments,
        "");
  }

  private static FiringTimes times(int firings, Random random) {
    return new FiringTimes(
        IntStream.rangeClosed(1, firings)
            .mapToObj(
                i ->
                    new FiringTimes.Firing(
                        i,
                        i % 5 == 4 ? Outcome.STUCK_OPEN : Outcome.TIMED,
                        i % 5 == 4
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(Math.pow(2, -random.nextInt(9))),
                        i % 5 == 2 ? Optional.of("no reason given") : Optional.empty()))
            .toList(),
        "Practice rig: invented shutter, simulated figures.");
  }

  private static EdgesPicture edges() {
    return new EdgesPicture(
        "Edges, 1/125, firing 12",
        "This rig has sent no light curve. The edges are drawn instead.",
        List.of(
            new Edge(Channel.RELEASE, true, -160_000),
            new Edge(Channel.CENTRE_LOW, true, 0),
            new Edge(Channel.OUTER_A, true, 6_000),
            new Edge(Channel.CENTRE_HIGH, true, 16_000),
            new Edge(Channel.CONTACT, true, 20_000),
            new Edge(Channel.CENTRE_HIGH, false, 120_000),
            new Edge(Channel.OUTER_A, false, 130_000),
            new Edge(Channel.CENTRE_LOW, false, 136_000),
            new Edge(Channel.CONTACT, false, 140_000)),
        TickRate.BOARD_16_MHZ,
        "Practice rig: invented shutter, simulated figures.");
  }

  private static LightCurvePicture curve() {
    List<Integer> values = new ArrayList<>();
    for (int i = 0; i < 330; i++) {
      double millis = (i - 40) * 0.016;
      double open = Math.max(0, Math.min(1, Math.min(millis, 4 - millis)));
      values.add((int) ((20 + 800 * open) / 4));
    }
    LightLevels light = new LightLevels(20, 820, 189, 651);
    SampledLight sampled =
        new SampledLight(
            List.of(new SampledLight.Part(SampledLight.Kind.OPENING, 0, 256, values, false)),
            false);
    return new LightCurvePicture(
        "Light curve, 1/250, firing 3",
        CurvePoints.of(sampled, light, TickRate.BOARD_16_MHZ),
        CurveMethod.measure(sampled, light, TickRate.BOARD_16_MHZ),
        LevelPair.GAUSS,
        "Practice rig: invented shutter, simulated figures.");
  }

  private static LinkagePicture linkage() {
    return new LinkagePicture(
        InventedPresses.right()
            .press(LinkageStep.STOP, true, WindState.LOCKED)
            .squeeze(0.0123)
            .judged(),
        "Practice rig: invented shutter, simulated figures.");
  }

  private static StagesPicture stages(int stages, Random random) {
    List<Assembly> repair =
        List.of(
            Assembly.BARE,
            new Assembly(true, Assembly.Cells.NONE, Assembly.Place.BENCH),
            new Assembly(true, Assembly.Cells.REAR, Assembly.Place.BENCH),
            new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.BENCH),
            new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.LOOSE),
            new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.TIGHT));
    List<Stage> all = new ArrayList<>();
    for (int i = 0; i < stages; i++) {
      double slow = 0.2 * i;
      all.add(
          new Stage(
              repair.get(i),
              true,
              Optional.empty(),
              Stage.Fired.of(MarkedSpeed.parse("1/2"), List.of(slow - 0.02, slow, slow + 0.02), 0),
              Stage.Fired.of(
                  MarkedSpeed.parse("1/500"), List.of(random.nextGaussian() * 0.05), 0)));
    }
    return new StagesPicture(AssemblyStages.of(all), "Practice rig: simulated figures.");
  }
}
