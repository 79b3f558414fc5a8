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
import java.util.Set;
import org.halflight.bench.BenchEvent;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.CurtainCamera;
import org.halflight.job.Id;
import org.halflight.job.MeasuredValue;
import org.halflight.job.Photo;
import org.halflight.job.Run;
import org.halflight.job.SheetItem;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.session.Adjuster;
import org.halflight.session.FiringResult;
import org.halflight.session.OwnTravel;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;

/**
 * Writes the fixture of the newest form of the record, once for each: {@code mvn -q test-compile
 * exec:java -Dexec.classpathScope=test -Dexec.mainClass=org.halflight.record.WriteRecordFixture}. A
 * fixture that is there is left alone: it stands for the files that people have.
 */
public final class WriteRecordFixture {
  private static final Set<Adjuster> ADJUSTERS = Set.of(Adjuster.FIRST_TENSION, Adjuster.SLIT);

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
    curtains(record, received);
  }

  /** A camera with curtains, its springs counted, and two firings by travels that were made up. */
  private static void curtains(WorkshopRecord record, Instant received) {
    Camera camera =
        record.keep(
            Camera.of("Invented 35 mm", ShutterKind.CURTAIN_LONG_SIDE, BenchScript.DIAL)
                .withCurtains(
                    new CurtainCamera(
                        Optional.of(new OwnTravel(17, 36)), MarkedSpeed.find("1/50"), ADJUSTERS)));
    record.keep(
        camera.withCurtains(
            new CurtainCamera(
                Optional.of(new OwnTravel(15.5, 32.4)), MarkedSpeed.find("1/50"), ADJUSTERS)));
    Visit visit = record.keep(Visit.begins(camera.id(), "J-2026/118", received));
    for (String turn : List.of("first-tension found 3.5", "first-tension +0.25")) {
      record.keep(WorkEntry.of(visit.id(), received, WorkKind.NOTE, turn).counted());
    }
    List<BenchEvent> events =
        BenchScript.events(
            "BOX-0004",
            7,
            script ->
                script
                    .begins("2026-11-24T12:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run(camera.label(), Phase.AS_FOUND, 2, "1/125")
                    .fires(8)
                    .fires(8.1));
    ImportOutcome taken = record.importSession(events, "curtains.session");
    Run run = record.run(taken.runs().get(0)).orElseThrow();
    record.keep(
        run.withConditions(
            new RunConditions(
                OptionalDouble.empty(),
                Map.of(
                    RunOption.FRAME.name(), "36 x 24",
                    RunOption.CURTAIN_GAP.name(), "5",
                    RunOption.LAMP_DISTANCE.name(), "parallel"))));
    List<FiringResult> blades = ReducedSession.of(events).firings();
    record.settle(
        run.sessionKey(),
        List.of(
            CurtainTravels.timed(blades.get(0), CurtainTravels.whole()),
            CurtainTravels.timed(blades.get(1), CurtainTravels.capped())));
  }
}
