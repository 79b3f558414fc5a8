package org.halflight.cli;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.Workbench;
import org.halflight.chart.RunPictures;
import org.halflight.chart.StagesPicture;
import org.halflight.export.ComparisonTable;
import org.halflight.export.CsvTable;
import org.halflight.export.ExtraTestTable;
import org.halflight.export.FiringTable;
import org.halflight.export.SpeedTable;
import org.halflight.export.StageTable;
import org.halflight.export.StatisticTable;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.report.HandOverPage;
import org.halflight.report.PageAbout;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Assembly;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.CurtainScrew;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.shuttermodel.InventedFit;
import org.halflight.signal.BoardTraits;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.StageRuns;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.RunForm;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * The main job without hardware: an invented shutter on the practice rig, as found and as left; of
 * a curtain shutter also the adjusting, one thing after the other.
 */
@Command(name = "practice")
final class PracticeCommand implements Callable<Integer> {
  private static final String DIAL = "leaf";
  private static final String CURTAIN_DIAL = "curtain";
  private static final int FIRINGS = 5;

  /** What the linkage is adjusted to each time that it is wrong: too far at first. */
  private static final List<ButtonLinkage> ADJUSTMENTS =
      List.of(ButtonLinkage.SHUTTER_FIRST, ButtonLinkage.ONE_CLICK);

