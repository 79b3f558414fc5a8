package org.halflight.signal;

import java.util.Optional;
import org.halflight.stored.StoredWords;

/** An input of the rig; see docs/protocol.md for the pins. */
public enum Channel {
  /** Centre sensor against the low level; stamped by hardware capture, exact to one tick. */
  CENTRE_LOW(0, "low"),
  /** Centre sensor against the high level. */
  CENTRE_HIGH(1, "high"),
  /** Outer sensor A against the middle level. */
  OUTER_A(2, "outerA"),
  /** Outer sensor B against the middle level. */
  OUTER_B(3, "outerB"),
  /** Flash contact; high means closed. */
  CONTACT(4, "contact"),
  /** Click sensor; high means sound. */
  CLICK(5, "click"),
  /** Release; high means pressed. */
  RELEASE(6, "release"),
  /**
   * Contact at the wind knob; high means that the foil touches the wire. Its edges are no part of a
   * firing, but stand beside it: see {@link Firing#knob}.
   */
  KNOB(7, "knob");

  /** As profiles and tables of edges call them. */
  public static final StoredWords<Channel> LABELS = StoredWords.of(Channel.class, Channel::label);

  private final int code;
  private final String label;

  Channel(int code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The number of this channel on the wire. */
  public int code() {
    return code;
  }

  /** A short name, as in files and scenario lines. */
  public String label() {
    return label;
  }

  /** Whether this channel sees light (and not a contact, a sound or a finger). */
  public boolean isLight() {
    return code <= OUTER_B.code;
  }

  /** The channel of a number on the wire, empty where there is none. */
  public static Optional<Channel> ofCode(int code) {
    return code >= 0 && code < values().length ? Optional.of(values()[code]) : Optional.empty();
  }
}
