package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The keys of conditions on the practice rig. All figures are invented. */
class ConditionKeyTest {
  private static final MarkedSpeed THIRTIETH = MarkedSpeed.parse("1/30");

  private PracticeBench bench;
  private RunActions run;

  @BeforeEach
  void begin(@TempDir Path folder) {
    bench = PracticeBench.unpaced(folder);
    run =
        new RunActions(bench.driver, bench.operator, new BenchLight(bench.driver, bench.operator));
    run.begin(setup(""));
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void aKeyOfTheFiringJustMadeNeedsOne() {
    assertThat(run.condition(ConditionKey.QUICK_TAP))
        .containsExactly(new SessionEvent.NotDone(SessionEvent.NotDone.Why.NO_FIRING_YET));
    assertThat(run.condition(ConditionKey.LAST_TOO)).hasSize(1);
    fire();
    run.condition(ConditionKey.QUICK_TAP);
    run.condition(ConditionKey.DIAL);
    assertThat(last()).isEqualTo("dial-from-other-side quick-tap");
    run.condition(ConditionKey.LONG_PRESS);
    run.condition(ConditionKey.DIAL);
    assertThat(last()).isEqualTo("long-press");
  }

  @Test
  void whatLastsIsOfTheNextFiringAndWithNineOfTheLastOneToo() {
    fire();
    run.condition(ConditionKey.WARMED);
    run.condition(ConditionKey.STOPPED_DOWN);
    run.condition(ConditionKey.WIDE_OPEN);
    run.condition(ConditionKey.QUICK_TAP);
    assertThat(last()).isEqualTo("quick-tap");
    run.condition(ConditionKey.LAST_TOO);
    assertThat(last()).isEqualTo("warmed quick-tap wide-open");
    fire();
    assertThat(last()).isEqualTo("warmed wide-open");
    run.condition(ConditionKey.WARMED);
    run.condition(ConditionKey.LAST_TOO);
    assertThat(last()).isEqualTo("wide-open");
  }

  @Test
  void theAttitudeGoesRoundAndComesBackToThatOfTheRun() {
    assertThat(attitudes(6))
        .containsExactly("lens-up", "lens-down", "on-its-side", "upside-down", "", "lens-up");
    run.begin(setup("on-its-side"));
    assertThat(attitudes(5))
        .containsExactly("lens-level", "lens-up", "lens-down", "upside-down", "");
  }

  @Test
  void theFirstAfterRestIsTurnedBothWays() {
    fire();
    assertThat(lastFiring().afterRest()).isTrue();
    run.condition(ConditionKey.REST);
    assertThat(last()).isEqualTo("not-after-rest");
    assertThat(lastFiring().afterRest()).isFalse();
    run.condition(ConditionKey.REST);
    assertThat(last()).isEmpty();
    fire();
    run.condition(ConditionKey.REST);
    assertThat(last()).isEqualTo("first-after-rest");
    run.condition(ConditionKey.REST);
    assertThat(lastFiring().afterRest()).isFalse();
  }

  @Test
  void whatWasSaidIsUndoneAndDoneAgainAndIsThereAfterAReplay() {
    fire();
    run.condition(ConditionKey.QUICK_TAP);
    run.condition(ConditionKey.WARMED);
    bench.driver.undo();
    bench.driver.undo();
    assertThat(last()).isEmpty();
    assertThat(bench.session().conditions().isEmpty()).isTrue();
    bench.driver.redo();
    bench.driver.redo();
    assertThat(last()).isEqualTo("quick-tap");
    assertThat(bench.session().conditions().words()).isEqualTo("warmed");
  }

  private List<String> attitudes(int presses) {
    return java.util.stream.IntStream.range(0, presses)
        .mapToObj(
            press -> {
              run.condition(ConditionKey.ATTITUDE);
              return bench.session().conditions().words();
            })
        .toList();
  }

  private void fire() {
    int before = bench.session().results().size();
    bench.operator.fire(bench.session().setting());
    bench.until("it is fired", () -> bench.session().results().size() > before);
  }

  private FiringResult lastFiring() {
    return bench.session().lastFiring().orElseThrow();
  }

  private String last() {
    return lastFiring().conditions().words();
  }

  private static RunSetup setup(String attitude) {
    return new RunSetup("", Phase.AS_FOUND, "leaf", List.of(THIRTIETH), Reference.EXACT, 9)
        .withConditions(
            new RunConditions(
                OptionalDouble.empty(),
                attitude.isEmpty() ? Map.of() : Map.of("attitude", attitude)));
  }
}
