package org.halflight.job;

/** How an item of a list was found. */
public enum CheckState {
  OK,
  FAULT,
  NOT_TESTED
}
