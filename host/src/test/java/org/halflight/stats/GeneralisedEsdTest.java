package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class GeneralisedEsdTest {
  /**
   * Rosner (1983) in NIST/SEMATECH e-Handbook 1.3.5.17.3. The handbook cuts digits instead of
   * rounding, hence one unit in the last place.
   */
  @Test
  void meetsTheHandbook() {
    double[] r = {3.118, 2.942, 3.179, 2.810, 2.815, 2.848, 2.279, 2.310, 2.101, 2.067};
    double[] lambda = {3.158, 3.151, 3.143, 3.136, 3.128, 3.120, 3.111, 3.103, 3.094, 3.085};

    GeneralisedEsd esd =
        GeneralisedEsd.of(Published.column("nist_gesd_rosner.csv", "y"), 10, 0.05).get();

    assertThat(esd.candidates()).hasSize(10);
    for (int i = 0; i < 10; i++) {
      assertThat(esd.candidates().get(i).r()).as("R %d", i + 1).isCloseTo(r[i], within(1e-3));
      assertThat(esd.candidates().get(i).lambda())
          .as("lambda %d", i + 1)
          .isCloseTo(lambda[i], within(1e-3));
    }
    assertThat(esd.outliers()).isEqualTo(3);
    assertThat(esd.candidates().subList(0, 3))
        .extracting(GeneralisedEsd.Candidate::value)
        .containsExactly(6.01, 5.42, 5.34);
    assertThat(esd.candidates().subList(0, 3))
        .extracting(GeneralisedEsd.Candidate::index)
        .containsExactly(53, 52, 51);
  }

  @Test
  void needsFifteenFirings() {
    assertThat(GeneralisedEsd.of(Sample.of(new double[14]), 1, 0.05))
        .isEqualTo(new NotEnoughFirings<GeneralisedEsd>(14, 15));
    assertThat(GeneralisedEsd.of(Sample.of(new double[15]), 1, 0.05))
        .isEqualTo(new NoScatter<GeneralisedEsd>());
  }

  @Test
  void stopsWhenTheRestIsAlike() {
    double[] values = new double[16];
    values[4] = 1;
    GeneralisedEsd esd = GeneralisedEsd.of(Sample.of(values), 3, 0.05).get();
    assertThat(esd.candidates()).hasSize(1);
    assertThat(esd.candidates().get(0).index()).isEqualTo(4);
    assertThat(esd.outliers()).isEqualTo(1);
  }

  @Test
  void looksForOneToTen() {
    Sample sample = Published.column("nist_gesd_rosner.csv", "y");
    assertThatThrownBy(() -> GeneralisedEsd.of(sample, 0, 0.05))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> GeneralisedEsd.of(sample, 11, 0.05))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
