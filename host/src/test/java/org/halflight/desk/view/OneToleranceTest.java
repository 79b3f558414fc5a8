package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.halflight.chart.SpeedMap;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.export.CsvTable;
import org.halflight.export.SpeedTable;
import org.halflight.job.StripSheet;
import org.halflight.link.serial.SerialPorts;
import org.halflight.record.CameraHistory;
import org.halflight.record.KeptFiring;
import org.halflight.record.WorkshopRecord;
import org.halflight.report.PageInput;
import org.halflight.report.RecordPage;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.speeds.Dial;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One run that does not reach the top of its dial is held against the same tolerance wherever a
 * person looks at it. 1/250 is the top of other dials, and the fastest speed that was fired.
 */
class OneToleranceTest {
  private static final Map<String, Tolerance> THIRDS =
      Map.of("1/125", Tolerance.THIRD, "1/250", Tolerance.THIRD);

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-25T10:00:00Z"), ZoneOffset.UTC);

  @TempDir private Path folder;

  @Test
  void ofALeafShutterThatWasFiredTo250() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.AS_LEFT, 2, "1/125", "1/250");
      isAThirdInTheWindow(work);
    }
    isAThirdInAllThatIsMadeOfTheSession();
  }

  @Test
  void ofADialOfItsOwnOfWhichTheRunFiresAPart() {
    RunForm form =
        RunForm.usual(
            "invented", Phase.AS_LEFT, Dial.custom("1/60,1/125,1/250,1/1000").orElseThrow());
    RunSetup setup =
        new RunForm(
                form.shutter(),
                form.phase(),
                "1/125, 1/250",
                2,
                form.restSeconds(),
                form.untimedTests(),
                form.options())
            .read();
    try (PracticeWork work = new PracticeWork(folder)) {
      work.model.runBegins();
      work.handle(new SessionInput.RunBegins(setup));
      isAThirdInTheWindow(work);
    }
    isAThirdInAllThatIsMadeOfTheSession();
  }

  private static void isAThirdInTheWindow(PracticeWork work) {
    for (int i = 0; i < 4; i++) {
      work.fire();
    }
    assertThat(of(ViewedRuns.latest(work.view()))).as("window").isEqualTo(THIRDS);
  }

  private void isAThirdInAllThatIsMadeOfTheSession() {
    Path session = folder.resolve("work.session");
    Path csv = folder.resolve("speeds.csv");
    assertThat(execute("export", session.toString(), "--speeds", csv.toString())).isZero();
    assertThat(slowLimits(CsvTable.read(csv))).as("terminal").containsOnly("0.333333");

    try (WorkshopRecord record = WorkshopRecord.open(folder.resolve("record.sqlite"), CLOCK)) {
      record.importSession(session);
      CameraHistory history = record.history(record.cameras().get(0).camera().id()).orElseThrow();
      List<SpeedSummary> speeds = history.runs().get(0).speeds();
      List<RunSummary> runs = List.of(new RunSummary(Phase.AS_LEFT, speeds));
      assertThat(of(runs)).as("record").isEqualTo(THIRDS);
      assertThat(slowLimits(SpeedTable.of(Source.PRACTICE, runs)))
          .as("its table")
          .containsOnly("0.333333");
      PageInput page =
          RecordPage.of(history)
              .orElseThrow()
              .input(
                  List.of(),
                  StripSheet.EMPTY,
                  run -> record.firings(run).stream().map(KeptFiring::result).toList(),
                  CLOCK.instant(),
                  ZoneOffset.UTC,
                  "test");
      assertThat(of(List.of(page.last().run()))).as("page").isEqualTo(THIRDS);
      assertThat(((SpeedMap) HistoryText.map(history, ZoneOffset.UTC).orElseThrow()).speeds())
          .filteredOn(column -> THIRDS.containsKey(column.speed().label()))
          .hasSize(2)
          .allSatisfy(
              column ->
                  assertThat(column.tolerance())
                      .as("picture of the history")
                      .isEqualTo(Tolerance.THIRD));
    }
  }

  private static Map<String, Tolerance> of(List<RunSummary> runs) {
    return runs.stream()
        .flatMap(run -> run.speeds().stream())
        .collect(
            Collectors.toMap(
                s -> s.speed().label(), SpeedSummary::tolerance, (a, b) -> b, TreeMap::new));
  }

  private static List<String> slowLimits(CsvTable table) {
    int at = table.headings().indexOf("tolerance_slow_stops");
    assertThat(table.rows()).hasSize(2);
    return table.rows().stream().map(row -> row.get(at)).toList();
  }

  private int execute(String... words) {
    return Halflight.execute(
        new Surroundings(
            new Terminal(
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                new ByteArrayInputStream(new byte[0])),
            (List<String> given) -> new SerialPorts(given),
            System::nanoTime,
            () -> Instant.EPOCH,
            folder,
            "test"),
        words);
  }
}
