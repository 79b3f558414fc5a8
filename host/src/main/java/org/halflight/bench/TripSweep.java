package org.halflight.bench;

import java.util.Optional;
import org.halflight.exposure.TripPoints;
import org.halflight.light.LightFlutter;
import org.halflight.profile.ComparatorTrips;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/**
 * Finds where the two comparators really switch, by sweeping their thresholds through the light of
 * the open shutter: first near it, and farther only where that found nothing.
 *
 * <p>A state machine that is told what the rig says and answers with the next command. For one
 * thread.
 */
final class TripSweep {
  /** More offset than this is no comparator in order; data sheets give a fifth of it. */
  static final double OFFSET_COUNTS_MOST = 10;

  /** More hysteresis than this is no comparator in order. */
  static final double HYSTERESIS_COUNTS_MOST = 20;

  /** The light may change by so much of full light before somebody has moved something. */
  private static final double LIGHT_CHANGE_MOST = 0.02;

  private static final int TRIES_MOST = 2;

  /** What came of it. */
  sealed interface Outcome {
    /** Both comparators are known and in order. */
    record Known(TripPoints trips) implements Outcome {}

    /** The rig knows no sweep. */
    record NotAble() implements Outcome {}

    /** Its answers did not come through. */
    record NotHeard() implements Outcome {}

    /** A comparator is not in order, or the light moved. */
    record Wrong(LightSetting.Refusal refusal) implements Outcome {}
  }

  private final double fullCounts;
  private final LightFlutter flutter;
  private final boolean oneLevel;
  private ComparatorSweep sweep;
  private int tries;
  private ComparatorTrips low = ComparatorTrips.EXACT;
  private Optional<Outcome> outcome = Optional.empty();

  /**
   * @param fullCounts the light of the open shutter
   * @param flutter by what it moves all the same
   * @param oneLevel whether one comparator stands for both levels
   */
  TripSweep(double fullCounts, LightFlutter flutter, boolean oneLevel) {
    this.fullCounts = fullCounts;
    this.flutter = flutter;
    this.oneLevel = oneLevel;
    this.sweep = new ComparatorSweep(Channel.CENTRE_LOW, fullCounts, flutter);
  }

  /** The command of the sweep that comes now. */
  RigCommand command() {
    return sweep.command();
  }

  /** Part of the work that is done, 0 to 1. */
  double progress() {
    return (sweep.channel() == Channel.CENTRE_HIGH ? 0.5 : 0) + (sweep.isHalfDone() ? 0.25 : 0);
  }

  /** What came of it, once it is over. */
  Optional<Outcome> outcome() {
    return outcome;
  }

  /** Hears what the rig says; gives the next command, if there is one. */
  Optional<RigCommand> onEvent(RigEvent event) {
    sweep.onEvent(event);
    return event instanceof RigMessage.Answer answered
        ? answered(answered.result())
        : Optional.empty();
  }

  private Optional<RigCommand> answered(RigMessage.Result result) {
    return switch (result) {
      case DONE -> sweep.isHeard() ? judge() : onceMore();
      case UNKNOWN_COMMAND, NOT_ON_THIS_RIG -> over(new Outcome.NotAble());
      case BUSY -> onceMore();
      case BAD_FIELDS, STORE_FAILED -> over(new Outcome.NotHeard());
    };
  }

  private Optional<RigCommand> onceMore() {
    tries++;
    return tries < TRIES_MOST ? Optional.of(command()) : over(new Outcome.NotHeard());
  }

  private Optional<RigCommand> judge() {
    if (!sweep.lightHeld(LIGHT_CHANGE_MOST)) {
      return wrong(new LightSetting.Refusal.LightMoved());
    }
    Optional<ComparatorTrips> found = sweep.trips();
    if (found.isPresent()) {
      return judge(found.get());
    }
    return sweep.canReachFarther()
        ? Optional.of(sweep.farther())
        : wrong(new LightSetting.Refusal.NeverTrips(sweep.channel()));
  }

  private Optional<RigCommand> judge(ComparatorTrips found) {
    if (Math.abs(found.offsetCounts()) > OFFSET_COUNTS_MOST
        || found.hysteresisCounts() > HYSTERESIS_COUNTS_MOST) {
      return wrong(new LightSetting.Refusal.TripsOff(sweep.channel(), found));
    }
    if (oneLevel) {
      return over(new Outcome.Known(new TripPoints(found, found)));
    }
    if (sweep.channel() == Channel.CENTRE_LOW) {
      low = found;
      sweep = new ComparatorSweep(Channel.CENTRE_HIGH, fullCounts, flutter);
      tries = 0;
      return Optional.of(command());
    }
    return over(new Outcome.Known(new TripPoints(low, found)));
  }

  private Optional<RigCommand> wrong(LightSetting.Refusal refusal) {
    return over(new Outcome.Wrong(refusal));
  }

  private Optional<RigCommand> over(Outcome how) {
    outcome = Optional.of(how);
    return Optional.empty();
  }
}
