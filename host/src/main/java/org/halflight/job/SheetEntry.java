package org.halflight.job;

import java.time.Instant;

/**
 * What one line of a strip sheet came to say. An entry is never changed: a correction, a tick and
 * taking back a line are entries of their own, so that what the sheet said before is kept.
 *
 * @param id what the record knows it by
 * @param visit which visit
 * @param line which line of the sheet, from 1
 * @param at when it was written
 * @param item what is asked
 * @param place where it is, or how it was measured; may be empty
 * @param words what was noted, as {@link SheetItem#read} gives it
 * @param state what holds of the line from then on
 */
public record SheetEntry(
    Id<SheetEntry> id,
    Id<Visit> visit,
    int line,
    Instant at,
    SheetItem item,
    String place,
    String words,
    SheetState state) {
  public SheetEntry {
    if (line < 1) {
      throw new IllegalArgumentException("lines of a sheet count from 1: " + line);
    }
  }

  /** The same entry under a number of the record. */
  public SheetEntry withId(Id<SheetEntry> id) {
    return new SheetEntry(id, visit, line, at, item, place, words, state);
  }

  /** The next entry of the same line, in another state. */
  public SheetEntry turned(SheetState to, Instant now) {
    return new SheetEntry(Id.ofNew(), visit, line, now, item, place, words, to);
  }

  /** The next entry of the same line, which says the same again. */
  public SheetEntry again(Instant now) {
    return turned(state, now);
  }

  /** The next entry of the same line, with other words; it is asked back again. */
  public SheetEntry corrected(String otherPlace, String otherWords, Instant now) {
    return new SheetEntry(
        Id.ofNew(), visit, line, now, item, otherPlace, otherWords, SheetState.NOTED);
  }

  boolean saysTheSameAs(SheetEntry other) {
    return place.equals(other.place) && words.equals(other.words);
  }
}
