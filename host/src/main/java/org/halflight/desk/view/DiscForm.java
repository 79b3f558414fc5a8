package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.bench.DiscRun;
import org.halflight.calibration.PrintedDisc;
import org.halflight.speeds.DecimalComma;
import org.halflight.workflow.DiscSetup;

/**
 * What the person wrote of a slotted disc.
 *
 * @param cut how far an edge may lie beside its place, in mm; blank for the usual
 * @param turnsAMinute its speed; blank where that is not known
 */
public record DiscForm(String cut, String turnsAMinute) {
  private static final double MOST_TURNS_A_MINUTE = 1e5;

  /** The disc; empty where these are no such numbers. */
  public Optional<DiscSetup> read() {
    try {
      double edge = cut.isBlank() ? PrintedDisc.EDGE_MILLIMETRES : number(cut);
      OptionalDouble turns =
          turnsAMinute.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(number(turnsAMinute));
      return turns.orElse(1) < MOST_TURNS_A_MINUTE
          ? Optional.of(
              new DiscSetup(
                  new PrintedDisc(PrintedDisc.SLOT_DEGREES, edge, PrintedDisc.RADIUS_MILLIMETRES),
                  DiscRun.USUAL_SECONDS,
                  turns,
                  DiscSetup.TACHOMETER_PPM))
          : Optional.empty();
    } catch (IllegalArgumentException noNumber) {
      return Optional.empty();
    }
  }

  /** A comma before three digits may mean thousands, and a disc may turn that fast. */
  private static double number(String typed) {
    if (typed.strip().matches("[1-9]\\d{0,2},\\d{3}")) {
      throw new NumberFormatException(typed);
    }
    return Double.parseDouble(DecimalComma.pointed(typed));
  }
}
