package org.halflight.uncertainty;

import java.util.ArrayList;
import java.util.List;
import org.halflight.calibration.DiscReading;

/**
 * What a slotted disc says of a rig, against what the rig states of itself. The clock is left out:
 * a slot is a part of a turn that the same clock measured. So is the error of the two-level rule:
 * the edge that frees the light covers it again the same way, and the mean of the widths at two
 * levels that add up to one is then exact for light of any shape. Nor is there a pupil to fill.
 *
 * @param reading of the disc
 * @param calibrated whether what the rig states rests on a profile
 * @param rows one for each slot that could be used
 * @param verdict on all of them
 */
public record DiscComparison(
    DiscReading reading, boolean calibrated, List<Row> rows, Verdict verdict) {
  /**
   * One slot.
   *
   * @param slot of the disc
   * @param discSeconds by what the disc is uncertain, 95 %
   * @param rigSeconds by what the rig says that its time may be off, 95 %
   */
  public record Row(DiscReading.Slot slot, double discSeconds, double rigSeconds) {
    /** By what the slot came out too long. */
    public double errorSeconds() {
      return slot.effectiveSeconds() - slot.expectedSeconds();
    }

    /** Whether that is within what both are uncertain by. */
    boolean isWithinBoth() {
      return Math.abs(errorSeconds()) <= Math.hypot(discSeconds, rigSeconds);
    }
  }

  /** What the disc says. */
  public enum Verdict {
    /** Slots come out as long as they are, as far as the disc can tell. */
    AGREES,
    /** They do not, but by no more than the rig states. */
    WITHIN_STATED,
    /** The rig is off by more than it states. */
    DISAGREES
  }

  public DiscComparison {
    rows = List.copyOf(rows);
  }

  /**
   * Holds a reading against a rig.
   *
   * @param rig what is known of it, its clock too
   */
  public static DiscComparison of(DiscReading reading, RigKnowledge rig) {
    RigKnowledge known =
        new RigKnowledge(
            rig.levels(),
            rig.lamp(),
            rig.delaySeconds(),
            rig.hysteresis(),
            rig.quantisationSeconds(),
            InputUncertainty.NONE);
    List<Row> rows = new ArrayList<>();
    for (DiscReading.Slot slot : reading.slots()) {
      UncertaintyBudget budget =
          UncertaintyBudget.of(
              slot.effectiveSeconds(),
              RampTravel.of(slot.timed()).orElseThrow().withoutRule(),
              known,
              0,
              slot.timed().size());
      rows.add(
          new Row(
              slot,
              reading.coverageFactor() * slot.errorSd() * slot.expectedSeconds(),
              budget.expandedSeconds(DiscReading.LEVEL)));
    }
    Verdict verdict =
        reading.agrees()
            ? Verdict.AGREES
            : rows.stream().allMatch(Row::isWithinBoth) ? Verdict.WITHIN_STATED : Verdict.DISAGREES;
    return new DiscComparison(reading, rig.isCalibrated(), rows, verdict);
  }
}
