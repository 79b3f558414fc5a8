package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.ProgressHandler;

/**
 * A record of 100,000 invented firings against one of 1,000. Times are printed for people. What is
 * held against a limit is the number of steps that SQLite took, which is the same on any machine.
 */
@Tag("long")
class ScaleTest {
  private static final int FIRINGS_A_CAMERA = 500;
  private static final int FIRINGS_OF_THE_BUSY_CAMERA = 10_000;
  private static final int FIRINGS_A_RUN = 50;

  /** Medians of so many. */
  private static final int TIMES = 5;

  private record Figures(
      long openNanos,
      long listNanos,
      long listSteps,
      long searchNanos,
      long searchSteps,
      long historyNanos,
      long historySteps,
      long settleNanos,
      long settleSteps) {}

  @TempDir private Path folder;
  private int seconds;
  private int ordinal;

  @Test
  void aHundredThousandFiringsAreNoBurden() throws Exception {
    Path small = folder.resolve("small.sqlite");
    fill(small, 2, 0);
    Figures few = figures(small, "camera 1");
    Path large = folder.resolve("large.sqlite");
    fill(large, 180, FIRINGS_OF_THE_BUSY_CAMERA);
    Figures many = figures(large, "camera 170");
    print("1,000 firings", small, few);
    print("100,000 firings", large, many);
    try (WorkshopRecord record = RecordFixture.open(large)) {
      Id<Camera> busy = record.search("busy").get(0).camera().id();
      long nanos = median(() -> assertThat(record.history(busy)).isPresent());
      System.out.printf(
          "ScaleTest: history of a camera with 10,000 firings %.1f ms%n", nanos / 1e6);
      assertThat(record.cameras().stream().mapToInt(CameraLine::firings).sum()).isEqualTo(100_000);
      assertThat(record.history(busy).orElseThrow().runs()).hasSize(200);
      long before = System.nanoTime();
      Recomputed done = record.recompute();
      System.out.printf(
          "ScaleTest: recompute of %d firings %.1f s%n",
          done.firings(), (System.nanoTime() - before) / 1e9);
      assertThat(done)
          .extracting(Recomputed::firings, Recomputed::changed)
          .containsExactly(100_000, 0);
    }
    // A hundred times the firings and ninety times the cameras. What looks at one camera must not
    // feel the others; a full scan would make these ratios about 100.
    assertThat(times(many.historySteps(), few.historySteps())).isLessThan(3);
    assertThat(times(many.settleSteps(), few.settleSteps())).isLessThan(3);
    // What looks at all grows with them, and no faster.
    assertThat(times(many.listSteps(), few.listSteps())).isBetween(20.0, 200.0);
    assertThat(times(many.searchSteps(), few.searchSteps())).isBetween(20.0, 200.0);
  }

  private static double times(long many, long few) {
    assertThat(few).isPositive();
    return (double) many / few;
  }

