package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.chart.DataTable;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerances;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures are those of an invented shutter. */
class DetailsTextTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  private PracticeWork work;

  @BeforeEach
  void begin(@TempDir Path folder) {
    work = new PracticeWork(folder);
  }

  @AfterEach
  void end() {
    work.close();
  }

  @Test
  void theBudgetAndAllThatTheVerdictRestsOnStandInTheDetails() {
    work.begin(Phase.AS_LEFT, 3, "1/60");
    fire(3);
    DetailsText details = DetailsText.of(work.view(), Optional.of(SIXTIETH));
    assertThat(details.title()).contains("1/60");
    assertThat(details.budget().orElseThrow().rows()).hasSize(9);
    assertThat(figure(details, "verdict about"))
        .isEqualTo("the usual exposure of this setting (its median)");
    assertThat(figure(details, "firings")).isEqualTo("3, fixed beforehand");
    assertThat(figure(details, "expanded uncertainty, 95 %"))
        .startsWith("\u2212")
        .contains(" to +")
        .contains("ms");
    assertThat(figure(details, "probability of conformity, at least")).endsWith("%");
    assertThat(figure(details, "more firings that would decide")).isNotBlank();
    assertThat(details.advice())
        .startsWith("1/60 is within tolerance")
        .contains("The largest source is ");
    // A probability stands nowhere else; of three firings the share of odd ones says nothing.
    assertThat(BenchPictures.verdict(work.view(), SIXTIETH)).noneMatch(s -> s.contains("%"));
  }

  @Test
  void whatWasChosenForTheRunIsWhatItIsJudgedBy() {
    work.begin(
        Phase.AS_LEFT,
        2,
        AcceptanceCriteria.USUAL
            .with(RunOption.TOLERANCE, Tolerances.find("1/60=0.001").orElseThrow())
            .with(RunOption.ABOUT, Measurand.ONE_EXPOSURE),
        "1/60");
    fire(2);
    DetailsText details = DetailsText.of(work.view(), Optional.of(SIXTIETH));
    assertThat(figure(details, "verdict about")).isEqualTo("one exposure");
    assertThat(figure(details, "tolerance")).contains("0.00");
    assertThat(figure(details, "verdict")).isNotEqualTo("within");
    assertThat(BenchPictures.verdict(work.view(), SIXTIETH).get(0)).contains("single exposures");
  }

  @Test
  void aRunThatStoppedEarlySaysThatItHasFewerFiringsThanPlanned() {
    work.begin(Phase.AS_LEFT, 5, "1/60");
    fire(3);
    assertThat(BenchPictures.verdict(work.view(), SIXTIETH).get(0))
        .contains("3 of 5 planned firings");
    assertThat(
            figure(
                DetailsText.of(work.view(), Optional.of(SIXTIETH)),
                "more firings that would decide"))
        .isEqualTo("2 missing of those planned");
  }

  @Test
  void aSpeedThatIsFiredUntilItIsDecidedGoesOnByItself() {
    work.begin(
        Phase.AS_LEFT,
        5,
        AcceptanceCriteria.USUAL.with(RunOption.UNTIL_DECIDED, true),
        "1/60",
        "1/125");
    fire(5);
    // A sound shutter is well inside, so the first look decides.
    assertThat(work.view().shown().orElseThrow().label()).isEqualTo("1/125");
    assertThat(figure(DetailsText.of(work.view(), Optional.of(SIXTIETH)), "firings"))
        .contains("until it is decided");
  }

  @Test
  void withoutAFiringThereAreNone() {
    assertThat(DetailsText.of(work.view(), Optional.empty())).isEqualTo(DetailsText.nothing());
    work.begin(Phase.AS_LEFT, 5, "1/60");
    work.fire();
    work.handle(new SessionInput.LastRejected("slipped"));
    DetailsText rejected = DetailsText.of(work.view(), Optional.of(SIXTIETH));
    assertThat(rejected.picture()).isEmpty();
    assertThat(rejected.figures()).isPresent();
  }

  private void fire(int times) {
    for (int i = 0; i < times; i++) {
      work.fire(Optional.of(SIXTIETH), org.halflight.rig.practice.PracticeMishap.NONE);
    }
  }

  private static String figure(DetailsText details, String name) {
    DataTable twin = details.figures().orElseThrow();
    return twin.rows().stream()
        .filter(row -> row.get(0).equals(name))
        .map(row -> row.get(1))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name + " is not in " + List.copyOf(twin.rows())));
  }
}
