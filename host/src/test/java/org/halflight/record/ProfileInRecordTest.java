package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Statement;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.verdict.SpeedSummary;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Profiles in the record; rig, profile and shutter are invented. */
class ProfileInRecordTest {
  @TempDir private Path folder;
  private WorkshopRecord record;
  private List<BenchEvent> events;
  private String key;

  @BeforeEach
  void open() {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    events = RecordFixture.calibrated("R-1", "Old 6x6");
    record.importSession(events, "a.session");
    key = SessionStart.of(events.get(0), "").key();
  }

  @AfterEach
  void close() {
    record.close();
  }

  private List<FiringResult> results() {
    return record.firings(key).stream().map(KeptFiring::result).toList();
  }

  @Test
  void eachFiringBringsItsProfileAndTheRecordHoldsItOnce() {
    assertThat(record.profiles()).containsExactly(RecordFixture.profile("R-1"));
    assertThat(results()).hasSize(4);
    assertThat(results().get(0).profileUse().profile()).isEmpty();
    assertThat(results().subList(1, 4)).allMatch(r -> r.profileUse().profile().isPresent());
    assertThat(results().get(2).profileUse().isCalibrated()).isTrue();
    assertThat(results().get(3).profileUse().mismatches()).containsExactly(Mismatch.TOO_OLD);
    assertThat(record.importSession(events, "a.session").known()).isEqualTo(4);
    assertThat(record.profiles()).hasSize(1);
  }

  @Test
  void recomputingUsesItAndChangesNothing() {
    List<FiringResult> before = results();
    assertThat(record.recompute()).isEqualTo(new Recomputed(4, 0, ExposureMethodVersion.CURRENT));
    change("UPDATE firing_result SET effective_seconds = 1");
    record.recompute();
    assertThat(results()).isEqualTo(before);
  }

  /** What the session found of the rig comes back, and recomputing needs nothing else. */
  @Test
  void howTheRigStoodIsKeptAndRecomputingUsesIt() {
    List<BenchEvent> live = RecordFixture.pinged("R-2", "Old 6x9");
    record.importSession(live, "b.session");
    List<FiringResult> worked = SessionReducer.replay(live).session().results();
    key = SessionStart.of(live.get(0), "").key();
    assertThat(results()).isEqualTo(worked);
    assertThat(results().get(0).profileUse().state().liveClock()).isEmpty();
    assertThat(results().get(1).profileUse().state().liveClock().orElseThrow().fastPpm())
        .isEqualTo(3450.125);
    assertThat(results().get(1).profileUse().state().checked()).isFalse();
    assertThat(results().get(2).profileUse().state().checked()).isTrue();
    assertThat(record.recompute().changed()).isZero();
    change("UPDATE firing_result SET effective_seconds = 1");
    record.recompute();
    assertThat(results()).isEqualTo(worked);
    assertThat(record.importSession(live, "b.session").known()).isEqualTo(3);
  }

  @Test
  void aSignalThatComesLaterReachesTheRecord() {
    List<BenchEvent> more =
        BenchScript.events(
            "R-1",
            7,
            script ->
                RecordFixture.calibrated(script, "Old 6x6", "R-1")
                    .handle(new SessionInput.RigChecked("R-1", false)));
    record.importSession(more, "a.session");
    assertThat(results()).noneMatch(r -> r.profileUse().isCalibrated());
  }

  @Test
  void historiesCallCalibratedWhatIs() {
    var history = record.history(record.search("6x6").get(0).camera().id()).orElseThrow();
    SpeedSummary found = history.runs().get(0).speeds().get(0);
    assertThat(found.phase()).isEqualTo(Phase.AS_LEFT);
    // One firing without and one with a profile that is too old are among them.
    assertThat(found.decisionBasis().rig().isCalibrated()).isFalse();
    assertThat(SpeedSummary.of(results().subList(1, 3), found.tolerance()).decisionBasis().rig())
        .matches(rig -> rig.isCalibrated());
  }

  @Test
  void aProfileInTheRecordStaysAndAnEditedOneIsNone() {
    assertThatThrownBy(() -> change("UPDATE profile SET text = ''"))
        .hasMessageContaining("never changed");
    change("DROP TRIGGER profile_stays");
    change("UPDATE profile SET text = replace(text, '5000', '5001')");
    assertThat(results().get(2).profileUse().profile()).isEmpty();
    assertThat(results().get(2).profileUse().mismatches()).containsExactly(Mismatch.FILE_EDITED);
  }

  private void change(String sql) {
    record.database.write(
        connection -> {
          try (Statement statement = connection.createStatement()) {
            boolean done = statement.execute(sql);
            RowCrc.sealAll(connection);
            return done;
          }
        });
  }
}
