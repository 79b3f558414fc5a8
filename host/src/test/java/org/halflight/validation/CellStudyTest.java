package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.halflight.validation.invented.Blades;
import org.halflight.validation.invented.Cell;
import org.halflight.validation.invented.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fixed part of the cells of docs/validation.md: the first sessions of each. Simulated. */
class CellStudyTest {
  /** Sessions of each cell without a curve; half as many with one, which take longer. */
  private static final int SESSIONS = 80;

  @TempDir private Path folder;

  @Test
  void thereAreFortyEightCellsOfAllKinds() {
    assertThat(Cell.ALL).hasSize(48).doesNotHaveDuplicates();
  }

  /** The numbers of a session hang on its cell and number alone. */
  @Test
  void aSessionIsAlwaysTheSame() {
    for (Cell cell : Cell.ALL) {
      assertThat(cell.session(3)).isEqualTo(cell.session(3)).isNotEqualTo(cell.session(4));
    }
  }

  @Test
  void thePublicWaySaysTheSameToTheLastDigit() throws Exception {
    List<String> differences = new ArrayList<>();
    for (Cell cell : Cell.ALL) {
      Cell.Tried tried = cell.session(1);
      StudiedMethod.Message said = StudiedMethod.directly(tried.session());
      assertThat(said.interval()).as("%s", cell).isPresent();
      differences.addAll(StudiedMethod.differences(tried.session(), said, folder));
    }
    assertThat(differences).isEmpty();
  }

  @Test
  void intervalsHoldTheTruthOfEachKindOfBlades() throws Exception {
    for (Blades blades : Blades.values()) {
      for (Condition condition : Condition.values()) {
        CellStudy.Count sum = CellStudy.Count.NOTHING;
        int sessions = condition.hasCurves() ? SESSIONS / 2 : SESSIONS;
        for (Cell.Speed speed : Cell.Speed.values()) {
          Cell cell = new Cell(blades, speed, condition);
          sum = sum.and(CellStudy.of(cell, 0, sessions, Integer.MAX_VALUE, folder));
        }
        assertThat(sum.none()).isZero();
        // At 95 % and 4 speeds together fewer come once in 2000 (binomial).
        assertThat(sum.held())
            .as("%s, %s of %d", blades, condition, sum.sessions())
            .isGreaterThanOrEqualTo(condition.hasCurves() ? 142 : 290);
      }
    }
  }

  /** A study that could not fail would show nothing: the truth beside the marking is not held. */
  @Test
  void anIntervalBesideTheTruthIsCounted() {
    Cell cell = new Cell(Blades.ROUND_EVEN, Cell.Speed.ONE, Condition.CALIBRATED);
    int held = 0;
    for (int i = 0; i < 40; i++) {
      Cell.Tried tried = cell.session(i);
      held +=
          StudiedMethod.directly(tried.session())
                  .interval()
                  .filter(stated -> stated.contains(tried.trueStops() + 0.2))
                  .isPresent()
              ? 1
              : 0;
    }
    assertThat(held).isZero();
  }
}
