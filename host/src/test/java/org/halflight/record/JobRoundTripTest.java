package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
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
import org.halflight.job.Correction;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.Id;
import org.halflight.job.MeasuredValue;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigMessage;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.GapLimits;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.speeds.Tolerances;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobRoundTripTest {
  private static final Instant MONDAY = Instant.parse("2026-11-23T08:30:00.250Z");

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("data/record.sqlite");
  }

  @Test
  void everythingAboutACameraComesBackAfterReopening() {
    Camera full =
        new Camera(
                Id.ofNew(),
                "Größter Balgen, '6x9'; \"links\"",
                "No. 4711-ß",
                ShutterKind.LEAF,
                Dial.find("older-leaf").orElseThrow(),
                OptionalDouble.of(4.5),
                Optional.of(FrameSize.ofMillimetres(56, 84.5)),
                "wind, then press the lever behind the door")
            .withDetails(new Details(Map.of(Detail.MAKER, " Erfunden ", Detail.LENS, "105 mm")));
    Camera bare = Camera.of("bare", ShutterKind.UNKNOWN, BenchScript.DIAL);
    Camera keptFull;
    Camera keptBare;
    try (WorkshopRecord record = RecordFixture.open(file)) {
      keptFull = record.keep(full);
      keptBare = record.keep(bare);
    }
    assertThat(keptFull.id()).isNotEqualTo(keptBare.id());
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.camera(keptFull.id())).contains(full.withId(keptFull.id()));
      assertThat(record.camera(keptBare.id())).contains(bare.withId(keptBare.id()));
      Camera changed = record.keep(keptBare.withDial(Dial.find("curtain").orElseThrow()));
      assertThat(record.camera(keptBare.id())).contains(changed);
      assertThat(record.cameras()).hasSize(2);
      assertThat(record.camera(new Id<>(99))).isEmpty();
    }
  }

  @Test
  void correctionsKeepWhatStoodThereBefore() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Camera camera = record.keep(Camera.of("A", ShutterKind.LEAF, BenchScript.DIAL));
      Visit visit = record.keep(Visit.begins(camera.id(), "J-1", MONDAY));
      Details first =
          new Details(Map.of(Detail.COMPLAINT, "sticks at 1 s", Detail.FILM, Detail.YES));
      visit = record.keep(visit.with("J-1", first));
      Details second =
          new Details(Map.of(Detail.COMPLAINT, "sticks in the cold", Detail.OWNER, "An Owner"));
      visit = record.keep(visit.with("J-2", second));
      assertThat(record.visit(visit.id())).contains(visit);
      assertThat(visit.details()).isEqualTo(second);
      assertThat(record.corrections(visit))
          .extracting(Correction::field, Correction::earlier)
          .containsExactly(
              tuple("job_number", "J-1"),
              tuple("complaint", "sticks at 1 s"),
              tuple("film", "yes"));
      record.keep(visit);
      assertThat(record.corrections(visit)).hasSize(3);
      assertThat(record.corrections(camera)).isEmpty();
      record.keep(
          new Camera(
              camera.id(),
              "B",
              "",
              ShutterKind.LEAF,
              BenchScript.DIAL,
              OptionalDouble.of(3.5),
              Optional.empty(),
              ""));
      assertThat(record.corrections(camera)).extracting(Correction::earlier).containsExactly("A");
      assertThat(record.verify(List.of(), false).inOrder()).isTrue();
    }
  }

  @Test
  void theFileMayHaveAnyName() {
    // What the file system of this machine takes; Windows knows no question marks.
    String odd = java.io.File.separatorChar == '/' ? "what? 100% #1 'ä'" : "100% #1 'ä'";
    Path there = folder.resolve(odd).resolve(odd + ".sqlite");
    Camera kept;
    try (WorkshopRecord record = RecordFixture.open(there)) {
      kept = record.keep(Camera.of("A", ShutterKind.LEAF, BenchScript.DIAL));
      record.backUp(folder.resolve(odd + " backup.sqlite"));
    }
    assertThat(there).exists();
    try (WorkshopRecord record = RecordFixture.open(folder.resolve(odd + " backup.sqlite"))) {
      assertThat(record.camera(kept.id())).contains(kept);
    }
  }

  @Test
  void aVisitComesBackWithBothLists() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Camera camera = record.keep(Camera.of("A", ShutterKind.LEAF, BenchScript.DIAL));
      Checklist intake = Checklist.EMPTY;
      CheckState[] states = CheckState.values();
      for (CheckItem item : CheckItem.values()) {
        int turn = List.of(CheckItem.values()).indexOf(item);
        intake = intake.with(item, states[turn % states.length], "note on " + item);
      }
      Visit visit = record.keep(Visit.begins(camera.id(), "J-2026/117", MONDAY).withIntake(intake));
      assertThat(record.visit(visit.id())).contains(visit);
      Checklist handBack =
          Checklist.EMPTY
              .with(CheckItem.B_AND_T, CheckState.OK, "")
              .with(CheckItem.WIND, CheckState.FAULT, "slips; owner knows");
      Visit done = record.keep(visit.handedBack(MONDAY.plusSeconds(86_400), handBack));
      assertThat(record.visits(camera.id())).containsExactly(done);
      assertThat(done.handBack().of(CheckItem.LENS).state()).isEqualTo(CheckState.NOT_TESTED);
      assertThat(done.intake()).isEqualTo(intake);
    }
  }

  @Test
  void theWorkLogKeepsDigitsAndUnits() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Visit visit = visit(record);
      WorkEntry shim =
          record.keep(
              new WorkEntry(
                  Id.ofNew(),
                  visit.id(),
                  MONDAY,
                  WorkKind.REPLACED,
                  "shim under the front cell",
                  Optional.of(new MeasuredValue(new BigDecimal("0.150"), "mm")),
                  Optional.empty(),
                  OptionalInt.empty()));
      WorkEntry cleaned =
          record.keep(
              WorkEntry.of(visit.id(), MONDAY.minusSeconds(60), WorkKind.CLEANED, "blades"));
      assertThat(record.workLog(visit.id())).containsExactly(cleaned, shim);
      assertThat(shim.measured().orElseThrow().value()).hasToString("0.150");
    }
  }

  @Test
  void anAdjustmentIsMarkedInItsRun() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Visit visit = visit(record);
      Run run = record.keep(run(record, Optional.of(visit.id())));
      WorkEntry entry =
          record.keep(
              new WorkEntry(
                  Id.ofNew(),
                  visit.id(),
                  MONDAY,
                  WorkKind.ADJUSTED,
                  "spring a notch tighter",
                  Optional.empty(),
                  Optional.of(run.id()),
                  OptionalInt.of(12)));
      assertThat(record.workLog(visit.id())).containsExactly(entry);
    }
  }

  @Test
  void aRunComesBackWithAllThatWasAskedAndNoted() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Visit visit = visit(record);
      Run bare = record.keep(run(record, Optional.empty()));
      assertThat(record.run(bare.id())).contains(bare);
      assertThat(record.runsWithoutCamera()).containsExactly(bare);
      RunConditions noted =
          new RunConditions(
              OptionalDouble.of(400 * 86_400 + 0.5),
              Map.of(
                  RunOption.STOP.name(),
                  "f/4.5, 'offen'; ja",
                  RunOption.WET.name(),
                  "",
                  "own",
                  "ß"));
      Run named = record.keep(bare.withVisit(visit.id()).withConditions(noted));
      assertThat(record.run(bare.id())).contains(named);
      assertThat(named.asked().conditions()).isEqualTo(noted);
      assertThat(record.run(named.sessionKey(), 1)).contains(named);
      assertThat(record.runs(visit.id())).containsExactly(named);
      assertThat(record.runsWithoutCamera()).isEmpty();
      Run unnoted = record.keep(named.withConditions(RunConditions.NONE));
      assertThat(record.run(bare.id())).contains(unnoted);
      Run checks =
          record.keep(
              new Run(
                  bare.id(),
                  Optional.of(visit.id()),
                  bare.sessionKey(),
                  1,
                  new RunSetup(
                          "A",
                          Phase.AS_LEFT,
                          "custom",
                          List.of(),
                          Reference.EXACT,
                          1,
                          UntimedTest.T,
                          UntimedTest.B)
                      .withCustoms(new CameraCustoms(false, true)),
                  Optional.empty()));
      assertThat(record.run(bare.id())).contains(checks);
      AcceptanceCriteria criteria =
          AcceptanceCriteria.USUAL
              .with(RunOption.TOLERANCE, Tolerances.find("0.25, 1/500=+0.5-0.4").orElseThrow())
              .with(RunOption.ABOUT, Measurand.ONE_EXPOSURE)
              .with(RunOption.UNTIL_DECIDED, true)
              .with(RunOption.QUICK, true)
              .with(RunOption.STOPS, List.of("3.5", "5.6", "8"))
              .with(RunOption.STOP_TOLERANCE, 0.25)
              .with(RunOption.LINKAGE, "-0.5..2.0")
              .with(RunOption.LINKAGE_GAP, Optional.of(new GapLimits(0, 0.2)))
              .with(RunOption.CONTACT, true);
      Run aimed =
          record.keep(
              new Run(
                  bare.id(),
                  Optional.of(visit.id()),
                  bare.sessionKey(),
                  1,
                  bare.asked().withCriteria(criteria),
                  Optional.empty()));
      assertThat(record.run(bare.id())).contains(aimed);
      assertThat(record.run(bare.id()).orElseThrow().asked().criteria()).isEqualTo(criteria);
      Run tried =
          record.keep(
              new Run(
                  bare.id(),
                  Optional.of(visit.id()),
                  bare.sessionKey(),
                  1,
                  bare.asked().withMostTries(45).withShutterKind(ShutterKind.CURTAIN_SHORT_SIDE),
                  Optional.empty()));
      assertThat(record.run(bare.id())).contains(tried);
    }
  }

  @Test
  void linkStatisticsAreThoseOfTheRunAlone() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Run run = record.keep(run(record, Optional.empty()));
      LinkStatistics before =
          new LinkStatistics(
              100,
              4000,
              1,
              2,
              3,
              4,
              5,
              6,
              7,
              java.util.OptionalLong.of(1L << 40),
              Optional.empty());
      LinkStatistics after =
          new LinkStatistics(
              150,
              6000,
              1,
              4,
              3,
              4,
              6,
              6,
              9,
              java.util.OptionalLong.of(1L << 41),
              Optional.of(new RigMessage.Losses(0, 1L << 33, 1, 2, 3, 4, 5, 6)));
      record.keepLink(run.id(), before, after);
      record.keepLink(run.id(), before, after);
      assertThat(record.link(run.id()))
          .contains(
              new LinkStatistics(
                  50, 2000, 0, 2, 0, 0, 1, 0, 2, after.lastBeatTicks(), after.rigLosses()));
      assertThat(record.link(new Id<>(99))).isEmpty();
    }
  }

  @Test
  void whatARigSaidOfItselfIsKeptForEachStart() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.keep(
          new RigMessage.Greeting(
              0, 1, 16_000_000, "full", 0x7F, "R-0001", 7, "power", "1.0.0", 4800));
      assertThat(record.rigStart("R-0001", 7))
          .contains(new RigStart("R-0001", 7, "full", 0x7F, 16_000_000, "1.0.0", 1, "power"));
      assertThat(record.rigStart("R-0001", 8)).isEmpty();
    }
  }

  @Test
  void numbersThatTheRecordNeverGaveAreACallersMistake() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Camera stranger = Camera.of("A", ShutterKind.LEAF, BenchScript.DIAL).withId(new Id<>(99));
      assertThatThrownBy(() -> record.keep(stranger)).isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> record.keep(Visit.begins(new Id<>(99), "", MONDAY)))
          .isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> record.keep(WorkEntry.of(new Id<>(9), MONDAY, WorkKind.NOTE, "")))
          .isInstanceOf(IllegalArgumentException.class);
      assertThat(record.cameras()).isEmpty();
    }
  }

  private static Visit visit(WorkshopRecord record) {
    Camera camera = record.keep(Camera.of("A", ShutterKind.LEAF, BenchScript.DIAL));
    return record.keep(Visit.begins(camera.id(), "", MONDAY));
  }

  private static Run run(WorkshopRecord record, Optional<Id<Visit>> visit) {
    SessionStart start = SessionStart.of(new BenchEvent.Received(0, "the first line"), "a.session");
    record.begin(start);
    return new Run(
        Id.ofNew(),
        visit,
        start.key(),
        1,
        new RunSetup(
            "A", Phase.ADJUSTING, "custom", BenchScript.DIAL.speeds(), Reference.LITERAL, 5),
        Optional.of(MONDAY));
  }
}
