package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.csv.CSVRecord;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class ToleranceFactorTest {
  /** NIST/SEMATECH e-Handbook 7.2.6.3: Howe for 43, 90 %, 99 %. */
  @Test
  void howeMeetsTheHandbook() {
    assertThat(ToleranceFactor.twoSidedHowe(43, 0.9, 0.99)).isCloseTo(2.2173, within(1.1e-4));
  }

  /** Same page: Natrella's approximation for 43 and 6, 90 %, 99 %. */
  @Test
  void natrellaMeetsTheHandbook() {
    assertThat(ToleranceFactor.oneSidedNatrella(43, 0.9, 0.99)).isCloseTo(1.8752, within(1e-4));
    assertThat(ToleranceFactor.oneSidedNatrella(6, 0.9, 0.99)).isCloseTo(5.2808, within(2e-4));
  }

  /** Same page, by the noncentral t: 4.4111 for 6; 2.064993399768 for 50, 95 %, 95 %. */
  @Test
  void oneSidedMeetsTheHandbook() {
    assertThat(ToleranceFactor.oneSided(6, 0.9, 0.99)).isCloseTo(4.4111, within(5e-5));
    assertThat(ToleranceFactor.oneSided(50, 0.95, 0.95)).isCloseTo(2.064993399768, within(2e-8));
    // The same with 25 digits, since the published one is good to 1e-8 only.
    assertThat(ToleranceFactor.oneSided(50, 0.95, 0.95)).isCloseTo(2.0649934177440, within(1e-10));
  }

  /** ISO 16269-6, two-sided, 35, 90 %, 90 %, as read in the tests of a public package (to 2e-4). */
  @Test
  void twoSidedMeetsTheStandard() {
    assertThat(ToleranceFactor.twoSided(35, 0.9, 0.9)).isCloseTo(1.9906, within(2e-4));
    assertThat(ToleranceFactor.twoSided(35, 0.9, 0.9)).isCloseTo(1.9905321304242, within(1e-8));
  }

  /** The whole table, computed elsewhere by double integral and noncentral t. */
  @Test
  void meetsTheTable() {
    for (CSVRecord row : Published.rows("tolerance_factors.csv")) {
      int n = Integer.parseInt(row.get("n"));
      double p = Double.parseDouble(row.get("p"));
      double gamma = Double.parseDouble(row.get("gamma"));
      String which = row.toString();
      assertThat(ToleranceFactor.twoSided(n, p, gamma))
          .as(which)
          .isCloseTo(Double.parseDouble(row.get("k2_exact")), within(6e-5));
      assertThat(ToleranceFactor.twoSidedHowe(n, p, gamma))
          .as(which)
          .isCloseTo(Double.parseDouble(row.get("k2_howe")), within(6e-5));
      assertThat(ToleranceFactor.oneSided(n, p, gamma))
          .as(which)
          .isCloseTo(Double.parseDouble(row.get("k1_exact")), within(6e-5));
      assertThat(ToleranceFactor.oneSidedNatrella(n, p, gamma))
          .as(which)
          .isCloseTo(Double.parseDouble(row.get("k1_natrella")), within(6e-5));
    }
  }

  @Test
  void intervalIsMeanAndFactorTimesSd() {
    // k 5.0769 for 5, 95 %, 95 % from the table.
    ToleranceInterval interval = ToleranceInterval.of(Sample.of(-2, -1, 0, 1, 2), 0.95, 0.95).get();
    assertThat(interval.high()).isCloseTo(5.0769 * Math.sqrt(2.5), within(1e-4));
    assertThat(interval.low()).isCloseTo(-interval.high(), within(1e-9));
    assertThat(ToleranceInterval.of(Sample.of(1), 0.95, 0.95))
        .isEqualTo(new NotEnoughFirings<ToleranceInterval>(1, 2));
  }

  /** Two firings: 36.51921 at 95 % of 95 %, computed elsewhere by adaptive double integral. */
  @Test
  void reachesDownToTwoFirings() {
    assertThat(ToleranceFactor.twoSided(2, 0.95, 0.95)).isCloseTo(36.51921, within(1e-4));
    assertThatThrownBy(() -> ToleranceFactor.twoSided(1, 0.95, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ToleranceFactor.oneSidedNatrella(2, 0.9, 0.99))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
