package org.halflight.firstlight;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/**
 * The steps of first light, in their order. A rig has those for which it has an input; the pages on
 * building it follow the same ones.
 */
public enum FirstStep {
  /** The rig greets. */
  FOUND,
  /** The 5 V of the board, the only reading of a voltmeter. */
  SUPPLY,
  /** The centre sensor sees light and dark, at each of its levels. */
  CENTRE,
  /** Outer sensor A. */
  OUTER_A,
  /** Outer sensor B. */
  OUTER_B,
  /** The flash contact closes and opens. */
  CONTACT,
  /** The click sensor hears a tap. */
  CLICK,
  /** The release is pressed and let go. */
  RELEASE,
  /** The knob contact touches and parts. */
  KNOB,
  /** The reference LED reaches the centre sensor. */
  LED,
  /** The thresholds are where they were set, and follow. */
  THRESHOLDS,
  /** The light is set. */
  LIGHT,
  /** The first firing. */
  FIRING,
  /** The first page. */
  PAGE,
  /** The rig is calibrated. */
  CALIBRATION;

  /** The steps of a rig; an input that it does not have is not asked for. */
  public static List<FirstStep> of(BoardTraits rig) {
    return Arrays.stream(values()).filter(step -> step.isFor(rig)).toList();
  }

  private boolean isFor(BoardTraits rig) {
    return switch (this) {
      case OUTER_A, OUTER_B -> !rig.oneLevel();
      case CONTACT -> rig.flashContact();
      case CLICK -> rig.clicks();
      case KNOB -> rig.knob();
      case LED, CALIBRATION -> rig.referenceLed();
      default -> true;
    };
  }

  /** The input that a step is about; empty where it is about none or more than one. */
  public Optional<Channel> input() {
    return Optional.ofNullable(
        switch (this) {
          case OUTER_A -> Channel.OUTER_A;
          case OUTER_B -> Channel.OUTER_B;
          case CONTACT -> Channel.CONTACT;
          case CLICK -> Channel.CLICK;
          case RELEASE -> Channel.RELEASE;
          case KNOB -> Channel.KNOB;
          default -> null;
        });
  }
}
