package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.halflight.session.UntimedTest.WIND_AND_RELEASE;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.export.CsvTable;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTiming.Verdict;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.AdvanceTrial.Reason;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.MeasuredChecks;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.record.CameraHistory;
import org.halflight.record.WorkshopRecord;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.DialSetting;
import org.halflight.session.LinkageLimits;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.workflow.PracticeOperator;
import org.junit.jupiter.api.Test;

/**
 * The linkage found out, set and left good in a run, and all that carries it; on the practice rig,
 * so every figure is simulated.
 */
class LinkageInARunTest extends CommandTests {
  private static final String LABEL = "invented camera";
  private static final LinkageLimits LIMITS = new LinkageLimits(0.0005, 0.0035);

  private final PracticeRig rig =
      PracticeRig.unpaced(
          InventedShutters.soundLeaf(InventedShutters.dial(), 7), SensorSet.IDEAL, 7);

  @Test
  void theLinkageIsFoundOutSetByNumberAndLeftGood() throws IOException {
    PracticeOperator operator = new PracticeOperator(rig, 7);
    rig.turnLinkage(6);
    operator.willTurnLinkage(List.of(0.0, 0.0, 0.0, -12.0, 4.5, 1.5));
    Session session =
        run(
            operator,
            setup(Phase.AS_FOUND, 3, "1/60"),
            setup(Phase.ADJUSTING, 4),
            setup(Phase.AS_LEFT, 3, "1/60"));

    List<AdvanceTiming> linkages = linkages(tried(session));
    assertThat(linkages)
        .extracting(AdvanceTiming::verdict)
        .containsExactly(Verdict.TOO_EARLY, Verdict.GOOD, Verdict.GOOD);
    // The screw stood 6 ms out; light passes the low level a little after first light.
    assertThat(linkages.get(0).meanSeconds().orElseThrow()).isCloseTo(0.0081, within(0.0006));
    assertThat(linkages.get(2).meanSeconds().orElseThrow()).isCloseTo(0.0021, within(0.0006));
    assertThat(linkages.get(2).limits()).isEqualTo(LIMITS);
    assertThat(linkages.get(1).trials())
        .extracting(trial -> linkages.get(1).verdict(trial))
        .containsExactly(Verdict.TOO_EARLY, Verdict.TOO_LATE, Verdict.NOT_TOLD, Verdict.GOOD);
    assertThat(printed())
        .contains("too early. Adjust it so that the advance unlocks later.")
        .contains("too late. Adjust it so that the advance unlocks earlier.")
        .containsPattern("Trial 3 has no interval. Too close to separate.*unlocks earlier\\.")
        .containsPattern("Trial 4: the advance unlocks [12]\\.\\d ms before the blades open: good")
        .contains("Do not wind on");

    handBackFillsItself(tried(session));
    recordKeepsIt(tried(session));
    tableAndPageCarryIt();
  }

  @Test
  void aContactInPlaceOfTheClickSensorTellsItMoreFinely() {
    rig.contactAtAdvance(true);
    Session session = run(new PracticeOperator(rig, 7), setup(Phase.AS_LEFT, 3));

    AdvanceTiming linkage = linkages(tried(session)).get(0);
    assertThat(linkage.verdict()).isEqualTo(Verdict.GOOD);
    assertThat(linkage.trials())
        .allMatch(trial -> trial.interval().filter(AdvanceTrial.Interval::byContact).isPresent());
  }

  @Test
  void aSensorThatHearsTheTableHasASentenceAndNoInterval() {
    PracticeOperator operator =
        new PracticeOperator(rig, 7) {
          private int tries;

          @Override
          public void fire(Optional<DialSetting> shown) {
            if (shown.flatMap(DialSetting::untimedTest).equals(Optional.of(WIND_AND_RELEASE))
                && tries++ == 0) {
              // A tool is put down: sounds and no firing.
              rig.edgeTrain(Channel.CLICK, 900, 60);
            } else {
              super.fire(shown);
            }
          }
        };
    Session session = run(operator, setup(Phase.AS_LEFT, 2));

    assertThat(printed())
        .contains("The click sensor picked up a sound and no shutter opened")
        .contains("fasten the sensor to the camera alone");
    AdvanceTiming linkage = linkages(tried(session)).get(0);
    assertThat(linkage.trials()).hasSize(2);
    assertThat(linkage.count(Reason.NOISE)).isZero();
  }

