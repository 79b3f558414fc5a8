package org.halflight.report;

import java.util.Optional;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.words.Words;

/**
 * One item of the lists of what was looked at.
 *
 * @param known which item it is, where this program knows it; empty for one of the person's own
 * @param item such as blades or light seals, as it is read
 * @param intake how it was when the camera came in, empty where the list of intake does not have it
 * @param handBack how it was when it went back, empty where that list does not have it
 * @param remark may be empty
 * @param intakeMeasured whether that of intake was measured, and not only looked at
 * @param handBackMeasured whether that of hand-back was
 */
public record CheckLine(
    Optional<CheckItem> known,
    String item,
    Optional<CheckState> intake,
    Optional<CheckState> handBack,
    String remark,
    boolean intakeMeasured,
    boolean handBackMeasured) {
  /** An item that was looked at only. */
  public CheckLine(
      Optional<CheckItem> known,
      String item,
      Optional<CheckState> intake,
      Optional<CheckState> handBack,
      String remark) {
    this(known, item, intake, handBack, remark, false, false);
  }

  /** The same of a shutter with curtains, which are in the place of blades. */
  CheckLine ofCurtains() {
    return known.equals(Optional.of(CheckItem.BLADES))
        ? new CheckLine(
            known,
            Words.say("desk.item.curtains"),
            intake,
            handBack,
            remark,
            intakeMeasured,
            handBackMeasured)
        : this;
  }

  CheckLine withRemark(String other) {
    return new CheckLine(known, item, intake, handBack, other, intakeMeasured, handBackMeasured);
  }

  /** How it was last known. */
  public CheckState last() {
    return handBack.or(() -> intake).orElse(CheckState.NOT_TESTED);
  }
}
