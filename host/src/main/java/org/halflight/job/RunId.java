package org.halflight.job;

/**
 * What a run is known by in the record.
 *
 * @param value its number there, from 1; 0 as long as it is in no record
 */
public record RunId(long value) {
  /** Of a run that is in no record yet. */
  public static final RunId NEW = new RunId(0);

  public RunId {
    if (value < 0) {
      throw new IllegalArgumentException("numbers of the record are 0 or more: " + value);
    }
  }

  /** Whether it is in no record yet. */
  public boolean isNew() {
    return value == 0;
  }
}
