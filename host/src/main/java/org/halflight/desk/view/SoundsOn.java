package org.halflight.desk.view;

import java.util.EnumSet;
import java.util.Set;

/**
 * Which sounds are played. One switch is for all; which kinds are off is kept meanwhile.
 *
 * @param all whether any are
 * @param off kinds that are not
 */
public record SoundsOn(boolean all, Set<SoundKind> off) {
  public SoundsOn {
    off = Set.copyOf(off);
  }

  /** Whether a kind is played. */
  public boolean plays(SoundKind kind) {
    return all && !off.contains(kind);
  }

  /** The switch for all is turned. */
  public SoundsOn turned() {
    return new SoundsOn(!all, off);
  }

  /** One kind is switched. */
  public SoundsOn with(SoundKind kind, boolean on) {
    Set<SoundKind> now = EnumSet.noneOf(SoundKind.class);
    now.addAll(off);
    if (on) {
      now.remove(kind);
    } else {
      now.add(kind);
    }
    return new SoundsOn(all, now);
  }
}
