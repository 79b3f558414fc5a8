package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.halflight.job.Camera;
import org.halflight.job.Checklist;
import org.halflight.job.DryRun;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.halflight.verdict.MovedSince.Answer;
import org.halflight.verdict.MovedSince.Part;
import org.halflight.verdict.MovedSince.Why;
import org.halflight.words.DryRunWords;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Dry runs that are due, and whether a shutter has moved between visits. */
class DueAndMovedTest {
  @TempDir private Path folder;
  private WorkshopRecord record;
  private Camera camera;
  private long boots;

  @BeforeEach
  void open() {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    camera = record.keep(Camera.of("Aunt Ada", ShutterKind.LEAF, BenchScript.DIAL));
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void aCameraLeftWetWantsItsDryRunUntilItIsFiredDryOrGoesBack() {
    Visit visit = visit("J-17", "2026-11-28T09:00:00Z");
    assertThat(due()).isEmpty();
    run(visit, "2026-11-28T10:00:00Z", Phase.AS_FOUND, "wet", 16, 16);
    assertThat(due()).as("as found is nothing that was left").isEmpty();
    run(visit, "2026-11-28T17:00:00Z", Phase.AS_LEFT, "wet", 16, 16);
    run(visit, "2026-11-28T18:00:00Z", Phase.AS_LEFT, "wet", 16, 16);
    assertThat(due()).contains(new DryRun("J-17", Instant.parse("2026-11-28T17:00:00Z")));
    run(visit, "2026-11-29T09:00:00Z", Phase.AS_LEFT, "", 16, 16);
    assertThat(due()).isEmpty();
    run(visit, "2026-11-29T12:00:00Z", Phase.AS_LEFT, "wet", 16, 16);
    assertThat(due()).isPresent();
    record.keep(visit.handedBack(Instant.parse("2026-11-30T09:00:00Z"), Checklist.EMPTY));
    assertThat(due()).isEmpty();
    Visit other = visit("", "2026-11-30T10:00:00Z");
    run(other, "2026-11-30T11:00:00Z", Phase.AS_LEFT, "wet", 16, 16);
    assertThat(due()).map(DryRun::name).contains("Aunt Ada");
  }

  @Test
  void theDayIsThatOfTheWorkshop() {
    DryRun due = new DryRun("J-17", Instant.parse("2026-11-28T23:30:00Z"));
    assertThat(said(due, "2026-11-28T23:40:00Z", ZoneOffset.UTC))
        .isEqualTo("J-17 is due for its dry run tomorrow.");
    assertThat(said(due, "2026-11-29T08:00:00Z", ZoneOffset.UTC))
        .isEqualTo("J-17 is due for its dry run today.");
    assertThat(said(due, "2026-11-30T08:00:00Z", ZoneOffset.UTC))
        .isEqualTo("J-17 has been due for its dry run since yesterday.");
    assertThat(said(due, "2026-11-30T08:00:00Z", ZoneId.of("Asia/Tokyo")))
        .isEqualTo("J-17 is due for its dry run today.");
    assertThat(said(due, "2026-12-05T08:00:00Z", ZoneOffset.UTC))
        .isEqualTo("J-17 has been due for its dry run since 29 November 2026.");
  }

  @Test
  void aReturnIsComparedWithTheVisitBeforeAsLeft() {
    Visit first = visit("J-1", "2025-11-03T09:00:00Z");
    run(first, "2025-11-03T10:00:00Z", Phase.AS_FOUND, "", 40, 31, 31.2);
    run(first, "2025-11-03T16:00:00Z", Phase.AS_LEFT, "", 15.6, 15.7, 15.6);
    assertThat(history().moved(first.id())).as("nothing came before").isEmpty();
    record.keep(first.handedBack(Instant.parse("2025-11-05T09:00:00Z"), Checklist.EMPTY));

    Visit back = visit("J-2", "2026-11-03T09:00:00Z");
    assertThat(history().moved(back.id())).as("nothing is fired yet").isEmpty();
    run(back, "2026-11-03T10:00:00Z", Phase.AS_FOUND, "", 40, 19.8, 19.9, 19.8);
    CameraHistory.Moved moved = history().moved(back.id()).orElseThrow();
    assertThat(moved.last().id()).isEqualTo(first.id());
    Part.Compared its = (Part.Compared) moved.since().exercised();
    assertThat(its.answer()).isEqualTo(Answer.MOVED);
    assertThat(its.speed()).contains(MarkedSpeed.parse("1/60"));
    assertThat(its.stops()).isCloseTo(Math.log(19.833 / 15.633) / Math.log(2), Offset.offset(0.01));
    assertThat(((Part.NotComparable) moved.since().afterRest()).why()).isEqualTo(Why.NO_REST_LEFT);
  }

  @Test
  void anotherSetUpIsNotComparable() {
    Visit first = visit("J-1", "2025-11-03T09:00:00Z");
    run(first, "2025-11-03T16:00:00Z", Phase.AS_LEFT, "wet", 15.6, 15.7, 15.6);
    record.keep(first.handedBack(Instant.parse("2025-11-05T09:00:00Z"), Checklist.EMPTY));
    Visit back = visit("J-2", "2026-11-03T09:00:00Z");
    run(back, "2026-11-03T10:00:00Z", Phase.AS_FOUND, "", 40, 15.6, 15.7);
    assertThat(history().moved(back.id()).orElseThrow().since().exercised())
        .isEqualTo(new Part.NotComparable(Why.OTHER_SETUP, List.of("wet")));
  }

  private Optional<DryRun> due() {
    return record.cameras().get(0).dryRun();
  }

  private static String said(DryRun due, String now, ZoneId zone) {
    return DryRunWords.line(due, Instant.parse(now), zone);
  }

  private CameraHistory history() {
    return record.history(camera.id()).orElseThrow();
  }

  private Visit visit(String job, String at) {
    return record.keep(Visit.begins(camera.id(), job, Instant.parse(at)));
  }

  private void run(Visit visit, String at, Phase phase, String wet, double... millis) {
    boots++;
    record.importSession(
        BenchScript.events(
            "R-1",
            Instant.parse(at).getEpochSecond(),
            script -> {
              script.begins(at).greets().lightIsSet().run("", phase, 2, "1/60");
              for (double each : millis) {
                script.fires(each);
              }
              script.handle(new SessionInput.Ends());
            }),
        boots + ".session");
    for (Run run : record.runsWithoutCamera()) {
      Map<String, String> noted = wet.isEmpty() ? Map.of() : Map.of("wet", wet);
      record.keep(
          run.withVisit(visit.id())
              .withConditions(new RunConditions(OptionalDouble.empty(), noted)));
    }
  }
}
