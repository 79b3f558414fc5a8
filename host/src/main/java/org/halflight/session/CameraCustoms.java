package org.halflight.session;

/**
 * What a camera wants, by the custom of the trade; no source.
 *
 * @param topSpeedBeforeCocking whether its top speed is to be set before cocking
 * @param bladesShutWhileCocking whether its blades stay shut when it is cocked, so that light while
 *     cocking is a leak
 */
public record CameraCustoms(boolean topSpeedBeforeCocking, boolean bladesShutWhileCocking) {
  /** Nothing known. */
  public static final CameraCustoms NONE = new CameraCustoms(false, false);
}
