package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.uncertainty.RigKnowledge;
import org.junit.jupiter.api.Test;

/** The small brother of the study of intervals in docs/validation.md. Simulated. */
class CoverageStudyTest {
  private static final int SESSIONS = 300;

  @Test
  void statedIntervalsHoldTheTruth() {
    for (RigKnowledge rig :
        new RigKnowledge[] {RigKnowledge.UNCALIBRATED, CoverageStudy.CALIBRATED}) {
      CoverageStudy.Coverage found = CoverageStudy.coverage(rig, SESSIONS, Validation.SEED);
      // Speeds of one session share a rig, so the pooled share scatters a little more than 3000
      // independent ones would (0.4 %).
      assertThat(found.pooled()).as("seed %d", Validation.SEED).isBetween(0.935, 0.98);
      // Speed by speed only where nothing rectangular rules: there 95 % is the true chance.
      for (int i = 0; i < (rig.isCalibrated() ? CoverageStudy.DIAL.size() : 0); i++) {
        // 270 of 300 at 95 % or fewer come once in 5000 (binomial).
        assertThat(found.held().get(i)).as("%s", CoverageStudy.DIAL.get(i)).isGreaterThan(270);
      }
    }
  }

  @Test
  void withinIsSeldomSaidWrongly() {
    CoverageStudy.FalseWithin said =
        CoverageStudy.falseWithin(
            CoverageStudy.CALIBRATED, MarkedSpeed.parse("1/60"), SESSIONS, Validation.SEED);
    // Of 300 at one in twenty, more than 28 come once in 1000 (binomial).
    assertThat(said.fixed()).isLessThanOrEqualTo(28);
    assertThat(said.bounded()).isLessThanOrEqualTo(28);
    // Looking without bounds is what the bounds are for.
    assertThat(said.naive()).isGreaterThan(said.bounded());
  }

  @Test
  void thePageHasTheStudy() throws Exception {
    assertThat(Files.readString(Path.of("docs/validation.md")))
        .contains("## Do stated intervals hold the truth?")
        .contains("| 1/500 |");
  }
}
