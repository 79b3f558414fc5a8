package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.halflight.fixtures.PublishedTable;
import org.junit.jupiter.api.Test;

class GaugeStudyTest {
  private static List<GaugeReading> published() {
    return PublishedTable.rows("aiag_gauge_rr.csv").stream()
        .map(
            row ->
                new GaugeReading(
                    row.get("part"), row.get("operator"), Double.parseDouble(row.get("y"))))
        .toList();
  }

  /** AIAG, Measurement Systems Analysis, 4th edition: ten parts, three operators, three trials. */
  @Test
  void meetsTheStudyOfTheHandbook() {
    GaugeStudy study = ((GaugeStudy.Studied) GaugeStudy.of(published())).study();

    assertThat(study.partSquares()).isCloseTo(88.3619, within(5e-5));
    assertThat(study.operatorSquares()).isCloseTo(3.1673, within(5e-5));
    assertThat(study.interactionSquares()).isCloseTo(0.3590, within(5e-5));
    assertThat(study.repeatabilitySquares()).isCloseTo(2.7589, within(5e-5));
    assertThat(study.interactionP()).isCloseTo(0.974, within(5e-4));
    assertThat(study.interactionPooled()).isTrue();
    assertThat(study.gaugeVariance()).isCloseTo(0.09143, within(5e-6));
    assertThat(study.repeatabilityVariance()).isCloseTo(0.03997, within(5e-6));
    assertThat(study.reproducibilityVariance()).isCloseTo(0.05146, within(5e-6));
    assertThat(study.partVariance()).isCloseTo(1.08645, within(5e-6));
    assertThat(100 * study.contribution()).isCloseTo(7.76, within(5e-3));
    assertThat(100 * study.studyVariation()).isCloseTo(27.86, within(5e-3));
    assertThat(study.distinctCategories()).isEqualTo(4);
  }

  @Test
  void aMissingReadingAndTooFewAreSaid() {
    assertThat(GaugeStudy.of(published().subList(0, 89)))
        .isEqualTo(new GaugeStudy.Unbalanced("10", "C"));
    assertThat(GaugeStudy.of(published().subList(0, 9))).isEqualTo(new GaugeStudy.TooFew(1, 3, 3));
  }
}
