package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.halflight.chart.DataTable;
import org.halflight.chart.EdgesPicture;
import org.halflight.chart.Example;
import org.halflight.chart.FiringRow;
import org.halflight.chart.FiringTimes;
import org.halflight.chart.LightCurvePicture;
import org.halflight.chart.Picture;
import org.halflight.chart.SpeedMap;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.DialSetting;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.workflow.Answer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is in the three places for pictures. All figures are invented. */
class BenchPicturesTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  @TempDir Path folder;
  private PracticeWork work;

  @BeforeEach
  void begin() {
    work = new PracticeWork(folder);
  }

  @AfterEach
  void end() {
    work.close();
  }

  private BenchPictures.All pictures() {
    return BenchPictures.all(work.view(), work.view().shown().flatMap(DialSetting::speed), 0);
  }

  private static Picture picture(ShownPicture shown) {
    return shown.picture().orElseThrow();
  }

  @Test
  void beforeAnythingThereIsAnExampleAndTheOneActThatBringsIt() {
    assertThat(picture(pictures().large())).isInstanceOf(Example.class);
    assertThat(pictures().large().twin().orElseThrow().caption())
        .isEqualTo("Fire. The time of each firing appears here.")
        .doesNotContain("F5");
    assertThat(pictures().row().picture()).isEmpty();
    assertThat(pictures().small().instead()).isNotBlank();
  }

  @Test
  void firingsWithoutARunAreDrawnAndListedWithTheirEdges() {
    work.fire(Optional.of(SIXTIETH), PracticeMishap.NONE);
    work.fire(Optional.of(SIXTIETH), PracticeMishap.NONE);
    work.handle(new SessionInput.LastRejected("slipped"));

    assertThat(picture(pictures().large()))
        .isInstanceOfSatisfying(FiringTimes.class, times -> assertThat(times.firings()).hasSize(2));
    DataTable list = pictures().large().twin().orElseThrow();
    assertThat(Double.parseDouble(list.cell(0, "time in ms"))).isBetween(14.0, 18.0);
    assertThat(list.cell(0, "time as a fraction")).matches("1/(5|6)\\d s");
    assertThat(list.cell(1, "not counted because")).isEqualTo("slipped");
    assertThat(picture(pictures().row())).isInstanceOf(EdgesPicture.class);
    assertThat(pictures().row().twin().orElseThrow().rows())
        .anySatisfy(row -> assertThat(row).contains("low level", "on"));
    // The light was never set, so the curve has no scale, which is said.
    assertThat(pictures().small().instead()).contains("The light was not set");

    DetailsText details = DetailsText.of(work.view(), Optional.empty());
    assertThat(details.picture().orElseThrow()).isInstanceOf(FiringTimes.class);
    assertThat(details.budget().orElseThrow().rows()).hasSize(2);

    // They stay to be seen once a run is begun.
    work.begin(Phase.AS_FOUND, 2, "1/60");
    work.fire();
    assertThat(DetailsText.of(work.view(), Optional.of(SIXTIETH)).figures().orElseThrow().rows())
        .anySatisfy(row -> assertThat(row.get(0)).isEqualTo("firing 1, without a run"));
  }

  @Test
  void asFoundTheSpeedMapIsLargeAndTheCurveOneKeyAway() {
    work.light.set();
    work.until(() -> work.view().light().isAsking());
    work.rig.holdOpen(true);
    work.rig.rest(0.5);
    work.light.answer(Answer.DONE);
    work.until(() -> work.view().light().set().isPresent());
    work.rig.holdOpen(false);
    work.rig.rest(2);
    // What was held open to set the light is no firing.
    assertThat(picture(pictures().large())).isInstanceOf(Example.class);
    work.begin(Phase.AS_FOUND, 3, "1/60", "1/125");
    work.fire();
    work.fire();
    work.until(
        () -> work.view().results().get(work.view().results().size() - 1).curve().isPresent());

    assertThat(picture(pictures().large())).isInstanceOf(SpeedMap.class);
    assertThat(pictures().large().speeds()).contains(SIXTIETH);
    assertThat(picture(pictures().row())).isInstanceOf(FiringRow.class);

    BenchPictures.All turned = BenchPictures.all(work.view(), Optional.of(SIXTIETH), 1);
    assertThat(picture(turned.large())).isInstanceOf(LightCurvePicture.class);
    assertThat(picture(turned.small())).isInstanceOf(SpeedMap.class);
  }

  @Test
  void withoutALightCurveTheEdgesAreDrawnAndASentenceSaysWhy() {
    work.begin(Phase.AS_FOUND, 3, "1/60");
    work.fire();
    assertThat(picture(pictures().small())).isInstanceOf(EdgesPicture.class);
    assertThat(pictures().small().twin().orElseThrow().caption())
        .contains("No light curve", "The light was not set", "The edges are drawn instead.");
  }

  @Test
  void whileAdjustingTheFiringRowIsLargeAndTheMapBesideItHasBothRuns() {
    work.begin(Phase.AS_FOUND, 2, "1/60");
    work.fire();
    work.fire();
    work.begin(Phase.ADJUSTING, 2, "1/60");
    work.fire();
    work.fire();
    assertThat(picture(pictures().large())).isInstanceOf(FiringRow.class);
    assertThat(picture(pictures().row()))
        .isInstanceOfSatisfying(
            SpeedMap.class,
            map ->
                assertThat(
                        map.speeds().stream()
                            .filter(column -> column.speed().equals(SIXTIETH))
                            .findFirst()
                            .orElseThrow()
                            .runs())
                    .containsOnlyKeys(Phase.AS_FOUND, Phase.ADJUSTING));
  }

  @Test
  void rejectedFiringsStayOnTheMapInTheRowAndInTheDetails() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    work.fire();
    work.fire();
    work.handle(new SessionInput.LastRejected("slipped"));
    assertThat(picture(pictures().large()).table().rows())
        .anySatisfy(row -> assertThat(row.get(row.size() - 1)).endsWith("(slipped)"));
    assertThat(pictures().row().rejected(1)).isPresent();
    assertThat(pictures().row().rejectedAt(0.99)).isPresent();
    assertThat(DetailsText.of(work.view(), Optional.of(SIXTIETH)).figures().orElseThrow().rows())
        .anySatisfy(row -> assertThat(row.get(0)).isEqualTo("firing 2, not counted"));
    assertThat(String.join(" ", BenchPictures.verdict(work.view(), SIXTIETH)))
        .contains("1 not counted by you (slipped).");
  }
}
