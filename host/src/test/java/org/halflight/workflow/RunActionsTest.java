package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.halflight.bench.LightPlan;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run that needs nobody, and what a person does in one. All figures are invented. */
class RunActionsTest {
  private static final MarkedSpeed THIRTIETH = MarkedSpeed.parse("1/30");

  private PracticeBench bench;
  private BenchLight light;
  private RunActions run;
  private int seen;

  @BeforeEach
  void begin(@TempDir Path folder) {
    bench = PracticeBench.unpaced(folder);
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void theOperatorFiresAndTestsAllThatTheRunAsksFor() {
    works(bench.operator);
    light.set();
    bench.until("the light is set", () -> light.underWay().isEmpty());
    run.begin(setup(2, List.of(UntimedTest.LEAK, UntimedTest.B), "1/30", "1/60"));
    bench.until("the run is done", () -> session().isRunDone());

    assertThat(session().results())
        .filteredOn(firing -> firing.run() == 1)
        .filteredOn(firing -> firing.outcome().isOfTheShutter())
        .extracting(FiringResult::outcome)
        .hasSize(5)
        .endsWith(Outcome.OPENS_HOLDS_CLOSES)
        .contains(Outcome.TIMED);
    assertThat(session().readings()).hasSize(3);
  }

  @Test
  void theOperatorClosesAShutterThatHangsAndGoesOn() {
    works(bench.operator);
    bench.operator.nextMishap(PracticeMishap.HANG);
    run.begin(setup(1, List.of(), "1/60"));
    bench.until("the run is done", () -> session().isRunDone());
    assertThat(session().results())
        .extracting(FiringResult::outcome)
        .contains(Outcome.STUCK_OPEN, Outcome.TIMED);
  }

  @Test
  void fullLightInTheMiddleIsNoFiringOfTheRun() {
    works(bench.operator);
    light.set();
    bench.until("the light is set", () -> light.underWay().isEmpty());
    run.begin(setup(2, List.of(), "1/60"));
    bench.until("one has settled", () -> shutterFirings() == 1);
    bench.until("it may begin", bench.driver::isFree);
    light.test(LightPlan.full());
    assertThat(light.isTesting()).isTrue();
    bench.until("the run is done", () -> session().isRunDone());
    assertThat(light.isTesting()).isFalse();
  }

  @Test
  void aPersonAnswersTheQuestionAndTheFiringsMove() {
    works(CameraOperator.PERSON);
    run.begin(setup(3, List.of(), "1/30", "1/60"));
    assertThat(run.move()).as("nothing is asked").isEmpty();
    for (int i = 1; i <= 3; i++) {
      fire(THIRTIETH);
    }
    fire(THIRTIETH);
    assertThat(session().question()).isPresent();
    assertThat(run.move()).isNotEmpty();
    assertThat(session().question()).isEmpty();
    assertThat(session().results().get(3).shown()).contains(THIRTIETH);

    fire(THIRTIETH);
    assertThat(session().question()).isPresent();
    assertThat(run.accept()).isNotEmpty();
    assertThat(session().question()).isEmpty();
  }

  private void works(CameraOperator operator) {
    light = new BenchLight(bench.driver, operator);
    run = new RunActions(bench.driver, operator, light);
    bench.each(
        () -> {
          light.advance();
          List<SessionEvent> latest = List.copyOf(bench.news.subList(seen, bench.news.size()));
          seen = bench.news.size();
          run.advance(latest);
        });
  }

  private void fire(MarkedSpeed dial) {
    int before = session().results().size();
    bench.rig.chooseSpeed(dial);
    assertThat(bench.rig.fire()).isPresent();
    bench.until("it settles", () -> session().results().size() > before);
  }

  private long shutterFirings() {
    return session().results().stream()
        .filter(firing -> firing.run() == 1 && firing.outcome().isOfTheShutter())
        .count();
  }

  private static RunSetup setup(int firings, List<UntimedTest> tests, String... speeds) {
    return new RunSetup(
        "invented camera",
        Phase.AS_LEFT,
        "leaf",
        Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
        Reference.EXACT,
        firings,
        tests.toArray(UntimedTest[]::new));
  }

  private Session session() {
    return bench.session();
  }
}
