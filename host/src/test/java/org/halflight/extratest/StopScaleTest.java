package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.halflight.extratest.StopScale.Trouble;
import org.halflight.extratest.StopScale.Verdict;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.StopsAsked;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Light at each stop is 800 counts above the dark of 8, halved once a stop. */
class StopScaleTest {
  private static final double WIDE = 800;

  private final InventedLight bench = new InventedLight();

  private void stop(String number, boolean opening, double stopsBelow) {
    bench.read(What.STOP, number, opening, 8 + WIDE * Math.pow(2, -stopsBelow), 0.3);
  }

  private StopScale scale() {
    return (StopScale) bench.tried().get(0);
  }

  /** APEX (ASA PH2.5-1960, from memory): Av is 0 at f/1 and one more for each full stop. */
  @ParameterizedTest
  @CsvSource({
    "1,0", "1.4,1", "2,2", "2.8,3", "4,4", "5.6,5", "8,6", "11,7", "16,8", "22,9", "32,10", "45,11",
    "64,12"
  })
  void aFullStopIsAWholeApertureValue(String engraved, int av) {
    FNumber number = new FNumber(engraved);

    assertThat(number.apertureValue()).isEqualTo(av);
    assertThat(number.exact() * number.exact()).isCloseTo(Math.pow(2, av), within(1e-9));
    // The marking is its f-number rounded to two digits, or cut to them (5.6 for 5.657).
    assertThat(number.exact())
        .isCloseTo(Double.parseDouble(engraved), within(0.03 * number.exact()));
  }

  @Test
  void otherMarkingsAreTakenAsEngraved() {
    assertThat(new FNumber("3.5").exact()).isEqualTo(3.5);
    assertThat(new FNumber("3.5").apertureValue()).isCloseTo(3.6147, within(1e-4));
    assertThat(FNumber.find("f/5,6")).contains(new FNumber("5.6"));
    assertThat(FNumber.find("8.0")).contains(new FNumber("8"));
    assertThat(FNumber.find("wide")).isEmpty();
    assertThat(FNumber.find("0")).isEmpty();
  }

  @Test
  void eachStopIsHeldAgainstItsMarkingBothWays() {
    stop("2.8", false, 0);
    stop("4", false, 1.1);
    stop("5.6", false, 2.0);
    stop("8", false, 3.45);
    stop("8", true, 3.45);
    stop("5.6", true, 2.2);
    stop("4", true, 1.1);
    stop("2.8", true, 0);

    StopScale scale = scale();

    assertThat(scale.trouble()).isEmpty();
    assertThat(scale.driftStops().getAsDouble()).isCloseTo(0, within(1e-9));
    assertThat(scale.stops().get(1).errorStops().getAsDouble()).isCloseTo(-0.1, within(1e-9));
    assertThat(scale.stops().get(2).errorStops().getAsDouble()).isCloseTo(-0.1, within(1e-9));
    assertThat(scale.stops().get(2).backlashStops().getAsDouble()).isCloseTo(-0.2, within(1e-9));
    assertThat(scale.stops().get(3).errorStops().getAsDouble()).isCloseTo(-0.45, within(1e-9));
    assertThat(scale.stops())
        .extracting(StopScale.AtStop::verdict)
        .containsExactly(Verdict.FIRST, Verdict.WITHIN, Verdict.WITHIN, Verdict.DARK);
    assertThat(scale.clicks().get(2).measuredStops()).isCloseTo(1.35, within(1e-9));
    assertThat(scale.clicks().get(2).markedStops()).isCloseTo(1, within(1e-9));
    assertThat(scale.item()).isEqualTo(CheckItem.STOP_BLADES);
    assertThat(scale.state()).isEqualTo(CheckState.FAULT);
  }

  @Test
  void theToleranceIsTheUsers() {
    stop("2.8", false, 0);
    stop("4", false, 1.45);
    stop("2.8", true, 0);

    assertThat(scale().state()).isEqualTo(CheckState.FAULT);
    assertThat(
            ExtraTests.stops(bench.session.readings(), List.of(), OptionalDouble.of(0.5))
                .get(0)
                .state())
        .isEqualTo(CheckState.OK);
  }

  @Test
  void theToleranceIsThatOfTheRunItWasReadIn() {
    RunSetup found =
        new RunSetup(
            "invented camera",
            Phase.AS_FOUND,
            "leaf",
            List.of(MarkedSpeed.parse("1/60")),
            Reference.EXACT,
            1);
    AcceptanceCriteria usual = AcceptanceCriteria.USUAL;
    AcceptanceCriteria wide =
        usual.with(RunOption.STOPS, List.of("2.8", "4")).with(RunOption.STOP_TOLERANCE, 0.5);
    for (AcceptanceCriteria criteria : List.of(usual, wide)) {
      bench.session.handle(new SessionInput.RunBegins(found.withCriteria(criteria)));
      stop("2.8", false, 0);
      stop("4", false, 1.45);
      stop("2.8", true, 0);
    }

    assertThat(bench.tried().stream().map(ExtraTest::state))
        .containsExactly(CheckState.FAULT, CheckState.OK);
    assertThat(((StopScale) bench.tried().get(1)).toleranceStops()).isEqualTo(0.5);
  }

  @ParameterizedTest
  @CsvSource({"0", "-1", "3", "none", "+0.5-0.3"})
  void whatIsNoToleranceOfAStopIsNotTaken(String text) {
    assertThat(StopsAsked.tolerance(text)).isEmpty();
  }

  @Test
  void aLimitWithinTheUncertaintyIsTooCloseToCall() {
    stop("2.8", false, 0);
    // f/22 is six stops below f/2.8: about 10 counts, 0.42 unsure, 4 % or 0.06 stop.
    stop("22", false, 6.3);
    stop("2.8", true, 0);

    StopScale.AtStop last = scale().stops().get(1);

    assertThat(last.uncertaintyStops()).isBetween(0.04, 0.07);
    assertThat(last.verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
  }

  @Test
  void aMovedLampIsSeenWhenTheFirstStopComesBack() {
    stop("2.8", false, 0);
    stop("4", false, 1);
    stop("2.8", true, 0.2);

    assertThat(scale().trouble()).contains(Trouble.LAMP_MOVED);
    assertThat(scale().driftStops().getAsDouble()).isCloseTo(-0.2, within(1e-9));
    assertThat(scale().state()).isEqualTo(CheckState.NOT_TESTED);
  }

  @Test
  void aShutShutterIsNoStop() {
    bench.read(What.STOP, "2.8", false, 8.4);
    bench.read(What.STOP, "4", false, 8.4);

    assertThat(scale().trouble()).contains(Trouble.SHUTTER_NOT_OPEN);
  }

  @Test
  void tooDarkAndSaturatedStopsAreNamed() {
    stop("2.8", false, 0);
    bench.read(What.STOP, "2", true, 1015);
    bench.read(What.STOP, "45", true, 10);

    assertThat(scale().having(Verdict.SATURATED)).hasSize(1);
    assertThat(scale().having(Verdict.TOO_DARK)).hasSize(1);
  }

  @Test
  void theLastTrialCounts() {
    stop("2.8", false, 0);
    stop("4", false, 1.5);
    stop("2.8", true, 0);
    stop("2.8", false, 0);
    stop("4", false, 1);
    stop("2.8", true, 0);

    assertThat(scale().state()).isEqualTo(CheckState.OK);
  }
}
