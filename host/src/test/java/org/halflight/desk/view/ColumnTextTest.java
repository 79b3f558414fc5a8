package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.link.LinkState;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is in the column of the bench, state by state. Figures are those of invented shutters. */
class ColumnTextTest {
  private static final Optional<MarkedSpeed> SIXTIETH = Optional.of(MarkedSpeed.parse("1/60"));
  private static final long SECOND = CountedFirings.NANOS;

  private static Map<String, BenchView> views = Map.of();

  @BeforeAll
  static void work(@TempDir Path folder) {
    views = FitViews.of(folder);
  }

  /** SET; the figure, its word, time and mean; LOOK AT; NEXT. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "start | SET, any speed | no firing yet | | Set the light: F3",
        "light set | SET, any speed | no firing yet | | 'Fire, or begin a run: F5'",
        "begun | SET, 1, 0 of 3 | no firing yet | | 'Set the light (F3), or fire'",
        "opened twice | SET, 1, 0 of 3 | at 1 s, limit 1/3 stop; double; main opening 1.83 s | "
            + "| Press F: cock and fire",
        "question | SET, 1/60, 1 of 3 | at 1/60, limit 1/3 stop; +1.04; stop slow; 32.1 ms, "
            + "wanted 15.6 ms; one firing: no verdict yet | | M: it was at 1/30. Space: at 1/60",
        "half way | SET, 1/60, 1 of 3 | at 1/60, limit 1/3 stop; +0.04; on time; 16.1 ms, "
            + "wanted 15.6 ms; one firing: no verdict yet | | Press F: cock and fire",
        "hang | SET, 1/60, 1 of 3 | at 1/60; 2.7 s; OPEN | | Close it by hand, press C",
        "hung | SET, 1/60, 1 of 3 | at 1/60, limit 1/3 stop; stuck open; at least 2.90 s; one "
            + "firing: no verdict yet | | Press F: cock and fire",
        "as found done | RUN, done | at 1/500, limit 0.5 stop; +0.17; stop slow; 2.20 ms, wanted "
            + "1.95 ms; mean of 3: +0.16, within, rebound not checked | 1/60: stuck open "
            + "| 'Repair, then F5'",
        "lost | RUN, done | at 1/500, limit 0.5 stop, before the link was lost; +0.17; stop slow; "
            + "2.20 ms, wanted 1.95 ms; mean of 3: +0.16, within, rebound not checked "
            + "| 1/60: stuck open | Check the cable",
        "adjusting | SET, 1/15, Good firings: 0 | at 1/2, limit 1/3 stop; +0.06; stop slow; 0.521 "
            + "s, wanted 0.500 s; mean of 2: +0.09, within | | Fire, adjust, press A",
        "linkage | PRESS, slow squeeze, 1 of 5 | Press 7, slow squeeze; BOTH | "
            + "| Try the wind: W turns, O locked",
        "linkage done | TEST, linkage | Linkage, 14 presses; ADVANCE FIRST "
            + "| Make the shutter trip earlier in the stroke. | Adjust it, then press A",
        "as left done | RUN, done | at 1/500, limit 0.5 stop; +0.15; stop slow; 2.17 ms, wanted "
            + "1.95 ms; mean of 2: +0.16, within, rebound not checked | | Repeat it after drying",
        "stages | STAGE, done | at 1/500, limit 0.5 stop; +0.42; stop slow; 2.61 ms, wanted 1.95 "
            + "ms; one firing: no verdict yet | | Change one part, press its key",
        "checks asking | TEST, leak test, Reading 2 of 3 | lamp on, not cocked | "
            + "| Do it, then press Space"
      })
  void inEachState(String state, String set, String figure, String lookAt, String next) {
    BenchView view = views.get(state);
    AdviceText advice = AdviceText.of(view, RunWords.of(view));
    assertThat(set(NextText.of(view))).isEqualTo(set);
    assertThat(figure(view)).isEqualTo(figure);
    assertThat(advice.lookAt()).isEqualTo(lookAt == null ? "" : lookAt);
    assertThat(advice.next()).isEqualTo(next);
  }

  @Test
  void twoAtOnceHaveAMeanEachAndNoThirdOne() {
    BenchView view = views.get("two");
    assertThat(set(NextText.of(view))).startsWith("SET, 1/15");
    assertThat(TwoText.of(view).orElseThrow().spoken())
        .isEqualTo(
            "1/2, +0.09, enough, mean of 2, \u00b10.37 stop, before +0.95; 1/15, +0.07, enough, "
                + "mean of 4, \u00b10.05 stop; Enough: both are within tolerance.");
    assertThat(RunWords.of(view).mean(view)).isEmpty();
    assertThat(AdviceText.of(view, RunWords.NOTHING).next()).isEqualTo("Enough. As\u00a0left: F5");
  }

  @Test
  void theSentenceLineSaysNothingThatTheColumnSays() {
    for (String state :
        List.of("start", "light set", "fired without a run", "hang", "hung", "linkage")) {
      assertThat(MessageText.of(views.get(state)).text()).as(state).isEmpty();
    }
    MessageText done = MessageText.of(views.get("as found done"));
    assertThat(done.text()).as("not the firing again").isEqualTo("3 firings are enough to decide.");
    assertThat(done.with("1 s runs slow.").text())
        .isEqualTo("3 firings are enough to decide. 1 s runs slow.");
    assertThat(
            MessageText.of(views.get("stages"))
                .with(RunWords.of(views.get("stages")).hints())
                .text())
        .as("once")
        .containsOnlyOnce("1 s cannot be compared");
    MessageText lost = MessageText.of(views.get("lost"));
    assertThat(lost.with("1 s runs slow.")).as("trouble first").isEqualTo(lost);
  }

  /** The dial stands at the top speed when a run is done; the slow ones are what is adjusted. */
  @Test
  void theWorstSpeedIsAdjustedFirstUntilItIsWithin(@TempDir Path folder) {
    assertThat(RunWords.of(views.get("as found done")).worst()).contains(MarkedSpeed.parse("1"));
    assertThat(RunWords.of(views.get("as left done")).worst()).isEmpty();
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.ADJUSTING, 3, "1/60");
      work.fire();
      assertThat(next(work.view())).isEqualTo("Fire, adjust, press A");
      work.fire();
      work.fire();
      assertThat(next(work.view())).isEqualTo("Within. As\u00a0left: F5");
    }
  }

  @Test
  void theKeyOfTheNextRunWaitsForTheCable() {
    assertThat(answers(views.get("as found done"))).contains(UserAction.TO_RUN);
    assertThat(answers(views.get("lost"))).doesNotContain(UserAction.TO_RUN);
  }

  /** 1/252 is no slow firing beside a dial that says 1/250: neither word nor fraction says so. */
  @Test
  void whatCannotBeToldApartIsOnTime() {
    BenchView view = views.get("half way");
    NumeralsText text = NumeralsText.of(view);
    assertThat(text.large()).isEqualTo("+0.04");
    assertThat(text.word()).isEqualTo("on time");
    assertThat(text.spoken()).doesNotContain("slow").doesNotContain("1/62");
  }

  @Test
  void aFiringThatSettlesHasItsFigureAndTheMeanOfThoseBefore(@TempDir Path folder) {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.AS_LEFT, 3, "1/60");
      work.fire();
      work.fire();
      String before = RunWords.of(work.view()).mean(work.view());
      assertThat(before).matches("mean of 2: [+\u2212]?0\\.\\d\\d, within so far");
      work.fireOnly(SIXTIETH, PracticeMishap.NONE);
      work.until(() -> work.view().last().orElseThrow() instanceof LastFiring.Provisional);
      BenchView view = work.view();
      assertThat(NumeralsText.of(view).note()).isEqualTo("at 1/60, limit 1/3 stop, settling");
      assertThat(NumeralsText.of(view).time()).endsWith("wanted 15.6 ms");
      assertThat(RunWords.of(view).mean(view)).isEqualTo(before);

      work.until(() -> work.view().results().size() == 3);
      work.handle(new SessionInput.LastRejected("slipped"));
      NumeralsText rejected = NumeralsText.of(work.view());
      assertThat(rejected.note()).isEqualTo("at 1/60, limit 1/3 stop, not counted");
      assertThat(RunWords.of(work.view()).mean(work.view())).isEqualTo(before);
      RunWords words = RunWords.of(work.view());
      work.handle(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/60")));
      work.link(LinkState.LOST);
      assertThat(words.mean(work.view())).as("of the same speed still").isEqualTo(before);
    }
  }

  @Test
  void forASecondAfterAFiringItSaysWhatIsCounted(@TempDir Path folder) {
    try (PracticeWork work = new PracticeWork(folder)) {
      CountedFirings counted = new CountedFirings();
      work.begin(Phase.AS_LEFT, 2, "1/60", "1/125");
      assertThat(set(counted.of(work.view(), 0))).isEqualTo("SET, 1/60, 0 of 2");
      assertThat(set(counted.of(work.fire(), 7))).isEqualTo("COUNTED, 1/2");
      assertThat(set(counted.of(work.view(), SECOND + 6))).isEqualTo("COUNTED, 1/2");
      assertThat(set(counted.of(work.view(), SECOND + 7))).isEqualTo("SET, 1/60, 1 of 2");

      counted.of(work.fire(SIXTIETH, PracticeMishap.DOUBLE), 2 * SECOND);
      assertThat(set(counted.of(work.view(), 2 * SECOND)))
          .as("what is not counted")
          .isEqualTo("SET, 1/60, 1 of 2");
      assertThat(set(counted.of(work.fire(), 3 * SECOND)))
          .as("though the next speed is shown already")
          .isEqualTo("COUNTED, 2/2");
      assertThat(counted.isShown(4 * SECOND)).isFalse();
      assertThat(set(counted.of(work.view(), 4 * SECOND))).isEqualTo("SET, 1/125, 0 of 2");
    }
  }

  private static String next(BenchView view) {
    return AdviceText.of(view, RunWords.of(view)).next();
  }

  private static List<UserAction> answers(BenchView view) {
    return KeyHints.of(view).stream()
        .filter(KeyHints.Hint::answers)
        .map(KeyHints.Hint::act)
        .toList();
  }

  private static String set(NextText text) {
    return joined(", ", text.label(), text.large(), text.count());
  }

  private static String figure(BenchView view) {
    NumeralsText text = NumeralsText.of(view);
    return joined(
        "; ",
        text.note(),
        (text.large() + " " + text.unit()).strip(),
        text.word(),
        text.time(),
        text.detail(),
        RunWords.of(view).mean(view));
  }

  private static String joined(String by, String... parts) {
    return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(by));
  }
}
