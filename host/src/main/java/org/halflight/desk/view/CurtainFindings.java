package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.chart.CurtainPictures;
import org.halflight.chart.Picture;
import org.halflight.chart.TrialsPicture;
import org.halflight.session.Adjuster;
import org.halflight.session.CurtainStep;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.verdict.CurtainSign;
import org.halflight.verdict.CurtainSigns;
import org.halflight.verdict.CurtainSpeed;
import org.halflight.verdict.CurtainTrials;
import org.halflight.verdict.CurtainWanted;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;
import org.halflight.words.CurtainWords;
import org.halflight.words.Numbers;
import org.halflight.words.Words;

/**
 * What the firings of a curtain shutter come to at the bench. Takes a while with many firings.
 *
 * @param runs as found and the run under way, or one of them; the earliest first, at least one
 * @param signs what stands out in the latest
 * @param advice what to do about it
 * @param trials the run of adjusting cut at each adjustment; empty in other runs
 */
public record CurtainFindings(
    List<CurtainPictures.Run> runs,
    List<CurtainSign> signs,
    CurtainAdvice advice,
    Optional<CurtainTrials> trials) {
  /** More trials than these have no room beside each other. */
  private static final int MOST_TRIALS = 8;

  public CurtainFindings {
    runs = List.copyOf(runs);
    signs = List.copyOf(signs);
  }

  /** Of a view; empty where no curtains were seen. */
  static Optional<CurtainFindings> of(BenchView view) {
    if (!CurtainBench.isCurtain(view) || view.setup().filter(RunSetup::isStage).isPresent()) {
      return Optional.empty();
    }
    RunSetup setup = view.setup().orElseThrow();
    boolean adjusting = setup.phase() == Phase.ADJUSTING;
    Optional<CurtainTrials> trials =
        adjusting
            ? Optional.of(CurtainTrials.of(view.run(), view.marks(), view.results()))
            : Optional.empty();
    List<CurtainPictures.Run> runs = new ArrayList<>();
    if (setup.phase() != Phase.AS_FOUND) {
      latest(view, Phase.AS_FOUND).ifPresent(runs::add);
    }
    (adjusting ? now(trials.orElseThrow()) : latest(view, setup.phase())).ifPresent(runs::add);
    if (runs.isEmpty()) {
      return Optional.empty();
    }
    CurtainRunFigures last = runs.get(runs.size() - 1).figures();
    List<CurtainSign> signs = CurtainSigns.of(last, CurtainWanted.of(setup));
    return Optional.of(
        new CurtainFindings(runs, signs, CurtainAdvice.of(signs, known(view, last)), trials));
  }

  private static Optional<CurtainPictures.Run> latest(BenchView view, Phase phase) {
    List<FiringResult> firings =
        ViewedRuns.latestFirings(view).stream()
            .filter(firing -> firing.phase().equals(Optional.of(phase)))
            .toList();
    return CurtainRunFigures.of(firings).map(figures -> new CurtainPictures.Run(phase, figures));
  }

  /** The last trial that was fired. */
  private static Optional<CurtainPictures.Run> now(CurtainTrials trials) {
    return trials.trials().stream()
        .flatMap(trial -> trial.figures().stream())
        .reduce((earlier, later) -> later)
        .map(figures -> new CurtainPictures.Run(Phase.ADJUSTING, figures));
  }

  private static CurtainAdvice.Known known(BenchView view, CurtainRunFigures last) {
    return new CurtainAdvice.Known(
        CurtainBench.has(view),
        CurtainBench.change(view, Adjuster.FIRST_TENSION),
        CurtainBench.change(view, Adjuster.SECOND_TENSION),
        slowSpeed(view, last));
  }

  /** A speed of the slow train that is out of its tolerance. */
  private static Optional<MarkedSpeed> slowSpeed(BenchView view, CurtainRunFigures last) {
    List<MarkedSpeed> ofSlit = last.slitSpeeds().stream().map(each -> each.speed()).toList();
    return BenchPictures.speeds(view).stream()
        .filter(
            speed -> !ofSlit.contains(speed) && last.top().wantedSeconds() < speed.exactSeconds())
        .filter(
            speed ->
                ViewedRuns.at(view, speed)
                    .flatMap(SpeedSummary::verdictOfMean)
                    .filter(v -> v == Verdict.SLOW || v == Verdict.FAST)
                    .isPresent())
        .findFirst();
  }

  /** Whether what the open step is about is right, by enough firings. */
  boolean isDone(BenchView view) {
    CurtainStep step = CurtainBench.step(view);
    return advice.step().number() > step.number()
        && CurtainBench.toSettle(view) == 0
        && CurtainBench.good(view) >= CurtainTrials.FIRINGS;
  }

  /** What stands out, in a few words; empty where nothing does. */
  String lookAt(BenchView view) {
    if (CurtainBench.isLed(view) && CurtainBench.isTooFar(view)) {
      return Words.say("desk.curtain.tooFar");
    }
    return advice.why().map(sign -> Words.of("desk.curtain.sign", sign.kind())).orElse("");
  }

  /** What to do next, in a few words; where it belongs to another step, with the key of that. */
  String next(BenchView view) {
    CurtainStep open = CurtainBench.step(view);
    CurtainStep next = CurtainBench.next(view);
    if (open == CurtainStep.CLEAN) {
      return Words.say("desk.curtain.clean", KeyHints.keyName(UserAction.STEP_NEXT));
    }
    if (isDone(view)) {
      return Words.say(
          "desk.curtain.key", KeyHints.keyName(UserAction.STEP_NEXT), CurtainWords.step(next));
    }
    String act = Words.of("desk.curtain.act", advice.act());
    return advice.step() == open || advice.act() == CurtainAdvice.Act.NOTHING
        ? act
        : Words.say("desk.curtain.key", KeyHints.keyName(CurtainKeys.opening(advice.step())), act);
  }

  /** The same in whole sentences, and what was turned so far. */
  String sentence(BenchView view) {
    if (!CurtainBench.isLed(view)) {
      return CurtainWords.next(advice);
    }
    String next =
        CurtainBench.step(view) == CurtainStep.CLEAN
            ? CurtainWords.how(CurtainStep.CLEAN)
            : isDone(view) ? CurtainWords.how(CurtainBench.next(view)) : CurtainWords.next(advice);
    String stop = CurtainBench.isTooFar(view) ? Words.say("curtain.next.stop-something-drags") : "";
    return Stream.of(next.startsWith(stop) ? "" : stop, next, CurtainBench.turned(view))
        .filter(each -> !each.isEmpty())
        .collect(Collectors.joining(" "));
  }

  private double frameMillimetres() {
    return runs.get(0).figures().shots().get(0).travel().geometry().frameMillimetres();
  }

  /** The figures of a speed in the latest run, each with its scatter. */
  List<List<String>> rows(MarkedSpeed speed) {
    List<List<String>> rows = new ArrayList<>();
    Optional<CurtainSpeed> at = runs.get(runs.size() - 1).figures().at(speed);
    for (CurtainFigure figure : CurtainFigure.values()) {
      at.flatMap(its -> its.sample(figure))
          // A frame that was wholly open has no slit.
          .filter(its -> figure != CurtainFigure.SLIT || its.mean().get() < frameMillimetres())
          .map(
              sample ->
                  Words.say(
                      "desk.curtain.row",
                      CurtainWords.value(figure, sample.mean().get()),
                      sample
                          .sd()
                          .known()
                          .map(sd -> scatter(figure, sd))
                          .orElseGet(() -> Words.say("chart.notKnown"))))
          .ifPresent(value -> rows.add(List.of(CurtainWords.name(figure), value)));
    }
    return rows;
  }

  private static String scatter(CurtainFigure figure, double sd) {
    return figure.unit() == CurtainFigure.Unit.STOPS
        ? Numbers.plainStops(sd)
        : CurtainWords.value(figure, sd);
  }

  /** All that stands out, in sentences, and what no sensor tells. */
  String details() {
    return Stream.concat(
            Stream.concat(
                signs.stream().map(CurtainWords::of),
                runs.get(runs.size() - 1).figures().offset().map(CurtainWords::offset).stream()),
            Stream.of(Words.say("desk.curtain.untested")))
        .collect(Collectors.joining(" "));
  }

  /** The pictures of a speed, the one that leads first. */
  List<ShownPicture> pictures(BenchView view, MarkedSpeed speed, ShownPicture map) {
    RunSetup setup = view.setup().orElseThrow();
    CurtainStep step = CurtainBench.step(view);
    boolean led = trials.isPresent();
    String note = BenchPictures.note(view);
    List<ShownPicture> shown = new ArrayList<>();
    Optional<CurtainPictures> all = CurtainPictures.of(setup.shutter().kind(), runs, note);
    Optional<Picture> gate = all.flatMap(its -> its.gate(speed, setup.tolerance(speed)));
    Optional<Picture> wedge = all.flatMap(its -> its.wedge(speed));
    Optional<Picture> offsets = all.flatMap(CurtainPictures::offsets);
    boolean isFlash = setup.criteria().get(RunOption.X_SPEED).filter(speed::equals).isPresent();
    Optional<Picture> band = isFlash ? all.flatMap(its -> its.band(speed)) : Optional.empty();
    shown.add(
        gate.map(ShownPicture::of)
            .orElseGet(() -> ShownPicture.nothing(Words.say("desk.row.notFired", speed))));
    trialsPicture(view, speed, note).map(ShownPicture::of).ifPresent(shown::add);
    if (!led) {
      shown.add(map);
    }
    boolean bandFirst = step == CurtainStep.CONTACT || step == CurtainStep.FIRST_TENSION;
    if (led && step == CurtainStep.SLIT) {
      offsets.map(ShownPicture::of).ifPresent(shown::add);
    } else if (led && bandFirst) {
      band.map(ShownPicture::of).ifPresent(shown::add);
    } else if (led && step == CurtainStep.ESCAPEMENT) {
      shown.add(map);
    }
    for (Optional<Picture> each : List.of(wedge, offsets, band)) {
      each.filter(one -> shown.stream().noneMatch(s -> s.picture().equals(Optional.of(one))))
          .map(ShownPicture::of)
          .ifPresent(shown::add);
    }
    if (!shown.contains(map)) {
      shown.add(map);
    }
    ShownPicture curve = LastCurve.of(view);
    if (curve.picture().isPresent()) {
      shown.add(curve);
    }
    return shown;
  }

  private Optional<Picture> trialsPicture(BenchView view, MarkedSpeed speed, String note) {
    if (trials.isEmpty()) {
      return Optional.empty();
    }
    List<TrialsPicture.Trial> all = new ArrayList<>();
    runs.stream()
        .filter(run -> run.phase() == Phase.AS_FOUND)
        .map(
            run ->
                new TrialsPicture.Trial(
                    Words.say("desk.curtain.found"), Optional.of(run.figures())))
        .forEach(all::add);
    for (CurtainTrials.Trial trial : trials.get().trials()) {
      String name =
          trial.marks().isEmpty()
              ? Words.say("desk.curtain.before")
              : CurtainBench.trial(trial.marks().get(trial.marks().size() - 1), all.size());
      if (!trial.marks().isEmpty() || trial.figures().isPresent()) {
        all.add(new TrialsPicture.Trial(name, trial.figures()));
      }
    }
    CurtainWatch watch =
        CurtainWatch.of(
            CurtainBench.step(view),
            view.setup().orElseThrow(),
            speed,
            runs.get(runs.size() - 1).figures());
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new TrialsPicture(
                watch.figure(),
                speed,
                watch.band(),
                all.subList(Math.max(0, all.size() - MOST_TRIALS), all.size()),
                note));
  }
}
