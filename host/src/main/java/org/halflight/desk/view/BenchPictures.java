package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.chart.Adjustment;
import org.halflight.chart.Example;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.FiringRow;
import org.halflight.chart.RunPictures;
import org.halflight.chart.SpeedMap;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.Holds;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.SelfTimer;
import org.halflight.extratest.StopScale;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;

/**
 * The pictures of a view. The large one follows the work: the speed map as found and as left, the
 * firing row while adjusting, the presses of the linkage test, the stages of an assembly, the
 * result of another check, and the times of firings without a run.
 */
public final class BenchPictures {
  /**
   * All that is drawn of a view, and the same in words.
   *
   * @param large what the work is about
   * @param row beside it: the firing row of the speed that is looked at, where that is not large
   * @param small the light curve of the last firing, or what gave its place to it
   * @param speeds that can be looked at, slow to fast
   */
  public record All(
      ShownPicture large, ShownPicture row, ShownPicture small, List<MarkedSpeed> speeds) {
    /** Nothing. */
    public static final All NOTHING =
        new All(ShownPicture.NOTHING, ShownPicture.NOTHING, ShownPicture.NOTHING, List.of());

    public All {
      speeds = List.copyOf(speeds);
    }

    /** The three places, the largest first. */
    public List<ShownPicture> places() {
      return List.of(large, row, small);
    }

    /** The light curve takes the large place, and what was there the small one. */
    @SuppressWarnings(
        "ArgumentSelectionDefectChecker") // They change places, that is what it is for.
    private All curveLarge() {
      return new All(small, row, large, speeds);
    }
  }

  private BenchPictures() {}

  /**
   * Everything at once; takes a while with many firings.
   *
   * @param turns how often the person asked for another picture in the large place: the light curve
   *     and back, of curtains one after the other
   */
  public static All all(BenchView view, Optional<MarkedSpeed> looked, int turns) {
    Optional<All> curtains = ofCurtains(view, looked, turns);
    if (curtains.isPresent()) {
      return curtains.get();
    }
    All usual = ofBlades(view, looked);
    return turns % 2 == 0 ? usual : usual.curveLarge();
  }

  static All all(BenchView view, Optional<MarkedSpeed> looked) {
    return all(view, looked, 0);
  }

  /** The gate leads; empty where no curtains were seen, or something else is shown. */
  private static Optional<All> ofCurtains(BenchView view, Optional<MarkedSpeed> looked, int turns) {
    if (looked.isEmpty() || view.two().isPresent()) {
      return Optional.empty();
    }
    return CurtainFindings.of(view)
        .map(
            state -> {
              ShownPicture map =
                  speedMap(view).map(its -> ShownPicture.map(its, speeds(view))).orElseThrow();
              List<ShownPicture> all = state.pictures(view, looked.get(), map);
              return new All(
                  all.get(turns % all.size()),
                  all.size() > 1 ? all.get((turns + 1) % all.size()) : ShownPicture.NOTHING,
                  all.size() > 2 ? all.get((turns + 2) % all.size()) : ShownPicture.NOTHING,
                  speeds(view));
            });
  }

  private static All ofBlades(BenchView view, Optional<MarkedSpeed> looked) {
    if (view.two().isPresent()) {
      return ofTwo(view, view.two().get());
    }
    if (view.linkage().isShown() && looked.isEmpty()) {
      return new All(
          LinkageText.picture(view)
              .map(ShownPicture::of)
              .orElseGet(() -> ShownPicture.nothing(Words.say("desk.linkage.plan"))),
          ShownPicture.nothing(Words.say("desk.linkage.words")),
          LastCurve.of(view),
          List.of());
    }
    if (view.setup().isEmpty()) {
      return new All(times(view), LastCurve.edges(view), LastCurve.besideEdges(view), List.of());
    }
    if (view.setup().filter(RunSetup::isStage).isPresent()) {
      return ofStages(view, looked);
    }
    ShownPicture map = speedMap(view).map(its -> ShownPicture.map(its, speeds(view))).orElseThrow();
    ShownPicture row = row(view, looked);
    boolean adjusting = view.setup().get().phase() == Phase.ADJUSTING;
    Optional<ShownPicture> test = looked.isPresent() ? Optional.empty() : ofTest(view);
    return new All(
        test.orElse(adjusting && looked.isPresent() ? row : map),
        test.isPresent() || (adjusting && looked.isPresent()) ? map : row,
        LastCurve.of(view),
        speeds(view));
  }

  /** In a run in stages what counts is the latest stage against the one before. */
  private static All ofStages(BenchView view, Optional<MarkedSpeed> looked) {
    Optional<AssemblyStages> stages = StageText.underWay(view);
    return new All(
        stages
            .map(its -> ShownPicture.of(StageText.picture(view, its)))
            .orElseGet(() -> ShownPicture.nothing(Words.say("desk.stage.empty"))),
        row(view, looked),
        LastCurve.of(view),
        List.of());
  }

  /** Both firing rows; there is no map to select a speed on. */
  private static All ofTwo(BenchView view, TwoAtOnce two) {
    return new All(
        row(view, Optional.of(two.first().speed())),
        row(view, Optional.of(two.second().speed())),
        LastCurve.of(view),
        List.of());
  }

  /** The result of the check that is shown, in the run under way, where it has a picture. */
  private static Optional<ShownPicture> ofTest(BenchView view) {
    return view.shown()
        .flatMap(DialSetting::untimedTest)
        .flatMap(
            test ->
                ExtraTests.of(view.evidence(), view.runs()).stream()
                    .filter(tried -> tried.run() == view.run() && isOf(test, tried))
                    .reduce((first, second) -> second))
        .flatMap(tried -> ExtraTestPictures.of(tried, note(view)))
        .map(ShownPicture::of);
  }

