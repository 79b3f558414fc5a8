package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.fixtures.PracticeSession;
import org.halflight.job.Camera;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.StripSheet;
import org.halflight.record.CameraHistory;
import org.halflight.record.KeptFiring;
import org.halflight.record.WorkshopRecord;
import org.halflight.report.PageAbout;
import org.halflight.report.PageInput;
import org.halflight.report.RecordPage;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** A session file and the record of it come to one and the same page. */
class OnePageTest extends CommandTests {
  private static final Instant NOW = Instant.parse("2026-11-26T10:00:00Z");
  private static final List<MarkedSpeed> SPEEDS =
      List.of(MarkedSpeed.parse("1/60"), MarkedSpeed.parse("1/125"));

  @Override
  Instant now() {
    return NOW;
  }

  @Test
  void thePageOfASessionFileIsThatOfTheRecord() {
    Path session = folder.resolve("a.session");
    try (PracticeSession practice =
        new PracticeSession(session, InventedShutters.soundLeaf(SPEEDS, 11), 11)) {
      run(practice, Phase.AS_FOUND, Map.of(RunOption.WET.name(), "dry"));
      run(
          practice,
          Phase.AS_LEFT,
          Map.of(RunOption.SYNC_LEVER.name(), "X", RunOption.STOP.name(), "5.6"));
    }

    PageInput recorded = ofRecord(session);
    PageInput filed = ofFile(session, recorded);

    assertThat(filed).usingRecursiveComparison().isEqualTo(recorded);
    assertThat(filed.asFound().orElseThrow().when()).contains("25 November 2026", "60 min");
    assertThat(filed.last().setup())
        .isEqualTo(Map.of("Sync lever", "at X", "Aperture set (f-number)", "5.6"));
    assertThat(filed.stopTables()).hasSize(2);
    assertThat(filed.measuredFNumber()).hasValue(5.6);
  }

  @Test
  void thePageBearsTheDateOfThePlaceAndWhatTheRecordNotes() {
    Path session = folder.resolve("a.session");
    try (PracticeSession practice =
        new PracticeSession(session, InventedShutters.soundLeaf(SPEEDS, 11), 11)) {
      run(practice, Phase.AS_LEFT, Map.of());
    }
    Details ofVisit = new Details(Map.of(Detail.COMPLAINT, "hangs"));
    try (WorkshopRecord record =
        WorkshopRecord.open(folder.resolve("record.sqlite"), Clock.fixed(NOW, ZoneOffset.UTC))) {
      record.importSession(session);
      Camera camera = record.cameras().get(0).camera();
      record.keep(camera.withDetails(new Details(Map.of(Detail.LENS, "105 mm"))));
      record.keep(record.visits(camera.id()).get(0).with("J-1", ofVisit));
      // 21:31 on 29 November, eight hours west of Greenwich.
      Instant late = Instant.parse("2026-11-30T05:31:00Z");
      PageInput page =
          RecordPage.of(record.history(camera.id()).orElseThrow())
              .orElseThrow()
              .input(
                  List.of(),
                  StripSheet.EMPTY,
                  run -> record.firings(run).stream().map(KeptFiring::result).toList(),
                  late,
                  ZoneOffset.ofHours(-8),
                  "test");
      assertThat(page.date()).isEqualTo("29 November 2026");
      assertThat(page.details()).isEqualTo(ofVisit.and(new Details(Map.of(Detail.LENS, "105 mm"))));
    }
  }

  private static void run(PracticeSession practice, Phase phase, Map<String, String> noted) {
    practice.handle(
        new SessionInput.RunBegins(
            new RunSetup("invented camera", phase, "leaf", SPEEDS, Reference.EXACT, 3)
                .withConditions(new RunConditions(OptionalDouble.of(3600), noted))));
    for (MarkedSpeed speed : SPEEDS) {
      for (int i = 0; i < 3; i++) {
        practice.fire(speed);
      }
    }
  }

  private PageInput ofRecord(Path session) {
    try (WorkshopRecord record =
        WorkshopRecord.open(
            folder.resolve("record.sqlite"), Clock.fixed(NOW, ZoneId.systemDefault()))) {
      record.importSession(session);
      CameraHistory history = record.history(record.cameras().get(0).camera().id()).orElseThrow();
      return RecordPage.of(history)
          .orElseThrow()
          .input(
              List.of(),
              StripSheet.EMPTY,
              run -> record.firings(run).stream().map(KeptFiring::result).toList(),
              NOW,
              ZoneId.systemDefault(),
              "test");
    }
  }

  /** With the lists of the record, which a person types here. */
  private PageInput ofFile(Path session, PageInput recorded) {
    RunChoice.Reading reading =
        new RunChoice.Reading(
            CommandLine.populateCommand(new DecisionOptions()),
            CommandLine.populateCommand(new ProfileOptions()),
            surroundings());
    List<Path> files = List.of(session);
    PageAbout about =
        new PageAbout(
            "",
            "",
            "",
            Details.NONE,
            "",
            ShutterKind.UNKNOWN,
            Optional.empty(),
            recorded.lists(),
            List.of(),
            "",
            List.of(),
            false,
            OptionalDouble.empty());
    return surroundings()
        .page(
            RunChoice.page(
                about,
                RunChoice.of(files, Phase.AS_FOUND, reading),
                RunChoice.of(files, Phase.AS_LEFT, reading)));
  }
}
