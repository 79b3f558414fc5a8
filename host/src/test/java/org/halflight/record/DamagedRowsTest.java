package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.halflight.bench.BenchEvent;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is damaged is said, left out, and mended from where it came. */
class DamagedRowsTest {
  private static final String MEND = "record verify --repair";

  @TempDir private Path folder;
  private Path file;
  private Path session;
  private List<BenchEvent> events;
  private String key;
  private WorkshopRecord record;
  private List<KeptFiring> before;
  private Run run;

  @BeforeEach
  void fill() {
    file = folder.resolve("record.sqlite");
    record = RecordFixture.open(file);
    events = new ArrayList<>(RecordFixture.everything("BOX-0001", "Invented folder, 6x9"));
    events.addAll(ReadingsInRecordTest.leakTest());
    session = RecordFixture.write(folder.resolve("a.session"), events);
    run = record.run(record.importSession(session).runs().get(1)).orElseThrow();
    key = SessionStart.of(events.get(0), "").key();
    before = record.firings(key);
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void aDamagedFiringIsLeftOutAndSaidOnceAndAllOthersHold() {
    List<String> heard = new ArrayList<>();
    record.onDamage(heard::add);
    damage("UPDATE firing SET edges = x'0100010001' WHERE firing_number = 3");
    List<KeptFiring> now = record.firings(key);
    assertThat(now).hasSize(before.size() - 1);
    assertThat(before).containsAll(now);
    assertThat(record.history(record.cameras().get(0).camera().id())).isPresent();
    assertThat(heard).hasSize(1).isEqualTo(record.damage());
    assertThat(heard.get(0)).contains("firing 3").contains("left out").contains(MEND);
    // Who comes later hears it too.
    List<String> later = new ArrayList<>();
    record.onDamage(later::add);
    assertThat(later).isEqualTo(heard);
  }

  @Test
  void takingTheSessionInMendsAFiringAndKeepsTheDamagedRow() {
    damage("UPDATE firing SET edges = x'0100010001' WHERE firing_number = 3");
    ImportOutcome taken = record.importSession(session);
    assertThat(taken.completed()).isEqualTo(1);
    assertThat(taken.known()).isEqualTo(before.size() - 1);
    assertThat(record.firings(key)).isEqualTo(before);
    assertThat(setAside()).hasSize(2).anyMatch(content -> content.contains("edges=0100010001"));
    // Mended: raw data is guarded as before.
    assertThatThrownBy(() -> execute("UPDATE firing SET edges = x'01'"))
        .hasMessageContaining("what was measured is never changed");
    assertThatThrownBy(() -> execute("DELETE FROM firing"))
        .hasMessageContaining("what was measured is never deleted");
  }

  @Test
  void aFiringThatSettlesOnADamagedRowMendsIt() {
    damage("UPDATE firing SET damage = 'lines-lost' WHERE firing_number = 3");
    assertThat(record.settle(key, before.get(2).result())).isEqualTo(SaveOutcome.MENDED);
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void resultsAreWorkedOutAgainFromRawEdgesWithoutAnySession() {
    damage("UPDATE firing_result SET effective_seconds = 1 WHERE firing_id = 2");
    damage("DELETE FROM firing_result WHERE firing_id = 10");
    assertThat(record.firings(key)).hasSize(before.size() - 2);
    Verified looked = record.verify(List.of(), false);
    assertThat(looked.inOrder()).isFalse();
    assertThat(looked.lines()).hasSize(2);
    assertThat(record.firings(key)).hasSize(before.size() - 2);
    Verified mended = record.verify(List.of(), true);
    assertThat(mended.inOrder()).isTrue();
    assertThat(mended.lines()).filteredOn(line -> line.contains("raw edges")).hasSize(2);
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void everyKindOfEntryIsMendedFromItsSession() {
    for (String sql :
        List.of(
            "UPDATE firing SET first_ticks = first_ticks + 1 WHERE firing_number = 4",
            "UPDATE firing SET rejection = 'x' WHERE firing_number = 5",
            "UPDATE firing SET curve = x'0100' WHERE curve IS NOT NULL",
            "UPDATE firing_result SET outcome = 'double' WHERE firing_id = 3",
            "UPDATE run SET phase = 'as-found' WHERE run_ordinal = 2",
            "UPDATE run_condition SET words = 'off' WHERE name = 'cells'",
            "UPDATE run_condition SET name = 'bells' WHERE name = 'cells'",
            "UPDATE bench_session SET events_taken = events_taken + 1",
            "UPDATE link_statistics SET lines = 1",
            "UPDATE rig_start SET firmware = '9'",
            "UPDATE light_reading SET counts = counts + 1")) {
      Verified whole = record.verify(List.of(session), false);
      assertThat(whole.lines()).as("before " + sql).isEmpty();
      damage(sql);
      assertThat(record.verify(List.of(session), false).inOrder()).as(sql).isFalse();
      Verified mended = record.verify(List.of(session), true);
      assertThat(mended.inOrder()).as(sql + mended.lines()).isTrue();
      assertThat(mended.lines()).as(sql).isNotEmpty();
      assertThat(record.firings(key)).as(sql).isEqualTo(before);
      assertThat(record.run(run.id())).as(sql).contains(run);
      assertThat(record.readings(run.id())).as(sql).isNotEmpty();
      assertThat(record.link(run.id()).orElseThrow().lines()).as(sql).isGreaterThan(1);
      assertThat(record.rigStart("BOX-0001", 7).orElseThrow().firmware()).isEqualTo("1.0.0");
      assertThat(record.damage()).as(sql).isEmpty();
    }
  }

  @Test
  void whatAPersonWroteIsUsedAgainAsItStandsAndShown() {
    Visit visit = record.visits(record.cameras().get(0).camera().id()).get(0);
    record.keep(WorkEntry.of(visit.id(), RecordFixture.NOW, WorkKind.FOUND, "oil on the blades"));
    damage("UPDATE work_entry SET text = 'oil on the blazes'");
    damage("UPDATE camera SET label = 'Indented folder'");
    assertThat(record.cameras()).isEmpty();
    assertThat(record.workLog(visit.id())).isEmpty();
    Verified mended = record.verify(List.of(session), true);
    assertThat(mended.inOrder()).isTrue();
    assertThat(mended.lines())
        .anyMatch(
            line ->
                line.contains("It is used again as it is") && line.contains("oil on the blazes"))
        .anyMatch(
            line -> line.contains("It is used again as it is") && line.contains("Indented folder"));
    assertThat(record.cameras()).hasSize(1);
    assertThat(record.workLog(visit.id())).hasSize(1);
  }

  @Test
  void whatNobodyCanReadStaysLeftOutAndIsShown() {
    damage("UPDATE camera SET shutter = 'leag'");
    Verified tried = record.verify(List.of(session), true);
    assertThat(tried.inOrder()).isFalse();
    assertThat(tried.lines()).anyMatch(line -> line.contains("can no longer be read"));
    assertThat(record.cameras()).isEmpty();
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void aDamagedFiringThatNoSessionTellsOfIsSetAside() {
    damage("UPDATE firing SET boot_count = 99 WHERE firing_number = 3");
    Verified mended = record.verify(List.of(), true);
    assertThat(mended.inOrder()).isTrue();
    assertThat(mended.lines()).anyMatch(line -> line.contains("set aside"));
    assertThat(setAside()).anyMatch(content -> content.contains("boot_count=99"));
    assertThat(record.firings(key)).hasSize(before.size() - 1);
    // Its session comes later all the same.
    assertThat(record.importSession(session).added()).isEqualTo(1);
    assertThat(record.firings(key)).isEqualTo(before);
  }

  @Test
  void otherRawDataThanTheSessionHasIsSaidAndNeitherIsChanged() {
    // Another opening under the same key; the check sum fits.
    damage("UPDATE firing SET edges = x'0100010400' WHERE firing_number = 3");
    record.database.write(
        connection -> {
          RowCrc.sealAll(connection);
          return null;
        });
    Verified found = record.verify(List.of(session), true);
    assertThat(found.inOrder()).isFalse();
    assertThat(found.lines()).anyMatch(line -> line.contains("other raw data in the record"));
    assertThat(record.firings(key).get(2).result().firing().edges()).hasSize(2);
  }

  @Test
  void aKeyThatChangedInTheTableOrInItsIndexIsSaidAndMended() throws IOException {
    record.close();
    byte[] whole = Files.readAllBytes(file);
    byte[] name = key.getBytes(StandardCharsets.US_ASCII);
    List<Integer> places = new ArrayList<>();
    for (int at = 0; at + name.length <= whole.length; at++) {
      if (java.util.Arrays.equals(whole, at, at + name.length, name, 0, name.length)) {
        places.add(at);
      }
    }
    assertThat(places).hasSize(2);
    for (int place : places) {
      byte[] changed = whole.clone();
      changed[place] = (byte) (changed[place] == 'a' ? 'b' : 'a');
      Files.write(file, changed);
      record = RecordFixture.open(file);
      assertThat(record.damage()).isNotEmpty();
      Verified mended = record.verify(List.of(session), true);
      assertThat(mended.inOrder()).as(mended.lines().toString()).isTrue();
      assertThat(record.integrityFaults()).isEmpty();
      assertThat(record.damage()).isEmpty();
      record.close();
    }
  }

  @Test
  void aRecordInOrderSaysHowMuchWasLookedAt() {
    Verified looked = record.verify(List.of(session), true);
    assertThat(looked.inOrder()).isTrue();
    assertThat(looked.lines()).isEmpty();
    assertThat(looked.firings()).isEqualTo(before.size());
    assertThat(looked.entries()).isGreaterThan(2 * before.size());
    assertThat(setAside()).isEmpty();
  }

  @Test
  void theFormItselfIsGuarded() {
    execute("DROP TRIGGER firing_raw_stays");
    record.close();
    assertThatThrownBy(() -> RecordFixture.open(file))
        .isInstanceOf(RecordTrouble.class)
        .hasMessageContaining("not as Halflight made them");
  }

  @Test
  void sessionsThatALostOrOlderRecordDoesNotHoldComeBack() {
    Path second =
        RecordFixture.write(
            folder.resolve("b.session"), RecordFixture.calibrated("BOX-0002", "Another"));
    assertThat(record.notTakenIn(folder)).containsExactly(second);
    Path backup = folder.resolve("backup.sqlite");
    record.backUp(backup);
    record.importSession(second);
    assertThat(record.notTakenIn(folder)).isEmpty();
    record.restore(backup);
    assertThat(record.notTakenIn(folder)).containsExactly(second);
    record.close();
    try (WorkshopRecord lost = RecordFixture.open(folder.resolve("new.sqlite"))) {
      assertThat(lost.notTakenIn(folder)).containsExactly(session, second);
      lost.notTakenIn(folder).forEach(lost::importSession);
      assertThat(lost.firings(key)).isEqualTo(before);
      assertThat(lost.notTakenIn(folder)).isEmpty();
    }
  }

  @Test
  void aSessionThatGrewIsNotHeldAndAnEmptyOneIs() throws IOException {
    RecordFixture.write(folder.resolve("empty.session"), List.of());
    assertThat(record.notTakenIn(folder)).isEmpty();
    Files.writeString(
        session,
        org.halflight.bench.EventLine.format(new BenchEvent.Mark(99, "of-a-later-day", Map.of()))
            + "\n",
        java.nio.file.StandardOpenOption.APPEND);
    assertThat(record.notTakenIn(folder)).containsExactly(session);
    record.importSession(session);
    assertThat(record.notTakenIn(folder)).isEmpty();
  }

  /** Changes rows behind the back of triggers and check sums, as a failing disk does. */
  private void damage(String sql) {
    execute("INSERT INTO repair_under_way (id) VALUES (1)");
    execute("DROP TRIGGER light_reading_stays");
    execute(sql);
    execute("DELETE FROM repair_under_way");
    execute(
        Migrations.resource("7.sql")
            .substring(Migrations.resource("7.sql").indexOf("CREATE TRIGGER light_reading_stays"))
            .split("\\R\\s*\\R", -1)[0]);
  }

  private void execute(String sql) {
    record.database.write(connection -> execute(connection, sql));
  }

  private static boolean execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      return statement.execute(sql);
    }
  }

  private List<String> setAside() {
    return record.database.read(
        c -> Query.list(c, "SELECT content FROM set_aside ORDER BY id", row -> row.getString(1)));
  }
}
