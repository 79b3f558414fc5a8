package org.halflight.job;

/**
 * What a camera, visit, run or entry of the work log is known by in the record.
 *
 * @param value its number there, from 1; 0 as long as it is in no record
 * @param <T> what it is the number of
 */
// T tells numbers of one kind from those of another at compile time, and nothing more.
@SuppressWarnings("UnusedTypeParameter")
public record Id<T>(long value) {
  public Id {
    if (value < 0) {
      throw new IllegalArgumentException("numbers of the record are 0 or more: " + value);
    }
  }

  /** Of what is in no record yet. */
  public static <T> Id<T> ofNew() {
    return new Id<>(0);
  }

  /** Whether it is in no record yet. */
  public boolean isNew() {
    return value == 0;
  }
}
