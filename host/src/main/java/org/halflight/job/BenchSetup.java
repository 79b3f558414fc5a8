package org.halflight.job;

import java.util.EnumSet;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * How a shutter was set up for a run. Runs of unlike set-ups are compared with a warning only.
 *
 * @param inCamera in the camera, or taken out of it
 * @param cellsOn whether the lens cells were on
 * @param coverOn whether the cover of the shutter was on
 * @param stopFNumber the f-number of the stop that was set, above 0; empty when there is none
 * @param attitude which way the lens looked
 * @param stillWet just cleaned and still wet
 */
public record BenchSetup(
    boolean inCamera,
    boolean cellsOn,
    boolean coverOn,
    OptionalDouble stopFNumber,
    Attitude attitude,
    boolean stillWet) {
  /** What two set-ups may differ in. */
  public enum Difference {
    IN_CAMERA,
    CELLS,
    COVER,
    STOP,
    ATTITUDE,
    STILL_WET
  }

  public BenchSetup {
    Objects.requireNonNull(stopFNumber);
    Objects.requireNonNull(attitude);
    if (stopFNumber.isPresent() && !Camera.isFNumber(stopFNumber.getAsDouble())) {
      throw new IllegalArgumentException("not an f-number: " + stopFNumber.getAsDouble());
    }
  }

  /** What another set-up differs in; empty when the two may be compared without a warning. */
  public Set<Difference> differencesFrom(BenchSetup other) {
    Set<Difference> differences = EnumSet.noneOf(Difference.class);
    if (inCamera != other.inCamera) {
      differences.add(Difference.IN_CAMERA);
    }
    if (cellsOn != other.cellsOn) {
      differences.add(Difference.CELLS);
    }
    if (coverOn != other.coverOn) {
      differences.add(Difference.COVER);
    }
    if (!stopFNumber.equals(other.stopFNumber)) {
      differences.add(Difference.STOP);
    }
    if (attitude != other.attitude) {
      differences.add(Difference.ATTITUDE);
    }
    if (stillWet != other.stillWet) {
      differences.add(Difference.STILL_WET);
    }
    return differences;
  }
}
