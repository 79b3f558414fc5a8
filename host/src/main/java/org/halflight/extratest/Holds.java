package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import org.halflight.exposure.Exposure;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.stats.Sample;

/**
 * B and T: opens, holds, closes. Never a tolerance of time. All times are differences of ticks of
 * the board, so that an hour is as exact as its clock.
 *
 * @param run counts the runs of the session from 1
 * @param phase of the run
 * @param shots in order, at least one
 */
public record Holds(int run, Optional<Phase> phase, List<Shot> shots) implements ExtraTest {
  /** Closing that lags by more than this hangs, in seconds. Our choice; there is no standard. */
  public static final double HANG_SECONDS = 0.1;

  /**
   * One release at B or T.
   *
   * @param check B or T
   * @param outcome what became of it
   * @param openSeconds between the crossings of the low level; where it was not seen to close, at
   *     least this long
   * @param openingDelaySeconds from press to first light, where the release is wired
   * @param closingDelaySeconds from letting go (B) or second press (T) to the closing, likewise
   */
  public record Shot(
      UntimedTest check,
      Outcome outcome,
      OptionalDouble openSeconds,
      OptionalDouble openingDelaySeconds,
      OptionalDouble closingDelaySeconds) {
    /** Whether the closing lagged, or did not come. */
    public boolean hangs() {
      return outcome == Outcome.STUCK_OPEN || closingDelaySeconds.orElse(0) > HANG_SECONDS;
    }
  }

  public Holds {
    shots = List.copyOf(shots);
  }

  /** B and T of a run; empty where neither was tried. */
  static Optional<Holds> of(ExtraTests.Of run, List<FiringResult> firings) {
    List<Shot> shots =
        firings.stream()
            .filter(f -> f.untimedTest().filter(UntimedTest::holds).isPresent())
            .filter(FiringResult::isTry)
            .map(Holds::shot)
            .toList();
    return shots.isEmpty()
        ? Optional.empty()
        : Optional.of(new Holds(run.number(), run.phase(), shots));
  }

  /** What one release at B or T showed. */
  public static Shot shot(FiringResult firing) {
    UntimedTest check = firing.untimedTest().orElseThrow();
    OptionalDouble open = OptionalDouble.empty();
    OptionalDouble closing = OptionalDouble.empty();
    if (firing.exposure() instanceof Exposure.Timed timed) {
      open = OptionalDouble.of(timed.widthLowSeconds());
      closing =
          closingDelay(
              firing, check, timed.crossings().lowRiseTicks(), timed.crossings().lowFallTicks());
    } else if (firing.exposure() instanceof Exposure.StuckOpen stuck) {
      open = OptionalDouble.of(stuck.lowestSeconds());
    }
    return new Shot(check, firing.outcome(), open, firing.releaseDelaySeconds(), closing);
  }

  /** From the last sign of the finger between opening and closing. */
  private static OptionalDouble closingDelay(
      FiringResult firing, UntimedTest check, long opens, long closes) {
    OptionalLong sign =
        firing.firing().of(Channel.RELEASE).stream()
            .filter(edge -> edge.high() == (check == UntimedTest.T))
            .mapToLong(Edge::ticks)
            .filter(ticks -> ticks > opens && ticks <= closes)
            .max();
    return sign.isPresent()
        ? OptionalDouble.of(firing.realRate().seconds(closes - sign.getAsLong()))
        : OptionalDouble.empty();
  }

  /** The releases of one check. */
  public List<Shot> of(UntimedTest check) {
    return shots.stream().filter(shot -> shot.check() == check).toList();
  }

  /** Whether the release was wired in any of them; without it nothing says how it follows. */
  public boolean isReleaseWired() {
    return shots.stream()
        .anyMatch(s -> s.openingDelaySeconds().isPresent() || s.outcome() == Outcome.DID_NOT_OPEN);
  }

  @Override
  public String what() {
    return "holds";
  }

  @Override
  public CheckItem item() {
    return CheckItem.B_AND_T;
  }

  @Override
  public CheckState state() {
    return shots.stream().allMatch(s -> s.outcome() == Outcome.OPENS_HOLDS_CLOSES && !s.hangs())
        ? CheckState.OK
        : CheckState.FAULT;
  }

  @Override
  public List<String> lacks() {
    return List.of(UntimedTest.B, UntimedTest.T).stream()
        .filter(check -> of(check).isEmpty())
        .map(check -> "holds-" + check.label().toLowerCase(Locale.ROOT))
        .toList();
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    for (UntimedTest check : List.of(UntimedTest.B, UntimedTest.T)) {
      List<Shot> its = of(check);
      mean(values, "hold-open", check, its, Shot::openSeconds, 1, "s");
      mean(values, "release-to-opening", check, its, Shot::openingDelaySeconds, 1e3, "ms");
      String closing = check == UntimedTest.B ? "letting-go-to-closing" : "second-press-to-closing";
      mean(values, closing, check, its, Shot::closingDelaySeconds, 1e3, "ms");
    }
    return values;
  }

  private static void mean(
      List<ExtraTestValue> values,
      String quantity,
      UntimedTest check,
      List<Shot> shots,
      Function<Shot, OptionalDouble> figure,
      double scale,
      String unit) {
    List<Double> each =
        shots.stream()
            .map(figure)
            .filter(OptionalDouble::isPresent)
            .map(value -> value.getAsDouble() * scale)
            .toList();
    if (!each.isEmpty()) {
      values.add(ExtraTestValue.mean(quantity, check.label(), Sample.of(each), unit));
    }
  }
}
