package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.LinkageJudgement.Fault;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.PlungerReading;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PressesInRecordTest {
  private static final String LABEL = "Old 6x6";

  @TempDir private Path folder;

  @Test
  void pressesAndThePlungerComeBackWithTheirFirings() {
    Session live = SessionReducer.replay(events()).session();
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      record.importSession(events(), "a.session");
      record.importSession(events(), "a.session");

      List<ExtraTest> tried = tried(record);

      assertThat(tried).isEqualTo(ExtraTests.of(Evidence.of(live), live.runs()));
      Linkage linkage = (Linkage) tried.get(0);
      assertThat(linkage.judged().fault()).contains(Fault.SHUTTER_FIRST);
      assertThat(linkage.judged().presses()).hasSize(3);
      assertThat(linkage.plunger()).contains(new PlungerReading(1.3, 1.45));
      assertThat(record.integrityFaults()).isEmpty();
      SessionStart start = SessionStart.of(events().get(0), "");
      ReducedSession told = ReducedSession.of(events());
      assertThat(agrees(record, start, told)).isTrue();
      record.keepLinkage(start.key(), live.presses(), List.of());
      assertThat(agrees(record, start, told)).isFalse();
    }
  }

  @Test
  void whatWasUndoneLeavesTheRecord() {
    Session live = SessionReducer.replay(events()).session();
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      record.importSession(events(), "a.session");
      String key = SessionStart.of(events().get(0), "").key();
      record.keepLinkage(key, live.presses().subList(0, 2), List.of());

      Linkage linkage = (Linkage) tried(record).get(0);
      assertThat(linkage.judged().presses()).hasSize(2);
      assertThat(linkage.plunger()).isEmpty();
    }
  }

  @Test
  void aPressWhoseFiringIsDamagedIsLeftOut() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      record.importSession(events(), "a.session");
      record.database.change(
          connection ->
              Query.execute(
                  connection, "UPDATE firing SET row_crc = row_crc + 1 WHERE firing_number = 2"));

      Linkage linkage = (Linkage) tried(record).get(0);
      assertThat(linkage.judged().presses()).hasSize(2);
      assertThat(linkage.judged().faults()).isEmpty();
    }
  }

  private static boolean agrees(WorkshopRecord record, SessionStart start, ReducedSession told) {
    return record.database.read(connection -> PressRows.isKept(connection, start, told));
  }

  private static List<ExtraTest> tried(WorkshopRecord record) {
    return record
        .history(record.search(LABEL).get(0).camera().id())
        .orElseThrow()
        .runs()
        .get(0)
        .tried();
  }

  /** A rest check, a press with one click, and one that leaves the wind locked; invented. */
  static List<BenchEvent> events() {
    return BenchScript.events(
        "R-1",
        7,
        script ->
            script
                .begins("2026-11-24T09:00:00Z")
                .greets()
                .lightIsSet()
                .run(LABEL, Phase.AS_LEFT, List.of(UntimedTest.LINKAGE), "1/125")
                .handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE))
                .handle(new SessionInput.PressJudged(LinkageStep.REST, WindState.LOCKED))
                .fires(125)
                .handle(new SessionInput.PressJudged(LinkageStep.STOP, WindState.TURNS))
                .fires(125)
                .handle(new SessionInput.PressJudged(LinkageStep.STOP, WindState.LOCKED))
                .handle(new SessionInput.PlungerRead(new PlungerReading(1.3, 1.45))));
  }
}
