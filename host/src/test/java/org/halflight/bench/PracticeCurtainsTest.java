package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.CurtainPass;
import org.halflight.shuttermodel.InventedBar;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.SensorBar;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Model curtains through practice rig and session; the truth is that of the model. */
class PracticeCurtainsTest {
  private static final Dial DIAL = Dial.find("curtain").orElseThrow();
  private static final MarkedSpeed TOP = DIAL.top();
  private static final MarkedSpeed X30 = MarkedSpeed.parse("1/30");
  private static final int MOST_STEPS = 4000;

  @TempDir private Path folder;

  /** A bench with invented curtains on it, the light set, a run begun. */
  private final class Bench implements AutoCloseable {
    private final PracticeRig rig = PracticeOperator.unpacedRig(20, Instant.EPOCH);
    private final PracticeOperator operator = new PracticeOperator(rig, 20);
    private final BenchDriver driver;
    private final Session session;

    Bench(InventedCurtains kind, InventedBar bar) {
      long[] nanos = {0};
      Workbench workbench =
          Workbench.begin(
              SessionFile.create(folder.resolve("a.session")),
              () -> nanos[0] += 1000,
              Marks.begins(
                  "test", OffsetDateTime.parse("2026-11-25T10:00:00Z"), Optional.of("curtains")));
      rig.readsAtOnce();
      driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now));
      session = workbench.fold().session();
      operator.useDial(DIAL.speeds());
      operator.useCurtains(Optional.of(kind));
      operator.placeBar(bar);
      until(() -> workbench.fold().greeting().isPresent());
      LightSetting setting = driver.light().set();
      until(() -> setting.step() == LightSetting.Step.OPEN_THE_SHUTTER);
      operator.hold(true);
      driver.light().shutterIsOpen();
      until(() -> setting.step() == LightSetting.Step.DONE);
      operator.hold(false);
      until(session::isQuiet);
      RunForm usual = RunForm.usual("invented", Phase.ADJUSTING, DIAL);
      driver.handle(
          new SessionInput.RunBegins(PracticeOperator.form(kind, usual, List.of()).read()));
    }

    FiringResult fire(MarkedSpeed speed, PracticeMishap mishap) {
      int before = session.results().size();
      rig.chooseSpeed(speed);
      rig.fire(mishap);
      until(() -> session.results().size() > before);
      return session.results().get(before);
    }

    /** A firing that comes to no end until somebody closes the shutter. */
    FiringResult stopped(PracticeMishap mishap) {
      int before = session.results().size();
      rig.chooseSpeed(X30);
      rig.fire(mishap);
      rig.rest(90);
      rig.holdOpen(false);
      until(() -> session.results().size() > before);
      return session.results().get(before);
    }

    CurtainPass truth() {
      List<org.halflight.rig.practice.PracticeFiring> fired = rig.firings();
      return ((ModelFiring.Curtains) fired.get(fired.size() - 1).model()).pass();
    }

    private void until(BooleanSupplier condition) {
      for (int i = 0; i < MOST_STEPS && !condition.getAsBoolean(); i++) {
        if (driver.step().isEmpty()) {
          rig.rest(0.3);
        }
      }
      assertThat(condition.getAsBoolean()).isTrue();
    }

    @Override
    public void close() {
      driver.close();
    }
  }

  private static CurtainTravel travel(FiringResult result) {
    return result.exposure().curtains().orElseThrow();
  }

  private static double place(Place place, CurtainPass pass, SensorBar bar) {
    double out = bar.outerMillimetres() * bar.shrinks();
    double middle = pass.frameMillimetres() / 2;
    return switch (place) {
      case START -> middle - out;
      case CENTRE -> middle;
      case END -> middle + out;
    };
  }

  @ParameterizedTest
  @EnumSource
  void figuresAreThoseOfTheModel(InventedCurtains kind) {
    SensorBar bar = InventedBar.RIGHT.bar(kind.design().frameMillimetres());
    try (Bench bench = new Bench(kind, InventedBar.RIGHT)) {
      for (MarkedSpeed speed : List.of(MarkedSpeed.parse("1/8"), X30, TOP)) {
        for (int i = 0; i < 3; i++) {
          FiringResult result = bench.fire(speed, PracticeMishap.NONE);
          CurtainPass truth = bench.truth();
          CurtainTravel travel = travel(result);
          double from = place(Place.START, truth, bar);
          double to = place(Place.END, truth, bar);
          double first =
              truth.opensSeconds(to).orElseThrow() - truth.opensSeconds(from).orElseThrow();
          double second =
              truth.coversSeconds(to).orElseThrow() - truth.coversSeconds(from).orElseThrow();
          double outer = travel.first().orElseThrow().outerSeconds();
          System.out.printf(
              Locale.ROOT,
              "simulated: %s %s: first %.4f of %.4f ms, second %.4f of %.4f ms, W %.3f of %.3f ms",
              kind,
              speed,
              outer * 1e3,
              first * 1e3,
              travel.second().orElseThrow().outerSeconds() * 1e3,
              second * 1e3,
              (travel.windowShutsSeconds().orElseThrow()
                      - travel.windowOpensSeconds().orElseThrow())
                  * 1e3,
              truth.windowSeconds() * 1e3);
          assertThat(outer).isCloseTo(first, within(0.01 * first));
          assertThat(travel.second().orElseThrow().outerSeconds())
              .isCloseTo(second, within(0.01 * second));
          assertThat(
                  travel.windowShutsSeconds().orElseThrow()
                      - travel.windowOpensSeconds().orElseThrow())
              .isCloseTo(
                  truth.windowSeconds(), within(Math.max(1e-4, travel.windowPlusMinusSeconds())));
          for (PlacePassing at : travel.places()) {
            double seconds = truth.exposureSeconds(place(at.place(), truth, bar));
            System.out.printf(
                Locale.ROOT,
                ", %s %.4f of %.4f ms",
                at.place(),
                at.effectiveSeconds().orElseThrow() * 1e3,
                seconds * 1e3);
            assertThat(at.effectiveSeconds().orElseThrow())
                .as("%s at %s", at.place(), speed)
                .isCloseTo(seconds, within(0.01 * seconds));
          }
          System.out.println();
        }
      }
    }
  }

  @Test
  void whatGoesWrongIsFound() {
    try (Bench bench = new Bench(InventedCurtains.CLOTH_36, InventedBar.RIGHT)) {
      assertThat(travel(bench.fire(X30, PracticeMishap.NONE)).notes()).isEmpty();
      CurtainTravel capped = travel(bench.fire(TOP, PracticeMishap.CAPPED));
      assertThat(capped.capped()).isEqualTo(Set.of(Place.END));
      bench.operator.placeBar(InventedBar.TURNED);
      assertThat(travel(bench.fire(X30, PracticeMishap.NONE)).notes())
          .contains(CurtainNote.TRAVEL_REVERSED);
      bench.operator.placeBar(InventedBar.RIGHT);
      assertThat(bench.stopped(PracticeMishap.HANG).effectiveSeconds().orElseThrow())
          .isGreaterThan(80);
      CurtainTravel stuck = travel(bench.stopped(PracticeMishap.STOPS_SHORT));
      assertThat(stuck.at(Place.CENTRE).effectiveSeconds().orElseThrow()).isLessThan(0.05);
      assertThat(stuck.at(Place.END).effectiveSeconds().orElseThrow()).isGreaterThan(80);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "CROSSED, SENSORS_CROSSED",
    "A_DARK, SENSOR_DARK",
    "B_DARK, SENSOR_DARK",
    "A_WEAK, OUTER_LEVEL_OFF",
    "LENS_ON, RAMPS_TOO_LONG",
    "LAMP_NEAR, RAMPS_TOO_LONG"
  })
  void sensorsThatArePlacedOrLitWronglyAreNoted(InventedBar bar, CurtainNote note) {
    try (Bench bench = new Bench(InventedCurtains.CLOTH_36, bar)) {
      assertThat(travel(bench.fire(X30, PracticeMishap.NONE)).notes()).contains(note);
    }
  }
}
