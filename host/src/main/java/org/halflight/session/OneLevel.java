package org.halflight.session;

import java.util.OptionalDouble;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.FixedLevel;
import org.halflight.exposure.LevelPair;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * How a firing was seen by a rig of one level.
 *
 * @param level where its threshold stood
 * @param gapSeconds by how much the light stays longer above the low level than above the high one,
 *     from the other firings of the same speed; empty until those saw either level
 */
public record OneLevel(AlternatingLevels.Level level, OptionalDouble gapSeconds)
    implements ExposureMethod {
  /**
   * Seen at a level that cannot be set: its own light curve completes it. No gap is below 0, so
   * this one marks it, in files too.
   */
  public static final OneLevel FIXED =
      new OneLevel(AlternatingLevels.Level.LOW, OptionalDouble.of(-1));

  /** Whether the level was one that cannot be set. */
  public boolean isFixed() {
    return equals(FIXED);
  }

  @Override
  public Exposure measure(Firing firing, LevelPair levels, TickRate rate, long nowTicks) {
    return isFixed()
        ? FixedLevel.withoutCurve(firing, levels, rate, nowTicks)
        : AlternatingLevels.measure(firing, level, gapSeconds, levels, rate, nowTicks);
  }
}
