package org.halflight.verdict;

import org.halflight.stored.StoredWords;

/** A step of adjusting curtains, in the order in which they are done. */
public enum CurtainStep {
  /** Clean; count and note the turns of both springs and the place of brakes and eccentric. */
  CLEAN,
  /** Tension of the first curtain, at the flash speed. */
  FIRST_TENSION,
  /** Tension of the second curtain: difference and slope. */
  SECOND_TENSION,
  /** Slit or latch eccentric: the centre at the top speed, then every slit speed. */
  SLIT,
  /** The three before once more, until nothing changes. */
  AGAIN,
  /** The brakes: the least that ends the bounce. */
  BRAKE,
  /** Flash contact against the window. */
  CONTACT,
  /** Escapement: 1/8 first, then the other slow speeds. */
  ESCAPEMENT,
  /** The next day, first after rest. */
  NEXT_DAY;

  /** As files store them. */
  public static final StoredWords<CurtainStep> WORDS =
      StoredWords.of(
          CurtainStep.class,
          step ->
              switch (step) {
                case CLEAN -> "clean";
                case FIRST_TENSION -> "first-tension";
                case SECOND_TENSION -> "second-tension";
                case SLIT -> "slit";
                case AGAIN -> "again";
                case BRAKE -> "brake";
                case CONTACT -> "contact";
                case ESCAPEMENT -> "escapement";
                case NEXT_DAY -> "next-day";
              });
}
