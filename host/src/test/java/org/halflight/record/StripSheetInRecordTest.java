package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.Correction;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StripSheetInRecordTest {
  private static final Instant MONDAY = Instant.parse("2026-11-23T08:30:00.250Z");

  @TempDir private Path folder;

  @Test
  void aSheetComesBackAfterReopeningWithAllThatItEverSaid() {
    Visit visit;
    StripSheet sheet;
    try (WorkshopRecord record = open()) {
      visit = visit(record);
      for (SheetItem item : SheetItem.values()) {
        record.add(
            record.stripSheet(visit.id()).noted(visit.id(), item, "Größe \"1\"", "0.1", MONDAY));
      }
      SheetEntry shims = record.stripSheet(visit.id()).line(2).orElseThrow().now();
      record.add(shims.corrected("flange", "0.10, ?", MONDAY.plusSeconds(1)));
      record.add(
          record
              .stripSheet(visit.id())
              .line(2)
              .orElseThrow()
              .now()
              .turned(SheetState.BACK, MONDAY.plusSeconds(2)));
      sheet = record.stripSheet(visit.id());
      assertThat(record.stripSheet(visit(record).id())).isEqualTo(StripSheet.EMPTY);
    }
    try (WorkshopRecord record = open()) {
      assertThat(record.stripSheet(visit.id())).isEqualTo(sheet);
      assertThat(sheet.lines()).hasSize(SheetItem.values().length);
      assertThat(sheet.line(2).orElseThrow().entries())
          .extracting(SheetEntry::state)
          .containsExactly(SheetState.NOTED, SheetState.NOTED, SheetState.BACK);
      assertThat(record.verify(java.util.List.of(), false).inOrder()).isTrue();
    }
  }

  @Test
  void theFileRefusesToChangeOrDeleteWhatASheetSaid() {
    try (WorkshopRecord record = open()) {
      Visit visit = visit(record);
      record.add(StripSheet.EMPTY.noted(visit.id(), SheetItem.SHIMS, "", "0.1", MONDAY));
      for (String sql :
          new String[] {"UPDATE sheet_entry SET words = '0.2'", "DELETE FROM sheet_entry"}) {
        assertThatThrownBy(
                () -> record.database.change(connection -> Query.execute(connection, sql)))
            .hasMessageContaining("what the strip sheet said is never");
      }
    }
  }

  @Test
  void correctionsKeepWhatWasThere() {
    try (WorkshopRecord record = open()) {
      Visit visit =
          record.keep(
              visit(record)
                  .withIntake(Checklist.EMPTY.with(CheckItem.LENS, CheckState.FAULT, "haze")));
      assertThat(record.corrections(visit)).as("first answers correct nothing").isEmpty();
      record.keep(
          visit
              .with("J-18", visit.details())
              .withIntake(visit.intake().with(CheckItem.LENS, CheckState.OK, "")));
      assertThat(record.corrections(visit))
          .extracting(Correction::field, Correction::earlier)
          .containsExactly(
              org.assertj.core.groups.Tuple.tuple("job_number", "J-17"),
              org.assertj.core.groups.Tuple.tuple("intake/lens", "fault haze"));

      Camera camera = record.camera(visit.camera()).orElseThrow();
      record.keep(Camera.of("Aunt Ada", camera.shutter(), camera.dial()).withId(camera.id()));
      record.keep(record.camera(camera.id()).orElseThrow());
      assertThat(record.corrections(camera)).extracting(Correction::earlier).containsExactly("A");

      WorkEntry entry = record.keep(WorkEntry.of(visit.id(), MONDAY, WorkKind.CLEANED, "baldes"));
      record.keep(WorkEntry.of(visit.id(), MONDAY, WorkKind.CLEANED, "blades").withId(entry.id()));
      assertThat(record.corrections(entry))
          .extracting(Correction::field, Correction::earlier)
          .containsExactly(org.assertj.core.groups.Tuple.tuple("text", "baldes"));
    }
  }

  private WorkshopRecord open() {
    return RecordFixture.open(folder.resolve("record.sqlite"));
  }

  private static Visit visit(WorkshopRecord record) {
    Camera camera = record.keep(Camera.of("A", ShutterKind.LEAF, BenchScript.DIAL));
    return record.keep(Visit.begins(camera.id(), "J-17", MONDAY));
  }
}
