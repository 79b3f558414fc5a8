package org.halflight.rig;

/**
 * A line that came over the wire, with what it turned out to be. Whoever has the line first parses
 * it, and nobody does so again.
 *
 * @param text without line end, damaged or not
 */
public record RigLine(String text, ParsedLine parsed) {
  /** Parses a line. */
  public static RigLine of(String text) {
    return new RigLine(text, LineCodec.parse(text));
  }
}
