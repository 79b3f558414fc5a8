package org.halflight.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.calibration.MadePulse;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;

/** Makes reference pulses and gathers the edges that they bring. */
final class PulseTask implements RigTask {
  private static final double EDGES_WITHIN_SECONDS = 0.040;

  /** The LED rests so long between two pulses, or as long as they are. */
  private static final double GAP_SECONDS = 0.020;

  private final RigCommand.DriveReference drive;
  private final List<MadePulse> made = new ArrayList<>();
  private final List<Edge> edges = new ArrayList<>();
  private boolean edgesAreIn;

  PulseTask(ReferenceDrive drive, long widthTicks, int count) {
    this.drive = new RigCommand.DriveReference(drive, widthTicks, count);
  }

  @Override
  public RigCommand begin() {
    return drive;
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.PulseMade pulse) {
      made.add(new MadePulse(pulse.beginTicks(), pulse.endTicks()));
    } else if (event instanceof RigEvent.EdgeAt edge) {
      edges.add(edge.edge());
    } else if (event instanceof RigEvent.TimeAt time && made.size() >= drive.count()) {
      // Edges may come up to 20 ms after a beat that they were before.
      long sinceTicks = time.ticks() - made.get(made.size() - 1).endTicks();
      edgesAreIn |= rate.seconds(sinceTicks) > EDGES_WITHIN_SECONDS;
    }
    return edgesAreIn ? State.DONE : State.UNDER_WAY;
  }

  @Override
  public double patienceSeconds(TickRate rate) {
    return 4 + drive.count() * (2 * rate.seconds(drive.widthTicks()) + GAP_SECONDS);
  }

  List<MadePulse> made() {
    return made;
  }

  List<Edge> edges() {
    return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
  }
}