  private static boolean isOf(UntimedTest test, ExtraTest tried) {
    return switch (test) {
      case B, T -> tried instanceof Holds;
      case SELF_TIMER -> tried instanceof SelfTimer;
      case LINKAGE -> tried instanceof Linkage;
      case LEAK -> tried instanceof LightLeak;
      case STOPS -> tried instanceof StopScale;
      case RELEASE_ALONE, WIND_AND_RELEASE -> tried instanceof AdvanceTiming;
    };
  }

  /** Firings that were made before a run was begun. */
  private static ShownPicture times(BenchView view) {
    return RunPictures.times(view.results(), note(view))
        .map(ShownPicture::of)
        .orElseGet(() -> ShownPicture.of(Example.times(Words.say("desk.map.empty"))));
  }

  private static ShownPicture row(BenchView view, Optional<MarkedSpeed> looked) {
    return looked
        .map(
            speed ->
                firingRow(view, speed)
                    .map(row -> ShownPicture.row(row, releases(view, speed)))
                    .orElseGet(() -> ShownPicture.nothing(Words.say("desk.row.notFired", speed))))
        .orElseGet(() -> ShownPicture.nothing(Words.say("desk.row.empty")));
  }

  /** The speed map of the latest run of each phase; empty before a run was begun. */
  public static Optional<SpeedMap> speedMap(BenchView view) {
    if (view.setup().isEmpty()) {
      return Optional.empty();
    }
    List<RunSummary> runs = onMap(view);
    return Optional.of(
        RunPictures.speedMap(
            title(runs), speeds(view), ViewedRuns.tolerances(view, view.run()), runs, note(view)));
  }

  /** While adjusting that is shown beside as found; else as left is. */
  private static List<RunSummary> onMap(BenchView view) {
    List<RunSummary> runs = ViewedRuns.latest(view);
    boolean adjusting =
        view.setup().filter(setup -> setup.phase() == Phase.ADJUSTING).isPresent()
            && runs.stream().anyMatch(run -> run.phase() == Phase.ADJUSTING);
    return adjusting
        ? runs.stream().filter(run -> run.phase() != Phase.AS_LEFT).toList()
        : RunPictures.compared(runs);
  }

  /** One run alone is named. */
  private static String title(List<RunSummary> runs) {
    List<Phase> shown = runs.stream().map(RunSummary::phase).distinct().toList();
    return shown.size() == 1
        ? Words.say("desk.map.titleOf", Sentences.phaseWithin(shown.get(0)))
        : Words.say("desk.map.title");
  }

  /** The marked speeds of the map, slow to fast: those of the run and those that were fired. */
  public static List<MarkedSpeed> speeds(BenchView view) {
    List<MarkedSpeed> speeds =
        new ArrayList<>(
            view.setup().map(setup -> ViewedRuns.dial(view, setup).speeds()).orElseGet(List::of));
    ViewedRuns.latestFirings(view).stream()
        .flatMap(firing -> firing.shown().stream())
        .filter(speed -> !speeds.contains(speed))
        .distinct()
        .forEach(speeds::add);
    return speeds.stream()
        .distinct()
        .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
        .toList();
  }

  /**
   * The firing row of a speed in the latest run that fired it; empty where none did. Where its
   * figures come from is said by the picture beside it.
   */
  public static Optional<FiringRow> firingRow(BenchView view, MarkedSpeed speed) {
    List<FiringResult> firings = ViewedRuns.latestAt(view, speed);
    return ViewedRuns.at(view, speed)
        .filter(summary -> !RunPictures.releases(firings, summary).isEmpty())
        .map(
            summary ->
                RunPictures.firingRow(
                    firings,
                    summary,
                    when(view, firings, summary),
                    adjustments(view, firings, summary),
                    ""));
  }

  private static String when(BenchView view, List<FiringResult> firings, SpeedSummary summary) {
    if (ViewedRuns.lastMark(view, firings) > 0) {
      return Words.say("desk.row.sinceAdjustment");
    }
    return ViewedRuns.setup(view, firings.get(0).run()).isStage()
        ? Words.say("desk.row.stage")
        : Sentences.phaseWithin(summary.phase());
  }

  private static List<FiringResult> releases(BenchView view, MarkedSpeed speed) {
    return ViewedRuns.at(view, speed)
        .map(summary -> RunPictures.releases(ViewedRuns.latestAt(view, speed), summary))
        .orElseGet(List::of);
  }

  /** What the firings of a speed come to, in sentences; empty where there are none. */
  public static List<String> verdict(BenchView view, MarkedSpeed speed) {
    return ViewedRuns.at(view, speed)
        .map(
            summary ->
                Stream.concat(
                        Sentences.speed(summary).stream(), Sentences.allLight(summary).stream())
                    .toList())
        .orElseGet(List::of);
  }

  private static List<Adjustment> adjustments(
      BenchView view, List<FiringResult> firings, SpeedSummary summary) {
    List<FiringResult> shown = RunPictures.releases(firings, summary);
    int run = firings.get(0).run();
    return view.marks().stream()
        .filter(mark -> mark.run() == run)
        .map(
            mark ->
                new Adjustment(
                    1 + (int) shown.stream().filter(f -> f.number() <= mark.afterFiring()).count(),
                    WorkWords.done(mark.words())))
        .toList();
  }

  static String note(BenchView view) {
    return view.link().isPractice() || !view.link().serial().isEmpty()
        ? Sentences.source(
            view.link().serial().isEmpty()
                ? org.halflight.session.Source.PRACTICE_SERIAL
                : view.link().serial())
        : "";
  }
}
