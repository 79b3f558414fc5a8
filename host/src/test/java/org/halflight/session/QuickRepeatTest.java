package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.QuickRepeat.SoFar;
import org.halflight.session.QuickRepeat.Why;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

class QuickRepeatTest {
  private static final MarkedSpeed SLOW = MarkedSpeed.parse("1/2");
  private static final MarkedSpeed MIDDLE = MarkedSpeed.parse("1/30");
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");

  private static SoFar open(MarkedSpeed speed, int tries, double errorStops) {
    return new SoFar(speed, tries, false, OptionalDouble.of(errorStops), false);
  }

  private static SoFar known(MarkedSpeed speed, int tries, double errorStops) {
    return new SoFar(speed, tries, false, OptionalDouble.of(errorStops), true);
  }

  @Test
  void largestErrorOfEitherSignIsFiredAgain() {
    assertThat(QuickRepeat.next(List.of(open(SLOW, 1, 0.3), open(TOP, 1, -0.4))))
        .contains(new QuickRepeat(TOP, 1, Why.LARGEST_ERROR));
  }

  @Test
  void repeatOnceBegunHasItsSecondThoughAnotherErrorIsLargerNow() {
    assertThat(QuickRepeat.next(List.of(open(SLOW, 2, 0.2), open(TOP, 1, -0.3))))
        .contains(new QuickRepeat(SLOW, 2, Why.LARGEST_ERROR));
  }

  @Test
  void largestErrorThatIsKnownEndsIt() {
    assertThat(QuickRepeat.next(List.of(known(SLOW, 3, 0.8), open(MIDDLE, 1, 0.1)))).isEmpty();
  }

  @Test
  void errorThatTurnedOutSmallerLeavesItsPlaceToTheNext() {
    assertThat(QuickRepeat.next(List.of(known(SLOW, 3, 0.1), open(MIDDLE, 1, 0.3))))
        .contains(new QuickRepeat(MIDDLE, 1, Why.LARGEST_ERROR));
  }

  @Test
  void failureWeighsMoreThanAnyError() {
    SoFar hung = new SoFar(MIDDLE, 1, true, OptionalDouble.empty(), false);
    assertThat(QuickRepeat.next(List.of(open(SLOW, 1, 2), hung)))
        .contains(new QuickRepeat(MIDDLE, 1, Why.FAILED));
  }

  @Test
  void speedsThatNobodyCouldTimeAreNotFiredAgain() {
    SoFar untimed = new SoFar(SLOW, 1, false, OptionalDouble.empty(), false);
    assertThat(QuickRepeat.next(List.of(untimed))).isEmpty();
    assertThat(QuickRepeat.next(List.of(untimed, open(TOP, 1, 0))))
        .map(QuickRepeat::speed)
        .isEqualTo(Optional.of(TOP));
    assertThat(QuickRepeat.next(List.of())).isEmpty();
  }

  @Test
  void slowerOfTwoAsLarge() {
    assertThat(QuickRepeat.next(List.of(open(SLOW, 1, 0.3), open(TOP, 1, -0.3))))
        .map(QuickRepeat::speed)
        .isEqualTo(Optional.of(SLOW));
  }

  @Test
  void asOftenAsInAUsualRunIsEnough() {
    assertThat(QuickRepeat.isEnough(5, 5, false)).isTrue();
    assertThat(QuickRepeat.isEnough(5, 5, true)).as("the first after rest comes on top").isFalse();
    assertThat(QuickRepeat.isEnough(2, 1, false)).as("two repeats at the least").isFalse();
  }
}
