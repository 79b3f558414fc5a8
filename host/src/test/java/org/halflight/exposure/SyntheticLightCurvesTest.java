package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.fixtures.PublishedTable;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The 18 light curves of fixtures/published/synthetic_lightcurves.csv, whose times are known in
 * closed form (computed, not measurements), taken through the exact integral and through edges.
 */
class SyntheticLightCurvesTest {
  private static final double TICK = 62.5e-9;

  /** The table has four decimals of a millisecond. */
  private static final double TABLE = 0.5e-7;

  record Row(
      double rise,
      double open,
      double fall,
      String shape,
      double effective,
      double halfWidth,
      double total,
      double efficiency,
      double halfWidthStops) {
    static Row of(Map<String, String> row) {
      return new Row(
          millis(row, "rise_ms"),
          millis(row, "fully_open_ms"),
          millis(row, "fall_ms"),
          row.get("ramp_shape"),
          millis(row, "effective_ms"),
          millis(row, "half_width_ms"),
          millis(row, "total_ms"),
          Double.parseDouble(row.get("efficiency_pct_true")) / 100,
          Double.parseDouble(row.get("halfwidth_minus_effective_stops")));
    }

    private static double millis(Map<String, String> row, String column) {
      return Double.parseDouble(row.get(column)) / 1e3;
    }

    boolean is(String start) {
      return shape.startsWith(start);
    }

    LightCurve curve() {
      DoubleUnaryOperator ramp =
          is("linear")
              ? CurveEdges::areaLinear
              : is("radius-linear") ? CurveEdges::radiusLinear : CurveEdges::fastStart;
      return CurveEdges.curve(rise, open, fall, ramp, 1);
    }

    Timed timed() {
      return (Timed)
          LeafExposureMethod.measure(
              CurveEdges.firing(curve(), LevelPair.GAUSS), LevelPair.GAUSS, TickRate.BOARD_16_MHZ);
    }
  }

  static Stream<Row> rows() {
    return PublishedTable.rows("synthetic_lightcurves.csv").stream().map(Row::of);
  }

  static Stream<Row> rowsOfOurLaws() {
    return rows().filter(row -> !row.is("fast-start"));
  }

  @Test
  void thereAreEighteen() {
    assertThat(rows()).hasSize(18);
    assertThat(rowsOfOurLaws()).hasSize(12);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void theCurveItselfGivesAllThreeTimes(Row row) {
    LightCurve curve = row.curve();
    assertThat(curve.integralSeconds()).isCloseTo(row.effective, within(TABLE + 1e-8));
    assertThat(curve.secondsAbove(0.5)).isCloseTo(row.halfWidth, within(TABLE + 1e-8));
    assertThat(curve.totalSeconds()).isCloseTo(row.total, within(1e-12));
    assertThat(Stops.between(curve.secondsAbove(0.5), curve.integralSeconds()))
        .isCloseTo(row.halfWidthStops, within(1e-4));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void twoLevelsGiveTheEffectiveTime(Row row) {
    Timed timed = row.timed();
    // The rule is off by 0.722 % of opening plus closing time for a round hole, the other way for a
    // fast start, and exact where area grows evenly.
    double expected =
        row.is("linear") ? 0 : (row.is("fast-start") ? 1 : -1) * 0.007224 * (row.rise + row.fall);
    assertThat(timed.effectiveSeconds() - row.effective)
        .isCloseTo(expected, within(TICK + TABLE + 1e-8));
    assertThat(Math.abs(timed.effectiveSeconds() - row.effective))
        .isLessThanOrEqualTo(timed.methodSeconds() + TICK + TABLE);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void twoLevelsBeatTheHalfWidth(Row row) {
    double twoLevels = Math.abs(row.timed().effectiveSeconds() - row.effective);
    double halfWidth = Math.abs(row.halfWidth - row.effective);
    assertThat(twoLevels).isLessThanOrEqualTo(Math.max(halfWidth / 5, TICK + TABLE));
  }

  @ParameterizedTest
  @MethodSource("rowsOfOurLaws")
  void theRightLawGivesHalfWidthTotalRampsAndEfficiency(Row row) {
    OpeningLaw law = row.is("linear") ? OpeningLaw.AREA_LINEAR : OpeningLaw.RADIUS_LINEAR;
    Timed timed = row.timed();
    assertThat(timed.blades().orElseThrow().halfWidthSeconds().under(law))
        .isCloseTo(row.halfWidth, within(4 * TICK + TABLE));
    assertThat(timed.blades().orElseThrow().totalSeconds().under(law))
        .isCloseTo(row.total, within(4 * TICK));
    assertThat(timed.blades().orElseThrow().openingSeconds().under(law))
        .isCloseTo(row.rise, within(3 * TICK));
    assertThat(timed.blades().orElseThrow().closingSeconds().under(law))
        .isCloseTo(row.fall, within(3 * TICK));
    assertThat(timed.blades().orElseThrow().fullyOpenSeconds().under(law))
        .isCloseTo(row.open, within(4 * TICK));
    assertThat(timed.blades().orElseThrow().efficiency().under(law))
        .isCloseTo(row.efficiency, within((timed.methodSeconds() + 5 * TICK) / row.total));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void thoseOpenForLittleMayNotHaveOpenedFully(Row row) {
    Timed timed = row.timed();
    boolean little = timed.widthHighSeconds() < 0.725 * timed.widthLowSeconds();
    assertThat(timed.flags().contains(Flag.MAY_NOT_OPEN_FULLY)).isEqualTo(little);
    assertThat(little || row.open > 0).isTrue();
  }

  @ParameterizedTest
  @MethodSource("rowsOfOurLaws")
  void oneLevelCorrectedForLeafTravelAgrees(Row row) {
    OpeningLaw law = row.is("linear") ? OpeningLaw.AREA_LINEAR : OpeningLaw.RADIUS_LINEAR;
    for (double level : new double[] {0.1, 0.3, 0.5, 0.8}) {
      double width = row.curve().secondsAbove(level);
      assertThat(LeafTravel.effectiveSeconds(width, level, row.rise + row.fall, law))
          .as("level %s", level)
          .isCloseTo(row.effective, within(TABLE + 1e-8));
    }
  }

  @ParameterizedTest
  @MethodSource("rows")
  void theSampledCurveGivesEffectiveTimeHalfWidthAndEfficiency(Row row) {
    CurveExposure.Measured measured =
        (CurveExposure.Measured)
            CurveMethod.measure(
                SampledCurves.of(row.curve(), 18), SampledCurves.LEVELS, TickRate.BOARD_16_MHZ);
    assertThat(measured.openedFully()).isTrue();
    assertThat(measured.effectiveSeconds())
        .isCloseTo(row.effective, within(measured.toleranceSeconds()));
    // Half light moves by half a step of eight bits of each ramp, and by a line between readings.
    assertThat(measured.halfWidthSeconds().getAsDouble())
        .isCloseTo(row.halfWidth, within(0.004 * (row.rise + row.fall)));
    // A fast start has no power law; its foot is as good as straight.
    double reach = row.is("fast-start") ? 0.05 : 0.03;
    assertThat(measured.totalSeconds()).isCloseTo(row.total, within(reach * (row.rise + row.fall)));
    assertThat(measured.efficiency()).isCloseTo(row.efficiency, within(0.02));
  }
}
