package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import org.halflight.chart.Picture;

/**
 * The rig, what is known of it, and the work on it that goes on.
 *
 * @param doing what goes on
 * @param sentence what there is to know and to do
 * @param progress of what goes on, 0 to 1
 * @param heading which rig it is; empty before it greeted
 * @param standing whether firings count as calibrated, and why not
 * @param clock the clocks of rig and computer while measuring, a sentence a line
 * @param checkDue whether there is a profile that this rig was not checked against yet
 * @param profile what the profile says, a sentence a line; empty where there is none
 * @param check control chart of the last rig check of this session
 * @param fit reference pulses of the calibration of this session
 * @param residuals what the fit leaves of them
 * @param disc slots of the disc that was read in this session
 * @param firstLight first light of this rig
 */
public record RigView(
    Doing doing,
    String sentence,
    double progress,
    String heading,
    String standing,
    List<String> clock,
    boolean checkDue,
    List<String> profile,
    Optional<Picture> check,
    Optional<Picture> fit,
    Optional<Picture> residuals,
    Optional<Picture> disc,
    FirstLightView firstLight) {
  /** What goes on. */
  public enum Doing {
    /** Nothing. */
    NOTHING,
    /** Ten reference pulses. */
    CHECKING,
    /** A calibration. */
    CALIBRATING,
    /** The person does something about a slotted disc. */
    DISC_ASKED,
    /** A slotted disc is read. */
    DISC_READING,
    /** Firmware goes onto the board. */
    UPLOADING,
    /** First light is led. */
    FIRST_LIGHT
  }

  /** Before the first view. */
  public static final RigView NOTHING =
      new RigView(
          Doing.NOTHING,
          "",
          0,
          "",
          "",
          List.of(),
          false,
          List.of(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          FirstLightView.NOTHING);

  public RigView {
    clock = List.copyOf(clock);
    profile = List.copyOf(profile);
  }

  /** Whether the rig works for itself now. */
  public boolean isUnderWay() {
    return doing != Doing.NOTHING;
  }

  /** Whether the person is asked to do something and to say so. */
  public boolean isAsking() {
    return doing == Doing.DISC_ASKED;
  }

  /** Whether there is a profile of this rig. */
  public boolean hasProfile() {
    return !profile.isEmpty();
  }
}
