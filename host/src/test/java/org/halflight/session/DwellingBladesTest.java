package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.halflight.session.InventedBench.DARK;
import static org.halflight.session.InventedBench.FULL;
import static org.halflight.session.InventedBench.RATE;
import static org.halflight.session.InventedBench.S125;

import java.util.ArrayList;
import java.util.List;
import org.halflight.export.CsvTable;
import org.halflight.export.FiringTable;
import org.halflight.export.SpeedTable;
import org.halflight.exposure.DecidedBy;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.halflight.speeds.Tolerance;
import org.halflight.uncertainty.BudgetRow;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;
import org.halflight.words.BudgetWords;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Blades that dwell at 0.85 of full light and let as much of it through as 1/125 should: the two
 * levels take each firing for a fifth of a stop slow and 'within', and the truth is 0.00. Invented.
 */
class DwellingBladesTest {
  private static final double DWELL = 0.85;
  private static final double RAMP = 1e-3;

  /** What the two levels make of it. */
  private static final double BY_EDGES = S125.exactSeconds() / DWELL + DWELL * RAMP - RAMP;

  private final InventedBench bench = new InventedBench();

  @BeforeEach
  void fire() {
    bench.begin(Phase.AS_LEFT, 3, S125);
    for (int i = 0; i < 3; i++) {
      dwell(DWELL, BY_EDGES);
    }
  }

  private void dwell(double top, double byCurve) {
    double start = bench.now;
    bench.light(BY_EDGES, RAMP);
    bench.quiet();
    List<Integer> values = new ArrayList<>();
    double end = byCurve + RAMP;
    int count = (int) (RATE.ticks(end) / 256) + 80;
    for (int i = 0; i < count; i++) {
      double since = RATE.seconds((i - 40) * 256L);
      double open = Math.max(0, Math.min(top, Math.min(since, end - since) / RAMP));
      values.add((int) ((DARK + (FULL - DARK) * open) / 4));
    }
    long first = RATE.ticks(start) - 40 * 256L;
    bench.handle(
        new SessionInput.CurveAt(
            new SampledLight(List.of(new Part(Kind.OPENING, first, 256, values, false)), false)));
  }

  private void readFullLight(double counts) {
    bench.handle(
        new SessionInput.LightRead(
            LightReading.of(LightReading.What.FULL, "", false, counts, 0.3, 1000, 1)));
  }

  private SpeedSummary summary() {
    return RunSummary.of(bench.session.results(), speed -> Tolerance.THIRD).get(0).speeds().get(0);
  }

  private String cell(CsvTable table, int row, String column) {
    return table.rows().get(row).get(table.headings().indexOf(column));
  }

  private CsvTable firings() {
    return FiringTable.of(bench.session.results());
  }

  private CsvTable speeds() {
    return SpeedTable.of(
        Source.RIG, RunSummary.of(bench.session.results(), speed -> Tolerance.THIRD));
  }

  @Test
  void withoutFullLightAfterThereIsNoVerdict() {
    // The run has its firings all the same: nothing is asked for twice.
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(summary().verdict()).isEqualTo(Verdict.FULL_LIGHT_AGAIN);
    assertThat(summary().errors().n()).isZero();
    assertThat(String.join(" ", Sentences.speed(summary())))
        .contains("no verdict yet")
        .contains("measure full light again")
        .doesNotContain("within");
    assertThat(Sentences.firing(bench.result(1))).contains("measure full light again");
    assertThat(cell(firings(), 0, "decided_by")).isEqualTo("full-light-again");
    assertThat(cell(firings(), 0, "error_stops")).isEmpty();
    assertThat(cell(firings(), 0, "effective_ms")).isEmpty();
    assertThat(Double.parseDouble(cell(firings(), 0, "edges_ms")))
        .isCloseTo(1e3 * BY_EDGES, within(1e-4));
    assertThat(cell(speeds(), 0, "placement")).isEqualTo("full-light-again");
  }

  @Test
  void fullLightThatIsStillFullLetsTheCurveDecide() {
    readFullLight(FULL - 1);
    SpeedSummary summary = summary();
    assertThat(summary.verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(summary.meanStops().getAsDouble()).isCloseTo(0, within(0.01));
    assertThat(summary.timingBasis().kinds()).containsExactly(DecidedBy.CURVE);
    assertThat(summary.budget().orElseThrow().rows().stream().map(BudgetRow::part))
        .contains(
            org.halflight.uncertainty.UncertaintySource.FULL_LIGHT,
            org.halflight.uncertainty.UncertaintySource.WINDOW)
        .doesNotContain(org.halflight.uncertainty.UncertaintySource.METHOD);
    assertThat(summary.expandedStops().getAsDouble()).isBetween(0.01, 0.06);
    assertThat(String.join(" ", Sentences.speed(summary)))
        .contains("within")
        .contains("by the light curve");
    assertThat(Sentences.decidedBy(summary)).isEqualTo("light curve");
    assertThat(BudgetWords.rows(summary.budget().get())).hasSize(8);
    assertThat(BudgetWords.improve(summary.budget().get())).isNotEmpty();
    assertThat(cell(firings(), 2, "decided_by")).isEqualTo("curve");
    assertThat(Double.parseDouble(cell(firings(), 2, "full_light_after_share")))
        .isCloseTo(0.99875, within(1e-5));
    assertThat(cell(speeds(), 0, "decided_by")).isEqualTo("curve");
  }

  @Test
  void fullLightThatIsAnotherIsSaid() {
    readFullLight(DARK + 0.9 * (FULL - DARK));
    assertThat(summary().verdict()).isEqualTo(Verdict.FULL_LIGHT_AGAIN);
    assertThat(Sentences.firing(bench.result(1))).contains("was 90 % of what was set");
  }

  @Test
  void oneFiringThatSeesTwoLightsKeepsTheSpeedFromAVerdict() {
    readFullLight(FULL);
    bench.handle(new SessionInput.SpeedChosen(S125));
    dwell(1, BY_EDGES + 0.4e-3);
    assertThat(bench.result(4).decidedBy()).contains(DecidedBy.CHECK_RIG);
    assertThat(summary().verdict()).isEqualTo(Verdict.CHECK_RIG);
    assertThat(summary().decision().orElseThrow().verdict()).isEqualTo(Verdict.CHECK_RIG);
    assertThat(String.join(" ", Sentences.speed(summary())))
        .contains("Check the rig")
        .contains("Firings with a time: 3")
        .doesNotContain("within");
    assertThat(Double.parseDouble(cell(firings(), 3, "widths_apart_ms")))
        .isCloseTo(0.4, within(0.005));
    // Not counted by the person, it stands in nobody's way.
    bench.handle(new SessionInput.LastRejected("the cable was loose"));
    assertThat(summary().verdict()).isEqualTo(Verdict.WITHIN);
  }

  @Test
  void edgesAndCurvesTogetherTakeTheWiderBudget() {
    readFullLight(FULL);
    double alone = summary().budget().orElseThrow().commonStops();
    bench.handle(new SessionInput.SpeedChosen(S125));
    dwell(1, BY_EDGES);
    assertThat(bench.result(4).decidedBy()).contains(DecidedBy.EDGES_CORRECTED);
    assertThat(summary().timingBasis().kinds())
        .containsExactly(DecidedBy.EDGES_CORRECTED, DecidedBy.CURVE);
    assertThat(summary().budget().orElseThrow().commonStops()).isGreaterThanOrEqualTo(0.95 * alone);
  }
}
