package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.extratest.LinkageJudgement.Verdict;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.GapLimits;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.PlungerReading;
import org.halflight.stats.Sample;

/**
 * The linkage between film advance and shutter over a run: the states in which the presses of the
 * last round left the camera, and the stroke between both by a screw plunger where it was read.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run
 * @param judged the presses of the last round that count
 * @param plunger the last readings of a screw plunger
 * @param limits what they are judged by, where that was asked
 */
public record Linkage(
    int run,
    Optional<Phase> phase,
    LinkageJudgement judged,
    Optional<PlungerReading> plunger,
    Optional<GapLimits> limits)
    implements ExtraTest {
  /** The linkage of a run; empty where it was not tried. */
  static Optional<Linkage> of(ExtraTests.Run run) {
    if (run.presses().isEmpty() && run.plungers().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Linkage(
            run.of().number(),
            run.of().phase(),
            LinkageJudgement.ofLastRound(run.presses()),
            run.plungers().stream().reduce((earlier, later) -> later),
            run.criteria().linkageGap()));
  }

  /** How the stroke between both is; empty where it was not read, or no limit was asked. */
  public Optional<GapVerdict> gap() {
    return plunger.flatMap(read -> limits.map(within -> GapVerdict.of(read.gapMm(), within)));
  }

  @Override
  public String what() {
    return "linkage-by-state";
  }

  @Override
  public CheckItem item() {
    return CheckItem.WIND;
  }

  @Override
  public CheckState state() {
    if (judged.verdict() == Verdict.WRONG || gap().filter(GapVerdict::isOutside).isPresent()) {
      return CheckState.FAULT;
    }
    return judged.verdict() == Verdict.RIGHT ? CheckState.OK : CheckState.NOT_TESTED;
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    for (LinkageStep step : LinkageStep.values()) {
      List<JudgedPress> presses = judged.of(step);
      for (PressOutcome outcome : PressOutcome.values()) {
        long count = presses.stream().filter(press -> press.outcome() == outcome).count();
        if (count > 0) {
          values.add(count("left-" + PressOutcome.WORDS.word(outcome), step, count, presses));
        }
      }
    }
    List<JudgedPress> taps = judged.of(LinkageStep.TAP);
    long again = taps.stream().filter(JudgedPress::again).count();
    if (again > 0) {
      values.add(count("tripped-again", LinkageStep.TAP, again, taps));
    }
    Sample ahead = aheadMillis();
    if (ahead.n() > 0) {
      String squeeze = LinkageStep.WORDS.word(LinkageStep.SQUEEZE);
      values.add(ExtraTestValue.mean("advance-before-light", squeeze, ahead, "ms"));
    }
    plunger.ifPresent(
        read ->
            values.add(ExtraTestValue.single("advance-ahead-of-shutter", "", read.gapMm(), "mm")));
    return values;
  }

  /** How long before first light the advance unlocked in slow squeezes, where something tells. */
  private Sample aheadMillis() {
    return Sample.of(
        judged.of(LinkageStep.SQUEEZE).stream()
            .flatMapToDouble(press -> press.aheadSeconds().stream())
            .map(seconds -> 1e3 * seconds)
            .toArray());
  }

  private static ExtraTestValue count(
      String quantity, LinkageStep step, long count, List<JudgedPress> of) {
    return new ExtraTestValue(
        quantity, LinkageStep.WORDS.word(step), count, "count", of.size(), OptionalDouble.empty());
  }
}