  private Figures figures(Path file, String label) {
    long open = median(() -> RecordFixture.open(file).close());
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Id<Camera> camera = record.search(label).get(0).camera().id();
      Run run = record.history(camera).orElseThrow().runs().get(0).run();
      FiringResult firing = record.firings(run.id()).get(0).result();
      // Only measured: put under a start of the board of its own and never counted.
      record.begin(SessionStart.of(new BenchEvent.Received(1, "measured"), ""));
      String key = SessionStart.of(new BenchEvent.Received(1, "measured"), "").key();
      long[] next = {1};
      Runnable settle =
          () ->
              record.database.write(
                  connection -> {
                    // Undone by what is thrown, so that the record stays as it is.
                    FiringRows.keep(
                        connection,
                        SessionRows.find(connection, key).orElseThrow(),
                        Firings.later(firing, (int) (900_000 + next[0]++)),
                        false,
                        true,
                        RecordFixture.NOW);
                    throw new Undo();
                  });
      Runnable history = () -> assertThat(record.history(camera)).isPresent();
      return new Figures(
          open,
          median(record::cameras),
          steps(record, record::cameras),
          median(() -> record.search(label)),
          steps(record, () -> record.search(label)),
          median(history),
          steps(record, history),
          median(settle),
          steps(record, settle));
    }
  }

  /** The steps of SQLite's machine that some work takes, in tens. */
  private static long steps(WorkshopRecord record, Runnable work) {
    AtomicLong tens = new AtomicLong();
    ProgressHandler counting =
        new ProgressHandler() {
          @Override
          protected int progress() {
            tens.incrementAndGet();
            return 0;
          }
        };
    Database database = record.database;
    database.read(connection -> count(connection, counting));
    database.write(connection -> count(connection, counting));
    try {
      work.run();
    } catch (Undo done) {
      assertThat(done).isNotNull();
    }
    database.read(ScaleTest::countNoMore);
    database.write(ScaleTest::countNoMore);
    return tens.get();
  }

  private static boolean count(Connection connection, ProgressHandler counting)
      throws SQLException {
    ProgressHandler.setHandler(connection, 10, counting);
    return true;
  }

  private static boolean countNoMore(Connection connection) throws SQLException {
    ProgressHandler.clearHandler(connection);
    return true;
  }

  private static final class Undo extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  private static long median(Runnable work) {
    long[] nanos = new long[TIMES];
    for (int i = 0; i < TIMES; i++) {
      long before = System.nanoTime();
      try {
        work.run();
      } catch (Undo done) {
        assertThat(done).isNotNull();
      }
      nanos[i] = System.nanoTime() - before;
    }
    Arrays.sort(nanos);
    return nanos[TIMES / 2];
  }

  private static void print(String what, Path file, Figures figures) throws Exception {
    System.out.printf(
        "ScaleTest: %s, %.1f MB: open %.1f ms, list %.1f ms (%d0 steps), search %.1f ms (%d0), history"
            + " of a camera with 500 firings %.1f ms (%d0), one firing before its commit %.2f ms"
            + " (%d0)%n",
        what,
        Files.size(file) / 1e6,
        figures.openNanos() / 1e6,
        figures.listNanos() / 1e6,
        figures.listSteps(),
        figures.searchNanos() / 1e6,
        figures.searchSteps(),
        figures.historyNanos() / 1e6,
        figures.historySteps(),
        figures.settleNanos() / 1e6,
        figures.settleSteps());
  }

  private void fill(Path file, int cameras, int firingsOfTheBusyCamera) {
    FiringResult timed =
        SessionReducer.replay(RecordFixture.everything("BOX-1")).session().results().stream()
            .filter(f -> f.outcome() == Outcome.TIMED && f.shown().isPresent() && !f.afterRest())
            .findFirst()
            .orElseThrow();
    seconds = 0;
    ordinal = 0;
    try (WorkshopRecord record = RecordFixture.open(file)) {
      SessionStart start = SessionStart.of(new BenchEvent.Received(0, "invented"), "");
      record.begin(start);
      // One camera is fired, and all others are copies of it with other numbers and ticks.
      record.database.write(
          connection -> camera(connection, "camera 0", FIRINGS_A_CAMERA, timed, start.key()));
      record.database.write(connection -> copy(connection, cameras - 1));
      ordinal = cameras * FIRINGS_A_CAMERA / FIRINGS_A_RUN;
      seconds = cameras * FIRINGS_A_CAMERA;
      if (firingsOfTheBusyCamera > 0) {
        record.database.write(
            connection ->
                camera(connection, "busy camera", firingsOfTheBusyCamera, timed, start.key()));
      }
      record.database.write(
          connection -> {
            RowCrc.sealAll(connection);
            return null;
          });
    }
  }

  private static int copy(Connection connection, int copies) throws SQLException {
    int runs = FIRINGS_A_CAMERA / FIRINGS_A_RUN;
    String ticks = " + k * " + FIRINGS_A_CAMERA * 16_000_000L;
    String firings = " + k * " + FIRINGS_A_CAMERA;
    copy(connection, copies, "camera", Map.of("id", "id + k", "label", "'camera ' || k"));
    copy(
        connection,
        copies,
        "visit",
        Map.of("id", "id + k * " + runs, "camera_id", "camera_id + k"));
    copy(
        connection,
        copies,
        "run",
        Map.of(
            "id",
            "id + k * " + runs,
            "visit_id",
            "visit_id + k * " + runs,
            "run_ordinal",
            "run_ordinal + k * " + runs));
    copy(
        connection,
        copies,
        "firing",
        Map.of(
            "id",
            "id" + firings,
            "run_ordinal",
            "run_ordinal + k * " + runs,
            "firing_number",
            "firing_number" + firings,
            "first_ticks",
            "first_ticks" + ticks));
    copy(
        connection,
        copies,
        "firing_result",
        Map.of(
            "firing_id",
            "firing_id" + firings,
            "low_rise_ticks",
            "low_rise_ticks" + ticks,
            "high_rise_ticks",
            "high_rise_ticks" + ticks,
            "high_fall_ticks",
            "high_fall_ticks" + ticks,
            "low_fall_ticks",
            "low_fall_ticks" + ticks));
    return copies;
  }

  /** Copies all rows of a table so many times, k from 1, with what is another in each. */
  private static void copy(
      Connection connection, int copies, String table, Map<String, String> others)
      throws SQLException {
    List<String> columns =
        Query.list(connection, "PRAGMA table_info (" + table + ")", row -> row.getString("name"));
    String values =
        columns.stream()
            .map(column -> others.getOrDefault(column, column))
            .collect(Collectors.joining(", "));
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(
          "WITH RECURSIVE times (k) AS (SELECT 1 UNION ALL SELECT k + 1 FROM times WHERE k < "
              + copies
              + ") INSERT INTO "
              + table
              + " ("
              + String.join(", ", columns)
              + ") SELECT "
              + values
              + " FROM times, "
              + table);
    }
  }

  private Camera camera(
      Connection connection, String label, int firings, FiringResult timed, String sessionKey)
      throws SQLException {
    long session = SessionRows.find(connection, sessionKey).orElseThrow();
    Camera camera =
        CameraRows.keep(
            connection, Camera.of(label, ShutterKind.LEAF, BenchScript.DIAL), RecordFixture.NOW);
    List<MarkedSpeed> speeds = BenchScript.DIAL.speeds();
    for (int done = 0; done < firings; done += FIRINGS_A_RUN) {
      Instant at = RecordFixture.NOW.plusSeconds(done);
      Visit visit = VisitRows.keep(connection, Visit.begins(camera.id(), "J-" + seconds, at), at);
      RunRows.keep(
          connection,
          new Run(
              Id.ofNew(),
              Optional.of(visit.id()),
              sessionKey,
              ++ordinal,
              new RunSetup(label, Phase.AS_FOUND, "custom", speeds, Reference.EXACT, 5),
              Optional.of(at)));
      for (int i = 0; i < FIRINGS_A_RUN; i++) {
        DialSetting setting = new DialSetting.Speed(speeds.get(i % speeds.size()));
        FiringResult firing = Firings.later(timed, ++seconds, ordinal, Optional.of(setting));
        FiringRows.keep(connection, session, firing, false, true, at);
      }
    }
    return camera;
  }
}
