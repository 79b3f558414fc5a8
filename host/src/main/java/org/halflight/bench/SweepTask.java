package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.profile.TripPoints;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Channel;

/** Sweeps a threshold through steady light, up and down. */
final class SweepTask implements RigTask {
  /** The converter reads whole counts, evenly spread; light and level are means of many. */
  private static final double STANDARD_UNCERTAINTY_COUNTS = 1 / Math.sqrt(12);

  private final RigCommand.SweepThreshold sweep;
  private final List<RigEvent.Tripped> trips = new ArrayList<>();
  private boolean answered;

  SweepTask(Channel channel, double aroundCounts, int steps) {
    int middle = (int) Math.round(4 * aroundCounts);
    int from = Math.max(RigCommand.SweepThreshold.CODE_LEAST, middle - steps / 2);
    int to = Math.min(RigCommand.SweepThreshold.CODE_MOST, from + steps);
    sweep = new RigCommand.SweepThreshold(channel, from, to);
  }

  @Override
  public RigCommand begin() {
    return sweep;
  }

  @Override
  public State hear(RigEvent event) {
    if (event instanceof RigEvent.Tripped trip && trip.channel() == sweep.channel()) {
      trips.add(trip);
    } else if (event instanceof RigEvent.Answered) {
      answered = true;
    }
    return answered && trips.size() >= 2 ? State.DONE : State.UNDER_WAY;
  }

  @Override
  public double patienceSeconds() {
    return 4 + (sweep.toCode() - sweep.fromCode()) * 2 * 0.006;
  }

  /** Where the comparator switches; empty where it did not switch both ways. */
  Optional<TripPoints> tripPoints() {
    double up = Double.NaN;
    double down = Double.NaN;
    for (RigEvent.Tripped trip : trips) {
      double lightLessThreshold = trip.lightSum16() / 16.0 - trip.levelSum64() / 64.0;
      if (trip.fineCode() == 0) {
        return Optional.empty();
      }
      if (trip.rising()) {
        // The threshold came up through the light: to the comparator the light fell.
        down = lightLessThreshold;
      } else {
        up = lightLessThreshold;
      }
    }
    return Double.isNaN(up) || Double.isNaN(down)
        ? Optional.empty()
        : Optional.of(new TripPoints(up, down, STANDARD_UNCERTAINTY_COUNTS));
  }
}
