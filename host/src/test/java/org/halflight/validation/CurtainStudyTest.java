package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.halflight.validation.CurtainStudy.Claim;
import org.halflight.validation.CurtainStudy.Pair;
import org.halflight.validation.CurtainStudy.Row;
import org.halflight.validation.invented.CurtainFault;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The short form of the study of curtains; simulated, with the seed of Validation. */
class CurtainStudyTest {
  private static final int SHUTTERS = 40;
  private static final int RUNS = 3;

  private static List<Row> rows = List.of();

  @BeforeAll
  static void fire() {
    rows = CurtainStudy.rows(SHUTTERS);
  }

  @Test
  void whatFallsOnTheFilmIsWithinItsInterval() {
    List<Pair> film = CurtainStudy.exposures(rows, true);
    assertThat(film).hasSizeGreaterThan(17 * SHUTTERS);
    assertThat(CurtainStudy.percent(film, Pair::holds)).isBetween(92.0, 98.5);
    assertThat(
            CurtainStudy.percent(
                CurtainStudy.exposures(CurtainStudy.at(rows, CurtainCase.Speed.THOUSANDTH), false),
                Pair::isWithinOnePercent))
        .isGreaterThan(93);
  }

  @Test
  void travelAndWindowAreWithinTheirIntervals() {
    assertThat(CurtainStudy.percent(rows.stream().flatMap(Row::travels).toList(), Pair::holds))
        .isGreaterThan(87);
    assertThat(
            CurtainStudy.percent(
                rows.stream().flatMap(row -> row.window().stream()).toList(), Pair::holds))
        .isGreaterThan(90);
  }

  @Test
  void wordsAboutTheFrameAreSeldomFalseBetweenTheSensors() {
    for (Claim claim : CurtainStudy.CLAIMS) {
      assertThat(claim.falselyPercent(rows, true)).as(claim.words()).isLessThanOrEqualTo(5);
    }
  }

  /** With seven tenths of the light, uncorrected, the outer exposures are several percent short. */
  @Test
  void unequalLightIsCorrected() {
    List<Pair> raw = CurtainStudy.outerAtTop(10, 0.7, false);
    List<Pair> corrected = CurtainStudy.outerAtTop(10, 0.7, true);
    assertThat(raw.stream().mapToDouble(Pair::share).average().orElseThrow()).isLessThan(-0.04);
    assertThat(corrected.stream().mapToDouble(Pair::share).average().orElseThrow())
        .isCloseTo(0, within(0.005));
  }

  @Test
  void clearFaultsAreToldApart() {
    double sum = 0;
    List<CurtainFault> faults =
        Stream.of(CurtainFault.values())
            .filter(fault -> CurtainsToldApart.wanted(fault).isPresent())
            .toList();
    for (CurtainFault fault : faults) {
      sum += CurtainsToldApart.right(fault, CurtainsToldApart.runs(fault, 0, RUNS));
    }
    assertThat(sum / faults.size()).isGreaterThan(0.9);
  }

  /** Edges and marks that go through a session come to the same, to the last digit. */
  @Test
  void theSessionSaysTheSame() {
    assertThat(StudiedCurtain.differences(CurtainCase.of(0))).isEmpty();
    assertThat(StudiedCurtain.differences(CurtainCase.of(CurtainStudy.IN_A_SESSION_EVERY)))
        .isEmpty();
  }

  /** A study that could not fail would show nothing. */
  @Test
  void anExposureBesideTheTruthIsCounted() {
    List<Pair> beside =
        CurtainStudy.exposures(rows, true).stream()
            .map(pair -> new Pair(pair.truth() * 1.1, pair.stated(), pair.plusMinus()))
            .toList();
    assertThat(CurtainStudy.percent(beside, Pair::holds)).isLessThan(5);
  }
}
