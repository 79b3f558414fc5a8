package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.Correction;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every change of what is noted can be taken back and done again, and its past stays. */
class EditTest {
  private static final Instant NOW = Instant.parse("2026-11-30T09:00:00Z");

  @TempDir Path folder;
  private WorkshopRecord record;
  private Camera camera;
  private Visit visit;

  @BeforeEach
  void open() {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    camera = record.keep(Camera.of("invented", ShutterKind.LEAF, Dial.builtIn().get(0)));
    visit = record.keep(Visit.begins(camera.id(), "J-1", NOW));
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void fieldsListsAndHandingBackAreTakenBackTogether() {
    Visit changed =
        visit
            .with("J-2", new Details(Map.of(Detail.COMPLAINT, "sticks at 1 s")))
            .withIntake(Checklist.EMPTY.with(CheckItem.BLADES, CheckState.FAULT, "oil"))
            .handedBack(NOW.plusSeconds(60), Checklist.EMPTY);
    Edit back = Edit.of(camera.withDial(Dial.builtIn().get(1))).then(Edit.of(changed)).on(record);
    assertThat(record.visit(visit.id())).contains(changed);

    Edit again = back.on(record);
    assertThat(record.visit(visit.id())).contains(visit);
    assertThat(record.camera(camera.id())).contains(camera);
    assertThat(record.corrections(visit))
        .extracting(Correction::field)
        .contains("job_number", "complaint", "handed_back_at_millis", "intake/blades");

    again.on(record);
    assertThat(record.visit(visit.id())).contains(changed);
  }

  @Test
  void anEntryOfTheWorkLogIsStruckAndCorrected() {
    WorkEntry typed = WorkEntry.of(visit.id(), NOW, WorkKind.CLEANED, "blades");
    Edit back = Edit.of(typed).on(record);
    WorkEntry kept = record.workLog(visit.id()).get(0);
    Edit again = back.on(record);
    assertThat(record.workLog(visit.id())).isEmpty();
    assertThat(record.workLogWithStruck(visit.id())).containsExactly(kept.struck(true));
    again.on(record);
    assertThat(record.workLog(visit.id())).containsExactly(kept);

    Edit words = Edit.of(kept.with(WorkKind.REPLACED, "spring", Optional.empty())).on(record);
    words.on(record);
    assertThat(record.workLog(visit.id())).containsExactly(kept);
    assertThat(record.corrections(kept))
        .extracting(Correction::earlier)
        .contains("cleaned", "blades", "replaced", "spring");
    assertThat(kept.afterFiring()).isEqualTo(OptionalInt.empty());
  }

  @Test
  void aLineOfTheStripSheetSaysAgainWhatItSaid() {
    Edit.of(StripSheet.EMPTY.noted(visit.id(), SheetItem.SHIMS, "", "0.10", NOW), NOW).on(record);
    StripSheet.Line line = record.stripSheet(visit.id()).lines().get(0);
    Edit back = Edit.of(line.now().corrected("", "0.15", NOW), NOW).on(record);
    back.on(record);
    assertThat(record.stripSheet(visit.id()).lines().get(0).now().words()).isEqualTo("0.10");
    Edit tick = Edit.of(line.now().turned(SheetState.BACK, NOW), NOW).on(record);
    tick.on(record);
    assertThat(record.stripSheet(visit.id()).open()).hasSize(1);
  }

  @Test
  void aPictureIsTakenOffAndComesBackWithItsCaption() {
    Photo photo =
        new Photo(
            Id.ofNew(),
            visit.id(),
            "visit-1/shims.jpg",
            "IMG 1.jpg",
            "0".repeat(64),
            1234,
            NOW,
            Photo.TakenBy.PICTURE,
            "",
            false);
    Edit.of(photo).on(record);
    Photo kept = record.photos(visit.id()).get(0);
    assertThat(kept).isEqualTo(photo.withId(kept.id()));
    Edit.of(kept.withCaption("two shims")).on(record);
    Edit back = Edit.of(kept.withCaption("three shims").off(true)).on(record);
    assertThat(record.photos(visit.id())).isEmpty();
    assertThat(record.photosWithOff(visit.id())).hasSize(1);
    back.on(record);
    assertThat(record.photos(visit.id())).containsExactly(kept.withCaption("two shims"));
    assertThat(record.photosOf(photo.sha256())).hasSize(1);
    assertThat(record.corrections(kept))
        .extracting(Correction::earlier)
        .contains("two shims", "three shims");
  }

  @Test
  void aCameraThatWasNamedByMistakeIsListedNoLongerAndComesBack() {
    Camera other = record.keep(Camera.of("a slip", ShutterKind.LEAF, Dial.builtIn().get(0)));
    Edit back = Edit.of(Visit.begins(other.id(), "J-9", NOW)).on(record);
    assertThat(labels()).containsExactlyInAnyOrder("invented", "a slip");
    Edit again = back.on(record);
    assertThat(labels()).containsExactly("invented");
    assertThat(record.visits(other.id())).isEmpty();
    again.on(record);
    assertThat(labels()).containsExactlyInAnyOrder("invented", "a slip");
    assertThat(record.visits(other.id())).extracting(Visit::jobNumber).containsExactly("J-9");
  }

  private List<String> labels() {
    return record.cameras().stream().map(line -> line.camera().label()).toList();
  }

  @Test
  void theVisitsThatWereOpenAtAMomentAreFound() {
    assertThat(record.visitsOpenAt(NOW.minusSeconds(1))).isEmpty();
    assertThat(record.visitsOpenAt(NOW)).containsExactly(visit);
    record.keep(visit.handedBack(NOW.plusSeconds(60), Checklist.EMPTY));
    assertThat(record.visitsOpenAt(NOW.plusSeconds(59))).hasSize(1);
    assertThat(record.visitsOpenAt(NOW.plusSeconds(60))).isEmpty();
  }
}
