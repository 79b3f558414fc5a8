package org.halflight.job;

/**
 * What a camera is known by in the record.
 *
 * @param value its number there, from 1; 0 as long as it is in no record
 */
public record CameraId(long value) {
  /** Of a camera that is in no record yet. */
  public static final CameraId NEW = new CameraId(0);

  public CameraId {
    if (value < 0) {
      throw new IllegalArgumentException("numbers of the record are 0 or more: " + value);
    }
  }

  /** Whether it is in no record yet. */
  public boolean isNew() {
    return value == 0;
  }
}
