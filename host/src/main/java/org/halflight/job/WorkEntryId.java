package org.halflight.job;

/**
 * What a entry of the work log is known by in the record.
 *
 * @param value its number there, from 1; 0 as long as it is in no record
 */
public record WorkEntryId(long value) {
  /** Of a entry of the work log that is in no record yet. */
  public static final WorkEntryId NEW = new WorkEntryId(0);

  public WorkEntryId {
    if (value < 0) {
      throw new IllegalArgumentException("numbers of the record are 0 or more: " + value);
    }
  }

  /** Whether it is in no record yet. */
  public boolean isNew() {
    return value == 0;
  }
}
