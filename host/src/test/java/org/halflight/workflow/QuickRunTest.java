package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.DecidedBy;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.HeldLight;
import org.halflight.session.Phase;
import org.halflight.session.QuickRepeat;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.TwoSpeeds;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A quick look on the practice rig, whose light nobody has set. */
class QuickRunTest {
  @TempDir private Path folder;

  private static RunSetup setup(int most) {
    RunForm usual = RunForm.usual("", Phase.AS_FOUND, Dial.find("leaf").orElseThrow());
    return new RunForm(
            usual.shutter(),
            usual.phase(),
            usual.speeds(),
            most,
            usual.restSeconds(),
            List.of(),
            Map.of(RunOption.QUICK, "quick"))
        .read();
  }

  private static List<SessionEvent> fireAll(PracticeBench bench) {
    RunActions run = new RunActions(bench.driver, bench.operator, light(bench));
    List<SessionEvent> news = new ArrayList<>(run.begin(setup(5)));
    int[] seen = {bench.news.size()};
    bench.each(
        () -> {
          List<SessionEvent> fresh = List.copyOf(bench.news.subList(seen[0], bench.news.size()));
          seen[0] = bench.news.size();
          news.addAll(fresh);
          news.addAll(run.advance(fresh));
        });
    bench.until("the run is done", () -> bench.session().isRunDone());
    bench.each(() -> {});
    return news;
  }

  private static BenchLight light(PracticeBench bench) {
    return new BenchLight(bench.driver, bench.operator);
  }

  private static List<String> fired(Session session) {
    return session.results().stream()
        .map(firing -> firing.setting().map(DialSetting::label).orElse("-"))
        .toList();
  }

  @Test
  void fourSpeedsThenBThenTheLargestErrorUntilItIsKnown() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      List<SessionEvent> news = fireAll(bench);
      Session session = bench.session();
      assertThat(fired(session).subList(0, 5))
          .containsExactly("1/2", "1/30", "1/125", "1/500", "B");
      assertThat(session.results().get(0).afterRest()).isTrue();
      assertThat(news)
          .filteredOn(SessionEvent.LightWasHeld.class::isInstance)
          .singleElement()
          .satisfies(
              held ->
                  assertThat(((SessionEvent.LightWasHeld) held).seen())
                      .isInstanceOf(HeldLight.Known.class));
      List<FiringResult> repeats = session.results().subList(5, session.results().size());
      MarkedSpeed largest = repeats.get(0).shown().orElseThrow();
      assertThat(repeats).hasSizeBetween(2, 5);
      assertThat(news)
          .contains(
              new SessionEvent.RepeatAsked(
                  new QuickRepeat(largest, 1, QuickRepeat.Why.LARGEST_ERROR)));
    }
  }

  @Test
  void firingsBeforeBAreRecomputedInTheLightThatItSets() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      fireAll(bench);
      Session session = bench.session();
      assertThat(session.light().orElseThrow().fullCounts()).isGreaterThan(600);
      for (FiringResult early : session.results().subList(0, 4)) {
        assertThat(early.levels()).isPresent();
        assertThat(early.curveExposure()).isPresent();
        assertThat(early.decidedBy()).map(DecidedBy::givesTime).isEqualTo(Optional.of(true));
      }
    }
  }

  @Test
  void replayAndUndoComeToTheSame() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      fireAll(bench);
      List<FiringResult> live = List.copyOf(bench.session().results());
      bench.driver.handle(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/60")));
      bench.driver.undo();
      assertThat(bench.session().results()).isEqualTo(live);
      assertThat(bench.session().isRunDone()).isTrue();
      List<BenchEvent> events = SessionFile.read(bench.driver.workbench().path()).events();
      Session again = SessionReducer.replay(events).session();
      assertThat(again.results()).isEqualTo(live);
      assertThat(again.repeat()).isEmpty();
      assertThat(again.isRunDone()).isTrue();
    }
  }

  @Test
  void runThatWasStoppedGoesOnWithTheSpeedThatIsDue() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      bench.driver.handle(new SessionInput.RunBegins(setup(5)));
      bench.operator.fire(bench.session().setting());
      bench.until("it is fired", () -> bench.session().results().size() == 1);
      bench.driver.handle(new SessionInput.RunBegins(setup(5)));
      assertThat(bench.session().run()).isEqualTo(1);
      assertThat(bench.session().shown()).contains(MarkedSpeed.parse("1/30"));
    }
  }

  @Test
  void bThatIsLetGoTooSoonIsAskedForAgainAndMayBeSkipped() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      bench.driver.handle(new SessionInput.RunBegins(setup(5)));
      bench.operator.willHold(0.1);
      for (int i = 1; i <= 5; i++) {
        int wanted = i;
        bench.operator.fire(bench.session().setting());
        bench.until("it is fired", () -> bench.session().results().size() == wanted);
      }
      assertThat(bench.news).contains(new SessionEvent.LightWasHeld(new HeldLight.TooShort()));
      assertThat(bench.session().untimedTest()).contains(UntimedTest.B);
      assertThat(bench.session().light()).isEmpty();
      bench.driver.handle(new SessionInput.NextChosen());
      assertThat(bench.session().repeat()).isPresent();
      assertThat(bench.session().shown())
          .isEqualTo(bench.session().repeat().map(its -> its.speed()));
    }
  }

  /** The keys N, P and V in the middle of a quick look. */
  @Test
  void keysForOtherSpeedsLeaveNothingOut() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      bench.driver.handle(new SessionInput.RunBegins(setup(5)));
      bench.operator.fire(bench.session().setting());
      bench.until("it is fired", () -> bench.session().results().size() == 1);
      bench.driver.handle(new SessionInput.NextChosen());
      assertThat(bench.session().shown()).contains(MarkedSpeed.parse("1/125"));
      bench.driver.handle(new SessionInput.PreviousChosen());
      assertThat(bench.session().shown()).contains(MarkedSpeed.parse("1/30"));
      TwoSpeeds two = new TwoSpeeds(MarkedSpeed.parse("1"), MarkedSpeed.parse("1/15"));
      assertThat(bench.driver.handle(new SessionInput.TwoChosen(Optional.of(two))))
          .containsExactly(new SessionEvent.NotDone(SessionEvent.NotDone.Why.NOT_ADJUSTING));
      assertThat(bench.session().shown()).contains(MarkedSpeed.parse("1/30"));
      assertThat(fired(bench.session())).containsExactly("1/2");
    }
  }

  @Test
  void firingThatCountsNoMoreIsAskedForAgain() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      bench.driver.handle(new SessionInput.RunBegins(setup(5)));
      bench.operator.fire(bench.session().setting());
      bench.until("it is fired", () -> bench.session().results().size() == 1);
      bench.driver.reject("slipped");
      assertThat(bench.session().shown()).contains(MarkedSpeed.parse("1/2"));
    }
  }
}
