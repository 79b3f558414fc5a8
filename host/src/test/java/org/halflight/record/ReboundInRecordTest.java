package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.halflight.bench.SessionFile;
import org.halflight.exposure.Exposure;
import org.halflight.fixtures.LightLines;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Light outside the main opening in the record, of this version of the method and of earlier ones.
 */
class ReboundInRecordTest {
  @TempDir private Path folder;

  private WorkshopRecord record;
  private String key;

  @BeforeEach
  void open() throws IOException {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    LightLines lines = new LightLines("speeds=1/125 firings=3");
    lines.light(8e-3, 0.4e-3, 1).over();
    lines.light(8e-3, 0.4e-3, 1).dark(3e-3).light(2e-3, 0.4e-3, 1).over();
    lines.light(8e-3, 0.4e-3, 1).dark(15e-3).light(2e-3, 0.4e-3, 1).over();
    Path session = lines.write(folder.resolve("a.session"));
    record.importSession(session);
    key = SessionStart.of(SessionFile.read(session).events().get(0), "").key();
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void itIsKeptAndReadAsItCame() {
    assertThat(outcomes()).containsExactly(Outcome.TIMED, Outcome.TIMED, Outcome.DOUBLE);
    Exposure.Timed timed = timed(1);
    assertThat(timed.effectiveSeconds()).isCloseTo(10e-3, within(1e-6));
    assertThat(timed.mainSeconds()).isCloseTo(8e-3, within(1e-6));
    assertThat(timed.reboundSeconds()).isCloseTo(2e-3, within(1e-6));
    assertThat(timed(2).isDouble()).isTrue();
    assertThat(record.recompute().changed()).isZero();
  }

  @Test
  void whatAnEarlierMethodTookForDoubleOrForOneFollowsTheEdges() {
    change(
        "UPDATE firing SET settled_outcome = CASE settled_outcome"
            + " WHEN 'timed' THEN 'double' WHEN 'double' THEN 'timed' ELSE settled_outcome END");
    record.recompute();
    assertThat(outcomes()).containsExactly(Outcome.TIMED, Outcome.TIMED, Outcome.DOUBLE);
  }

  @Test
  void aTimeOfAnEarlierMethodIsReadWithTheLightThatItLeftOut() {
    change(
        "UPDATE firing_result SET method_version = 2,"
            + " effective_seconds = effective_seconds / (1 + early_light_share + late_light_share)");
    assertThat(timed(1).effectiveSeconds()).isCloseTo(10e-3, within(1e-6));
    assertThat(timed(1).mainSeconds()).isCloseTo(8e-3, within(1e-6));
  }

  private List<FiringResult> results() {
    return record.firings(key).stream().map(KeptFiring::result).toList();
  }

  private List<Outcome> outcomes() {
    return results().stream().map(FiringResult::outcome).toList();
  }

  private Exposure.Timed timed(int at) {
    return (Exposure.Timed) results().get(at).exposure();
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
