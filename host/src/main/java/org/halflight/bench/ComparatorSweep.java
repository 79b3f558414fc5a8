package org.halflight.bench;

import java.util.Optional;
import org.halflight.calibration.TripEstimate;
import org.halflight.light.LightFlutter;
import org.halflight.profile.ComparatorTrips;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/**
 * Sweeps of one threshold through steady light, up and back down: first near the light, and farther
 * only where that found nothing. Told what the rig says, it answers with the next command. For one
 * thread.
 */
final class ComparatorSweep {
  /** A sweep takes 0.8 s: 41 fine codes either side of the light, which is 10 counts. */
  private static final int NEAR_CODES = 40;

  /** As far as one command goes, 62 counts either side. */
  private static final int FAR_CODES = RigCommand.SweepThreshold.STEPS_MOST / 2;

  private static final double FINE_CODES_PER_COUNT = 4;

  private final Channel channel;
  private final double lightCounts;
  private final LightFlutter flutter;
  private int reachCodes = NEAR_CODES;
  private Optional<RigMessage.TripPoint> up = Optional.empty();
  private Optional<RigMessage.TripPoint> down = Optional.empty();

  /**
   * @param lightCounts the steady light, in counts of the ten-bit converter
   * @param flutter by what it moves all the same
   */
  ComparatorSweep(Channel channel, double lightCounts, LightFlutter flutter) {
    this.channel = channel;
    this.lightCounts = lightCounts;
    this.flutter = flutter;
  }

  /** The command of the sweep that comes now; what the one before said is forgotten. */
  RigCommand.SweepThreshold command() {
    up = Optional.empty();
    down = Optional.empty();
    // A reading is the voltage cut down to whole counts, so it stands for half a count more.
    int middle = (int) Math.round((lightCounts + 0.5) * FINE_CODES_PER_COUNT);
    return new RigCommand.SweepThreshold(
        channel,
        Math.max(RigCommand.SweepThreshold.CODE_LEAST, middle - reachCodes),
        Math.min(RigCommand.SweepThreshold.CODE_MOST, middle + reachCodes));
  }

  /** Whether the farther sweep is still to be tried. */
  boolean canReachFarther() {
    return reachCodes == NEAR_CODES;
  }

  /** The command of the farther sweep. */
  RigCommand.SweepThreshold farther() {
    reachCodes = FAR_CODES;
    return command();
  }

  /** Hears what the rig says. */
  void onEvent(RigEvent event) {
    if (event instanceof RigMessage.TripPoint trip && trip.channel() == channel) {
      if (trip.rising()) {
        up = Optional.of(trip);
      } else {
        down = Optional.of(trip);
      }
    }
  }

  Channel channel() {
    return channel;
  }

  /** Whether the way up is over. */
  boolean isHalfDone() {
    return up.isPresent();
  }

  /** Whether both ways were heard. */
  boolean isHeard() {
    return up.isPresent() && down.isPresent();
  }

  /** Whether the light beside either switch was the one that the sweep was made for. */
  boolean lightHeld(double share) {
    return Math.abs(way(up).lightCounts() - lightCounts) <= share * lightCounts
        && Math.abs(way(down).lightCounts() - lightCounts) <= share * lightCounts;
  }

  /** Where the comparator switches; empty where it did not switch both ways. */
  Optional<ComparatorTrips> trips() {
    boolean switched = isHeard() && up.get().fineCode() != 0 && down.get().fineCode() != 0;
    return switched ? Optional.of(TripEstimate.of(way(up), way(down), flutter)) : Optional.empty();
  }

  private static TripEstimate.Way way(Optional<RigMessage.TripPoint> trip) {
    RigMessage.TripPoint at = trip.orElseThrow();
    return new TripEstimate.Way(at.fineCode(), at.levelSum64() / 64.0, at.lightSum16() / 16.0);
  }
}
