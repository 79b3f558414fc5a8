package org.halflight.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.calibration.MadePulse;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Edge;

/** Makes reference pulses and gathers the edges that they bring. */
final class PulseTask implements RigTask {
  private static final long EDGES_WITHIN_TICKS = 640_000;

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
  public State onEvent(RigEvent event) {
    if (event instanceof RigEvent.PulseMade pulse) {
      made.add(new MadePulse(pulse.beginTicks(), pulse.endTicks()));
    } else if (event instanceof RigEvent.EdgeAt edge) {
      edges.add(edge.edge());
    } else if (event instanceof RigEvent.TimeAt time && made.size() >= drive.count()) {
      // Edges may come up to 20 ms after a beat that they were before.
      edgesAreIn |= time.ticks() - made.get(made.size() - 1).endTicks() > EDGES_WITHIN_TICKS;
    }
    return edgesAreIn ? State.DONE : State.UNDER_WAY;
  }

  @Override
  public double patienceSeconds() {
    return 4 + drive.count() * (2 * drive.widthTicks() + 320_000) / 16e6;
  }

  List<MadePulse> made() {
    return made;
  }

  List<Edge> edges() {
    return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
  }
}
