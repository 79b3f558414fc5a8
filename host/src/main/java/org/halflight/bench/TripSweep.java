package org.halflight.bench;

import java.util.Optional;
import org.halflight.exposure.TripPoints;
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

  /** A sweep takes 0.8 s: 41 fine codes either side of the light, which is 10 counts. */
  private static final int NEAR_CODES = 40;

  /** As far as one command goes, 62 counts either side. */
  private static final int FAR_CODES = RigCommand.SweepThreshold.STEPS_MOST / 2;

  private static final double FINE_CODES_PER_COUNT = 4;

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
  private final boolean oneLevel;
  private Channel channel = Channel.CENTRE_LOW;
  private int reachCodes = NEAR_CODES;
  private int tries;
  private Optional<RigEvent.Tripped> rising = Optional.empty();
  private Optional<RigEvent.Tripped> falling = Optional.empty();
  private TripPoints.Comparator low = TripPoints.Comparator.EXACT;
  private Optional<Outcome> outcome = Optional.empty();

  /**
   * @param fullCounts the light of the open shutter
   * @param oneLevel whether one comparator stands for both levels
   */
  TripSweep(double fullCounts, boolean oneLevel) {
    this.fullCounts = fullCounts;
    this.oneLevel = oneLevel;
  }

  /** The command of the sweep that comes now. */
  RigCommand command() {
    rising = Optional.empty();
    falling = Optional.empty();
    // A reading is the voltage cut down to whole counts, so it stands for half a count more.
    int middle = (int) Math.round((fullCounts + 0.5) * FINE_CODES_PER_COUNT);
    return new RigCommand.SweepThreshold(
        channel,
        Math.max(RigCommand.SweepThreshold.CODE_LEAST, middle - reachCodes),
        Math.min(RigCommand.SweepThreshold.CODE_MOST, middle + reachCodes));
  }

  /** Part of the work that is done, 0 to 1. */
  double progress() {
    return (channel == Channel.CENTRE_HIGH ? 0.5 : 0) + (rising.isPresent() ? 0.25 : 0);
  }

  /** What came of it, once it is over. */
  Optional<Outcome> outcome() {
    return outcome;
  }

  /** Hears what the rig says; gives the next command, if there is one. */
  Optional<RigCommand> hear(RigEvent event) {
    if (event instanceof RigEvent.Tripped trip && trip.channel() == channel) {
      if (trip.rising()) {
        rising = Optional.of(trip);
      } else {
        falling = Optional.of(trip);
      }
    }
    return event instanceof RigEvent.Answered answered
        ? answered(answered.result())
        : Optional.empty();
  }

  private Optional<RigCommand> answered(RigMessage.Result result) {
    return switch (result) {
      case DONE ->
          rising.isPresent() && falling.isPresent()
              ? judge(rising.get(), falling.get())
              : onceMore();
      case UNKNOWN_COMMAND, NOT_ON_THIS_RIG -> over(new Outcome.NotAble());
      case BUSY -> onceMore();
      case BAD_FIELDS, STORE_FAILED -> over(new Outcome.NotHeard());
    };
  }

  private Optional<RigCommand> onceMore() {
    tries++;
    return tries < TRIES_MOST ? Optional.of(command()) : over(new Outcome.NotHeard());
  }

  private Optional<RigCommand> judge(RigEvent.Tripped up, RigEvent.Tripped down) {
    double upLight = up.lightSum16() / 16.0;
    double downLight = down.lightSum16() / 16.0;
    if (Math.abs(upLight - fullCounts) > LIGHT_CHANGE_MOST * fullCounts
        || Math.abs(downLight - fullCounts) > LIGHT_CHANGE_MOST * fullCounts) {
      return wrong(new LightSetting.Refusal.LightMoved());
    }
    if (up.fineCode() == 0 || down.fineCode() == 0) {
      if (reachCodes == NEAR_CODES) {
        reachCodes = FAR_CODES;
        return Optional.of(command());
      }
      return wrong(new LightSetting.Refusal.NeverTrips(channel));
    }
    return judge(comparator(up, down));
  }

  /**
   * A lamp's ripple lets the threshold meet the least light on its way up and the most on its way
   * down; each way is therefore held against the light that was read beside it.
   */
  private static TripPoints.Comparator comparator(RigEvent.Tripped up, RigEvent.Tripped down) {
    double upLight = up.lightSum16() / 16.0;
    double downLight = down.lightSum16() / 16.0;
    double mean = (upLight + downLight) / 2;
    return TripPoints.Comparator.ofSweep(
        up.levelSum64() / 64.0 - (upLight - mean),
        down.levelSum64() / 64.0 - (downLight - mean),
        mean);
  }

  private Optional<RigCommand> judge(TripPoints.Comparator found) {
    if (Math.abs(found.offsetCounts()) > OFFSET_COUNTS_MOST
        || found.hysteresisCounts() > HYSTERESIS_COUNTS_MOST) {
      return wrong(new LightSetting.Refusal.TripsOff(channel, found));
    }
    if (oneLevel) {
      return over(new Outcome.Known(new TripPoints(found, found)));
    }
    if (channel == Channel.CENTRE_LOW) {
      low = found;
      channel = Channel.CENTRE_HIGH;
      reachCodes = NEAR_CODES;
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
