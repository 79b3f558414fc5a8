package org.halflight.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.halflight.rig.RigMessage.Losses;

/** Compares the edges that came with those that the rig says it sent. For one thread. */
final class EdgeCount {
  private static final int COUNTER_STOPS_AT = 0xFFFF;
  private static final long EDGES_MODULUS = 1L << 32;
  private static final Losses NO_LOSSES = new Losses(0, 0, 0, 0, 0, 0, 0, 0);

  /** The last counters; those of a start are known without a line. */
  private Optional<Losses> last = Optional.empty();

  private boolean edgesSeen;

  /** Edges since then, each once, or fewer. Empty where one may be counted twice. */
  private OptionalLong came = OptionalLong.of(0);

  private boolean linesMissing;

  /** An edge was placed. */
  void edgeSeen() {
    edgesSeen = true;
  }

  /** So many more edges came, or fewer than was thought. */
  void came(int more) {
    came.ifPresent(before -> came = OptionalLong.of(before + more));
  }

  /** A line may come again, or edges of two starts may be mixed. */
  void isUnsure() {
    came = OptionalLong.empty();
  }

  /** Lines went missing; edges may have been among them. */
  void lineIsMissing() {
    linesMissing = true;
  }

  /** The board started, and counts from zero. */
  void begin() {
    last = Optional.of(NO_LOSSES);
    came = OptionalLong.of(0);
  }

  /** The rig tells its counters; what they say about edges. */
  List<RigEvent> onCounters(Losses now) {
    List<RigEvent> events = new ArrayList<>();
    if (linesMissing) {
      events.add(new RigEvent.EdgesCounted(allCame(now)));
    }
    // Without counters from before, old losses cannot be told from new ones. They concern nobody
    // unless edges were seen already.
    if (last.map(before -> lostMore(before, now)).orElse(edgesSeen && lostMore(NO_LOSSES, now))) {
      events.add(new RigEvent.EdgesLost());
    }
    linesMissing = false;
    came = OptionalLong.of(0);
    last = Optional.of(now);
    return events;
  }

  private boolean allCame(Losses now) {
    return last.isPresent()
        && came.isPresent()
        && Math.floorMod(now.edges() - last.get().edges(), EDGES_MODULUS) == came.getAsLong();
  }

  private static boolean lostMore(Losses before, Losses now) {
    // A counter that has stopped may hide any number of further losses.
    return now.snapshotsLost() != before.snapshotsLost()
        || now.capturesLost() != before.capturesLost()
        || now.floods() != before.floods()
        || now.snapshotsLost() == COUNTER_STOPS_AT
        || now.capturesLost() == COUNTER_STOPS_AT;
  }
}
