package org.halflight.shuttermodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CurtainShutterTest {
  private static final List<MarkedSpeed> DIAL = Dial.find("curtain").orElseThrow().speeds();
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/1000");
  private static final MarkedSpeed X30 = MarkedSpeed.parse("1/30");

  /** Where the sensors of a usual bar are, as a share of the frame. */
  private static final double START = 0.05;

  private static final double END = 0.95;

  private static CurtainPass pass(MarkedSpeed speed, CurtainFault... faults) {
    return InventedCurtains.CLOTH_36.with(List.of(faults), DIAL, 1).usualPass(speed);
  }

  /** Exposure at a share of the frame against the marked time, in stops. */
  private static double stops(CurtainPass pass, double share, MarkedSpeed speed) {
    return Stops.between(
        pass.exposureSeconds(share * pass.frameMillimetres()), speed.exactSeconds());
  }

  private static double offsetSeconds(MarkedSpeed speed, CurtainFault... faults) {
    return pass(speed, faults).exposureSeconds(18) - speed.exactSeconds();
  }

  @ParameterizedTest
  @EnumSource
  void soundOnesTravelAsLongAsTheirDesignAndAreRightAtTheCentre(InventedCurtains curtains) {
    CurtainDesign design = curtains.design();
    for (MarkedSpeed speed : DIAL) {
      CurtainPass pass = curtains.sound(DIAL, 1).usualPass(speed);
      assertThat(pass.firstTravelSeconds() * 1e3).isCloseTo(design.travelMillis(), within(0.01));
      assertThat(pass.secondTravelSeconds() * 1e3).isCloseTo(design.travelMillis(), within(0.01));
      assertThat(stops(pass, 0.5, speed)).as("%s", speed).isCloseTo(0, within(0.01));
      assertThat(stops(pass, END, speed) - stops(pass, START, speed)).isCloseTo(0, within(0.17));
    }
    CurtainPass open = curtains.sound(DIAL, 1).usualPass(MarkedSpeed.parse(curtains.xSpeed()));
    assertThat(open.windowSeconds()).isGreaterThan(3e-3);
  }

  /** Entry and first fully open speed of one camera of a repair manual. */
  @Test
  void clothEntersAndOpensFullyAsTheManualSays() {
    CurtainPass pass = pass(MarkedSpeed.parse("1/60"));
    assertThat(pass.opensSeconds(0).orElseThrow()).isCloseTo(12e-3, within(1e-3));
    assertThat(pass.windowSeconds()).isNegative();
    double fiftieth = pass.windowSeconds() + 1.0 / 50 - 1.0 / 64;
    assertThat(fiftieth).isPositive();
  }

  @Test
  void aSensorSeesTheExposureOfItsPlaceWhateverItsSlitAndLamp() {
    CurtainPass pass = pass(TOP);
    for (double slit : new double[] {0, 0.5, 1.5}) {
      SensorBar bar = new SensorBar(16.2, slit, 5, 300, 10, SensorBar.Order.A_FIRST);
      LightPath path = bar.light(pass).outerB();
      double place = 18 + 16.2 * bar.shrinks();
      assertThat(integral(path)).isCloseTo(pass.exposureSeconds(place), within(2e-6));
      assertThat(bar.in(SensorBar.Order.B_FIRST).light(pass).outerA().seconds())
          .isEqualTo(path.seconds());
    }
  }

  private static double integral(LightPath path) {
    double[] seconds = path.seconds();
    double[] open = path.open();
    double sum = 0;
    for (int i = 1; i < seconds.length; i++) {
      sum += (open[i] + open[i - 1]) / 2 * (seconds[i] - seconds[i - 1]);
    }
    return sum;
  }

  @Test
  void aWedgeGrowsWithTheSpeedAndALateLatchIsTheSameTimeEverywhere() {
    CurtainPass wedge = pass(TOP, CurtainFault.FIRST_SLOW);
    assertThat(wedge.firstTravelSeconds()).isGreaterThan(wedge.secondTravelSeconds() + 2e-4);
    assertThat(stops(wedge, END, TOP) - stops(wedge, START, TOP)).isLessThan(-0.3);
    CurtainPass other = pass(TOP, CurtainFault.SECOND_SLOW);
    assertThat(stops(other, END, TOP) - stops(other, START, TOP)).isGreaterThan(0.2);

    assertThat(offsetSeconds(TOP, CurtainFault.LATE_LATCH)).isCloseTo(0.25e-3, within(0.01e-3));
    assertThat(offsetSeconds(MarkedSpeed.parse("1/125"), CurtainFault.LATE_LATCH))
        .isCloseTo(0.25e-3, within(0.01e-3));
    assertThat(offsetSeconds(TOP, CurtainFault.NARROW_SLIT)).isCloseTo(-0.25e-3, within(0.01e-3));
  }

  @Test
  void tiredSpringsAreARatioAndDragIsInTheLastThird() {
    double ratio = stops(pass(X30, CurtainFault.BOTH_TIRED), 0.5, X30);
    CurtainPass tired = pass(TOP, CurtainFault.BOTH_TIRED);
    assertThat(tired.firstTravelSeconds()).isGreaterThan(18.5e-3);
    assertThat(ratio).isBetween(0.03, 0.2);
    CurtainPass drags = pass(TOP, CurtainFault.FIRST_DRAGS);
    assertThat(half(drags, 0, 18)).isCloseTo(half(pass(TOP), 0, 18), within(1e-6));
    assertThat(half(drags, 18, 36)).isGreaterThan(half(pass(TOP), 18, 36) + 1e-4);
  }

  private static double half(CurtainPass pass, double from, double to) {
    return pass.opensSeconds(to).orElseThrow() - pass.opensSeconds(from).orElseThrow();
  }

  @Test
  void aWornBrakeBouncesAtTheEndOnlyAndATightOneStopsWithinTheFrame() {
    CurtainPass bounces = pass(TOP, CurtainFault.SECOND_BOUNCES);
    assertThat(stops(bounces, END, TOP)).isGreaterThan(0.5);
    assertThat(stops(bounces, 0.5, TOP)).isCloseTo(0, within(0.01));
    LightPaths light = SensorBar.usual(36).light(bounces);
    double closed = bounces.coversSeconds(36).orElseThrow();
    assertThat(light.outerB().at(closed)).isZero();
    assertThat(integral(light.outerB())).isGreaterThan(1.5 * integral(light.outerA()));

    CurtainPass short2 = pass(TOP, CurtainFault.BRAKED_TOO_EARLY);
    assertThat(short2.coversSeconds(36)).isEmpty();
    assertThat(SensorBar.usual(36).light(short2).outerB().endOpen()).isEqualTo(1);
    assertThat(SensorBar.usual(36).light(short2).centre().endOpen()).isZero();
  }

  @Test
  void gumLagsAfterARestAndRunsIn() {
    CurtainShutter gummed =
        InventedCurtains.CLOTH_36.with(List.of(CurtainFault.BOTH_GUMMED), DIAL, 3);
    double first = travel(gummed.firing(X30, new FiringTurn(1, 1, 1)));
    double tenth = travel(gummed.firing(X30, new FiringTurn(10, 10, 10)));
    assertThat(first).isGreaterThan(tenth + 5e-4);
  }

  private static double travel(ModelFiring firing) {
    return ((ModelFiring.Curtains) firing).pass().firstTravelSeconds();
  }

  /** The order of adjusting leads from any start to a right shutter. */
  @ParameterizedTest
  @EnumSource
  void whoSetsOneScrewAfterTheOtherEndsWithARightShutter(InventedCurtains curtains) {
    CurtainShutter found = curtains.found(DIAL, 5);
    CurtainShutter shutter = found.in(found.condition().cleaned());
    MarkedSpeed eighth = MarkedSpeed.parse("1/8");
    assertThat(Math.abs(stops(shutter.usualPass(eighth), 0.5, eighth))).isGreaterThan(0.05);
    for (CurtainScrew screw : CurtainScrew.values()) {
      shutter = shutter.turn(screw, shutter.turnsToSetRight(screw), 0);
      assertThat(shutter.turnsToSetRight(screw)).as("%s", screw).isCloseTo(0, within(1e-6));
    }
    CurtainPass left = shutter.usualPass(TOP);
    assertThat(left.firstTravelSeconds() * 1e3)
        .isCloseTo(curtains.design().travelMillis(), within(0.01));
    assertThat(left.secondTravelSeconds()).isCloseTo(left.firstTravelSeconds(), within(1e-5));
    assertThat(stops(left, 0.5, TOP)).isCloseTo(0, within(0.01));
    assertThat(stops(left, END, TOP)).isCloseTo(0, within(0.25));
    assertThat(stops(shutter.usualPass(eighth), 0.5, eighth)).isCloseTo(0, within(0.01));
    assertThat(shutter.contact().afterOpenMillis())
        .isCloseTo(CurtainCondition.CONTACT_MILLIS, within(1e-9));
  }

  @Test
  void aSpringSettlesWithinTwoFirings() {
    CurtainShutter sound = InventedCurtains.CLOTH_36.sound(DIAL, 1);
    CurtainShutter wound = sound.turn(CurtainScrew.FIRST_TENSION, 0.5, 10);
    double before = travel(sound.firing(X30, new FiringTurn(11, 11, 1)));
    double[] after = new double[3];
    for (int i = 0; i < 3; i++) {
      after[i] = travel(wound.firing(X30, new FiringTurn(11 + i, 11 + i, 1 + i)));
    }
    double settled = wound.usualPass(X30).firstTravelSeconds();
    assertThat(after[0]).isBetween(settled + 1e-4, before - 1e-4);
    assertThat(after[2]).isCloseTo(settled, within(1e-4));
  }

  @Test
  void capPutsOutTheEndAlone() {
    CurtainPass capped = pass(TOP).capped();
    LightPaths light = SensorBar.usual(36).light(capped);
    assertThat(integral(light.outerB())).isZero();
    assertThat(integral(light.centre())).isGreaterThan(1e-4);
    assertThat(integral(light.outerA())).isGreaterThan(1e-4);
  }

  @Test
  void slowSpeedsFailAsTheEscapementDoes() {
    MarkedSpeed half = MarkedSpeed.parse("1/2");
    double slowestSlit = CurtainDesign.CLOTH_36.slowestSlitSeconds();
    assertThat(pass(half, CurtainFault.NO_ESCAPEMENT).exposureSeconds(18))
        .isCloseTo(slowestSlit, within(1e-3));
    assertThat(stops(pass(half, CurtainFault.ESCAPEMENT_OUT), 0.5, half))
        .isCloseTo(0.4, within(0.02));
    MarkedSpeed quarter = MarkedSpeed.parse("1/4");
    assertThat(stops(pass(quarter, CurtainFault.ONE_STEP_OFF), 0.5, quarter)).isGreaterThan(0.5);
    assertThat(stops(pass(half, CurtainFault.ONE_STEP_OFF), 0.5, half)).isCloseTo(0, within(0.01));
    assertThat(pass(X30, CurtainFault.LATE_CHANGE_OVER).coversSeconds(18))
        .isEqualTo(OptionalDouble.empty());
  }

  @Test
  void theSameTurnIsTheSameFiring() {
    CurtainShutter one = InventedCurtains.METAL_24.found(DIAL, 9);
    CurtainShutter two = InventedCurtains.METAL_24.found(DIAL, 9);
    FiringTurn turn = new FiringTurn(4, 2, 1);
    assertThat(SensorBar.usual(24).light(passOf(one, turn)).centre().seconds())
        .isEqualTo(SensorBar.usual(24).light(passOf(two, turn)).centre().seconds());
  }

  private static CurtainPass passOf(CurtainShutter shutter, FiringTurn turn) {
    return ((ModelFiring.Curtains) shutter.firing(TOP, turn)).pass();
  }
}
