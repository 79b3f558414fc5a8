package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.BenchFold;
import org.halflight.bench.SessionFile;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.Tolerance;
import org.junit.jupiter.api.Test;

class RunsBehindTest {
  private static List<FiringResult> firings(String session, Phase phase) {
    Path file = Path.of("fixtures/old/sessions", session + ".session");
    return BenchFold.replay(SessionFile.read(file).events()).session().results().stream()
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
      if (speed.errors().n() > 0) {
        assertThat(behind.at(speed))
            .hasSize(3)
            .allSatisfy(run -> assertThat(run.values()).isEqualTo(speed.errors().values()));
      }
    }
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
