package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.export.CsvTable;
import org.halflight.export.FiringTable;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecomputeTest {
  @TempDir private Path folder;
  private WorkshopRecord record;
  private String key;

  @BeforeEach
  void open() {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    List<BenchEvent> events = RecordFixture.everything("R-1");
    record.importSession(events, "a.session");
    key = SessionStart.of(events.get(0), "").key();
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void theSameMethodComesToTheSameResults() {
    List<KeptFiring> before = record.firings(key);
    assertThat(record.recompute())
        .isEqualTo(new Recomputed(before.size(), 0, ExposureMethodVersion.CURRENT));
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void resultsOfAnOlderMethodAreBroughtUpAndRawEdgesStay() {
    List<KeptFiring> before = record.firings(key);
    change(
        "UPDATE firing_result SET method_version = 0, effective_seconds = effective_seconds * 2");
    List<KeptFiring> old = record.firings(key);
    assertThat(old).allMatch(firing -> firing.methodVersion() == 0).isNotEqualTo(before);
    int timed =
        (int)
            before.stream()
                .filter(
                    f ->
                        f.result().exposure() instanceof Exposure.Timed
                            || (f.result().exposure() instanceof Exposure.NeverFullyOpen never
                                && never.effectiveSeconds().isPresent()))
                .count();
    Recomputed done = record.recompute();
    assertThat(done.firings()).isEqualTo(before.size());
    assertThat(done.changed()).isEqualTo(timed);
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void oneCameraIsRecomputedByItself() {
    record.importSession(
        BenchScript.events(
            "R-2",
            1,
            script ->
                script
                    .begins("2026-11-20T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run("Another", org.halflight.session.Phase.ADJUSTING, 1, "1/60")
                    .fires(16)),
        "b.session");
    change("UPDATE firing_result SET method_version = 0");
    CameraLine another = record.search("another").get(0);
    assertThat(record.recompute(another.camera().id()).firings()).isEqualTo(1);
    assertThat(record.firings(key)).allMatch(firing -> firing.methodVersion() == 0);
  }

  @Test
  void whatTheSessionJudgedByMoreThanEdgesStays() {
    // A timed exposure that the session called by another name.
    change(
        "UPDATE firing SET settled_outcome = 'light-while-cocking' WHERE settled_outcome = 'timed'");
    record.recompute();
    List<FiringResult> results = record.firings(key).stream().map(KeptFiring::result).toList();
    assertThat(results).noneMatch(result -> result.outcome() == Outcome.TIMED);
    assertThat(results).anyMatch(result -> result.outcome() == Outcome.LIGHT_WHILE_COCKING);
  }

  @Test
  void aSecondOpeningIsADoubleWhateverItWasCalledBefore() {
    List<BenchEvent> events =
        BenchScript.events(
            "R-3",
            1,
            script ->
                script
                    .begins("2026-11-20T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run("Twice", Phase.AS_LEFT, 1, "1/60")
                    .opensAndCloses(16)
                    .opensAndClosesAgain(12)
                    .quiet());
    record.importSession(events, "c.session");
    String twice = SessionStart.of(events.get(0), "").key();
    assertThat(outcome(twice)).isEqualTo(Outcome.DOUBLE);
    for (String before : List.of("unusable", "timed")) {
      change(
          "UPDATE firing SET settled_outcome = '%s', settled_exposure = '%s' WHERE rig_serial = 'R-3'"
              .formatted(before, before));
      change("UPDATE firing_result SET outcome = 'timed'");
      assertThat(outcome(twice)).isEqualTo(Outcome.TIMED);
      record.recompute();
      assertThat(outcome(twice)).as("was " + before).isEqualTo(Outcome.DOUBLE);
    }
  }

  private Outcome outcome(String session) {
    return record.firings(session).get(0).result().outcome();
  }

  @Test
  void aTableSaysWhichMethodWorkedEachResultOut() {
    change("UPDATE firing_result SET method_version = 1 WHERE firing_id = 1");
    CsvTable table = FiringTable.ofKept(record.firings(key));
    int at = table.headings().indexOf("method_version");
    String now = String.valueOf(ExposureMethodVersion.CURRENT);
    assertThat(table.rows().get(0).get(at)).isEqualTo("1");
    assertThat(table.rows().subList(1, table.rows().size()))
        .isNotEmpty()
        .allSatisfy(row -> assertThat(row.get(at)).isEqualTo(now));
    record.recompute();
    assertThat(FiringTable.ofKept(record.firings(key)).rows())
        .allSatisfy(row -> assertThat(row.get(at)).isEqualTo(now));
  }

  @Test
  void whereTheMethodComesToAnotherCaseTheOutcomeFollows() {
    change(
        "UPDATE firing SET settled_outcome = 'unusable', settled_exposure = 'unusable'"
            + " WHERE settled_exposure = 'timed'");
    change(
        "UPDATE firing_result SET outcome = 'unusable', exposure = 'unusable', reason = 'damaged'");
    record.recompute();
    assertThat(record.firings(key).get(1).result().outcome()).isEqualTo(Outcome.TIMED);
  }

  @Test
  void theFileItselfGuardsWhatWasMeasured() {
    List<KeptFiring> before = record.firings(key);
    for (String tampering :
        List.of(
            "UPDATE firing SET edges = x'01'",
            "UPDATE firing SET first_ticks = first_ticks + 1",
            "UPDATE firing SET edges = x'01', damage = 'link-lost'",
            "DELETE FROM firing")) {
      assertThatThrownBy(() -> change(tampering))
          .as(tampering)
          .hasMessageContaining("what was measured is never");
    }
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void manyFiringsAreDoneInSeveralTransactions() {
    record.close();
    List<CommitListener.Point> points = new ArrayList<>();
    record = WorkshopRecord.open(folder.resolve("record.sqlite"), RecordFixture.CLOCK, points::add);
    KeptFiring timed = record.firings(key).get(1);
    List<FiringResult> many = new ArrayList<>();
    for (int i = 1; i <= 1100; i++) {
      many.add(Firings.later(timed.result(), i));
    }
    record.settle(key, many);
    int all = record.firings(key).size();
    points.clear();
    assertThat(record.recompute().firings()).isEqualTo(all);
    assertThat(points.stream().filter(CommitListener.Point.COMMITTED::equals)).hasSize(3);
  }

  private void change(String sql) {
    record.database.write(
        connection -> {
          boolean done = execute(connection, sql);
          RowCrc.sealAll(connection);
          return done;
        });
  }

  private static boolean execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      return statement.execute(sql);
    }
  }
}
