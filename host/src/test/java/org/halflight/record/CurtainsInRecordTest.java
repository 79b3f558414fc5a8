package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.halflight.bench.BenchEvent;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.Place;
import org.halflight.job.Camera;
import org.halflight.job.Correction;
import org.halflight.job.CurtainCamera;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.session.Adjuster;
import org.halflight.session.CameraCustoms;
import org.halflight.session.FiringResult;
import org.halflight.session.OwnTravel;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.TurnCount;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the record keeps of curtain shutters. */
class CurtainsInRecordTest {
  private static final Instant MONDAY = Instant.parse("2026-11-30T08:00:00Z");

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("record.sqlite");
  }

  private static Camera camera(CurtainCamera curtains) {
    return Camera.of("Invented 35 mm", ShutterKind.CURTAIN_LONG_SIDE, BenchScript.DIAL)
        .withCurtains(curtains);
  }

  @Test
  void theOwnFiguresOfACameraComeBackAndTheirCorrectionsAreKept() {
    CurtainCamera first =
        new CurtainCamera(
            Optional.of(new OwnTravel(17, 36)),
            MarkedSpeed.find("1/50"),
            Set.of(Adjuster.FIRST_TENSION, Adjuster.SLIT));
    CurtainCamera second =
        new CurtainCamera(Optional.of(new OwnTravel(15.5, 32.4)), first.xSpeed(), Set.of());
    Camera kept;
    try (WorkshopRecord record = RecordFixture.open(file)) {
      kept = record.keep(camera(first));
    }
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.camera(kept.id()).map(Camera::curtains)).contains(first);
      Camera changed = record.keep(kept.withCurtains(second));
      assertThat(record.camera(kept.id())).contains(changed);
      assertThat(record.corrections(changed))
          .extracting(Correction::field, Correction::earlier)
          .containsExactly(
              tuple("own_travel_ms", "17.0"),
              tuple("own_travel_span_mm", "36.0"),
              tuple("adjusters", "first-tension,slit"));
      Camera known = record.keep(camera(CurtainCamera.NOT_KNOWN));
      assertThat(record.camera(known.id())).contains(known);
      assertThat(record.verify(List.of(), false).inOrder()).isTrue();
    }
  }

  @Test
  void aTravelWithoutItsDistanceIsRefusedByTheFileItself() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.keep(camera(CurtainCamera.NOT_KNOWN));
      assertThatThrownBy(() -> sql(record, "UPDATE camera SET own_travel_ms = 17"))
          .hasMessageContaining("CHECK");
    }
  }

  private static void sql(WorkshopRecord record, String sql) {
    record.database.write(
        connection -> {
          try (Statement statement = connection.createStatement()) {
            return statement.execute(sql);
          }
        });
  }

  @Test
  void turnsOfASpringAreNumbersInTheWorkLog() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Camera camera = record.keep(camera(CurtainCamera.NOT_KNOWN));
      Visit visit = record.keep(Visit.begins(camera.id(), "J-1", MONDAY));
      log(record, visit, 0, "first-tension found 3 1/2");
      log(record, visit, 60, "second-tension found 4");
      log(record, visit, 120, "first-tension +1/8");
      log(record, visit, 180, "first-tension +0,25 turns");
      log(record, visit, 240, "slit found slot at two o'clock");
      List<WorkEntry> log = record.workLog(visit.id());
      assertThat(log)
          .extracting(WorkEntry::kind)
          .containsExactly(
              WorkKind.FOUND, WorkKind.FOUND, WorkKind.ADJUSTED, WorkKind.ADJUSTED, WorkKind.FOUND);
      assertThat(log.get(2).measured().orElseThrow().value()).isEqualByComparingTo("0.125");
      assertThat(log.get(2).measured().orElseThrow().unit()).isEqualTo("turns");
      assertThat(log.get(4).measured()).isEmpty();
      var counts = TurnCount.of(log.stream().flatMap(entry -> entry.turn().stream()).toList());
      assertThat(counts.get(Adjuster.FIRST_TENSION))
          .isEqualTo(new TurnCount(OptionalDouble.of(3.5), 0.375));
      assertThat(counts.get(Adjuster.FIRST_TENSION).now()).hasValue(3.875);
      assertThat(counts.get(Adjuster.FIRST_TENSION).isTooFar()).isTrue();
      assertThat(counts.get(Adjuster.SECOND_TENSION).isTooFar()).isFalse();
      assertThat(WorkWords.counts(log))
          .containsExactly(
              "First-curtain tension: found at 3.5 turns, now 3.875.",
              "Second-curtain tension: found at 4 turns, now 4.",
              Words.say("curtain.next.stop-something-drags"));
      assertThat(WorkWords.text(log.get(4))).contains("as found: slot at two o'clock");
      assertThat(new TurnCount(OptionalDouble.empty(), 0.25).isTooFar()).isFalse();
    }
  }

  private static void log(WorkshopRecord record, Visit visit, int seconds, String words) {
    record.keep(
        WorkEntry.of(visit.id(), MONDAY.plusSeconds(seconds), WorkKind.NOTE, words).counted());
  }

  @Test
  void aCameraThatComesWithItsRunHasWhatTheRunSays() {
    RunSetup asked =
        new RunForm(
                new ShutterUnderTest(
                    "from a file",
                    ShutterKind.CURTAIN_SHORT_SIDE,
                    "curtain",
                    Reference.EXACT,
                    CameraCustoms.NONE),
                Phase.AS_FOUND,
                "1/125",
                1,
                OptionalDouble.empty(),
                List.of(),
                Map.of(
                    RunOption.FRAME, "36x24",
                    RunOption.OWN_TRAVEL, "6.5/24",
                    RunOption.X_SPEED, "1/125",
                    RunOption.ADJUSTERS, "slit",
                    RunOption.CURTAIN_GAP, "4"))
            .read();
    Path session = folder.resolve("a.session");
    RecordFixture.write(
        session,
        BenchScript.events(
            "R-1",
            7,
            script ->
                script
                    .begins("2026-11-24T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .handle(new SessionInput.RunBegins(asked))
                    .fires(8)));
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.importSession(session);
      Camera made = record.cameras().get(0).camera();
      assertThat(made.frame()).contains(FrameSize.ofMillimetres(36, 24));
      assertThat(made.curtains())
          .isEqualTo(
              new CurtainCamera(
                  Optional.of(new OwnTravel(6.5, 24)),
                  MarkedSpeed.find("1/125"),
                  Set.of(Adjuster.SLIT)));
      RunSetup kept = record.history(made.id()).orElseThrow().runs().get(0).run().asked();
      assertThat(kept.curtainGeometry()).isEqualTo(asked.curtainGeometry()).isPresent();
      assertThat(kept.conditions()).isEqualTo(asked.conditions());
      assertThat(kept.criteria()).isEqualTo(asked.criteria());
    }
  }

  static Stream<BiFunction<FiringResult, CurtainTravel, FiringResult>> exposures() {
    return Stream.of(CurtainTravels::timed, CurtainTravels::neverFullyOpen);
  }

  @ParameterizedTest
  @MethodSource("exposures")
  void howCurtainsPassedComesBack(BiFunction<FiringResult, CurtainTravel, FiringResult> made) {
    List<BenchEvent> events =
        BenchScript.events(
            "R-1",
            7,
            script ->
                script
                    .begins("2026-11-24T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run("mine", Phase.AS_FOUND, 2, "1/125")
                    .fires(8)
                    .fires(8.1));
    String key = SessionStart.of(events.get(0), "").key();
    List<FiringResult> blades = ReducedSession.of(events).firings();
    List<FiringResult> curtains =
        List.of(
            made.apply(blades.get(0), CurtainTravels.whole()),
            made.apply(blades.get(1), CurtainTravels.capped()));
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.importSession(events, "a.session");
      assertThat(record.firings(key).get(0).result().measuredWith().outer())
          .isEqualTo(OuterSensors.UNKNOWN);
      record.settle(key, curtains);
      assertThat(record.firings(key)).extracting(KeptFiring::result).isEqualTo(curtains);
      assertThat(curtains.get(1).exposure().curtains().orElseThrow().capped())
          .containsExactly(Place.END);
      assertThat(record.verify(List.of(), false).inOrder()).isTrue();
    }
  }
}
