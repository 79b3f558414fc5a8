package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.calibration.PulseMatch;
import org.halflight.calibration.SeenPulse;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.profile.ComparatorTrips;
import org.halflight.rig.ReferenceDrive;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** Makes reference pulses at two levels of the LED's light and finds what the channels saw. */
final class ReferencePulses {
  private static final List<Channel> CENTRE = List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH);

  private final TaskRunner runner;
  private final TickRate rate;
  private final ReferenceLight light;
  private final Map<Channel, ComparatorTrips> trips;

  /** Levels of each channel on rising and on falling light. */
  private double[][] levels = {};

  ReferencePulses(
      TaskRunner runner, TickRate rate, ReferenceLight light, Map<Channel, ComparatorTrips> trips) {
    this.runner = runner;
    this.rate = rate;
    this.light = light;
    this.trips = Map.copyOf(trips);
  }

  /** Puts the thresholds near levels; returns where they stand. */
  ThresholdTask stand(LevelPair wanted) throws CalibrationRefused {
    ThresholdCodes codes = light.codes(wanted);
    ThresholdTask task = runner.run(new ThresholdTask(codes.low(), codes.high()));
    levels =
        new double[][] {
          levels(task.lowCounts(), Channel.CENTRE_LOW),
          levels(task.highCounts(), Channel.CENTRE_HIGH)
        };
    return task;
  }

  private double[] levels(double thresholdCounts, Channel channel) {
    Optional<ComparatorTrips> trip = Optional.ofNullable(trips.get(channel));
    return new double[] {
      light.level(thresholdCounts + trip.map(ComparatorTrips::risingCounts).orElse(0.0)),
      light.level(thresholdCounts + trip.map(ComparatorTrips::fallingCounts).orElse(0.0))
    };
  }

  /** Pulses as both channels of the centre saw them; thresholds must stand. */
  List<SeenPulse> make(ReferenceDrive drive, double widthSeconds, int count)
      throws CalibrationRefused {
    PulseTask task = runner.run(new PulseTask(drive, rate.ticks(widthSeconds), count));
    List<SeenPulse> seen = new ArrayList<>();
    for (int i = 0; i < CENTRE.size(); i++) {
      PulseMatch.Outcome outcome =
          PulseMatch.of(task.made(), task.edges(), CENTRE.get(i), levels[i][0], levels[i][1], rate);
      if (outcome instanceof PulseMatch.NothingSeen nothing) {
        throw new CalibrationRefused(new CalibrationRefusal.NothingSeen(nothing.channel()));
      }
      if (outcome instanceof PulseMatch.Reversed reversed) {
        throw new CalibrationRefused(new CalibrationRefusal.WrongPolarity(reversed.channel()));
      }
      if (outcome instanceof PulseMatch.Disturbed disturbed) {
        throw new CalibrationRefused(
            new CalibrationRefusal.Disturbed(disturbed.channel(), disturbed.missed()));
      }
      seen.addAll(((PulseMatch.Matched) outcome).pulses());
    }
    return seen;
  }
}
