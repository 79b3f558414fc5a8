package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionReducer;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.LightLeak;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadingsInRecordTest {
  private static final String LABEL = "Old 6x6";

  @TempDir private Path folder;

  /** A session with a firing, and a leak test behind it. */
  static List<BenchEvent> events() {
    List<BenchEvent> events =
        new ArrayList<>(
            BenchScript.events(
                "R-1",
                7,
                script ->
                    script
                        .begins("2026-11-24T09:00:00Z")
                        .greets()
                        .lightIsSet()
                        .run(LABEL, Phase.AS_LEFT, 9, "1/125")));
    events.addAll(leakTest());
    return events;
  }

  /** Readings of a leak test, invented. */
  static List<BenchEvent> leakTest() {
    return List.of(
        read(What.LAMP_COVERED, 8, 9_000_000_000L), read(What.SHUT_COCKED, 12, 9_040_000_000L));
  }

  private static BenchEvent read(What what, double counts, long ticks) {
    return Marks.of(
        ticks,
        new SessionInput.LightRead(LightReading.of(what, "", false, counts, 0.3, 1000, ticks)));
  }

  @Test
  void readingsComeInWithTheirSessionOnceAndStay() {
    List<LightReading> live = SessionReducer.replay(events()).session().readings();
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      Id<Run> run = record.importSession(events(), "a.session").runs().get(0);
      record.importSession(events(), "a.session");

      assertThat(record.readings(run)).isEqualTo(live).hasSize(2);
      assertThat(live.get(0).phase()).contains(Phase.AS_LEFT);
      assertThat(live.get(0).fullCounts()).isPresent();
      assertThat(record.integrityFaults()).isEmpty();
      assertThatThrownBy(
              () ->
                  record.database.write(
                      connection -> {
                        try (var statement = connection.createStatement()) {
                          return statement.executeUpdate("UPDATE light_reading SET counts = 0");
                        }
                      }))
          .hasRootCauseInstanceOf(SQLException.class);
    }
  }

  /**
   * Readings of the panel, and the firing that knows what they limit, come back as they went in.
   */
  @Test
  void theTestOfThePanelComesBackWithItsFirings() {
    List<BenchEvent> events =
        BenchScript.events(
            "R-1",
            7,
            script ->
                script
                    .begins("2026-11-24T09:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run(LABEL, Phase.AS_LEFT, 9, "1/125")
                    .handle(panel(What.PANEL_IN_PLACE, 800, 1_000))
                    .handle(panel(What.PANEL_MOVED, 780, 2_000))
                    .handle(panel(What.PANEL_IN_PLACE, 800, 3_000))
                    .fires(8));
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      Id<Run> run = record.importSession(events, "a.session").runs().get(0);

      assertThat(record.readings(run))
          .extracting(LightReading::what)
          .containsExactly(What.PANEL_IN_PLACE, What.PANEL_MOVED, What.PANEL_IN_PLACE);
      assertThat(record.firings(run).get(0).result().profileUse().state())
          .isEqualTo(SessionReducer.replay(events).session().results().get(0).profileUse().state());
      assertThat(record.firings(run).get(0).result().profileUse().state().panelFall()).isPresent();
    }
  }

  private static SessionInput panel(What what, double counts, long ticks) {
    return new SessionInput.LightRead(LightReading.of(what, "", false, counts, 0.3, 1000, ticks));
  }

  @Test
  void aRecordOfVersionFiveHasItsReadings() throws IOException {
    Path file = folder.resolve("record.sqlite");
    Files.copy(Path.of("fixtures/record/v5.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      CameraLine line = record.search("j-2026/117").get(0);
      List<ExtraTest> tried =
          record.history(line.camera().id()).orElseThrow().runs().stream()
              .flatMap(run -> run.tried().stream())
              .toList();
      assertThat(tried).anyMatch(LightLeak.class::isInstance);
    }
  }

  @Test
  void theHistoryOfACameraListsWhatWasTried() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      record.importSession(events(), "a.session");

      CameraHistory history =
          record.history(record.search(LABEL).get(0).camera().id()).orElseThrow();

      List<ExtraTest> tried = history.runs().get(0).tried();
      assertThat(tried).hasSize(1);
      LightLeak leak = (LightLeak) tried.get(0);
      assertThat(leak.cocked().orElseThrow().found()).isEqualTo(LightLeak.Found.LEAK);
      assertThat(tried)
          .isEqualTo(
              ExtraTests.of(
                  List.of(), SessionReducer.replay(events()).session().readings(), List.of()));
    }
  }
}
