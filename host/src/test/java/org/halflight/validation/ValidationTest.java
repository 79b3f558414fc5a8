package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.FindingPower;
import org.halflight.verdict.ShiftFinding;
import org.junit.jupiter.api.Test;

/** The small brother of docs/validation.md. Figures are simulated; the seed is in Validation. */
class ValidationTest {
  private static final List<MarkedSpeed> DIAL = Dial.find("leaf").orElseThrow().speeds();
  private static final MarkedSpeed FAST = MarkedSpeed.parse("1/60");

  @Test
  void anUnchangedShutterIsSeldomCalledChanged() {
    for (int firings : new int[] {4, 5}) {
      FalseAlarms sound =
          FalseAlarms.of(InventedShutters.soundLeaf(DIAL, Validation.SEED), firings, 200);
      FalseAlarms dirty =
          FalseAlarms.of(InventedShutters.dirtySlowTrain(DIAL, Validation.SEED), firings, 200);
      // Of 200 pairs at one in twenty, more than 20 occur once in a thousand (binomial).
      assertThat(sound.anything()).as("sound, seed %d", Validation.SEED).isLessThanOrEqualTo(20);
      assertThat(dirty.anything()).as("dirty, seed %d", Validation.SEED).isLessThanOrEqualTo(20);
    }
  }

  @Test
  void whatCleaningDidIsFound() {
    CleanedTrain cleaned = CleanedTrain.of(DIAL, Validation.SEED, 5, 100);
    assertThat(cleaned.slowShifts()).isGreaterThan(cleaned.slowSpeeds() * 95 / 100);
    assertThat(cleaned.slowScatter()).isGreaterThan(85);
    assertThat(cleaned.fastCalledChanged()).isLessThanOrEqualTo(12);
    assertThat(cleaned.signature()).isGreaterThan(95);
    assertThat(cleaned.quietAfter()).isGreaterThan(95);
  }

  @Test
  void thePowerThatIsStatedIsThere() {
    ShiftPowerRuns runs =
        new ShiftPowerRuns(InventedShutters.soundLeaf(DIAL, Validation.SEED), FAST, 10, 300);
    // These firings are independent of one another, and what is stated leaves room for others.
    double stated = 0.02 * new FindingPower(DIAL.size() + 1, DIAL.size()).shiftInSds(10);
    assertThat(runs.part(stated, ShiftFinding.CHANGED, ShiftFinding.CHANGED_BY_LITTLE))
        .isGreaterThan(0.8);
    // A true change of a tenth of a stop may be called less in one case of twenty.
    assertThat(runs.part(0.1, ShiftFinding.LESS_THAN_A_TENTH, ShiftFinding.CHANGED_BY_LITTLE))
        .isLessThan(0.1);
  }

  @Test
  void thePageOfFiguresSaysWhatTheyAreAndHasAllItsParts() throws Exception {
    String page = Files.readString(Path.of("docs/validation.md"));
    assertThat(page).contains("**simulated**").contains("Seed " + Validation.SEED);
    assertThat(page)
        .containsSubsequence(
            Arrays.stream(Validation.Part.values())
                .map(part -> "<!-- part: " + part.name().toLowerCase(Locale.ROOT) + " -->\n\n## ")
                .toList());
  }
}
