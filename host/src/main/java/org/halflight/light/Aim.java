package org.halflight.light;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;

/**
 * How the light is aimed now, and the next thing to move.
 *
 * <p>All light is in counts of the ten-bit converter, {@value #COUNTS_PER_VOLT} to a volt.
 *
 * @param needles of the sensors that were read, the centre first
 * @param move the next thing to do
 * @param lamps what is known of each of the three
 * @param strayShare light with the shutter shut as a share of that with it open; empty where not
 *     both were seen
 * @param lamp what the lamp was found to be; empty where nothing was
 */
public record Aim(
    List<Needle> needles,
    Move move,
    Map<Lamp, State> lamps,
    OptionalDouble strayShare,
    Optional<LampLight> lamp) {
  /** Ten bits over the supply of 5 V. */
  public static final double COUNTS_PER_VOLT = 1024 / 5.0;

  /**
   * The wanted light is about 4 V, the full light that the front end is built for: a half and a
   * whole volt to either side of it. Our own limit.
   */
  public static final double WANTED_FROM_COUNTS = 3 * COUNTS_PER_VOLT;

  /** Where the wanted light ends: lamps warm up, and the scale must not end in it. Our own. */
  public static final double WANTED_TO_COUNTS = 4.5 * COUNTS_PER_VOLT;

  /** The wanted light itself: 4 V. */
  public static final double WANTED_COUNTS = 4 * COUNTS_PER_VOLT;

  /** Above this the sensor or the converter may be at its end, and full light is not known. */
  public static final double SATURATED_COUNTS = 1000;

  /**
   * Full light less dark must be this at least: 200 counts (about 1 V), where two counts of error
   * of the converter are 1 % of full light.
   */
  public static final double LEAST_LIGHT_COUNTS = 200;

  /** More than this share of full light with the shutter closed is stray light or a leak. */
  public static final double GREATEST_DARK_SHARE = 0.1;

  /** The light wanders by more than this share of itself in a second. Our own limit. */
  public static final double UNSTEADY_SHARE = 0.01;

  /** And by more than this, in counts: steps of the converter. Our own limit. */
  public static final double UNSTEADY_COUNTS = 3;

  /**
   * An outer sensor with less than this share of the centre's light is too dark, and one with so
   * much more is too bright: beyond it the level half way between the centre's two is far from half
   * of its own light. Our own limit.
   */
  public static final double OUTER_SHARE = 0.75;

  /** The three lamps beside the meter. */
  public enum Lamp {
    /** Light that comes with the shutter shut. */
    STRAY,
    /** The lamp's light goes up and down with the mains, or faster. */
    FLICKER,
    /** The light stays where it is. */
    STEADY
  }

  /** What is known of one of them. */
  public enum State {
    /** Nothing yet. */
    UNKNOWN,
    /** As it should be. */
    GOOD,
    /** To be mended. */
    BAD
  }

  /** The next thing to do, the most pressing first. */
  public enum Move {
    /** No sensor was read yet. */
    WAIT,
    /** The light is at the end of the scale. */
    FURTHER,
    /** Light comes with the shutter shut. */
    SHADE,
    /** It is dark: the shutter is shut, or the lamp is off. */
    OPEN,
    /** There is too little light to measure by. */
    CLOSER,
    /** There is enough light to measure by, but less than wanted. */
    A_LITTLE_CLOSER,
    /** There is more light than wanted. */
    A_LITTLE_FURTHER,
    /** The lamp flickers. */
    OTHER_LAMP,
    /** The light is not steady. */
    HOLD_STILL,
    /** Nothing is known of stray light yet. */
    SHUT,
    /** An outer sensor gets less light than the centre. */
    LIGHT_OUTER_A,
    /** Likewise. */
    LIGHT_OUTER_B,
    /** All was good so far, and not all was seen yet. */
    LOOK_ON,
    /** Nothing more is to be moved. */
    SET
  }

  public Aim {
    needles = List.copyOf(needles);
    lamps = Map.copyOf(lamps);
  }

  /** What is known of a lamp. */
  public State of(Lamp which) {
    return lamps.getOrDefault(which, State.UNKNOWN);
  }

  /** The needle of the centre sensor; empty before it was read. */
  public Optional<Needle> centre() {
    return needle(Channel.CENTRE_LOW);
  }

  /** The needle of a sensor; empty before it was read. */
  public Optional<Needle> needle(Channel sensor) {
    return needles.stream().filter(its -> its.sensor() == sensor).findFirst();
  }

  /** Nothing was read yet. */
  public static Aim nothing() {
    return new Aim(List.of(), Move.WAIT, Map.of(), OptionalDouble.empty(), Optional.empty());
  }
}
