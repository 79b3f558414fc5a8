package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.chart.ExtraTestPictures;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.ExtraTestWords;
import org.junit.jupiter.api.Test;

/** Shares and stops are worked out by hand from the areas of trapezoids and triangles. */
class BounceTest {
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");
  private static final double EFFECTIVE = S500.exactSeconds();

  @Test
  void lightAfterClosingIsAShareOfTheExposure() {
    InventedLight bench = new InventedLight();
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S500);
    for (double share : new double[] {0.04, 0.05, 0.06}) {
      bench.open(EFFECTIVE, 0.4e-3);
      bench.dark(3e-3);
      bench.open(share * EFFECTIVE, 0.02e-3);
      bench.quiet();
    }

    Bounce bounce = (Bounce) bench.tried().get(0);

    Bounce.AtSpeed worst = bounce.worst().orElseThrow();
    assertThat(worst.lateShare()).isCloseTo(0.05, within(1e-4));
    // log2(1.05), common logarithm tables: 0.0211893 / 0.30103.
    assertThat(worst.overExposureStops()).isCloseTo(0.0703893, within(2e-4));
    assertThat(worst.late().sd().get()).isCloseTo(0.01, within(1e-4));
    assertThat(bounce.state()).isEqualTo(CheckState.OK);
    assertThat(bounce.item()).isEqualTo(CheckItem.BLADES);
    assertThat(bounce.what()).isEqualTo("bounce");
    ExtraTestValue first = bounce.values().get(0);
    assertThat(first.value()).isCloseTo(5, within(0.01));
    assertThat(first.unit()).isEqualTo("%");
    assertThat(first.n()).isEqualTo(3);
  }

  @Test
  void bladesThatSpringBackFarAreAtFault() {
    InventedLight bench = new InventedLight();
    bench.begin(Phase.AS_FOUND, CameraCustoms.NONE, S500);
    for (int i = 0; i < 3; i++) {
      bench.open(EFFECTIVE, 0.4e-3);
      bench.dark(3e-3);
      bench.open(0.08 * EFFECTIVE, 0.02e-3);
      bench.quiet();
    }

    assertThat(bench.tried().get(0).state()).isEqualTo(CheckState.FAULT);
  }

  @Test
  void lightBeforeTheOpeningIsItsOwnQuantity() {
    InventedLight bench = new InventedLight();
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S500);
    bench.open(0.1 * EFFECTIVE, 0.02e-3);
    bench.dark(3e-3);
    bench.open(EFFECTIVE, 0.4e-3);
    bench.quiet();

    Bounce bounce = (Bounce) bench.tried().get(0);

    assertThat(bounce.early()).hasSize(1);
    assertThat(bounce.early().get(0).early().mean().get()).isCloseTo(0.1, within(1e-4));
    assertThat(bounce.worst().orElseThrow().lateShare()).isZero();
  }

  @Test
  void lightWhileCockingIsALeakWhereBladesShouldStayShut() {
    InventedLight bench = new InventedLight();
    bench.begin(Phase.AS_LEFT, new CameraCustoms(false, true), S500);
    bench.session.handle(new SessionInput.CockingLearnt(true));
    for (int i = 0; i < 3; i++) {
      bench.open(0.03, 1e-3);
      bench.quiet();
    }

    Bounce bounce = (Bounce) bench.tried().get(0);

    assertThat(bounce.leaks()).isEqualTo(3);
    assertThat(bounce.state()).isEqualTo(CheckState.FAULT);
    assertThat(bounce.values())
        .anyMatch(value -> value.quantity().equals("leaks-while-cocking") && value.value() == 3);
    assertThat(ExtraTestWords.inShort(bounce))
        .isEqualTo(
            "As left: Light came 3 times while cocking, when the blades should stay shut: a leak.");

    // With a speed that was timed there is a picture, and it says so below.
    bench.open(0.002, 4e-4);
    bench.quiet();
    Bounce timed = (Bounce) bench.tried().get(0);
    assertThat(ExtraTestPictures.of(timed, "invented").orElseThrow().table().note())
        .startsWith("Light came 3 times while cocking")
        .endsWith("invented");
  }

  @Test
  void aRunWithoutLightHasNothingToSay() {
    InventedLight bench = new InventedLight();
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S500);

    assertThat(bench.tried()).isEmpty();
  }
}
