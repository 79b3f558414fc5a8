package org.halflight.job;

import java.time.Instant;
import org.halflight.stored.StoredWords;

/**
 * A picture of a visit. Its file lies beside the record and is never changed; one that was taken
 * off the visit stays.
 *
 * @param id what the record knows it by
 * @param visit which visit
 * @param file its place in the folder of pictures, with slashes
 * @param name what its file was called where it came from
 * @param sha256 SHA-256 of the file in hexadecimal, by which the same picture is known
 * @param bytes length of the file
 * @param takenAt when it was taken
 * @param takenBy what says so
 * @param caption in the person's words; may be empty
 * @param isOff whether it was taken off the visit
 */
public record Photo(
    Id<Photo> id,
    Id<Visit> visit,
    String file,
    String name,
    String sha256,
    long bytes,
    Instant takenAt,
    TakenBy takenBy,
    String caption,
    boolean isOff) {
  /** What says when a picture was taken. */
  public enum TakenBy {
    /** The picture itself. */
    PICTURE,
    /** The time of its file. */
    FILE;

    /** As the record stores them. */
    public static final StoredWords<TakenBy> WORDS =
        StoredWords.of(
            TakenBy.class,
            by ->
                switch (by) {
                  case PICTURE -> "picture";
                  case FILE -> "file";
                });
  }

  /** The same picture under a number of the record. */
  public Photo withId(Id<Photo> id) {
    return new Photo(id, visit, file, name, sha256, bytes, takenAt, takenBy, caption, isOff);
  }

  /** The same picture with another caption. */
  public Photo withCaption(String caption) {
    return new Photo(
        id, visit, file, name, sha256, bytes, takenAt, takenBy, caption.strip(), isOff);
  }

  /** The same picture, off the visit or on it again. */
  public Photo off(boolean isOff) {
    return new Photo(id, visit, file, name, sha256, bytes, takenAt, takenBy, caption, isOff);
  }
}
