package org.halflight.record;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.halflight.bench.BenchEvent;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.Id;
import org.halflight.job.MeasuredValue;
import org.halflight.job.Photo;
import org.halflight.job.Run;
import org.halflight.job.SheetItem;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.ShutterKind;

/**
 * Writes the fixture of the newest form of the record, once for each: {@code mvn -q test-compile
 * exec:java -Dexec.classpathScope=test -Dexec.mainClass=org.halflight.record.WriteRecordFixture}. A
 * fixture that is there is left alone: it stands for the files that people have.
 */
public final class WriteRecordFixture {
  private WriteRecordFixture() {}

  public static void main(String[] args) throws Exception {
    Path folder = Files.createTempDirectory("record");
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      fill(record);
      record.backUp(Path.of("fixtures/record/v" + Migrations.OWN.newest() + ".sqlite"));
    }
  }

  static void fill(WorkshopRecord record) {
    Instant received = Instant.parse("2026-11-24T08:00:00Z");
    Camera camera =
        record.keep(
            new Camera(
                Id.ofNew(),
                "Invented folder, 6x9",
                "INV-0001",
                ShutterKind.LEAF,
                BenchScript.DIAL,
                OptionalDouble.of(4.5),
                Optional.of(FrameSize.ofMillimetres(56, 84.5)),
                "press the lever behind the door"));
    Visit visit =
        record.keep(
            Visit.begins(camera.id(), "J-2026/117", received)
                .withIntake(
                    Checklist.EMPTY
                        .with(CheckItem.OIL_ON_BLADES, CheckState.FAULT, "a film of it")
                        .with(CheckItem.WIND, CheckState.OK, "")));
    record.keep(WorkEntry.of(visit.id(), received, WorkKind.FOUND, "oil on the blades"));
    record.keep(
        new WorkEntry(
            Id.ofNew(),
            visit.id(),
            received.plusSeconds(3600),
            WorkKind.REPLACED,
            "shim",
            Optional.of(new MeasuredValue(new BigDecimal("0.150"), "mm")),
            Optional.empty(),
            OptionalInt.empty()));
    // The serial number of a simulated board: nobody shall take these figures for a real shutter's.
    List<BenchEvent> events = new ArrayList<>(RecordFixture.everything("BOX-0001", camera.label()));
    events.addAll(ReadingsInRecordTest.leakTest());
    ImportOutcome taken = record.importSession(events, "invented.session");
    Run found = record.run(taken.runs().get(0)).orElseThrow();
    record.keep(
        found.withConditions(
            new RunConditions(
                OptionalDouble.of(90 * 86_400),
                Map.of(
                    RunOption.PLACE.name(),
                    "in the camera",
                    RunOption.WET.name(),
                    "dry",
                    RunOption.SYNC_LEVER.name(),
                    "X"))));
    record.importSession(RecordFixture.calibrated("BOX-0002", camera.label()), "profile.session");
    record.importSession(RecordFixture.pinged("BOX-0003", camera.label()), "pinged.session");
    record.importSession(PressesInRecordTest.events(), "linkage.session");
    record.add(
        StripSheet.EMPTY.noted(visit.id(), SheetItem.SHIMS, "flange", "0.10, 0.05", received));
    record.keep(
        WorkEntry.of(visit.id(), received.plusSeconds(7200), WorkKind.NOTE, "written in error")
            .struck(true));
    record.keep(
        new Photo(
            Id.ofNew(),
            visit.id(),
            "visit-1/IMG_0117.jpg",
            "IMG_0117.jpg",
            "5e".repeat(32),
            2_345_678,
            received.plusSeconds(600),
            Photo.TakenBy.PICTURE,
            "oil between the blades",
            false));
    record.keep(
        visit.handedBack(
            received.plusSeconds(86_400),
            Checklist.EMPTY.with(CheckItem.BLADES, CheckState.OK, "dry")));
  }
}
