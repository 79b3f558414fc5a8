package org.halflight.job;

/**
 * What a visit is known by in the record.
 *
 * @param value its number there, from 1; 0 as long as it is in no record
 */
public record VisitId(long value) {
  /** Of a visit that is in no record yet. */
  public static final VisitId NEW = new VisitId(0);

  public VisitId {
    if (value < 0) {
      throw new IllegalArgumentException("numbers of the record are 0 or more: " + value);
    }
  }

  /** Whether it is in no record yet. */
  public boolean isNew() {
    return value == 0;
  }
}
