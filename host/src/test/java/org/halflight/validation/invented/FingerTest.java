package org.halflight.validation.invented;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The invented finger does what arithmetic says of it. */
class FingerTest {
  private static final int PRESSES = 30;

  /** How far beyond the place of the advance people come to stop, in mm on the mean. */
  private static double beyond(Pace pace, Button.Nature nature) {
    double sum = 0;
    for (int i = 0; i < PRESSES; i++) {
      Draws draws = new Draws(i);
      Button camera = Button.drawn(2.5, Button.Kind.PLAIN, nature, draws);
      Press press = new Finger(nature, draws).press(camera, pace, true);
      sum += press.deepestMm() - camera.unlockMm();
    }
    return sum / PRESSES;
  }

  /** The button is about 5 mm deep here: what it goes on is speed times reaction, and a bit. */
  @Test
  void fingersGoOnForTheirReaction() {
    Button.Nature smooth = new Button.Nature(0, 0.2);
    for (double seconds : new double[] {2.5, 5, 10}) {
      assertThat(beyond(Pace.over(seconds).withHandOnWind(), smooth))
          .isCloseTo(0.25 * 5.3 / seconds, within(0.12 * 5.3 / seconds + 0.06));
    }
  }

  @Test
  void aDropOfTheLoadThrowsASoftFingerFurther() {
    Button.Nature steep = new Button.Nature(3, 0.2);
    Pace soft = Pace.over(10).withHandOnWind();
    assertThat(beyond(soft, steep) - beyond(soft.rolledOn(), steep)).isGreaterThan(0.1);
  }

  @Test
  void aSoundlessPawlIsNoticedByWhoTurnsTheWind() {
    int unnoticed = 0;
    int felt = 0;
    for (int i = 0; i < PRESSES; i++) {
      Draws draws = new Draws(i);
      Button camera = Button.drawn(1.2, Button.Kind.SILENT, Button.Nature.USUAL, draws);
      Finger finger = new Finger(Button.Nature.USUAL, draws);
      unnoticed += finger.press(camera, Pace.over(5), true).fired() ? 1 : 0;
      felt += finger.press(camera, Pace.over(5).withHandOnWind(), true).fired() ? 0 : 1;
    }
    assertThat(unnoticed).isGreaterThan(PRESSES / 3);
    assertThat(felt).isGreaterThan(PRESSES * 9 / 10);
  }

  @Test
  void locksThatDropBackLockTheWindAfterAHalfPress() {
    for (int i = 0; i < PRESSES; i++) {
      Draws draws = new Draws(i);
      Button camera = Button.drawn(1.2, Button.Kind.RELOCKS, Button.Nature.USUAL, draws);
      Press press = new Finger(Button.Nature.USUAL, draws).press(camera, Pace.over(5), true);
      assertThat(press.windTurns()).isEqualTo(press.fired());
    }
  }
}
