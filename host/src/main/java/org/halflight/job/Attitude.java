package org.halflight.job;

/** Which way the lens looked while it was fired; gravity moves what is loose. */
public enum Attitude {
  LENS_LEVEL,
  LENS_UP,
  LENS_DOWN,
  ON_ITS_SIDE,
  UPSIDE_DOWN
}
