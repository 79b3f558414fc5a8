package org.halflight.shuttermodel;

import org.halflight.speeds.MarkedSpeed;
import org.halflight.stored.StoredWords;

/** How the parts of an invented camera fit together. How much each costs is invention. */
public enum InventedFit {
  /** All parts fit. */
  SOUND(0, 0),
  /** The tight ring pinches the case: the train drags, the blades hardly. */
  PINCHED_CASE(0.5, 0.05),
  /** A cell rubs on the blades or their ring. */
  TOUCHING_CELL(0.45, 0.25),
  /** The cover holds the speed ring off its place: every speed moves. */
  WRONG_COVER(0.4, 0.4);

  /** As they are typed. */
  public static final StoredWords<InventedFit> WORDS =
      StoredWords.of(
          InventedFit.class,
          fit ->
              switch (fit) {
                case SOUND -> "sound";
                case PINCHED_CASE -> "pinched-case";
                case TOUCHING_CELL -> "touching-cell";
                case WRONG_COVER -> "wrong-cover";
              });

  /** Speeds up to this exact time are made by the spring alone, slower ones by the train. */
  private static final double TRAIN_FROM_SECONDS = 1.0 / 16;

  private final double slowStops;
  private final double fastStops;

  InventedFit(double slowStops, double fastStops) {
    this.slowStops = slowStops;
    this.fastStops = fastStops;
  }

  /** A shutter with the part on that does not fit. */
  public LeafShutter on(LeafShutter shutter) {
    return shutter.slowedBy(this::stops);
  }

  private double stops(MarkedSpeed speed) {
    return speed.exactSeconds() >= TRAIN_FROM_SECONDS ? slowStops : fastStops;
  }
}