  private static void handBackFillsItself(List<ExtraTest> tried) {
    MeasuredChecks.Answer back =
        MeasuredChecks.handBack(tried).answer(CheckItem.WIND, CheckState.NOT_TESTED);
    assertThat(back.state()).isEqualTo(CheckState.OK);
    assertThat(back.origin()).isEqualTo(MeasuredChecks.Origin.MEASURED);
    assertThat(MeasuredChecks.intake(tried).answer(CheckItem.WIND, CheckState.NOT_TESTED).state())
        .isEqualTo(CheckState.FAULT);
  }

  private void recordKeepsIt(List<ExtraTest> tried) {
    Path file = folder.resolve("record.sqlite");
    Clock clock = Clock.fixed(Instant.EPOCH, ZoneOffset.UTC);
    try (WorkshopRecord record = WorkshopRecord.open(file, clock)) {
      record.importSession(session());
    }
    try (WorkshopRecord record = WorkshopRecord.open(file, clock)) {
      CameraHistory history =
          record.history(record.search(LABEL).get(0).camera().id()).orElseThrow();
      List<AdvanceTiming> kept =
          linkages(history.runs().stream().flatMap(run -> run.tried().stream()).toList());
      List<AdvanceTiming> live = linkages(tried);
      assertThat(kept).hasSameSizeAs(live);
      for (AdvanceTiming each : live) {
        AdvanceTiming same =
            kept.stream().filter(its -> its.phase().equals(each.phase())).findFirst().orElseThrow();
        assertThat(same.values()).isEqualTo(each.values());
        assertThat(same.verdict()).isEqualTo(each.verdict());
        assertThat(same.limits()).isEqualTo(each.limits());
      }
    }
  }

  private void tableAndPageCarryIt() throws IOException {
    Path table = folder.resolve("everyday.csv");
    assertThat(execute("export", session().toString(), "--extra-tests", table.toString())).isZero();
    assertThat(CsvTable.read(table).rows().toString())
        .contains("advance-before-blades")
        .contains("linkage");
    Path pictures = folder.resolve("pictures");
    assertThat(execute("picture", session().toString(), "--extra-tests", pictures.toString()))
        .isZero();
    assertThat(pictures).isDirectoryContaining("glob:**/*linkage-adjusting.png");
    assertThat(execute("replay", session().toString())).isZero();
    assertThat(printed()).contains("The advance unlocks").contains("limits +0.5 ms to +3.5 ms");
    Path page = folder.resolve("page.pdf");
    assertThat(execute("page", session().toString(), "--out", page.toString())).isZero();
    try (PDDocument document = Loader.loadPDF(page.toFile())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text)
          .containsPattern("As left: The advance unlocks [12]\\.\\d ms before the blades open")
          .contains("good, just ahead of the shutter");
    }
  }

  private static List<ExtraTest> tried(Session session) {
    return ExtraTests.of(session.results(), session.readings(), session.runs());
  }

  private static List<AdvanceTiming> linkages(List<ExtraTest> tried) {
    return tried.stream()
        .filter(AdvanceTiming.class::isInstance)
        .map(AdvanceTiming.class::cast)
        .toList();
  }

  private Session run(PracticeOperator operator, RunSetup... setups) {
    AtomicLong nanos = new AtomicLong();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(session()),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of("at", Instant.EPOCH.toString())));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      BenchTerminal bench = new BenchTerminal(driver, terminal(), operator);
      bench.waitForRig();
      bench.setLight();
      Arrays.stream(setups).forEach(bench::run);
      return workbench.fold().session();
    }
  }

  private static RunSetup setup(Phase phase, int trials, String... speeds) {
    return new RunSetup(
            LABEL,
            phase,
            "leaf",
            Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
            Reference.EXACT,
            trials,
            UntimedTest.RELEASE_ALONE,
            WIND_AND_RELEASE)
        .withCriteria(AcceptanceCriteria.USUAL.with(RunOption.LINKAGE, LIMITS));
  }

  @Override
  Terminal terminal() {
    return new Terminal(
        new PrintStream(out, true, StandardCharsets.UTF_8), new ByteArrayInputStream(new byte[0]));
  }

  private Path session() {
    return folder.resolve("linkage.session");
  }
}
