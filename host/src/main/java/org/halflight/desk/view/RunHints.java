package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.Patterns;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.verdict.Verdict;
import org.halflight.words.ComparisonWords;
import org.halflight.words.OptionWords;
import org.halflight.words.PatternWords;

/** What a run that is done looks like, and where to look first; or what the work has changed. */
final class RunHints {
  private RunHints() {}

  /** The sentences of a view. */
  static List<String> of(BenchView view) {
    return of(view, CurtainFindings.of(view));
  }

  /**
   * The sentences; empty while a run is under way, and while adjusting. Curtains are led by them.
   */
  static List<String> of(BenchView view, Optional<CurtainFindings> curtains) {
    if (curtains.isPresent() && CurtainBench.isLed(view)) {
      return List.of(curtains.get().sentence(view));
    }
    if (!view.runDone() || view.setup().isEmpty()) {
      return List.of();
    }
    if (view.setup().get().isStage()) {
      return StageText.underWay(view).map(StageText::latest).orElseGet(List::of);
    }
    Phase phase = view.setup().get().phase();
    List<FiringResult> firings = ViewedRuns.latestFirings(view);
    List<RunSummary> runs = ViewedRuns.latest(view);
    Optional<RunSummary> found = run(runs, Phase.AS_FOUND);
    Optional<RunSummary> left = run(runs, Phase.AS_LEFT);
    if (phase == Phase.AS_LEFT && left.isPresent() && found.isPresent()) {
      RunComparison comparison =
          RunComparison.of(
              found.get(),
              left.get(),
              conditions(view, firings, Phase.AS_FOUND),
              conditions(view, firings, Phase.AS_LEFT));
      List<String> sentences = new ArrayList<>(ComparisonWords.warnings(comparison));
      sentences.addAll(ComparisonWords.summary(comparison));
      ComparisonWords.advice(comparison).ifPresent(sentences::add);
      return sentences;
    }
    if (curtains.isPresent() && phase != Phase.ADJUSTING) {
      return List.of(curtains.get().sentence(view));
    }
    return run(runs, phase)
        .filter(run -> phase != Phase.ADJUSTING)
        .map(
            run ->
                PatternWords.of(
                    Patterns.of(run), run.speeds().stream().map(SpeedSummary::speed).toList()))
        .orElseGet(List::of);
  }

  /**
   * What stands out in a run that is done, in a few words; empty where nothing does, while a run is
   * under way, and while adjusting.
   */
  static String inShort(BenchView view, Optional<CurtainFindings> curtains) {
    if (curtains.isPresent() && (CurtainBench.isLed(view) || view.runDone())) {
      return curtains.get().lookAt(view);
    }
    if (!view.runDone() || view.setup().isEmpty()) {
      return "";
    }
    Phase phase = view.setup().get().phase();
    return run(ViewedRuns.latest(view), phase)
        .filter(run -> phase != Phase.ADJUSTING)
        .flatMap(
            run ->
                PatternWords.inShort(
                    Patterns.of(run), run.speeds().stream().map(SpeedSummary::speed).toList()))
        .orElse("");
  }

  /** The speed of the latest run that is furthest outside its tolerance; empty for none. */
  static Optional<MarkedSpeed> worst(BenchView view) {
    return view.setup().stream()
        .flatMap(setup -> run(ViewedRuns.latest(view), setup.phase()).stream())
        .flatMap(run -> run.speeds().stream())
        .filter(
            speed ->
                speed
                    .verdictOfMean()
                    .filter(v -> v == Verdict.SLOW || v == Verdict.FAST)
                    .isPresent())
        .max(Comparator.comparingDouble(speed -> Math.abs(speed.meanStops().orElse(0))))
        .map(SpeedSummary::speed);
  }

  /** Whether the speed that is adjusted by itself is within its tolerance, by what is heard too. */
  static boolean isAdjusted(BenchView view) {
    return view.setup()
        .filter(setup -> setup.phase() == Phase.ADJUSTING && view.two().isEmpty())
        .flatMap(
            setup ->
                view.shown()
                    .flatMap(DialSetting::speed)
                    .map(
                        speed ->
                            TwoAtOnce.alone(
                                speed, setup, view.run(), view.results(), view.marks())))
        .filter(TwoAtOnce.Side::isWithin)
        .isPresent();
  }

  private static Optional<RunSummary> run(List<RunSummary> runs, Phase phase) {
    return runs.stream().filter(run -> run.phase() == phase).findFirst();
  }

  /** What was noted about the run of a phase, in the words of the form that it was noted in. */
  private static Map<String, String> conditions(
      BenchView view, List<FiringResult> firings, Phase phase) {
    RunConditions noted =
        firings.stream()
            .filter(firing -> firing.phase().filter(phase::equals).isPresent())
            .findFirst()
            .map(firing -> ViewedRuns.setup(view, firing.run()).conditions())
            .orElse(RunConditions.NONE);
    return OptionWords.noted(noted);
  }
}
