package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.halflight.calibration.TripEstimate;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.CurtainStep;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringKey;
import org.halflight.session.GapLimits;
import org.halflight.session.LightReading;
import org.halflight.session.LinkageStep;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.PlungerReading;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.TwoSpeeds;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.speeds.Tolerances;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MarksTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  private static RunSetup twelve() {
    return new RunSetup(
        "invented 1", Phase.AS_LEFT, "leaf", List.of(SIXTIETH), Reference.EXACT, 12);
  }

  /** A mark of an earlier version says nothing of tries: then it was ten, whatever was planned. */
  @Test
  void aRunOfAnEarlierVersionKeepsItsTenTries() {
    Map<String, String> values =
        new TreeMap<>(Marks.of(0, new SessionInput.RunBegins(twelve())).values());
    assertThat(values.remove("most-tries")).isEqualTo("18");
    assertThat(Marks.input(mark("run", values)))
        .contains(new SessionInput.RunBegins(twelve().withMostTries(RunPlan.TRIES_OF_OLD)));
    values.put("most-tries", "0");
    assertThat(Marks.input(mark("run", values))).isEmpty();
  }

  /** So that a version that knows no kinds reads the marks of all other runs. */
  @Test
  void theKindOfTheShutterIsInTheMarkWhereSomebodySaidIt() {
    assertThat(Marks.of(0, new SessionInput.RunBegins(twelve())).values())
        .doesNotContainKey("shutter");
    assertThat(
            Marks.of(0, new SessionInput.RunBegins(twelve().withShutterKind(ShutterKind.ROTARY)))
                .values())
        .containsEntry("shutter", "rotary");
  }

  static Stream<SessionInput> inputs() {
    RigProfile profile =
        new RigProfile(
            new ProfiledRig("R-0001", "full", "1.0.0"),
            LocalDate.of(2026, 3, 9),
            new LightRange(4.25, 700, 820.5),
            Optional.empty(),
            Map.of(Channel.CENTRE_LOW, ComparatorTrips.around(1.25, 2, 0.3)),
            Optional.empty(),
            Optional.empty(),
            Map.of(),
            Map.of(),
            OptionalDouble.empty());
    RunSetup plain =
        new RunSetup("invented 1", Phase.AS_FOUND, "leaf", List.of(SIXTIETH), Reference.LITERAL, 5);
    RunSetup full =
        new RunSetup(
                "",
                Phase.AS_LEFT,
                "custom",
                List.of(),
                Reference.EXACT,
                1,
                UntimedTest.B,
                UntimedTest.T)
            .withCustoms(new CameraCustoms(true, true))
            .withConditions(
                new RunConditions(
                    OptionalDouble.of(86_400.5),
                    Map.of("stop", "f/3.5 = wide open", "attitude", "lens up, 20 %")));
    return Stream.of(
        new SessionInput.LightSet(new LightLevels(20, 820, 189.0625, 650.9375)),
        new SessionInput.ProfileInUse(profile, LocalDate.of(2026, 11, 24), OptionalInt.of(90)),
        new SessionInput.ProfileInUse(profile, LocalDate.of(2026, 11, 24), OptionalInt.empty()),
        new SessionInput.ProfileRefused(ProfileFit.Mismatch.FILE_CUT),
        new SessionInput.ProfileLeftOut(),
        new SessionInput.RigChecked("R-0001", true),
        new SessionInput.RigChecked("R-0001", false),
        new SessionInput.LightRead(
            LightReading.of(LightReading.What.STOP, "5.6", true, 104.25, 0.0125, 1000, 48_000_000)),
        new SessionInput.LightRead(
            LightReading.of(LightReading.What.SHUT_COCKED, "", false, 8.5, 0.0125, 990, 16_000)),
        new SessionInput.PressJudged(LinkageStep.STOP, WindState.LOCKED),
        new SessionInput.PressJudged(LinkageStep.TAP, WindState.TURNS),
        new SessionInput.PlungerRead(new PlungerReading(1.325, 1.4)),
        new SessionInput.Adjusted("pallet in by a hair, 10 %"),
        new SessionInput.TwoChosen(
            Optional.of(new TwoSpeeds(MarkedSpeed.parse("1"), MarkedSpeed.parse("1/15")))),
        new SessionInput.TwoChosen(Optional.empty()),
        new SessionInput.StepChosen(CurtainStep.SECOND_TENSION),
        new SessionInput.LightTestEnds(UntimedTest.LEAK),
        new SessionInput.LightTestEnds(UntimedTest.STOPS),
        new SessionInput.LightSet(
            new LightLevels(20, 820, 189.0625, 650.9375),
            new TripPoints(
                ComparatorTrips.around(1.5, 2.25, TripEstimate.STANDARD_UNCERTAINTY_COUNTS),
                ComparatorTrips.around(-0.5, -0.25, TripEstimate.STANDARD_UNCERTAINTY_COUNTS))),
        new SessionInput.LightSet(
            new LightLevels(20, 820, 189.0625, 650.9375),
            TripPoints.EXACT,
            Map.of(
                Channel.OUTER_A, new SensorLight(19.5, 640.25),
                Channel.OUTER_B, new SensorLight(21, 905))),
        new SessionInput.RunBegins(plain),
        new SessionInput.RunBegins(full),
        new SessionInput.RunBegins(plain.withShutterKind(ShutterKind.CURTAIN_LONG_SIDE)),
        new SessionInput.RunBegins(
            plain.withConditions(
                new RunConditions(
                    OptionalDouble.empty(), Map.of(RunOption.SYNC_LEVER.name(), "M")))),
        new SessionInput.RunBegins(twelve()),
        new SessionInput.RunBegins(twelve().withMostTries(RunPlan.TRIES_OF_OLD)),
        new SessionInput.RunBegins(
            plain.withCriteria(
                AcceptanceCriteria.USUAL
                    .with(RunOption.TOLERANCE, Tolerances.find("0.25, 1/500=1/2").orElseThrow())
                    .with(RunOption.ABOUT, Measurand.ONE_EXPOSURE)
                    .with(RunOption.UNTIL_DECIDED, true)
                    .with(RunOption.QUICK, true)
                    .with(RunOption.STOPS, List.of("3.5", "5.6", "8"))
                    .with(RunOption.STOP_TOLERANCE, 0.25)
                    .with(RunOption.LINKAGE, "-0.5..2.0")
                    .with(RunOption.LINKAGE_GAP, Optional.of(new GapLimits(0, 0.2)))
                    .with(RunOption.CONTACT, true))),
        new SessionInput.RunBegins(
            new RunSetup(
                    "x",
                    Phase.ADJUSTING,
                    "leaf",
                    List.of(SIXTIETH, MarkedSpeed.parse("1")),
                    Reference.EXACT,
                    3,
                    UntimedTest.T)
                .withCustoms(new CameraCustoms(false, true))),
        new SessionInput.SpeedChosen(SIXTIETH),
        new SessionInput.UntimedTestChosen(UntimedTest.T),
        new SessionInput.NextChosen(),
        new SessionInput.PreviousChosen(),
        new SessionInput.LastRejected("knocked the bench"),
        new SessionInput.FiringRejected(new FiringKey("R-0001", 7, 16_000_000_000L), "slipped"),
        new SessionInput.ReasonChanged(new FiringKey("R-0001", 7, 16_000_000_000L), "my hand"),
        new SessionInput.ClosedByHand(),
        new SessionInput.AcceptedAsShown(),
        new SessionInput.FiringsMoved(
            List.of(new FiringKey("R-0001", 7, 16_000_000_000L), new FiringKey("none", 0, 1)),
            SIXTIETH),
        new SessionInput.FiringsMoved(List.of(), SIXTIETH),
        new SessionInput.FiringUnder(
            new FiringKey("R-0001", 7, 16_000_000_000L),
            FiringConditions.parse("not-after-rest lens-up long-press")),
        new SessionInput.FiringUnder(new FiringKey("R-0001", 7, 1), FiringConditions.NONE),
        new SessionInput.ConditionsAre(FiringConditions.parse("warmed wide-open")),
        new SessionInput.ConditionsAre(FiringConditions.NONE),
        new SessionInput.CockingLearnt(true),
        new SessionInput.CockingLearnt(false),
        new SessionInput.LightForgotten(),
        new SessionInput.LightBeingSet(true),
        new SessionInput.LightBeingSet(false),
        new SessionInput.RigAtWork(true),
        new SessionInput.RigAtWork(false),
        new SessionInput.LensCap(true),
        new SessionInput.LensCap(false),
        new SessionInput.LinkLost(),
        new SessionInput.Ends());
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void everyInputComesBackFromTheLineOfItsMark(SessionInput input) {
    String line = EventLine.format(Marks.of(123, input));
    BenchEvent event = EventLine.parse(line).orElseThrow();
    assertThat(event).isInstanceOf(BenchEvent.Mark.class);
    assertThat(Marks.input((BenchEvent.Mark) event)).contains(input);
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void everyMarkIsDocumented(SessionInput input) throws IOException {
    String docs = java.nio.file.Files.readString(java.nio.file.Path.of("docs", "file-formats.md"));
    BenchEvent.Mark mark = Marks.of(0, input);
    assertThat(docs).contains("`" + mark.kind() + "`");
    mark.values().keySet().stream()
        .map(name -> name.startsWith("with.") ? "with.NAME" : name)
        .forEach(name -> assertThat(docs).contains("`" + name + "`"));
  }

  @Test
  void aDamagedMarkIsNoInput() {
    assertThat(Marks.input(mark("move", Map.of("firings", "R-1/2", "to", "1/60")))).isEmpty();
    assertThat(Marks.input(mark("move", Map.of("firings", "R-1/2/x", "to", "1/60")))).isEmpty();
    assertThat(Marks.input(mark("move", Map.of("firings", "", "to", "B")))).isEmpty();
    assertThat(Marks.input(mark("check", Map.of("is", "Z")))).isEmpty();
    assertThat(Marks.input(mark("lens-cap", Map.of()))).isEmpty();
    assertThat(Marks.input(mark("cocking", Map.of("learning", "maybe")))).isEmpty();
    assertThat(Marks.input(mark("unheard-of", Map.of()))).isEmpty();
  }

  @Test
  void whatARunIsAboutIsReadOrTheMarkIsDamaged() {
    Map<String, String> run =
        Map.of(
            "phase",
            "as-left",
            "dial",
            "leaf",
            "speeds",
            "1/60",
            "reference",
            "exact",
            "firings",
            "3");
    assertThat(Marks.input(mark("run", run))).isPresent();
    for (Map.Entry<String, String> about :
        Map.of(
                "tolerance", "a bit",
                "about", "the-median",
                "fired", "sometimes",
                "stops", "4",
                "stop-tolerance", "NaN",
                "linkage-gap", "3..1",
                "contact", "perhaps")
            .entrySet()) {
      Map<String, String> values = new HashMap<>(run);
      values.put(about.getKey(), about.getValue());
      assertThat(SessionReducer.replay(List.of(mark("run", values))).damagedMarks())
          .as(about.toString())
          .isEqualTo(1);
    }
  }

  @Test
  void aNumberWithoutAnEndIsNoInput() {
    for (String absurd : List.of("NaN", "Infinity", "-Infinity", "1e999", "", "x")) {
      assertThat(
              Marks.input(
                  mark(
                      "light",
                      Map.of(
                          "dark",
                          "20",
                          "full",
                          "820",
                          "low",
                          "189",
                          "high",
                          "650",
                          "low-offset",
                          absurd))))
          .as(absurd)
          .isEmpty();
      assertThat(
              Marks.input(
                  mark("clock", Map.of("rig", "R-1", "fast-ppm", absurd, "uncertainty-ppm", "1"))))
          .as(absurd)
          .isEmpty();
    }
  }

  @Test
  void onlyATimeThatCanHaveBeenMeantIsOne() {
    assertThat(Marks.beganAt(mark("begins", Map.of("at", "2026-03-09T10:15:00+01:00"))))
        .isPresent();
    for (String at :
        List.of(
            "",
            "today",
            "+999999999-12-31T23:59:59.999999999-18:00",
            "-999999999-01-01T00:00:00+18:00",
            "1969-12-31T23:59:59Z")) {
      BenchEvent.Mark begins = mark("begins", Map.of("at", at));
      assertThat(Marks.beganAt(begins)).as(at).isEmpty();
      assertThat(SessionReducer.replay(List.of(begins)).damagedMarks()).as(at).isEqualTo(1);
    }
    assertThat(SessionReducer.replay(List.of(mark("begins", Map.of()))).damagedMarks()).isZero();
  }

  private static BenchEvent.Mark mark(String kind, Map<String, String> values) {
    return new BenchEvent.Mark(0, kind, values);
  }
}
