package org.halflight.session;

import org.halflight.speeds.Dial;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;

/**
 * The shutter that a run is about.
 *
 * @param camera the owner's label of the camera; may be empty
 * @param kind how it is built; {@link ShutterKind#UNKNOWN} where nobody said, and its dial tells
 * @param dial key of the dial, see {@link Dial#key}; {@link Dial#CUSTOM} where nobody said which
 *     speeds are on it
 * @param reference how its markings are read
 * @param customs what the camera wants
 */
public record ShutterUnderTest(
    String camera, ShutterKind kind, String dial, Reference reference, CameraCustoms customs) {
  /** Whether a slit or an edge moves over the picture. */
  public boolean isCurtain() {
    return kind.isCurtain(dial);
  }
}
