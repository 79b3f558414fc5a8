package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.Holds;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.SelfTimer;
import org.halflight.light.PanelTest;
import org.halflight.session.LightReading;
import org.halflight.session.Outcome;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.junit.jupiter.api.Test;

/** What is said of checks beside the speeds: of none, one and many, and of what is missing. */
class CheckWordsTest {
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");

  @Test
  void lightWhileCockingIsToldByItsNumberAndALeakComesFirst() {
    assertThat(BounceWords.lines(bounce(0, 0)))
        .hasSize(1)
        .first()
        .asString()
        .startsWith("No bounce");
    assertThat(BounceWords.lines(bounce(1, 0))).last().isEqualTo("Light came once while cocking.");
    assertThat(BounceWords.lines(bounce(3, 0)))
        .last()
        .isEqualTo("Light came 3 times while cocking.");
    assertThat(BounceWords.lines(bounce(3, 1))).first().asString().startsWith("Light came once");
  }

  private static Bounce bounce(int cockings, int leaks) {
    return new Bounce(
        1,
        Optional.empty(),
        List.of(new Bounce.AtSpeed(S60, Sample.of(0, 0), Sample.of(0, 0), 0)),
        cockings,
        leaks);
  }

  @Test
  void theSelfTimerOfNoneOneAndMany() {
    assertThat(SelfTimerWords.lines(timer(List.of(), 0, 0, 0))).isEmpty();
    assertThat(SelfTimerWords.lines(timer(List.of(9.8), 1, 1, 1)))
        .containsExactly(
            "The self-timer did not fire: pressed once, no light.",
            "The self-timer ran 9.80 s. A single run does not show how evenly it runs.",
            "Once the light came at once: the self-timer was not on.",
            Words.say("selfTimer.noRelease"));
    assertThat(SelfTimerWords.lines(timer(List.of(9.8, 10.0), 2, 2, 0)))
        .containsExactly(
            "The self-timer did not fire: pressed 2 times, no light.",
            "The self-timer ran 9.90 s on average over 2; longest and shortest differ by 200 ms,"
                + " standard deviation 141 ms.",
            "2 times the light came at once: the self-timer was not on.");
  }

  private static SelfTimer timer(List<Double> seconds, int atOnce, int never, int withoutPress) {
    return new SelfTimer(1, Optional.empty(), seconds, atOnce, never, withoutPress);
  }

  @Test
  void bAndTWithEveryFaultAndWithoutARelease() {
    OptionalDouble none = OptionalDouble.empty();
    assertThat(
            HoldWords.lines(
                new Holds(
                    1,
                    Optional.empty(),
                    List.of(
                        new Holds.Shot(UntimedTest.B, Outcome.DID_NOT_HOLD, none, none, none),
                        new Holds.Shot(UntimedTest.T, Outcome.STUCK_OPEN, none, none, none)))))
        .containsExactly(
            Words.say("hold.lost.b"), Words.say("hold.stuck", "T"), Words.say("hold.noRelease"));
    // Where a press brought no light, the release is wired.
    assertThat(
            HoldWords.lines(
                new Holds(
                    1,
                    Optional.empty(),
                    List.of(
                        new Holds.Shot(UntimedTest.T, Outcome.DID_NOT_OPEN, none, none, none)))))
        .containsExactly(Words.say("hold.shut", "T"));
  }

  @Test
  void aLeakComesFirstAndWhatWasNotReadIsSaid() {
    LightLeak.Reading nothing = reading(0, OptionalDouble.of(1000));
    assertThat(
            LeakWords.lines(
                new LightLeak(1, Optional.empty(), Optional.of(nothing), Optional.empty())))
        .satisfiesExactly(
            line -> assertThat(line).contains("not cocked", "nothing found", "stops below"),
            line -> assertThat(line).isEqualTo("Leak test, shut and cocked: not read."));
    assertThat(
            LeakWords.lines(
                new LightLeak(
                    1,
                    Optional.empty(),
                    Optional.of(reading(0, OptionalDouble.empty())),
                    Optional.of(reading(10, OptionalDouble.empty())))))
        .satisfiesExactly(
            line -> assertThat(line).contains("light comes through, 10.00 counts"),
            line -> assertThat(line).contains("floor of 1.96 counts"));
  }

  private static LightLeak.Reading reading(double counts, OptionalDouble span) {
    return new LightLeak.Reading(counts, 1, span, 1000);
  }

  @Test
  void aPanelHoldsOrIsWorse() {
    assertThat(PanelWords.lines(new PanelTest(100, List.of(100.0, 100.0), 100, 0)))
        .first()
        .asString()
        .startsWith("Light falls by 0.0 % at most");
    assertThat(PanelWords.lines(new PanelTest(100, List.of(20.0), 100, 0)))
        .last()
        .asString()
        .startsWith("This is more than");
  }

  @Test
  void everyKindOfReadingHasItsSentence() {
    for (LightReading.What what : LightReading.What.values()) {
      assertThat(ReadingWords.of(LightReading.of(what, "4", false, 20, 0.3, 1000, 1)))
          .startsWith("Read")
          .contains("20.00 \u00b1 0.30 counts");
    }
  }

  @Test
  void speedsAreNamedAloneInPairsAndInRows() {
    List<MarkedSpeed> dial =
        List.of("1", "1/2", "1/4", "1/8").stream().map(MarkedSpeed::parse).toList();
    assertThat(SpeedNames.of(dial.subList(0, 1), dial)).isEqualTo("1 s");
    assertThat(SpeedNames.of(dial.subList(0, 2), dial)).isEqualTo("1 s and 1/2");
    assertThat(SpeedNames.of(dial.subList(0, 3), dial)).isEqualTo("1 s to 1/4");
    assertThat(SpeedNames.of(List.of(dial.get(0), dial.get(1), dial.get(3)), dial))
        .isEqualTo("1 s, 1/2 and 1/8");
    assertThatThrownBy(() -> SpeedNames.of(List.of(), dial))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
