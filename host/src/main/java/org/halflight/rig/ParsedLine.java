package org.halflight.rig;

/** What a received line turned out to be. Immutable, like all its kinds. */
public sealed interface ParsedLine {
  /** A line of a rig. */
  record Message(RigMessage message) implements ParsedLine {}

  /**
   * A line of a host.
   *
   * @param sequence its line counter, 0 to 65535
   */
  record Command(int sequence, RigCommand command) implements ParsedLine {}

  /**
   * A well-formed line, with a right CRC, of a kind that this program does not know.
   *
   * @param kind its letter; upper case from a rig
   * @param sequence its line counter, 0 to 65535
   */
  record UnknownKind(char kind, int sequence) implements ParsedLine {}

  /** A line that is not to be believed, in anything, its line counter included. */
  record Bad(Reason reason) implements ParsedLine {}

  /** What is wrong with a line; the first of these that applies, in this order. */
  enum Reason {
    /** Over 96 bytes with its line end. */
    TOO_LONG,
    /** Not of the form of a line. */
    FORM,
    /** The CRC differs: damaged on the way. */
    CRC,
    /** Form and CRC are right, but the fields are not those of this kind. */
    FIELDS
  }
}
