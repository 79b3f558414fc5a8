package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringNotes;
import org.halflight.session.FiringPlace;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.SessionEvent;
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IntakeTest {
  @TempDir private Path folder;
  private WorkshopRecord record;

  @BeforeEach
  void open() {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void everyFiringComesBackAsTheReplayHasIt() {
    List<BenchEvent> events = RecordFixture.everything("R-0001");
    List<FiringResult> replayed = SessionReducer.replay(events).session().results();
    // The script is worth something only if it holds many kinds of firings.
    assertThat(replayed)
        .extracting(FiringResult::outcome)
        .contains(
            Outcome.TIMED,
            Outcome.STUCK_OPEN,
            Outcome.DID_NOT_OPEN,
            Outcome.NEVER_FULLY_OPEN,
            Outcome.NOT_A_SHUTTER_EVENT,
            Outcome.OPENS_HOLDS_CLOSES,
            Outcome.DID_NOT_HOLD);
    assertThat(replayed).anyMatch(f -> f.rejection().isPresent());
    assertThat(replayed).anyMatch(f -> f.setting().isEmpty());
    assertThat(replayed).anyMatch(FiringResult::isBySelfTimer);
    assertThat(replayed).anyMatch(f -> f.notes().movedFrom().isPresent());
    assertThat(replayed).anyMatch(f -> f.notes().plateauShare().isPresent());
    assertThat(replayed).anyMatch(f -> f.notes().lightDoubtful());
    assertThat(replayed).anyMatch(f -> f.notes().capOn());
    assertThat(replayed).anyMatch(FiringResult::afterRest);

    ImportOutcome taken = record.importSession(events, "a.session");
    assertThat(taken.added()).isEqualTo(replayed.size());
    assertThat(taken.firings()).isEqualTo(replayed.size());
    String key = SessionStart.of(events.get(0), "").key();
    record.close();
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    assertThat(results(record.firings(key))).isEqualTo(replayed);
    assertThat(record.firings(key))
        .allMatch(firing -> firing.methodVersion() == ExposureMethodVersion.CURRENT)
        .noneMatch(KeptFiring::cutOff);
    assertThat(record.firing(replayed.get(3).key()).orElseThrow().result())
        .isEqualTo(replayed.get(3));
    assertThat(record.rigStart("R-0001", 7)).isPresent();
  }

  @Test
  void twiceIsTheSameAsOnce() {
    Path file = RecordFixture.write(folder.resolve("a.session"), RecordFixture.everything("R-1"));
    ImportOutcome first = record.importSession(file);
    assertThat(first.added()).isGreaterThan(10);
    List<KeptFiring> after = record.firings(first.runs().get(0));
    ImportOutcome second = record.importSession(file);
    assertThat(second).isEqualTo(new ImportOutcome(0, 0, 0, first.added(), 0, 0, first.runs()));
    assertThat(record.firings(first.runs().get(0))).isEqualTo(after);
    assertThat(record.cameras()).hasSize(1);
    assertThat(record.visits(record.cameras().get(0).camera().id())).hasSize(1);
  }

  @Test
  void aFiringThatIsFoundDamagedLaterIsKeptSo() {
    List<BenchEvent> events = cut(script -> script.fires(17));
    record.importSession(events, "a.session");
    FiringResult timed = SessionReducer.replay(events).session().results().get(1);
    assertThat(timed.outcome()).isEqualTo(Outcome.TIMED);
    String key = SessionStart.of(events.get(0), "").key();
    FiringResult found = timed.damagedBy(Firing.Damage.CONTRADICTION);
    assertThat(record.settle(key, found)).isEqualTo(SaveOutcome.COMPLETED);
    KeptFiring kept = record.firing(timed.key()).orElseThrow();
    assertThat(kept.result()).isEqualTo(found);
    assertThat(kept.cutOff()).isFalse();
    FiringResult worse = found.damagedBy(Firing.Damage.EDGES_LOST);
    assertThat(record.settle(key, worse)).isEqualTo(SaveOutcome.COMPLETED);
    // What was there before does not come back, live or from a file, whole or cut short.
    assertThat(record.settle(key, timed)).isEqualTo(SaveOutcome.KNOWN);
    for (int length = 1; length <= events.size(); length++) {
      ImportOutcome taken = record.importSession(events.subList(0, length), "a.session");
      assertThat(taken.known()).isEqualTo(taken.firings());
    }
    assertThat(record.firing(timed.key()).orElseThrow().result()).isEqualTo(worse);
    // Whether it counts goes by what was said last all the same.
    assertThat(record.settle(key, timed.rejected("bumped"))).isEqualTo(SaveOutcome.CHANGED);
    assertThat(record.firing(timed.key()).orElseThrow().result())
        .isEqualTo(worse.rejected("bumped"));
    assertThat(record.settle(key, timed)).isEqualTo(SaveOutcome.CHANGED);
    assertThat(record.firing(timed.key()).orElseThrow().result()).isEqualTo(worse);
    assertThat(record.verify(List.of(), false).inOrder()).isTrue();
  }

  @Test
  void aContradictionThatShowsAfterAFiringReachesWhatWasKeptLive() {
    List<BenchEvent> events =
        cut(script -> script.opensAndCloses(17).contradicts().waits(3).fires(18));
    String key = SessionStart.of(events.get(0), "").key();
    assertThat(live(events))
        .containsExactly(
            SaveOutcome.ADDED, SaveOutcome.ADDED, SaveOutcome.COMPLETED, SaveOutcome.ADDED);
    List<FiringResult> replayed = SessionReducer.replay(events).session().results();
    assertThat(replayed.get(1).firing().damage()).containsExactly(Firing.Damage.CONTRADICTION);
    assertThat(results(record.firings(key))).isEqualTo(replayed);
    assertThat(record.importSession(events, "a.session").known()).isEqualTo(3);
    assertThat(results(record.firings(key))).isEqualTo(replayed);
  }

  @Test
  void aContradictionInTheFileReachesARecordThatDoesNotKnowIt() {
    List<BenchEvent> events =
        cut(script -> script.opensAndCloses(17).contradicts().waits(3).fires(18));
    Path file = RecordFixture.write(folder.resolve("a.session"), events);
    String key = SessionStart.of(events.get(0), "").key();
    List<FiringResult> replayed = SessionReducer.replay(events).session().results();
    // Killed between the firing and what was found of it: only the file knows.
    record.begin(SessionStart.of(events.get(0), "a.session"));
    SessionReducer fold = new SessionReducer();
    for (BenchEvent event : events) {
      for (SessionEvent news : fold.onEvent(event).news()) {
        if (news instanceof SessionEvent.Settled done) {
          record.settle(key, done.result());
        }
      }
    }
    assertThat(results(record.firings(key)).get(1).firing().damage()).isEmpty();
    Verified looked = record.verify(List.of(file), false);
    assertThat(looked.inOrder()).isFalse();
    assertThat(record.verify(List.of(file), true).inOrder()).isTrue();
    assertThat(results(record.firings(key))).isEqualTo(replayed);
  }

  @Test
  void aFileThatGrowsBringsTheContradictionWhereverItWasCut() {
    List<BenchEvent> events =
        cut(script -> script.opensAndCloses(17).contradicts().waits(3).fires(18));
    String key = SessionStart.of(events.get(0), "").key();
    for (int length = 1; length <= events.size(); length++) {
      assertThat(record.importSession(events.subList(0, length), "a.session").differing()).isZero();
    }
    assertThat(results(record.firings(key)))
        .isEqualTo(SessionReducer.replay(events).session().results());
  }

  @Test
  void whatWasSaidStaysWhereAShorterFileTellsOfDamage() {
    List<BenchEvent> plain = cut(script -> script.opensAndCloses(17).quiet().waits(5));
    List<BenchEvent> found = cut(script -> script.opensAndCloses(17).contradicts());
    assertThat(found).hasSizeLessThan(plain.size());
    record.importSession(plain, "a.session");
    String key = SessionStart.of(plain.get(0), "").key();
    FiringResult timed = SessionReducer.replay(plain).session().results().get(1);
    record.settle(key, timed.rejected("bumped"));
    assertThat(record.importSession(found, "a.session").completed()).isEqualTo(1);
    assertThat(record.firing(timed.key()).orElseThrow().result())
        .isEqualTo(timed.rejected("bumped").damagedBy(Firing.Damage.CONTRADICTION));
  }

  @Test
  void theRestOfAFiringBehindABreakIsAddedToIt() {
    List<BenchEvent> events =
        cut(script -> script.comesInTwo(17, "2026-11-24T10:00:00Z").waits(3).fires(18));
    String key = SessionStart.of(events.get(0), "").key();
    assertThat(live(events))
        .containsExactly(
            SaveOutcome.ADDED, SaveOutcome.ADDED, SaveOutcome.COMPLETED, SaveOutcome.ADDED);
    List<FiringResult> replayed = SessionReducer.replay(events).session().results();
    FiringResult whole = replayed.get(1);
    // The rest stands between the edges that were there.
    assertThat(whole.firing().edges()).hasSize(4);
    assertThat(whole.firing().edges().get(1).channel()).isEqualTo(Channel.CENTRE_HIGH);
    assertThat(whole.firing().damage()).contains(Firing.Damage.LINK_LOST);
    assertThat(results(record.firings(key))).isEqualTo(replayed);
    // Neither the whole file nor one that ends at the break takes anything back.
    for (int length = 1; length <= events.size(); length++) {
      assertThat(record.importSession(events.subList(0, length), "a.session").differing()).isZero();
    }
    assertThat(results(record.firings(key))).isEqualTo(replayed);
    assertThat(record.integrityFaults()).isEmpty();
  }

  @Test
  void aFileThatGrowsBringsTheRestBehindABreakWhereverItWasCut() {
    List<BenchEvent> events =
        cut(script -> script.comesInTwo(17, "2026-11-24T10:00:00Z").waits(3).fires(18));
    String key = SessionStart.of(events.get(0), "").key();
    for (int length = 1; length <= events.size(); length++) {
      assertThat(record.importSession(events.subList(0, length), "a.session").differing()).isZero();
    }
    assertThat(results(record.firings(key)))
        .isEqualTo(SessionReducer.replay(events).session().results());
    assertThat(record.firings(key)).noneMatch(KeptFiring::cutOff);
  }

  @Test
  void theFileItselfRefusesToTakeDamageAwayOrToChangeEdges() throws Exception {
    List<BenchEvent> events = cut(script -> script.opensAndCloses(17).contradicts());
    record.importSession(events, "a.session");
    String last = " WHERE firing_number = 2";
    try (Connection connection = Database.connection(folder.resolve("record.sqlite"));
        Statement statement = connection.createStatement()) {
      for (String change :
          List.of(
              "damage = ''",
              "damage = 'link-lost'",
              "damage = 'edges-lost contradictions'",
              "damage = 'contradiction edges-lost', edges = x'01000200'",
              "damage = 'contradiction edges-lost', edges = zeroblob (length (edges) + 4)",
              "damage = 'contradiction link-lost', edges = CAST (substr (edges, 1, 3) AS BLOB)",
              "damage = 'contradiction edges-lost', cut_off = 1",
              "damage = 'contradiction edges-lost', first_ticks = 1")) {
        assertThatThrownBy(() -> statement.execute("UPDATE firing SET " + change + last))
            .as(change)
            .hasMessageContaining("what was measured is never changed");
      }
      statement.execute("BEGIN");
      statement.execute("UPDATE firing SET damage = 'lines-lost contradiction'" + last);
      statement.execute(
          "UPDATE firing SET damage = 'lines-lost contradiction link-lost',"
              + " edges = CAST (edges || x'010001' AS BLOB)"
              + last);
      statement.execute("ROLLBACK");
    }
  }

  @Test
  void runsGoToTheCameraOfTheirLabel() {
    ImportOutcome taken = record.importSession(RecordFixture.everything("R-1"), "a.session");
    CameraLine line = record.cameras().get(0);
    assertThat(line.camera().label()).isEqualTo("Old 6x6");
    assertThat(line.camera().dial().speeds())
        .extracting(Object::toString)
        .containsExactly("1/60", "1/125");
    assertThat(line.sources()).containsExactly(Source.RIG);
    List<Run> runs = taken.runs().stream().map(id -> record.run(id).orElseThrow()).toList();
    assertThat(runs)
        .extracting(run -> run.asked().phase())
        .containsExactly(Phase.AS_FOUND, Phase.AS_LEFT);
    // The first firing came before any run.
    int inRuns = runs.stream().mapToInt(run -> record.firings(run.id()).size()).sum();
    assertThat(inRuns).isEqualTo(taken.added() - 1).isEqualTo(line.firings());
    assertThat(record.link(runs.get(1).id()).orElseThrow().lines()).isPositive();
    assertThat(runs.get(0).beganAt().orElseThrow())
        .isBetween(Instant.parse("2026-11-24T09:00:00Z"), Instant.parse("2026-11-24T09:00:05Z"));
  }

  @Test
  void aKnownCameraKeepsWhatIsKnownOfIt() {
    Camera camera = record.keep(Camera.of("Old 6x6", ShutterKind.LEAF, BenchScript.DIAL));
    Visit visit =
        record.keep(Visit.begins(camera.id(), "J-1", Instant.parse("2026-11-24T12:00:00Z")));
    ImportOutcome taken = record.importSession(RecordFixture.everything("R-1"), "a.session");
    assertThat(record.cameras()).hasSize(1);
    assertThat(record.run(taken.runs().get(0)).orElseThrow().visit()).contains(visit.id());
  }

  @Test
  void aVisitThatWasOverIsNotGoneOnWith() {
    Camera camera = record.keep(Camera.of("Old 6x6", ShutterKind.LEAF, BenchScript.DIAL));
    Visit old =
        Visit.begins(camera.id(), "J-1", Instant.parse("2024-03-01T12:00:00Z"))
            .handedBack(Instant.parse("2024-03-05T12:00:00Z"), org.halflight.job.Checklist.EMPTY);
    record.keep(old);
    record.importSession(RecordFixture.everything("R-1"), "a.session");
    assertThat(record.visits(camera.id())).hasSize(2);
  }

  @Test
  void whereTwoCamerasBearTheLabelTheRunWaitsToBeNamed() {
    record.keep(Camera.of("Old 6x6", ShutterKind.LEAF, BenchScript.DIAL));
    Camera second = record.keep(Camera.of("Old 6x6", ShutterKind.LEAF, BenchScript.DIAL));
    record.importSession(RecordFixture.everything("R-1"), "a.session");
    assertThat(record.runsWithoutCamera()).hasSize(2);
    Visit visit = record.keep(Visit.begins(second.id(), "", RecordFixture.NOW));
    for (Run run : record.runsWithoutCamera()) {
      record.keep(run.withVisit(visit.id()));
    }
    ImportOutcome again = record.importSession(RecordFixture.everything("R-1"), "a.session");
    assertThat(again.added()).isZero();
    assertThat(record.runs(visit.id())).hasSize(2);
  }

  @Test
  void liveAndTakenInAreTheSameFiring() {
    List<BenchEvent> events = RecordFixture.everything("R-1");
    SessionStart start = SessionStart.of(events.get(0), "a.session");
    record.begin(start);
    SessionReducer fold = new SessionReducer();
    Set<FiringKey> settled = new HashSet<>();
    for (BenchEvent event : events.subList(0, events.size() / 2)) {
      for (SessionEvent news : fold.onEvent(event).news()) {
        if (news instanceof SessionEvent.Settled done) {
          assertThat(record.settle(start.key(), done.result()))
              .isEqualTo(
                  settled.add(done.result().key()) ? SaveOutcome.ADDED : SaveOutcome.COMPLETED);
        }
      }
    }
    assertThat(settled).hasSizeGreaterThan(3);
    ImportOutcome taken = record.importSession(events, "a.session");
    int all = SessionReducer.replay(events).session().results().size();
    assertThat(taken.added()).isEqualTo(all - settled.size());
    // What the person said later about what was settled live comes with the file.
    assertThat(taken.known() + taken.changed()).isEqualTo(settled.size());
    assertThat(results(record.firings(start.key())))
        .isEqualTo(SessionReducer.replay(events).session().results());
  }

  @Test
  void whatTheFileTakesBackIsTakenBackHereToo() {
    List<BenchEvent> events =
        BenchScript.events(
            "R-1",
            1,
            script ->
                script
                    .begins("2026-11-24T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run("A", Phase.ADJUSTING, 3, "1/60")
                    .fires(16)
                    .fires(17));
    record.importSession(events, "a.session");
    FiringResult first = SessionReducer.replay(events).session().results().get(0);
    String key = SessionStart.of(events.get(0), "").key();
    assertThat(record.settle(key, first.rejected("bumped"))).isEqualTo(SaveOutcome.CHANGED);
    assertThat(record.firing(first.key()).orElseThrow().result().rejection()).contains("bumped");
    // The file is the last word: what was said and undone stands in it as neither.
    ImportOutcome again = record.importSession(events, "a.session");
    assertThat(again.added()).isZero();
    assertThat(again.changed()).isEqualTo(1);
    KeptFiring kept = record.firing(first.key()).orElseThrow();
    assertThat(kept.result()).isEqualTo(first);
    assertThat(kept.run()).isPresent();
  }

  @Test
  void aShorterFileTakesNothingBack() {
    List<BenchEvent> events = RecordFixture.everything("R-1");
    record.importSession(events, "a.session");
    FiringResult firing = SessionReducer.replay(events).session().results().get(1);
    String key = SessionStart.of(events.get(0), "").key();
    record.settle(key, firing.rejected("bumped"));
    record.importSession(events.subList(0, events.size() - 1), "a.session");
    assertThat(record.firing(firing.key()).orElseThrow().result().rejection()).contains("bumped");
  }

  @Test
  void undoneLiveIsUndoneInTheRecord() {
    List<BenchEvent> events = RecordFixture.everything("R-1");
    record.importSession(events, "a.session");
    FiringResult firing = SessionReducer.replay(events).session().results().get(1);
    String key = SessionStart.of(events.get(0), "").key();
    record.settle(key, firing.rejected("bumped"));
    assertThat(record.settle(key, firing)).isEqualTo(SaveOutcome.CHANGED);
    assertThat(record.firing(firing.key()).orElseThrow().result()).isEqualTo(firing);
  }

  @Test
  void marksThatNobodyKnowsChangeNothing() {
    List<BenchEvent> events = new ArrayList<>(RecordFixture.everything("R-1"));
    record.importSession(events, "a.session");
    List<KeptFiring> before = record.firings(SessionStart.of(events.get(0), "").key());
    events.add(3, new BenchEvent.Mark(1, "of-a-later-day", Map.of("of", "17")));
    ImportOutcome taken = record.importSession(events, "a.session");
    assertThat(taken.known()).isEqualTo(taken.firings()).isEqualTo(before.size());
    assertThat(record.firings(SessionStart.of(events.get(0), "").key())).isEqualTo(before);
  }

  @Test
  void aFileCutShortChangesNothingThatALongerOneSaid() {
    List<BenchEvent> events = RecordFixture.everything("R-1");
    record.importSession(events, "a.session");
    String key = SessionStart.of(events.get(0), "").key();
    List<KeptFiring> whole = record.firings(key);
    for (int length = 1; length < events.size(); length += 3) {
      ImportOutcome taken = record.importSession(events.subList(0, length), "a.session");
      assertThat(taken.added() + taken.completed() + taken.changed() + taken.differing()).isZero();
    }
    assertThat(record.firings(key)).isEqualTo(whole);
  }

  @Test
  void aFileThatGrowsComesToTheSameWhereverItWasCut() {
    List<BenchEvent> events = RecordFixture.everything("R-1");
    String key = SessionStart.of(events.get(0), "").key();
    for (int length = 1; length <= events.size(); length++) {
      record.importSession(events.subList(0, length), "a.session");
    }
    assertThat(results(record.firings(key)))
        .isEqualTo(SessionReducer.replay(events).session().results());
    assertThat(record.firings(key)).noneMatch(KeptFiring::cutOff);
    assertThat(record.cameras()).hasSize(1);
    assertThat(record.integrityFaults()).isEmpty();
  }

  @Test
  void aProvisionalFiringIsRecoveredWithItsFigures() {
    List<BenchEvent> events = cut(script -> script.opensAndCloses(16));
    ImportOutcome taken = record.importSession(events, "a.session");
    assertThat(taken.added()).isEqualTo(2);
    KeptFiring last = record.firings(taken.runs().get(0)).get(1);
    assertThat(last.cutOff()).isTrue();
    assertThat(last.result().outcome()).isEqualTo(Outcome.TIMED);
  }

  @Test
  void aFileThatEndsInLightIsNoStuckShutter() {
    List<BenchEvent> events = cut(BenchScript::opens);
    ImportOutcome taken = record.importSession(events, "a.session");
    KeptFiring last = record.firings(taken.runs().get(0)).get(1);
    assertThat(last.cutOff()).isTrue();
    assertThat(last.result().outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(last.result().firing().damage()).containsExactly(Firing.Damage.LINK_LOST);
  }

  @Test
  void lightThatComesLongAfterItsPressMakesTheKeptPressWhole() {
    List<BenchEvent> events =
        new ArrayList<>(cut(script -> script.pressesInVain().waits(3).fires(16)));
    String key = SessionStart.of(events.get(0), "").key();
    record.begin(SessionStart.of(events.get(0), "a.session"));
    SessionReducer fold = new SessionReducer();
    List<SaveOutcome> came = new ArrayList<>();
    for (BenchEvent event : events) {
      for (SessionEvent news : fold.onEvent(event).news()) {
        if (news instanceof SessionEvent.Settled done) {
          came.add(record.settle(key, done.result()));
        }
      }
    }
    assertThat(came).containsExactly(SaveOutcome.ADDED, SaveOutcome.ADDED, SaveOutcome.COMPLETED);
    List<FiringResult> replayed = SessionReducer.replay(events).session().results();
    assertThat(replayed.get(1).isBySelfTimer()).isTrue();
    assertThat(results(record.firings(key))).isEqualTo(replayed);
    // A copy of the file that ends before the light says nothing against it.
    int beforeTheLight = events.size() - 8;
    assertThat(record.importSession(events.subList(0, beforeTheLight), "a.session").known())
        .isEqualTo(2);
    record.importSession(events, "a.session");
    assertThat(results(record.firings(key))).isEqualTo(replayed);
  }

  @Test
  void aFileMayEndBeforeAnEdgeThatComesOutOfOrder() {
    List<BenchEvent> events =
        new ArrayList<>(cut(script -> script.opensAndClosesOutOfOrder(16).quiet()));
    String key = SessionStart.of(events.get(0), "").key();
    for (int length = 1; length <= events.size(); length++) {
      assertThat(record.importSession(events.subList(0, length), "a.session").differing()).isZero();
    }
    assertThat(results(record.firings(key)))
        .isEqualTo(SessionReducer.replay(events).session().results());
    assertThat(record.firings(key)).noneMatch(KeptFiring::cutOff);
  }

  @Test
  void everythingThatIsNotedOfAFiringComesBack() {
    List<BenchEvent> events = cut(script -> script.fires(16));
    record.importSession(events, "a.session");
    String key = SessionStart.of(events.get(0), "").key();
    FiringResult plain = record.firings(key).get(0).result();
    FiringNotes all =
        new FiringNotes(
            OptionalDouble.of(0.0123456789),
            OptionalDouble.of(811.0625),
            OptionalDouble.of(0.98),
            true,
            true,
            true,
            Optional.of(MarkedSpeed.parse("1/400")),
            Optional.of("knocked, 'hard'"),
            Optional.of("no reason given"),
            FiringConditions.parse(
                "first-after-rest warmed lens-down dial-from-other-side quick-tap stopped-down"));
    FiringResult noted = with(plain, plain.setting(), all);
    assertThat(record.settle(key, noted)).isEqualTo(SaveOutcome.CHANGED);
    assertThat(record.firing(plain.key()).orElseThrow().result()).isEqualTo(noted);
    for (UntimedTest check : UntimedTest.values()) {
      FiringResult untimed = with(plain, Optional.of(new DialSetting.Untimed(check)), all);
      record.settle(key, untimed);
      assertThat(record.firing(plain.key()).orElseThrow().result()).isEqualTo(untimed);
    }
  }

  private static FiringResult with(
      FiringResult firing, Optional<DialSetting> setting, FiringNotes notes) {
    return new FiringResult(
        firing.number(),
        firing.key(),
        firing.firing(),
        firing.rate(),
        new FiringPlace(
            firing.run(), setting, firing.reference(), firing.phase(), firing.afterRest()),
        firing.outcome(),
        firing.exposure(),
        firing.measuredWith(),
        notes,
        Optional.empty());
  }

  @Test
  void aSessionThatDiedAndWentOnComesToWhatWasTakenInBefore() {
    for (boolean light : new boolean[] {false, true}) {
      String rig = light ? "R-light" : "R-dark";
      List<BenchEvent> died =
          BenchScript.events(
              rig,
              1,
              script -> {
                script.begins("2026-11-24T09:00:00Z").greets().lightIsSet();
                script.run("A", Phase.ADJUSTING, 3, "1/60").fires(16);
                if (light) {
                  script.opens();
                } else {
                  script.opensAndCloses(16);
                }
              });
      String key = SessionStart.of(died.get(0), "").key();
      record.importSession(died, "a.session");
      List<KeptFiring> before = record.firings(key);
      assertThat(before).extracting(KeptFiring::cutOff).containsExactly(false, true);
      List<BenchEvent> wentOn = new ArrayList<>(died);
      wentOn.addAll(
          BenchScript.events(
              rig, 2, script -> script.begins("2026-11-24T10:00:00Z").greets().fires(17)));
      ImportOutcome taken = record.importSession(wentOn, "a.session");
      assertThat(taken).isEqualTo(new ImportOutcome(1, 0, 0, 2, 0, 0, taken.runs()));
      assertThat(record.firings(key).subList(0, 2)).isEqualTo(before);
    }
  }

  @Test
  void aRunOfChecksAloneIsKeptWithItsConditions() {
    List<BenchEvent> events =
        BenchScript.events(
            "R-1",
            1,
            script ->
                script
                    .begins("2026-11-24T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run("No dial known", Phase.AS_FOUND, List.of(UntimedTest.T))
                    .fires(700));
    ImportOutcome taken = record.importSession(events, "a.session");
    Run run = record.run(taken.runs().get(0)).orElseThrow();
    assertThat(run.asked())
        .isEqualTo(SessionReducer.replay(events).session().setup().orElseThrow());
    assertThat(run.asked().untimedTests()).containsExactly(UntimedTest.T);
    assertThat(run.asked().conditions().noted()).hasSize(2);
    assertThat(record.runsWithoutCamera()).containsExactly(run);
    assertThat(record.firings(run.id()).get(0).result().untimedTest()).contains(UntimedTest.T);
  }

  @Test
  void theSameRunThatIsGoneOnWithIsOneRun() {
    ImportOutcome taken =
        record.importSession(
            cut(script -> script.run("A", Phase.ADJUSTING, 3, "1/60").fires(16)), "a.session");
    assertThat(taken.runs()).hasSize(1);
    assertThat(record.firings(taken.runs().get(0))).hasSize(2);
  }

  @Test
  void anotherFiringUnderAKnownKeyIsSaidAndNotKept() {
    List<BenchEvent> one = cut(script -> script.fires(16));
    // The same rig, start and first edge; another closing.
    List<BenchEvent> other = cut(script -> script.fires(20));
    record.importSession(one, "a.session");
    ImportOutcome taken = record.importSession(other, "b.session");
    assertThat(taken.differing()).isEqualTo(1);
    assertThat(taken.known()).isEqualTo(1);
    assertThat(record.firings(taken.runs().get(0))).hasSize(2);
  }

  @Test
  void practiceIsMarked() {
    record.importSession(RecordFixture.everything(Source.PRACTICE_SERIAL), "a.session");
    assertThat(record.cameras().get(0).sources()).containsExactly(Source.PRACTICE);
    assertThat(
            record
                .history(record.cameras().get(0).camera().id())
                .orElseThrow()
                .runs()
                .get(0)
                .sources())
        .containsExactly(Source.PRACTICE);
  }

  @Test
  void anEmptyFileBringsNothing() {
    Path file = RecordFixture.write(folder.resolve("a.session"), List.of());
    assertThat(record.importSession(file))
        .isEqualTo(new ImportOutcome(0, 0, 0, 0, 0, 0, List.<Id<Run>>of()));
  }

  @Test
  void closedByHandIsALowerLimitInTheRecordToo() {
    ImportOutcome taken = record.importSession(RecordFixture.everything("R-1"), "a.session");
    Map<Outcome, Long> counts =
        record.firings(taken.runs().get(0)).stream()
            .collect(Collectors.groupingBy(f -> f.result().outcome(), Collectors.counting()));
    assertThat(counts).containsEntry(Outcome.STUCK_OPEN, 1L);
    FiringResult stuck =
        results(record.firings(taken.runs().get(0))).stream()
            .filter(f -> f.outcome() == Outcome.STUCK_OPEN)
            .findFirst()
            .orElseThrow();
    assertThat(((Exposure.StuckOpen) stuck.exposure()).lowestSeconds()).isBetween(2.9, 3.1);
    assertThat(FiringRows.isClosedByHand(stuck)).isTrue();
  }

  /** Keeps what settles and what is found of it, as the window does; gives what each came to. */
  private List<SaveOutcome> live(List<BenchEvent> events) {
    SessionStart start = SessionStart.of(events.get(0), "a.session");
    record.begin(start);
    List<SaveOutcome> came = new ArrayList<>();
    SessionReducer fold = new SessionReducer();
    for (BenchEvent event : events) {
      for (SessionEvent news : fold.onEvent(event).news()) {
        if (news instanceof SessionEvent.Settled done) {
          came.add(record.settle(start.key(), done.result()));
        } else if (news instanceof SessionEvent.Changed found) {
          came.add(record.settle(start.key(), found.result()));
        }
      }
    }
    return came;
  }

  private static List<BenchEvent> cut(java.util.function.Consumer<BenchScript> end) {
    return new ArrayList<>(
        BenchScript.events(
            "R-1",
            1,
            script -> {
              script
                  .begins("2026-11-24T09:00:00Z")
                  .greets()
                  .lightIsSet()
                  .run("A", Phase.ADJUSTING, 3, "1/60")
                  .fires(16);
              end.accept(script);
            }));
  }

  private static List<FiringResult> results(List<KeptFiring> firings) {
    return firings.stream().map(KeptFiring::result).toList();
  }
}
