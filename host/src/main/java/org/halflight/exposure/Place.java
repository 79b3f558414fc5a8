package org.halflight.exposure;

import org.halflight.stored.StoredWords;

/** The three places of the frame that have a sensor, in the order of travel. */
public enum Place {
  /** The outer sensor that the curtains pass first. */
  START,
  CENTRE,
  /** The outer sensor that they pass last. */
  END;

  /** 0 for the start, 1 for the centre, 2 for the end. */
  public int index() {
    return switch (this) {
      case START -> 0;
      case CENTRE -> 1;
      case END -> 2;
    };
  }

  /** As files store them. */
  public static final StoredWords<Place> WORDS =
      StoredWords.of(
          Place.class,
          place ->
              switch (place) {
                case START -> "start";
                case CENTRE -> "centre";
                case END -> "end";
              });
}
