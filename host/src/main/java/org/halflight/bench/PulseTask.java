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
  private final RigCommand.DriveReference drive;
  private final List<MadePulse> made = new ArrayList<>();
  private final List<Edge> edges = new ArrayList<>();
  private int beatsAfter;

  PulseTask(ReferenceDrive drive, long widthTicks, int count) {
    this.drive = new RigCommand.DriveReference(drive, widthTicks, count);
  }

  @Override
  public RigCommand begin() {
    return drive;
  }

  @Override
  public State hear(RigEvent event) {
    if (event instanceof RigEvent.PulseMade pulse) {
      made.add(new MadePulse(pulse.beginTicks(), pulse.endTicks()));
    } else if (event instanceof RigEvent.EdgeAt edge) {
      edges.add(edge.edge());
    } else if (event instanceof RigEvent.TimeAt && made.size() >= drive.count()) {
      // Edges may come up to 20 ms after the beat that follows them.
      beatsAfter++;
    }
    return beatsAfter >= 2 ? State.DONE : State.UNDER_WAY;
  }

  @Override
  public int patienceBeats() {
    double seconds = drive.count() * (drive.widthTicks() * 2 + 320_000) / 16e6;
    return 12 + (int) Math.ceil(seconds / 0.2);
  }

  List<MadePulse> made() {
    return made;
  }

  List<Edge> edges() {
    return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
  }
}
