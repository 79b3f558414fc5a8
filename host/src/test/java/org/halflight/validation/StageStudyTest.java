package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.validation.StageStudy.Reported;
import org.halflight.validation.invented.Repair.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The short form of the study of stages; simulated, with the seed of Validation. */
class StageStudyTest {
  private static final int REPAIRS = 100;

  @ParameterizedTest
  @EnumSource(
      value = Fault.class,
      names = {"PINCHED_CASE", "TOUCHING_CELL", "WRONG_COVER"})
  void faultsAreFoundWhereTheyComeIn(Fault fault) {
    List<Reported> all = StageStudy.reported(fault, REPAIRS);
    assertThat(StageStudy.found(all)).isGreaterThan(0.82);
    assertThat(
            StageStudy.found(all.stream().filter(each -> each.repair().sizeStops() > 0.3).toList()))
        .isGreaterThan(0.93);
  }

  @Test
  void soundRepairsAreLeftInPeace() {
    assertThat(StageStudy.falsely(StageStudy.reported(Fault.NOTHING, REPAIRS)))
        .isLessThanOrEqualTo(0.05);
  }
}
