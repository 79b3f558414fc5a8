package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.halflight.session.Check;
import org.halflight.session.FiringKey;
import org.halflight.session.Outcome;
import org.halflight.session.SessionNews;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class NewsSentencesTest {
  private static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");
  private static final FiringKey KEY = new FiringKey("R-0001", 7, 16_000);

  @Test
  void newsAreWholeSentencesWithTheirFiguresFilledIn() {
    assertSays(new SessionNews.SpeedShown(S250, 1, 5), "1/250: cock and fire (2 of 5).");
    assertSays(new SessionNews.StillOpen(4.23), "OPEN 4.2 s");
    assertSays(
        new SessionNews.IsItTheNeighbour(S500, S250, List.of(KEY, KEY, KEY)),
        "3 firings in a row fit 1/250 better than 1/500. Does the dial stand at 1/250? Move them"
            + " there, or accept them as 1/500.");
    assertSays(
        new SessionNews.IsTheDialTurned(S500, S250, KEY),
        "This firing fits 1/250, the speed before. Dial not turned? Move it to 1/250, or accept it"
            + " as 1/500.");
    assertSays(
        new SessionNews.PlateauOff(0.48, List.of(KEY, KEY)),
        "Full light is 48 % of what was set: stop, lamp or sensor moved? Firings since the last"
            + " good light: 2, marked. Set the light again (F3 in the window).");
    assertSays(
        new SessionNews.EnoughToKnow(S500, 10, 2),
        "1/500: 2 usable of 10 tries. That is enough to know: it is erratic. On to the next.");
    assertSays(
        new SessionNews.LinkGap(OptionalDouble.of(42)),
        "Nothing was heard of the rig for 42.0 s. What was fired meanwhile is not in the record.");
  }

  @Test
  void noPlaceIsLeftOpen() {
    List<SessionNews> all =
        List.of(
            new SessionNews.SpeedShown(S250, 1, 0),
            new SessionNews.CheckShown(Check.B),
            new SessionNews.CheckShown(Check.T),
            new SessionNews.SetBeforeCocking(S500),
            new SessionNews.EnoughOfCheck(Check.T, 10),
            new SessionNews.RunDone(),
            new SessionNews.IsTheSelfTimerOn(KEY, 9.8),
            new SessionNews.CockingStroke(1, 3),
            new SessionNews.CockingNotKnown(0),
            new SessionNews.CockingNotKnown(2),
            new SessionNews.LeakWhileCocking(KEY),
            new SessionNews.LinkGap(OptionalDouble.empty()));
    for (SessionNews news : all) {
      assertThat(NewsSentences.of(news).orElseThrow()).endsWith(".").doesNotContain("{");
    }
  }

  @ParameterizedTest
  @EnumSource(Outcome.class)
  void everyOutcomeHasItsWord(Outcome outcome) {
    assertThat(Sentences.outcome(outcome)).isNotBlank();
  }

  private static void assertSays(SessionNews news, String sentence) {
    assertThat(NewsSentences.of(news)).contains(sentence);
  }
}
