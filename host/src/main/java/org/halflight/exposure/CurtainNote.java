package org.halflight.exposure;

import org.halflight.stored.StoredWords;

/** What to know about the travel of curtains before trusting it. */
public enum CurtainNote {
  /** One outer sensor has seen no light in this run, where the others have. */
  SENSOR_DARK,
  /** Nothing has told the direction of travel yet; A is taken to be at the start. */
  DIRECTION_NOT_KNOWN,
  /** The sensors saw the curtains the other way round than in earlier firings. */
  TRAVEL_REVERSED,
  /** The centre sensor did not see the curtain between the outer ones. */
  SENSORS_CROSSED,
  /** Dark and full light of an outer sensor were not read: it is taken to switch at half light. */
  OUTER_LIGHT_NOT_READ,
  /** An outer sensor switches too far from its half light. */
  OUTER_LEVEL_OFF,
  /**
   * The light takes much longer to change than slit and lamp explain: a lens is on, or the like.
   */
  RAMPS_TOO_LONG,
  /** The slit of the curtains is narrower than the blur: the light never becomes full. */
  BLUR_WIDER_THAN_SLIT,
  /** The distances of curtain and lamp were not said: nothing is corrected by them. */
  DISTANCES_NOT_SAID,
  /** Only one of the curtains was seen to pass. */
  ONE_CURTAIN;

  /** As files store them. */
  public static final StoredWords<CurtainNote> WORDS =
      StoredWords.of(
          CurtainNote.class,
          note ->
              switch (note) {
                case SENSOR_DARK -> "sensor-dark";
                case DIRECTION_NOT_KNOWN -> "direction-not-known";
                case TRAVEL_REVERSED -> "travel-reversed";
                case SENSORS_CROSSED -> "sensors-crossed";
                case OUTER_LIGHT_NOT_READ -> "outer-light-not-read";
                case OUTER_LEVEL_OFF -> "outer-level-off";
                case RAMPS_TOO_LONG -> "ramps-too-long";
                case BLUR_WIDER_THAN_SLIT -> "blur-wider-than-slit";
                case DISTANCES_NOT_SAID -> "distances-not-said";
                case ONE_CURTAIN -> "one-curtain";
              });
}
