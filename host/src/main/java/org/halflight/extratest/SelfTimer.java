package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.halflight.stats.Sample;

/**
 * Releases by the self-timer: how long it runs from press to first light, and how evenly.
 *
 * @param run counts the runs of the session from 1
 * @param phase of the run
 * @param seconds from press to first light, of the releases that it delayed, in order
 * @param atOnce releases whose light came at once: it was not on
 * @param neverCame releases that brought no light: it did not run off
 * @param withoutPress releases without a press, so that the time is not known
 */
public record SelfTimer(
    int run,
    Optional<Phase> phase,
    List<Double> seconds,
    int atOnce,
    int neverCame,
    int withoutPress)
    implements ExtraTest {
  /** The quantity: from press to first light. */
  public static final String TIME = "self-timer-time";

  /** The quantity: longest less shortest time. */
  public static final String RANGE = "self-timer-range";

  public SelfTimer {
    seconds = List.copyOf(seconds);
  }

  /** The self-timer of a run; empty where it was not tried. */
  static Optional<SelfTimer> of(ExtraTests.Of run, List<FiringResult> firings) {
    List<Double> seconds = new ArrayList<>();
    int atOnce = 0;
    int neverCame = 0;
    int withoutPress = 0;
    for (FiringResult firing : firings) {
      if (!firing.untimedTest().equals(Optional.of(UntimedTest.SELF_TIMER))
          || !firing.outcome().isOfTheShutter()
          || firing.rejection().isPresent()) {
        continue;
      }
      if (firing.isBySelfTimer()) {
        seconds.add(firing.releaseDelaySeconds().getAsDouble());
      } else if (firing.outcome() == Outcome.DID_NOT_OPEN) {
        neverCame++;
      } else if (firing.releaseDelaySeconds().isPresent()) {
        atOnce++;
      } else {
        withoutPress++;
      }
    }
    return seconds.isEmpty() && atOnce + neverCame + withoutPress == 0
        ? Optional.empty()
        : Optional.of(
            new SelfTimer(run.number(), run.phase(), seconds, atOnce, neverCame, withoutPress));
  }

  /** The times, where there is one. */
  public Optional<Sample> times() {
    return seconds.isEmpty() ? Optional.empty() : Optional.of(Sample.of(seconds));
  }

  /** Longest less shortest, in seconds; 0 with fewer than two. */
  public double rangeSeconds() {
    double most = seconds.stream().mapToDouble(s -> s).max().orElse(0);
    return most - seconds.stream().mapToDouble(s -> s).min().orElse(0);
  }

  @Override
  public String what() {
    return "self-timer";
  }

  @Override
  public CheckItem item() {
    return CheckItem.SELF_TIMER;
  }

  /** At fault where it did not run off; light at once says only that it was not on. */
  @Override
  public CheckState state() {
    return neverCame > 0
        ? CheckState.FAULT
        : seconds.isEmpty() ? CheckState.NOT_TESTED : CheckState.OK;
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    times().ifPresent(times -> values.add(ExtraTestValue.mean(TIME, "", times, "s")));
    if (seconds.size() > 1) {
      values.add(ExtraTestValue.single(RANGE, "", rangeSeconds(), "s"));
    }
    values.add(ExtraTestValue.single("self-timer-not-on", "", atOnce, "count"));
    values.add(ExtraTestValue.single("self-timer-did-not-run-off", "", neverCame, "count"));
    return values;
  }
}