  /** One thing at a time. */
  private static final List<Assembly> PUT_TOGETHER =
      List.of(
          Assembly.BARE,
          new Assembly(true, Assembly.Cells.NONE, Assembly.Place.BENCH),
          new Assembly(true, Assembly.Cells.REAR, Assembly.Place.BENCH),
          new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.BENCH),
          new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.LOOSE),
          new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.TIGHT));

  private final Surroundings surroundings;

  @Option(names = "--out", paramLabel = "FOLDER", defaultValue = "practice-run")
  private Path out;

  @Option(names = "--seed", paramLabel = "N", defaultValue = "20")
  private long seed;

  @Option(names = "--rig", paramLabel = "KIND", defaultValue = "full")
  private String rigKind;

  @Option(names = "--shutter", paramLabel = "SHUTTER", defaultValue = DIAL)
  private String shutter;

  @Option(names = "--stages")
  private boolean stages;

  @Option(names = "--fit", paramLabel = "FIT")
  private @Nullable String fit;

  @Option(names = "--quick")
  private boolean quick;

  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  private PracticeFolder folder;
  private BoardTraits board = BoardTraits.USUAL;
  private Optional<InventedCurtains> curtains = Optional.empty();

  PracticeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    curtains =
        shutter.equals(DIAL)
            ? Optional.empty()
            : Optional.of(InventedCurtains.WORDS.find(shutter).orElseThrow(this::unknownShutter));
    InventedFit fits = fits();
    BoardTraits.Kind kind = CliWords.constant(BoardTraits.Kind.WORDS, rigKind, "--rig");
    board = new BoardTraits(BoardTraits.USUAL.rate(), kind, true);
    folder = new PracticeFolder(out, output.force());
    folder.beginAfresh();
    Path session = folder.session();
    Dial dial = Dial.find(curtains.isPresent() ? CURTAIN_DIAL : DIAL).orElseThrow();
    PracticeRig rig = PracticeOperator.unpacedRig(kind, seed, surroundings.date().get());
    Workbench workbench = Sessions.open(session, surroundings);
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      PracticeOperator operator = new PracticeOperator(rig, seed);
      if (curtains.isPresent()) {
        operator.useDial(dial.speeds());
        operator.useCurtains(curtains);
      }
      BenchTerminal bench = new BenchTerminal(driver, surroundings.terminal(), operator);
      bench.waitForRig();
      if (stages || !quick) {
        bench.setLight();
      }
      if (stages) {
        return stages(workbench, bench, operator, dial, fits);
      }
      bench.run(found(dial));
      operator.clean(true);
      surroundings.terminal().say(Words.say(key("practice.cleaned")));
      operator.willAdjust(ADJUSTMENTS);
      if (curtains.isPresent()) {
        adjust(bench, operator, dial);
      } else if (board.clicks()) {
        bench.run(linkage());
      }
      bench.run(setup(dial, Phase.AS_LEFT));
      if (!workbench.fold().session().isRunDone()) {
        surroundings.terminal().say(Words.say("practice.stopped"));
        return 1;
      }
      leave(session, workbench.fold().session().results());
    }
    return 0;
  }

  private Trouble unknownShutter() {
    String known = DIAL + ", " + String.join(", ", InventedCurtains.WORDS.all());
    return new Trouble(Words.say("run.unknownWord", "--shutter", shutter, known));
  }

  /** What does not fit; refused before anything is done if the options do not agree. */
  private InventedFit fits() {
    if (stages && quick) {
      throw new Trouble(Words.say("run.quickOrStages"));
    }
    if (stages && curtains.isPresent()) {
      throw new Trouble(Words.say("practice.curtain.stages"));
    }
    if (fit != null && !stages) {
      throw new Trouble(Words.say("practice.fitWithoutStages"));
    }
    return fit == null
        ? InventedFit.PINCHED_CASE
        : CliWords.constant(InventedFit.WORDS, fit, "--fit");
  }

  /** The camera is put together from the bare shutter on; one part may not fit. */
  private int stages(
      Workbench workbench,
      BenchTerminal bench,
      PracticeOperator operator,
      Dial dial,
      InventedFit fits) {
    operator.clean(true);
    operator.useFit(fits);
    operator.willAssemble(PUT_TOGETHER);
    bench.run(
        RunForm.usual(Words.say("practice.camera"), Phase.ADJUSTING, dial)
            .with(Map.of(RunOption.STAGES, RunOption.STAGES.words().get(0)))
            .read());
    List<FiringResult> firings = workbench.fold().session().results();
    List<RunSetup> runs = workbench.fold().session().runs();
    List<AssemblyStages> assemblies = StageRuns.of(firings, runs);
    surroundings.terminal().say(ResultText.stages(firings, runs));
    if (!workbench.fold().session().isRunDone() || assemblies.isEmpty()) {
      surroundings.terminal().say(Words.say("practice.stopped"));
      return 1;
    }
    table(FiringTable.of(firings), "firings.csv");
    table(StageTable.of(Source.PRACTICE, assemblies), "stages.csv");
    Pictures.write(
        new StagesPicture(assemblies.get(0), Sentences.source(Source.PRACTICE_SERIAL)),
        folder.file("stages.png"));
    surroundings.terminal().say("");
    surroundings.terminal().say(Words.say("practice.leftStages", out.toAbsolutePath().normalize()));
    return 0;
  }

  private RunSetup found(Dial dial) {
    RunForm form = form(dial, Phase.AS_FOUND);
    return quick
        ? with(form, Map.of(RunOption.QUICK, RunOption.QUICK.words().get(0)))
            .read()
            .withCriteria(decision.criteria(AcceptanceCriteria.USUAL).with(RunOption.QUICK, true))
        : setup(dial, Phase.AS_FOUND);
  }

  private static RunForm with(RunForm form, Map<RunOption<?>, String> more) {
    Map<RunOption<?>, String> all = new HashMap<>(form.options());
    all.putAll(more);
    return form.with(all);
  }

  /** The form of a run, with what is known of the curtains where it has some. */
  private RunForm form(Dial dial, Phase phase) {
    RunForm form = RunForm.usual(Words.say("practice.camera"), phase, dial);
    return curtains
        .map(
            its ->
                phase == Phase.AS_FOUND && !quick
                    ? form.ofCurtains(its.kind(), PracticeOperator.said(its))
                    : PracticeOperator.form(its, form, List.of(UntimedTest.B)))
        .orElse(form);
  }

  /**
   * Each thing that can be set on a curtain shutter is set, in order, by somebody who knows how far
   * to turn; then fired at the speed at which it shows.
   */
  private void adjust(BenchTerminal bench, PracticeOperator operator, Dial dial) {
    for (CurtainScrew screw : CurtainScrew.values()) {
      double turns = operator.setRight(screw);
      surroundings
          .terminal()
          .say(Words.say("practice.curtain." + Words.key(screw), Numbers.bareStops(turns)));
      RunForm form = form(dial, Phase.ADJUSTING);
      MarkedSpeed speed = PracticeOperator.shows(screw, curtains.orElseThrow(), dial.speeds());
      bench.run(
          new RunForm(
                  form.shutter(),
                  form.phase(),
                  speed.label(),
                  FIRINGS,
                  form.restSeconds(),
                  List.of(),
                  form.options())
              .read());
    }
  }

  private String key(String of) {
    return curtains.isPresent() ? of.replace("practice.", "practice.curtain.") : of;
  }

  private RunSetup setup(Dial dial, Phase phase) {
    if (curtains.isPresent()) {
      return form(dial, phase).read().withCriteria(decision.criteria(AcceptanceCriteria.USUAL));
    }
    return new RunSetup(
            Words.say("practice.camera"),
            phase,
            dial.name(),
            dial.speeds(),
            dial.reference(),
            FIRINGS,
            board.clicks() ? UntimedTest.LINKAGE : UntimedTest.B)
        .withCriteria(decision.criteria(AcceptanceCriteria.USUAL));
  }

  /** The linkage is adjusted: too far at first. */
  private RunSetup linkage() {
    return new RunSetup(
        Words.say("practice.camera"),
        Phase.ADJUSTING,
        DIAL,
        List.of(),
        Reference.EXACT,
        FIRINGS,
        UntimedTest.LINKAGE);
  }

  private void table(CsvTable table, String name) {
    table.write(folder.file(name), CsvTable.Dialect.PLAIN);
  }

  private void leave(Path session, List<FiringResult> firings) {
    List<RunNotes> notes = RunNotes.of(List.of(session));
    List<RunSummary> runs =
        decision.summaries(firings, notes.stream().map(RunNotes::setup).toList());
    Terminal terminal = surroundings.terminal();
    terminal.say("");
    terminal.say(ResultText.lines(firings, runs, DecisionOptions.remarks(runs)));
    table(FiringTable.of(firings), "firings.csv");
    table(SpeedTable.of(Source.PRACTICE, runs), "speeds.csv");
    List<RunSetup> setups = notes.stream().map(RunNotes::setup).toList();
    Evidence all = Sessions.evidence(List.of(session), firings);
    List<ExtraTest> tried = ExtraTests.of(all, setups);
    table(
        ExtraTestTable.of(Words.say("practice.camera"), Source.PRACTICE, tried, setups),
        "everyday.csv");
    terminal.say(ResultText.tried(tried));
    String note = Sentences.source(Source.PRACTICE_SERIAL);
    Pictures.write(
        RunPictures.speedMap(Words.say(key("practice.map")), runs, note),
        folder.file("speed-map.png"));
    for (RunSummary run : runs) {
      SpeedSummary slowest = run.speeds().get(0);
      Pictures.write(
          RunPictures.firingRow(firings, slowest, note),
          folder.file("firing-row-" + Phase.WORDS.word(run.phase()) + ".png"));
    }
    beforeAndAfter(runs, all, notes);
    terminal.say("");
    terminal.say(Words.say("practice.left", out.toAbsolutePath().normalize()));
  }

  private void beforeAndAfter(List<RunSummary> runs, Evidence all, List<RunNotes> notes) {
    List<FiringResult> firings = all.firings();
    RunSummary found = runs.get(0);
    RunSummary left = runs.get(runs.size() - 1);
    RunComparison comparison = RunComparison.of(found, left);
    surroundings.terminal().say("");
    surroundings.terminal().say(CompareCommand.lines(comparison, firings));
    table(ComparisonTable.of(Source.PRACTICE, comparison), "comparison.csv");
    table(
        StatisticTable.of(Source.PRACTICE, runs.stream().map(RunStatistics::of).toList()),
        "statistics.csv");
    Optional<RunChoice> before =
        Optional.of(
            new RunChoice(found, firings, all, List.of(), RunNotes.last(notes, found.phase())));
    Optional<RunChoice> after =
        Optional.of(
            new RunChoice(left, firings, all, List.of(), RunNotes.last(notes, left.phase())));
    PageAbout about =
        PageAbout.of(
            Words.say(key("practice.page.shutter")),
            curtains.map(InventedCurtains::kind).orElse(ShutterKind.LEAF),
            List.of(Words.say(key("practice.cleaning"))));
    surroundings
        .terminal()
        .say(
            HandOverPage.write(
                surroundings.page(RunChoice.page(about, before, after)),
                surroundings.pageStyle(true),
                folder.file("hand-over.pdf")));
  }
}
