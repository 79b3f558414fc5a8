package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringKey;
import org.halflight.session.Outcome;
import org.halflight.session.Question;
import org.halflight.session.SessionEvent;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EventSentencesTest {
  private static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");
  private static final FiringKey KEY = new FiringKey("R-0001", 7, 16_000);

  @Test
  void newsAreWholeSentencesWithTheirFiguresFilledIn() {
    assertSays(shown(S250, 5), "1/250: cock and fire (2 of 5).");
    assertSays(new SessionEvent.StillOpen(4.23), "OPEN 4.2 s");
    assertSays(
        asked(Question.Kind.NEIGHBOUR, KEY, KEY, KEY),
        "3 firings in a row fit 1/250 better than 1/500. Is the dial set to 1/250? Move them"
            + " there, or accept them as 1/500.");
    assertSays(
        asked(Question.Kind.DIAL_NOT_TURNED, KEY),
        "This firing fits 1/250, the speed before. Dial not turned? Move it to 1/250, or accept it"
            + " as 1/500.");
    assertSays(
        new SessionEvent.PlateauOff(0.48, List.of(KEY, KEY)),
        "Full light is 48 % of what was set. Has the aperture, lamp or sensor moved? Firings since the last"
            + " good light: 2, marked. Set the light again (F3).");
    assertSays(
        new SessionEvent.EnoughToKnow(S500, 10, 2),
        "1/500: 2 usable of 10 tries. That is enough: it is erratic. On to the next.");
    assertSays(
        new SessionEvent.LinkGap(OptionalDouble.of(42)),
        "The rig was silent for 42.0 s. Firings in that time are not in the record.");
  }

  @Test
  void noPlaceIsLeftOpen() {
    List<SessionEvent> all =
        List.of(
            shown(S250, 0),
            new SessionEvent.SettingShown(new DialSetting.Untimed(UntimedTest.B), 0, 0, false),
            new SessionEvent.SettingShown(new DialSetting.Untimed(UntimedTest.T), 0, 0, false),
            new SessionEvent.SetBeforeCocking(S500),
            new SessionEvent.EnoughOfUntimedTest(UntimedTest.T, 10),
            new SessionEvent.RunDone(),
            new SessionEvent.IsTheSelfTimerOn(KEY, 9.8),
            new SessionEvent.CockingStroke(1, 3),
            new SessionEvent.CockingNotKnown(0),
            new SessionEvent.CockingNotKnown(2),
            new SessionEvent.LeakWhileCocking(KEY),
            new SessionEvent.LinkGap(OptionalDouble.empty()));
    for (SessionEvent news : all) {
      assertThat(EventSentences.of(news).orElseThrow()).endsWith(".").doesNotContain("{");
    }
  }

  @ParameterizedTest
  @EnumSource(Outcome.class)
  void everyOutcomeHasItsWord(Outcome outcome) {
    assertThat(Sentences.outcome(outcome)).isNotBlank();
  }

  private static SessionEvent shown(MarkedSpeed speed, int wanted) {
    return new SessionEvent.SettingShown(new DialSetting.Speed(speed), 1, wanted, false);
  }

  private static SessionEvent asked(Question.Kind kind, FiringKey... firings) {
    return new SessionEvent.QuestionAsked(new Question(kind, S500, S250, List.of(firings)));
  }

  private static void assertSays(SessionEvent news, String sentence) {
    assertThat(EventSentences.of(news)).contains(sentence);
  }
}
