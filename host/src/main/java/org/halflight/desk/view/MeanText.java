package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The verdict on a speed, which belongs to the mean of its firings, in one line. */
final class MeanText {
  private MeanText() {}

  /**
   * The line of the speed that was fired last; empty where no figure is shown. Takes a while with
   * many firings.
   */
  static String of(BenchView view) {
    boolean other =
        view.linkage().isShown()
            || view.lightTest().isUnderWay()
            || view.openSeconds().isPresent()
            || view.two().isPresent();
    return other ? "" : view.last().flatMap(last -> ofLast(view, last)).orElse("");
  }

  /** While a firing settles, the mean is still that of those before it. */
  private static Optional<String> ofLast(BenchView view, LastFiring last) {
    int run = last.over().map(FiringResult::run).orElse(view.run());
    return last.setting()
        .flatMap(DialSetting::speed)
        .filter(speed -> ViewedRuns.latestAt(view, speed).stream().anyMatch(f -> f.run() == run))
        .flatMap(speed -> ViewedRuns.at(view, speed))
        .map(MeanText::of);
  }

  static String of(SpeedSummary speed) {
    if (speed.meanStops().isEmpty()) {
      return speed.verdict() == Verdict.SOME_FAILED ? Sentences.verdict(speed) : "";
    }
    double mean = speed.meanStops().getAsDouble();
    if (speed.errors().n() == 1 && speed.verdict() == Verdict.TOO_FEW) {
      return Words.say("desk.mean.one");
    }
    return Words.say(
        "desk.mean", speed.errors().n(), Numbers.largeStops(mean), verdict(speed, mean));
  }

  private static String verdict(SpeedSummary speed, double mean) {
    return switch (speed.verdict()) {
      case TOO_FEW, FEWER_THAN_PLANNED ->
          Words.say(
              speed.tolerance().contains(mean)
                  ? "desk.mean.soFar.within"
                  : mean > 0 ? "desk.mean.soFar.slow" : "desk.mean.soFar.fast");
      default -> Sentences.verdict(speed);
    };
  }
}
