package org.halflight.uncertainty;

/** How an input is distributed, as far as anybody knows. */
public enum Distribution {
  /** Normal, or from readings with few degrees of freedom. */
  NORMAL,
  /** Anywhere between two bounds alike. */
  RECTANGULAR
}
