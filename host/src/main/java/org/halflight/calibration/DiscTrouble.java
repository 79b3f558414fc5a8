package org.halflight.calibration;

/** Why the edges of a turning disc come to no reading. */
public sealed interface DiscTrouble {
  /** Nothing passed. */
  record NoEdges() implements DiscTrouble {}

  /** The low level saw slots, and the high one saw none of them: none frees the whole light. */
  record NeverFullLight() implements DiscTrouble {}

  /** Too few whole turns with all slots in them. */
  record TooFewTurns(int turns) implements DiscTrouble {}

  /** All pulses are alike, as of a lamp that flickers or of a disc with equal slots. */
  record AllAlike(double hertz) implements DiscTrouble {}

  /** Another number of slots a turn. */
  record OtherNumber(int slots) implements DiscTrouble {}

  /** Five slots, and not those of the disc, or no order in them at all. */
  record OtherDisc() implements DiscTrouble {}

  /** The speed is not even. */
  record Wanders(double share) implements DiscTrouble {}

  /** Too far off centre, or a speed that swings too far within each turn. */
  record OffCentre(double millimetres) implements DiscTrouble {}

  /** Faster than a card may be spun. */
  record TooFast(double turnsAMinute) implements DiscTrouble {}

  /** The levels lie too far from where the method needs them. */
  record LevelsOff() implements DiscTrouble {}
}
