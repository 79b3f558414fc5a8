package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.junit.jupiter.api.Test;

class RunsBehindTest {
  private static List<FiringResult> firings(String session, Phase phase) {
    Path file = Path.of("fixtures/old/sessions", session + ".session");
    return SessionReducer.replay(SessionFile.read(file).events()).session().results().stream()
        .filter(f -> f.shown().isPresent() && f.phase().equals(Optional.of(phase)))
        .toList();
  }

  private static RunSummary summary(List<FiringResult> firings) {
    return RunSummary.of(firings, speed -> Tolerance.THIRD).get(0);
  }

  @Test
  void oneRunRepeatsNothingAndNamesItsRig() {
    List<FiringResult> found = firings("practice-checks", Phase.AS_FOUND);
    RunsBehind behind = summary(found).behind();
    assertThat(behind.rigs()).containsExactly(found.get(0).key().rigSerial());
    assertThat(behind.repeats()).isEmpty();
    assertThat(behind.allowance()).isEmpty();
  }

  @Test
  void theFiringsOfAnotherSessionAreAnotherRun() {
    List<FiringResult> found = firings("practice-checks", Phase.AS_FOUND);
    List<FiringResult> thrice = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      thrice.addAll(found);
    }
    RunSummary once = summary(found);
    RunsBehind behind = summary(thrice).behind();
    assertThat(behind.repeats()).hasSize(3);
    for (SpeedSummary speed : once.speeds()) {
      if (speed.errors().n() >= RunsBehind.LEAST_FIRINGS) {
        assertThat(behind.at(speed))
            .hasSize(3)
            .allSatisfy(run -> assertThat(run.values()).isEqualTo(speed.errors().values()));
      }
    }
  }

  @Test
  void aFewFiringsMoreAreNoRunOfTheirOwn() {
    SpeedSummary speed = Fired.asFound().at("1/60", 1, 2, 3, 4, 5, 6).run().speeds().get(0);
    RunsBehind behind =
        new RunsBehind(
            Set.of(),
            List.of(
                Map.of(speed.speed(), Sample.of(1, 2)),
                Map.of(speed.speed(), Sample.of(3)),
                Map.of(),
                Map.of(speed.speed(), Sample.of(4, 5, 6))));
    assertThat(behind.at(speed)).extracting(run -> run.values().length).containsExactly(3, 3);
    RunsBehind once =
        new RunsBehind(
            Set.of(),
            List.of(
                Map.of(speed.speed(), Sample.of(1, 2, 3, 4, 5)),
                Map.of(speed.speed(), Sample.of(6))));
    assertThat(once.at(speed)).containsExactly(speed.errors());
  }

  @Test
  void ofRepeatedRunsTheFirstBeforeAndTheLastAfterAreCompared() {
    RunSummary found = Fired.asFound().at("1/60", 1, 2, 3).run();
    RunSummary left = Fired.asLeft().at("1/60", 1, 2, 3, 4, 5, 6).run();
    RunsBehind twice =
        new RunsBehind(
            Set.of(),
            List.of(
                Map.of(left.speeds().get(0).speed(), Sample.of(1, 2, 3)),
                Map.of(left.speeds().get(0).speed(), Sample.of(4, 5, 6))));
    SpeedComparison speed =
        RunComparison.of(found, new RunSummary(left.phase(), left.speeds(), twice)).speeds().get(0);
    assertThat(speed.compared()).isEqualTo(3);
    assertThat(speed.meanAfter().orElseThrow()).isEqualTo(5);
  }

  @Test
  void adjustingRepeatsNothing() {
    List<FiringResult> twice = new ArrayList<>(firings("practice-shutters", Phase.ADJUSTING));
    twice.addAll(firings("practice-shutters", Phase.ADJUSTING));
    assertThat(summary(twice).behind().repeats()).isEmpty();
  }

  @Test
  void rigsThatAreNotKnownAreNoOthers() {
    RunsBehind one = RunsBehind.ofRigs(Set.of("A"));
    assertThat(one.isOtherRigThan(RunsBehind.ofRigs(Set.of("B")))).isTrue();
    assertThat(one.isOtherRigThan(RunsBehind.ofRigs(Set.of("A")))).isFalse();
    assertThat(one.isOtherRigThan(RunsBehind.UNKNOWN)).isFalse();
    assertThat(one.isOtherRigThan(RunsBehind.ofRigs(Set.of("A", "B")))).isTrue();
  }
}
