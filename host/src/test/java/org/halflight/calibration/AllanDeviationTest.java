package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.halflight.fixtures.PublishedTable;
import org.junit.jupiter.api.Test;

class AllanDeviationTest {
  /** NBS Monograph 140 annex 8.E, ten phases; printed in NIST Special Publication 1065. */
  @Test
  void meetsThePrintedFiguresOfTenPhases() {
    double[] phase =
        PublishedTable.rows("allan_nbs14_10point.csv").stream()
            .mapToDouble(row -> Double.parseDouble(row.get("phase")))
            .toArray();

    AllanDeviation one = AllanDeviation.of(phase, 1, 1);
    assertThat(one.plain()).isCloseTo(91.22945, within(2e-5));
    assertThat(one.overlapping()).isCloseTo(91.22945, within(2e-5));
    assertThat(one.modified()).isCloseTo(91.22945, within(2e-5));
    assertThat(one.time()).isCloseTo(52.67135, within(2e-5));
    assertThat(one.hadamard()).isCloseTo(70.80608, within(2e-5));
    AllanDeviation two = AllanDeviation.of(phase, 1, 2);
    assertThat(two.plain()).isCloseTo(115.8082, within(1e-4));
    assertThat(two.overlapping()).isCloseTo(85.95287, within(2e-5));
    assertThat(two.modified()).isCloseTo(74.78849, within(2e-5));
    assertThat(two.time()).isCloseTo(86.35831, within(2e-5));
    assertThat(two.hadamard()).isCloseTo(116.7980, within(1e-4));
  }

  @Test
  void tooFewPhasesAreTheCallersMistake() {
    assertThatThrownBy(() -> AllanDeviation.of(new double[6], 1, 2))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
