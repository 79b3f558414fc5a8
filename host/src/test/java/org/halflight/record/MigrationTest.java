package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.DecidedBy;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Correction;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.session.CameraCustoms;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.OwnTravel;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SyncLever;
import org.halflight.session.UntimedTest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MigrationTest {
  private static final Path FIXTURES = Path.of("fixtures/record");

  /** As the first release had it. */
  private static final Migrations ONE = new Migrations(List.of(Migrations.resource("1.sql")));

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("record.sqlite");
  }

  @Test
  void everyVersionHasItsFixture() throws IOException {
    try (Stream<Path> files = Files.list(FIXTURES)) {
      List<String> names = files.map(path -> path.getFileName().toString()).sorted().toList();
      for (int version = 1; version <= Migrations.OWN.newest(); version++) {
        assertThat(names).contains("v" + version + ".sqlite");
      }
    }
  }

  @Test
  void aRecordOfVersionFourBringsTheProfile() throws IOException {
    Files.copy(FIXTURES.resolve("v4.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.profiles()).containsExactly(RecordFixture.profile("BOX-0002"));
    }
  }

  @Test
  void aRecordOfVersionSixBringsHowTheRigStood() throws IOException {
    Files.copy(FIXTURES.resolve("v6.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      List<BenchEvent> events = RecordFixture.pinged("BOX-0003", "Invented folder, 6x9");
      // The method of today bounds its own error otherwise.
      record.recompute();
      assertThat(
              record.firings(SessionStart.of(events.get(0), "").key()).stream()
                  .map(KeptFiring::result)
                  .toList())
          .isEqualTo(SessionReducer.replay(events).session().results());
    }
  }

  @Test
  void aRecordOfVersionOneIsReadAsItWasWritten() throws IOException {
    Files.copy(FIXTURES.resolve("v1.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.integrityFaults()).isEmpty();
      CameraLine line = record.search("j-2026/117").get(0);
      assertThat(line.camera().label()).isEqualTo("Invented folder, 6x9");
      assertThat(line.camera().serialNumber()).isEqualTo("INV-0001");
      assertThat(line.camera().widestFNumber()).hasValue(4.5);
      assertThat(line.camera().frame().orElseThrow().heightMillimetres()).isEqualTo(84.5);
      assertThat(line.firings()).isEqualTo(16);
      Visit visit = record.visits(line.camera().id()).get(0);
      assertThat(visit.intake().of(CheckItem.OIL_ON_BLADES).state()).isEqualTo(CheckState.FAULT);
      assertThat(visit.handBack().of(CheckItem.BLADES).state()).isEqualTo(CheckState.OK);
      WorkEntry shim = record.workLog(visit.id()).get(1);
      assertThat(shim.kind()).isEqualTo(WorkKind.REPLACED);
      assertThat(shim.measured().orElseThrow().value()).isEqualTo(new BigDecimal("0.150"));
      CameraHistory history = record.history(line.camera().id()).orElseThrow();
      assertThat(history.runs())
          .extracting(run -> run.run().asked().phase())
          .containsExactly(Phase.AS_FOUND, Phase.AS_LEFT);
      RunSetup found = history.runs().get(0).run().asked();
      assertThat(found.conditions().restSeconds()).hasValue(90 * 86_400.0);
      assertThat(found.conditions().noted())
          .containsEntry("place", "in the camera")
          .containsEntry("wet", "dry");
      RunSetup left = history.runs().get(1).run().asked();
      assertThat(left.untimedTests()).containsExactly(UntimedTest.B, UntimedTest.T);
      assertThat(left.customs()).isEqualTo(new CameraCustoms(true, false));
      KeptFiring timed = record.firing(new FiringKey("BOX-0001", 7, 37_569_419)).orElseThrow();
      assertThat(timed.methodVersion()).isEqualTo(1);
      assertThat(timed.result().outcome()).isEqualTo(Outcome.TIMED);
      assertThat(timed.result().firing().edges()).hasSize(4);
      assertThat(timed.result().firing().lastTicks()).isEqualTo(37_850_657);
      // 17 ms were asked of the invented shutter; the rest is the rounding to ticks.
      assertThat(timed.result().effectiveSeconds().orElseThrow())
          .isCloseTo(0.017, Offset.offset(1.3e-7));
      assertThat(record.recompute().firings()).isEqualTo(17);
    }
  }

  @Test
  void aRecordOfVersionTwoHasItsLightCurves() throws IOException {
    Files.copy(FIXTURES.resolve("v2.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.integrityFaults()).isEmpty();
      CameraLine line = record.search("j-2026/117").get(0);
      List<KeptFiring> curved =
          record
              .firings(record.history(line.camera().id()).orElseThrow().runs().get(0).run().id())
              .stream()
              .filter(firing -> firing.result().curve().isPresent())
              .toList();
      assertThat(curved).hasSize(2);
      assertThat(curved.get(0).methodVersion()).isEqualTo(2);
      // 8.5 ms were asked of the invented shutter; the rest is eight bits and 16 us.
      assertThat(
              curved
                  .get(1)
                  .result()
                  .curveExposure()
                  .orElseThrow()
                  .measured()
                  .orElseThrow()
                  .effectiveSeconds())
          .isCloseTo(0.0085, Offset.offset(2.5e-5));
      // Edges and curve were not yet seen together.
      assertThat(curved).allMatch(firing -> firing.result().decided().isEmpty());
      record.recompute();
      FiringResult now = record.firing(curved.get(1).result().key()).orElseThrow().result();
      assertThat(now.decidedBy()).contains(DecidedBy.EDGES_CORRECTED);
      assertThat(now.effectiveSeconds().getAsDouble()).isCloseTo(0.0085, Offset.offset(2e-6));
    }
  }

  /** Of all firings that have one. */
  private static List<Double> effectiveSeconds(WorkshopRecord record) {
    return record.database.read(
        connection ->
            Query.list(
                connection,
                "SELECT effective_seconds FROM firing_result"
                    + " WHERE effective_seconds IS NOT NULL ORDER BY firing_id",
                row -> row.getDouble(1)));
  }

  @Test
  void aRecordOfVersionEightCanNoteTheSyncLever() throws IOException {
    Files.copy(FIXTURES.resolve("v8.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      CameraLine line = record.search("Invented folder").get(0);
      Run run = record.history(line.camera().id()).orElseThrow().runs().get(0).run();
      assertThat(run.asked().conditions().get(RunOption.SYNC_LEVER)).isEmpty();
      Map<String, String> noted = new HashMap<>(run.asked().conditions().noted());
      noted.put(RunOption.SYNC_LEVER.name(), "M");
      record.keep(run.withConditions(new RunConditions(OptionalDouble.empty(), noted)));
      assertThat(record.run(run.id()).orElseThrow().asked().conditions().get(RunOption.SYNC_LEVER))
          .contains(SyncLever.M);
      assertThatThrownBy(
              () ->
                  record.database.write(
                      connection -> {
                        new Columns()
                            .set("run_id", run.id().value() + 1)
                            .set("name", "sync-lever")
                            .set("words", "V")
                            .add(connection, "run_condition");
                        return true;
                      }))
          .hasStackTraceContaining("a sync lever is at X or at M");
    }
  }

  @Test
  void aRecordOfVersionNineRefusesAKindOfShutterThatNobodyKnows() throws IOException {
    Files.copy(FIXTURES.resolve("v9.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.integrityFaults()).isEmpty();
      assertThatThrownBy(
              () ->
                  record.database.write(
                      connection -> {
                        new Columns()
                            .set("label", "A")
                            .set("serial_number", "")
                            .set("shutter", "guillotine")
                            .set("dial", "leaf")
                            .set("dial_speeds", "1/60")
                            .set("dial_reference", "exact")
                            .set("firing_without_film", "")
                            .insert(connection, "camera");
                        return true;
                      }))
          .hasStackTraceContaining("no kind of shutter that is known");
    }
  }

  @Test
  void aRecordOfVersionTwelveHasItsCurtains() throws IOException {
    Files.copy(FIXTURES.resolve("v12.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      CameraLine line = record.search("J-2026/118").get(0);
      assertThat(line.camera().curtains().ownTravel()).contains(new OwnTravel(15.5, 32.4));
      assertThat(record.corrections(line.camera()))
          .extracting(Correction::earlier)
          .containsExactly("17.0", "36.0");
      Run run = record.history(line.camera().id()).orElseThrow().runs().get(0).run();
      assertThat(run.asked().conditions().get(RunOption.LAMP_DISTANCE))
          .contains(Double.POSITIVE_INFINITY);
      assertThat(record.firings(run.id()))
          .extracting(kept -> kept.result().exposure().curtains().orElseThrow())
          .containsExactly(CurtainTravels.whole(), CurtainTravels.capped());
      assertThatThrownBy(
              () ->
                  record.database.write(
                      connection -> {
                        new Columns()
                            .set("run_id", run.id().value())
                            .set("name", "sensor-slit")
                            .set("words", "wide")
                            .add(connection, "run_condition");
                        return true;
                      }))
          .hasStackTraceContaining("in mm, above 0");
    }
  }

  @Test
  void everyOldRecordGetsItsCheckSumsAndKeepsItsResults() throws IOException {
    for (int version = 1; version <= Migrations.OWN.newest(); version++) {
      Path old = folder.resolve("old-" + version + ".sqlite");
      Files.copy(FIXTURES.resolve("v" + version + ".sqlite"), old);
      try (WorkshopRecord record = RecordFixture.open(old)) {
        assertThat(record.damage()).as("version " + version).isEmpty();
        Verified looked = record.verify(List.of(), false);
        assertThat(looked.lines()).as("version " + version).isEmpty();
        assertThat(looked.entries()).isGreaterThan(30);
        int newest = Migrations.OWN.newest();
        Path copy = folder.resolve("old-" + version + ".before-version-" + newest + ".sqlite");
        assertThat(Files.exists(copy)).isEqualTo(version < newest);
        // Whatever the method of their day, today's comes to the same times, but for what light
        // curves correct: the rounding of their ramps to 16 us.
        List<Double> before = effectiveSeconds(record);
        record.recompute();
        assertThat(effectiveSeconds(record))
            .as("version " + version)
            .zipSatisfy(
                before, (now, then) -> assertThat(now).isCloseTo(then, Offset.offset(16e-6)));
      }
    }
  }

  @Test
  void theFormOfARecordThatWasBroughtUpIsThatOfANewOne() throws IOException {
    Files.copy(FIXTURES.resolve("v1.sqlite"), file);
    String sum = "SELECT schema_crc FROM form";
    try (WorkshopRecord old = RecordFixture.open(file);
        WorkshopRecord made = RecordFixture.open(folder.resolve("new.sqlite"))) {
      assertThat(old.database.<Long>read(c -> Query.one(c, sum, row -> row.getLong(1))))
          .isEqualTo(made.database.<Long>read(c -> Query.one(c, sum, row -> row.getLong(1))));
    }
  }

  @Test
  void aNewRecordHasTheNewestForm() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(version(record)).isEqualTo(Migrations.OWN.newest());
      String journal =
          record.database.read(c -> Query.one(c, "PRAGMA journal_mode", row -> row.getString(1)));
      assertThat(journal).isEqualTo("wal");
      // SQLite documentation of PRAGMA synchronous: 2 is FULL.
      int synchronous =
          record.database.write(c -> Query.one(c, "PRAGMA synchronous", row -> row.getInt(1)));
      assertThat(synchronous).isEqualTo(2);
      int foreignKeys =
          record.database.write(c -> Query.one(c, "PRAGMA foreign_keys", row -> row.getInt(1)));
      assertThat(foreignKeys).isEqualTo(1);
      int busyMillis =
          record.database.write(c -> Query.one(c, "PRAGMA busy_timeout", row -> row.getInt(1)));
      assertThat(busyMillis).isEqualTo(5000);
    }
  }

  @Test
  void aStepIsTakenOnceAndACopyIsMadeBefore() throws IOException {
    Files.copy(FIXTURES.resolve("v1.sqlite"), file);
    Migrations two =
        new Migrations(
            List.of(
                Migrations.resource("1.sql"),
                "ALTER TABLE camera ADD COLUMN colour TEXT NOT NULL DEFAULT 'black'\n\n"
                    + "CREATE TABLE strap (id INTEGER PRIMARY KEY) STRICT"));
    Path copy = folder.resolve("record.before-version-2.sqlite");
    for (int opened = 0; opened < 2; opened++) {
      try (WorkshopRecord record = open(two)) {
        assertThat(version(record)).isEqualTo(2);
        String colour =
            record.database.read(
                c -> Query.one(c, "SELECT colour FROM camera", row -> row.getString(1)));
        assertThat(colour).isEqualTo("black");
      }
    }
    assertThat(folder.resolve("record.before-version-2-2.sqlite")).doesNotExist();
    try (WorkshopRecord record = openAt(copy, ONE)) {
      assertThat(version(record)).isEqualTo(1);
      assertThat(rows(record, "camera")).isEqualTo(1);
    }
  }

  @Test
  void aStepThatFailsLeavesTheRecordAsItWas() throws IOException {
    Files.copy(FIXTURES.resolve("v1.sqlite"), file);
    Migrations broken =
        new Migrations(
            List.of(
                Migrations.resource("1.sql"),
                "CREATE TABLE strap (id INTEGER PRIMARY KEY) STRICT\n\nDROP TABLE no_such_table"));
    assertThatThrownBy(() -> open(broken)).isInstanceOf(RecordTrouble.class);
    Migrations orphans =
        new Migrations(
            List.of(
                Migrations.resource("1.sql"),
                "PRAGMA defer_foreign_keys = ON\n\nUPDATE visit SET camera_id = 99"));
    assertThatThrownBy(() -> open(orphans)).isInstanceOf(RecordTrouble.class);
    try (WorkshopRecord record = openAt(file, ONE)) {
      assertThat(version(record)).isEqualTo(1);
      int straps =
          record.database.read(
              c ->
                  Query.list(
                          c,
                          "SELECT name FROM sqlite_schema WHERE name = 'strap'",
                          row -> row.getString(1))
                      .size());
      assertThat(straps).isZero();
      assertThat(rows(record, "visit JOIN camera ON camera_id = camera.id")).isEqualTo(1);
    }
  }

  /** As the file has them: today's code reads columns that came later. */
  private static int rows(WorkshopRecord record, String table) {
    return record.database.read(
        c -> Query.one(c, "SELECT count(*) FROM " + table, row -> row.getInt(1)));
  }

  @Test
  void aNewerRecordIsRefusedAndLeftAlone() throws IOException {
    Files.copy(FIXTURES.resolve("v1.sqlite"), file);
    try (WorkshopRecord record =
        open(
            new Migrations(
                Stream.concat(
                        IntStream.rangeClosed(1, Migrations.OWN.newest())
                            .mapToObj(step -> Migrations.resource(step + ".sql")),
                        Stream.of("CREATE TABLE strap (id INTEGER PRIMARY KEY)"))
                    .toList()))) {
      assertThat(version(record)).isEqualTo(Migrations.OWN.newest() + 1);
    }
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> RecordFixture.open(file))
        .isInstanceOf(RecordTrouble.class)
        .hasMessageContaining("written by a later Halflight")
        .hasMessageContaining("newest Halflight")
        .extracting(e -> ((RecordTrouble) e).reason())
        .isEqualTo(RecordTrouble.Reason.NEWER);
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void aWordOfALaterVersionIsSaidAndNotGuessedAt() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.importSession(RecordFixture.everything("R-1"), "a.session");
      record.database.write(
          c -> {
            try (var statement = c.createStatement()) {
              boolean done = statement.execute("UPDATE camera SET shutter = 'of-liquid-crystal'");
              RowCrc.sealAll(c);
              return done;
            }
          });
      assertThatThrownBy(record::cameras)
          .isInstanceOf(RecordTrouble.class)
          .hasMessageContaining("of-liquid-crystal");
    }
  }

  private static WorkshopRecord openAt(Path file, Migrations migrations) {
    return WorkshopRecord.open(file, RecordFixture.CLOCK, CommitListener.NONE, migrations);
  }

  private WorkshopRecord open(Migrations migrations) {
    return WorkshopRecord.open(file, RecordFixture.CLOCK, CommitListener.NONE, migrations);
  }

  private static int version(WorkshopRecord record) {
    return record.database.read(Migrations::version);
  }
}
