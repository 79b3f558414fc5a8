package org.halflight.profile;

/**
 * How the front end lags behind the light, as one pole. It lengthens square pulses at a low level
 * and shortens them at a high one, and hardly touches the slow ramps of a shutter; so it is known,
 * and not corrected.
 *
 * @param seconds time constant; may come out below zero by its uncertainty
 * @param standardUncertaintySeconds of that
 */
public record FrontEndLag(double seconds, double standardUncertaintySeconds) {
  public FrontEndLag {
    Checked.finite(seconds);
    Checked.uncertainty(standardUncertaintySeconds);
  }
}
