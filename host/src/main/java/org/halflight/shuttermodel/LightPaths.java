package org.halflight.shuttermodel;

import java.util.function.UnaryOperator;
import org.halflight.signal.Channel;

/**
 * The light at the three sensors, each as a fraction of its own full light.
 *
 * @param centre in the middle of the frame
 * @param outerA at outer sensor A
 * @param outerB at outer sensor B
 */
public record LightPaths(LightPath centre, LightPath outerA, LightPath outerB) {
  /** All three see the same, as behind a leaf shutter in the pupil. */
  public static LightPaths same(LightPath path) {
    return new LightPaths(path, path, path);
  }

  /** What the sensor of a light channel sees. */
  public LightPath of(Channel channel) {
    return switch (channel) {
      case CENTRE_LOW, CENTRE_HIGH -> centre;
      case OUTER_A -> outerA;
      case OUTER_B -> outerB;
      case CONTACT, CLICK, RELEASE, KNOB ->
          throw new IllegalArgumentException("no light sensor on " + channel);
    };
  }

  /** Each of them changed in the same way. */
  public LightPaths each(UnaryOperator<LightPath> changes) {
    return new LightPaths(changes.apply(centre), changes.apply(outerA), changes.apply(outerB));
  }

  /** The time of the last point of all, in seconds. */
  public double endSeconds() {
    return Math.max(centre.endSeconds(), Math.max(outerA.endSeconds(), outerB.endSeconds()));
  }
}
