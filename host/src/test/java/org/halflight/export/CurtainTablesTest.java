package org.halflight.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.halflight.exposure.CurtainTravel;
import org.halflight.record.CurtainTravels;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.CurtainChange;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.Fired;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.RunSummary;
import org.halflight.words.ComparisonWords;
import org.junit.jupiter.api.Test;

/** What tables and comparison say of curtains; their travels are invented. */
class CurtainTablesTest {
  private static List<FiringResult> firings(Phase phase, CurtainTravel... travels) {
    return CurtainTravels.firings(phase, "1/500", travels);
  }

  private static Map<String, String> row(CsvTable table, int row) {
    return table.headings().stream()
        .collect(
            Collectors.toMap(
                heading -> heading,
                heading -> table.rows().get(row).get(table.headings().indexOf(heading))));
  }

  @Test
  void theColumnsOfCurtainsAreTheLastOfAFiring() {
    CsvTable table =
        FiringTable.of(firings(Phase.ADJUSTING, CurtainTravels.whole(), CurtainTravels.capped()));
    int last = table.headings().size();
    assertThat(table.headings().subList(last - 11, last))
        .containsExactly(
            "first_travel_ms",
            "second_travel_ms",
            "travel_difference_ms",
            "start_effective_ms",
            "end_effective_ms",
            "slope_stops",
            "range_stops",
            "slit_mm",
            "window_ms",
            "capped",
            "end_bounce_ms");
    assertThat(table.rows().get(0).subList(last - 11, last))
        .containsExactly(
            "14.300000",
            "13.900000",
            "-0.300000",
            "2.020000",
            "1.800000",
            "-0.166358",
            "0.166358",
            "5.100000",
            "-12.200000",
            "no",
            "0.150000");
    assertThat(table.rows().get(1).subList(last - 11, last))
        .containsExactly("", "", "", "", "", "", "", "", "", "end", "");
    assertThat(row(table, 0).get("remarks")).contains("outer-level-off distances-not-said");
  }

  private static RunSummary run(Phase phase, double firstMs, double slope) {
    List<FiringResult> firings =
        firings(
            phase,
            // The first of a run as found is the one after a rest.
            CurtainTravels.of(20, 20, 0.5, 9),
            CurtainTravels.of(firstMs - 0.02, 14, slope - 0.01, 5.0),
            CurtainTravels.of(firstMs, 14.02, slope, 5.05),
            CurtainTravels.of(firstMs + 0.02, 13.98, slope + 0.01, 4.95));
    return RunSummary.of(
            phase == Phase.AS_FOUND ? firings : firings.subList(1, 4), speed -> Tolerance.THIRD)
        .get(0);
  }

  @Test
  void aSpeedHasTheMeansOfItsFirings() {
    RunSummary run = run(Phase.AS_FOUND, 17, -0.3);
    Map<String, String> row = row(SpeedTable.of(Source.RIG, List.of(run)), 0);
    assertThat(row)
        .containsEntry("first_travel_ms", "17.000000")
        .containsEntry("second_travel_ms", "14.000000")
        .containsEntry("slope_stops", "-0.300000")
        .containsEntry("slit_mm", "5.000000")
        .containsEntry("capped_at_end", "0");
    CsvTable statistics = StatisticTable.of(Source.RIG, List.of(RunStatistics.of(run)));
    assertThat(statistics.rows())
        .filteredOn(each -> each.get(3).equals("curtain_first_travel_scatter"))
        .singleElement()
        .satisfies(each -> assertThat(each.subList(4, 7)).containsExactly("ms", "0.020000", "3"));
    assertThat(statistics.rows()).anyMatch(each -> each.get(3).equals("curtain_slope"));
  }

  @Test
  void whatCleaningDidToTheCurtainsIsCompared() {
    RunComparison runs =
        RunComparison.of(run(Phase.AS_FOUND, 17, -0.3), run(Phase.AS_LEFT, 15.2, -0.3));
    assertThat(runs.curtains())
        .extracting(CurtainChange::figure)
        .containsExactlyElementsOf(CurtainChange.COMPARED.subList(0, 5));
    assertThat(runs.curtains())
        .filteredOn(CurtainChange::isChanged)
        .extracting(CurtainChange::figure)
        .containsExactly(CurtainFigure.FIRST_TRAVEL, CurtainFigure.TRAVEL_DIFFERENCE);
    assertThat(ComparisonWords.summary(runs))
        .contains(
            "Curtains, first curtain: 17.0 ms before, 15.2 ms after. It has changed.",
            "Curtains, slit at 1/500: 5.0 mm before, 5.0 mm after. No change shown.");
    CsvTable table = ComparisonTable.of(Source.RIG, runs);
    Map<String, String> speed = row(table, 0);
    Map<String, String> dial = row(table, 1);
    assertThat(dial)
        .containsEntry("marked_speed", "whole-dial")
        .containsEntry("first_travel_before_ms", "17.000000")
        .containsEntry("first_travel_after_ms", "15.200000");
    assertThat(Double.parseDouble(dial.get("first_travel_adjusted_p"))).isLessThan(0.01);
    assertThat(speed)
        .containsEntry("slope_after_stops", "-0.300000")
        .containsEntry("first_travel_after_ms", "");
    assertThat(Double.parseDouble(speed.get("slope_adjusted_p"))).isGreaterThan(0.5);
  }

  @Test
  void bladesHaveNoneOfIt() {
    RunSummary blades = run(Phase.AS_LEFT, 17, 0);
    RunSummary none =
        new RunSummary(Phase.AS_FOUND, Fired.asFound().at("1/500", 0.1).run().speeds());
    assertThat(RunComparison.of(none, blades).curtains()).isEmpty();
  }
}
