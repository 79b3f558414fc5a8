package org.halflight.exposure;

import java.util.ArrayList;
import java.util.List;
import org.halflight.signal.Pulse;

/**
 * One opening of the shutter as one light level sees it: a pulse, or several with only short gaps
 * between them where noise or chatter made the level cross more than once.
 *
 * @param pulses at least one, by ticks
 */
public record Opening(List<Pulse> pulses) {
  public Opening {
    pulses = List.copyOf(pulses);
    if (pulses.isEmpty()) {
      throw new IllegalArgumentException("an opening has at least one pulse");
    }
  }

  /**
   * Joins pulses into openings.
   *
   * @param pulses by ticks
   * @param joinTicks gaps up to this are chatter within one opening
   */
  public static List<Opening> join(List<Pulse> pulses, long joinTicks) {
    List<Opening> openings = new ArrayList<>();
    List<Pulse> joined = new ArrayList<>();
    for (Pulse pulse : pulses) {
      if (!joined.isEmpty()
          && pulse.startTicks() - joined.get(joined.size() - 1).endTicks() > joinTicks) {
        openings.add(new Opening(joined));
        joined.clear();
      }
      joined.add(pulse);
    }
    if (!joined.isEmpty()) {
      openings.add(new Opening(joined));
    }
    return openings;
  }

  /** Ticks of the first rise. */
  public long startTicks() {
    return pulses.get(0).startTicks();
  }

  /** Ticks of the last fall. */
  public long endTicks() {
    return pulses.get(pulses.size() - 1).endTicks();
  }

  /** How long the light was above the level, without the gaps, in ticks. */
  public long lightTicks() {
    return pulses.stream().mapToLong(Pulse::ticks).sum();
  }

  /** How long the light was above the level between two times, in ticks. */
  public long lightTicksWithin(long fromTicks, long toTicks) {
    return pulses.stream().mapToLong(pulse -> pulse.ticksWithin(fromTicks, toTicks)).sum();
  }

  /** The gaps between the pulses, in ticks. */
  public long gapTicks() {
    return endTicks() - startTicks() - lightTicks();
  }

  /** The longest of the gaps between the pulses, in ticks; 0 with one pulse. */
  public long longestGapTicks() {
    long longest = 0;
    for (int i = 1; i < pulses.size(); i++) {
      longest = Math.max(longest, pulses.get(i).startTicks() - pulses.get(i - 1).endTicks());
    }
    return longest;
  }
}
