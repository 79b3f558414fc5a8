package org.halflight.uncertainty;

/** A part of the uncertainty of an effective time. */
public enum UncertaintySource {
  /** Where the comparators switch, as a share of full light. */
  LEVELS,
  /** Full light between setting it and the firing, as a share of it. */
  LAMP,
  /**
   * A supply that moved between setting the light and the firing and was followed by a level that
   * does not, as a share of full light. Of rigs with a fixed level only.
   */
  SUPPLY,
  /** The rule of two levels itself, in seconds. */
  METHOD,
  /** Early light and rebound, which few levels weigh, in seconds. */
  REBOUND,
  /** Light that does not fall evenly over the pupil, as a share of opening plus closing time. */
  PUPIL,
  /** Lag of the front end and unlike delays of opening and closing edge, in seconds. */
  DELAY,
  /** Hysteresis of the comparators, as a share of full light. */
  HYSTERESIS,
  /** The steps in which edges are stamped, or a light curve is read, in seconds. */
  QUANTISATION,
  /**
   * Full light as it was measured again after the firings, as a share of it. Of light curves only.
   */
  FULL_LIGHT,
  /** Light that the windows of a light curve may have hidden, in seconds. */
  WINDOW,
  /** Noise of the readings of a light curve, in seconds. */
  NOISE,
  /** The rate of the board's clock, in parts of the time. */
  CLOCK,
  /** Scatter of the firings, in stops; the one part that more firings lessen. */
  REPEATABILITY
}
