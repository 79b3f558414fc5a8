package org.halflight.rig;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * What came over a link, and what did not. An immutable snapshot.
 *
 * @param lines received lines, good and bad
 * @param bytes characters of these lines with one line end each; the cut-off rest of a too long
 *     line is not counted
 * @param badForm lines that are not of the form of a line
 * @param badCrc lines that were damaged on the way
 * @param badFields lines whose fields are not those of their kind, or say what the rig cannot have
 *     meant
 * @param tooLong lines over 96 bytes
 * @param unknown lines of a kind that this program does not know, or of a host
 * @param repeated lines that came a second time and were left out
 * @param missing lines of the rig that never came, by its line counter; a bad line that was one of
 *     the rig counts here too, once the next good one shows the gap. Across a restart that was not
 *     seen, at least so many.
 * @param lastBeatTicks ticks of the last beat
 * @param rigLosses the last counters of the rig itself, since its start
 */
public record LinkStatistics(
    long lines,
    long bytes,
    long badForm,
    long badCrc,
    long badFields,
    long tooLong,
    long unknown,
    long repeated,
    long missing,
    OptionalLong lastBeatTicks,
    Optional<RigMessage.Losses> rigLosses) {

  /** All lines that could not be believed. */
  public long bad() {
    return badForm + badCrc + badFields + tooLong;
  }
}
