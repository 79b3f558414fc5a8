package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.extratest.GapVerdict;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.PressOutcome;
import org.halflight.extratest.SqueezeOrder;
import org.halflight.session.LinkageStep;
import org.halflight.validation.PressedCamera.Led;
import org.halflight.validation.PressedCamera.Sensor;
import org.halflight.validation.invented.Pace;
import org.junit.jupiter.api.Test;

/** The short form of the study of the linkage; simulated, with the seed of Validation. */
class CalledRightTest {
  private static final int CAMERAS = 40;

  private static double right(double gapMm, Led led) {
    return CalledRight.part(CalledRight.cameras(gapMm, led, CAMERAS), CalledRight::isRight);
  }

  @Test
  void linkagesAreCalledRightThatAre() {
    assertThat(right(0, CalledRight.BY_LIGHT)).isGreaterThan(0.9);
    assertThat(right(0.1, CalledRight.BY_LIGHT)).isGreaterThan(0.9);
  }

  @Test
  void linkagesAreCalledWrongThatAre() {
    assertThat(right(0.4, CalledRight.BY_LIGHT)).isLessThan(0.08);
    assertThat(right(0.6, CalledRight.BY_KNOB)).isLessThan(0.08);
    assertThat(right(-0.4, CalledRight.BY_LIGHT)).isLessThan(0.1);
  }

  /** Why the program asks for a slow press, and for a light turn of the wind meanwhile. */
  @Test
  void quickPressesAndSilentPawlsHideAGap() {
    Led quick = new Led(Pace.over(1), Sensor.LIGHT_AND_KEY, 0);
    Led nobodyTurns = new Led(Pace.over(5).rolledOn(), Sensor.LIGHT_AND_KEY, 0);
    assertThat(right(0.4, quick)).isGreaterThan(0.6);
    assertThat(right(0.4, nobodyTurns)).isGreaterThan(0.5);
  }

  /** A press to the end does both, whatever the gap: all that tells is a press that stops. */
  @Test
  void fullPressesDoBoth() {
    for (double gap : new double[] {-0.6, 1.2}) {
      assertThat(CalledRight.cameras(gap, CalledRight.BY_CLICK, 4))
          .flatExtracting(PressedCamera::presses)
          .filteredOn(press -> press.step() != LinkageStep.REST && press.step().isFullPress())
          .extracting(press -> press.outcome())
          .containsOnly(PressOutcome.BOTH);
    }
  }

  @Test
  void aScrewPlungerTellsApartWhatFingersJumpOver() {
    assertThat(CalledRight.plunger(0, GapVerdict.WITHIN)).isGreaterThan(0.9);
    assertThat(CalledRight.plunger(0.1, GapVerdict.WITHIN)).isGreaterThan(0.9);
    assertThat(CalledRight.plunger(0.4, GapVerdict.TOO_FAR_AHEAD)).isGreaterThan(0.9);
    assertThat(CalledRight.plunger(-0.3, GapVerdict.TOO_LATE)).isGreaterThan(0.9);
  }

  /**
   * The order in a squeeze: the foil tells it; lifted pawls are silent, so that a click may not.
   */
  @Test
  void knobContactTellsTheOrderOfASqueeze() {
    assertThat(order(0.4, CalledRight.BY_KNOB, SqueezeOrder.ADVANCE_FIRST)).isGreaterThan(0.9);
    assertThat(order(0, CalledRight.BY_KNOB, SqueezeOrder.ONE_CLICK)).isGreaterThan(0.8);
    assertThat(order(-0.4, CalledRight.BY_KNOB, SqueezeOrder.SHUTTER_FIRST)).isGreaterThan(0.7);
  }

  private static double order(double gapMm, Led led, SqueezeOrder order) {
    List<JudgedPress> squeezes =
        CalledRight.cameras(gapMm, led, 16).stream()
            .flatMap(camera -> camera.presses().stream())
            .filter(press -> press.step() == LinkageStep.SQUEEZE)
            .toList();
    return squeezes.stream().filter(press -> press.order() == order).count()
        / (double) squeezes.size();
  }
}
