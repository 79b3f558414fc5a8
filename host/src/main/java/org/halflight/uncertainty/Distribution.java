package org.halflight.uncertainty;

/** How an input is distributed, as far as anybody knows. */
public enum Distribution {
  /** Normal, or from readings with few degrees of freedom. */
  NORMAL,
  /** Anywhere between two bounds alike. */
  RECTANGULAR,
  /**
   * One error of all firings of this shutter on this rig, somewhere between plus and minus a bound.
   * No draw: it may sit at the bound for good, so it is added and not squared.
   */
  BIAS,
  /** The same, but it makes a time read long or right, never short. */
  READS_LONG;

  /** Whether it is added to what scatters, by its bound. */
  public boolean isBias() {
    return this == BIAS || this == READS_LONG;
  }
}
