package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.halflight.exposure.InventedCurtains.HALF;
import static org.halflight.exposure.InventedCurtains.PARALLEL;
import static org.halflight.exposure.InventedCurtains.accelerating;
import static org.halflight.exposure.InventedCurtains.sensors;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurtainMethodTest {
  private static final CurtainGeometry LAMP = new CurtainGeometry(36, 16.2, 0.5, 5, 300, 10);

  private static InventedCurtains alike(double exposureSeconds, CurtainGeometry geometry) {
    return new InventedCurtains(
        accelerating(13e-3, 0), accelerating(13e-3, exposureSeconds), geometry, 0.5, 0.5);
  }

  /** Curtains of one law, one released later: that is the exposure everywhere, by the integral. */
  @ParameterizedTest
  @CsvSource({"0.03125", "0.0078125", "0.0009765625", "0.00048828125"})
  void alikeCurtainsExposeAllPlacesAlike(double seconds) {
    CurtainTravel travel = alike(seconds, LAMP).travel(HALF);
    for (PlacePassing each : travel.places()) {
      assertThat(each.effectiveSeconds().orElseThrow()).isCloseTo(seconds, within(0.4e-6));
      assertThat(each.bounceSeconds()).isEmpty();
    }
    assertThat(travel.slopeStops().orElseThrow()).isCloseTo(0, within(1e-3));
    assertThat(travel.rangeStops().orElseThrow()).isCloseTo(0, within(1e-3));
    assertThat(travel.travelDifferenceSeconds().orElseThrow()).isCloseTo(0, within(0.5e-6));
    assertThat(travel.direction()).isEqualTo(Direction.A_TO_B);
    assertThat(travel.notes()).isEmpty();
    assertThat(travel.capped()).isEmpty();
  }

  /** The slit at 1/1000 is 2 mm wide and never opens the whole frame: normal, and no flag. */
  @Test
  void aSlitIsNoBladeThatNeverOpensFully() {
    Exposure.Timed timed = (Exposure.Timed) alike(1 / 1024.0, LAMP).measured(HALF);
    assertThat(timed.blades()).isEmpty();
    assertThat(timed.flags()).isEmpty();
    assertThat(timed.effectiveSeconds()).isCloseTo(1 / 1024.0, within(0.4e-6));
    assertThat(timed.curtains().orElseThrow().slitMillimetres().orElseThrow())
        .isCloseTo(2.9, within(0.2));
  }

  /** Outer sensors that switch at 0.36 or 0.7 of their light would read 10 % off as they stand. */
  @ParameterizedTest
  @CsvSource({"0.36, 0.5", "0.5, 0.36", "0.7, 0.4"})
  void edgesOfOuterSensorsAreCarriedToHalfLight(double a, double b) {
    InventedCurtains curtains =
        new InventedCurtains(accelerating(13e-3, 0), accelerating(13e-3, 1 / 1024.0), LAMP, a, b);
    CurtainTravel asTheyStand = curtains.travel(HALF);
    CurtainTravel carried = curtains.travel(sensors(a, b));
    double wrong = 0;
    for (Place place : Place.values()) {
      double right = carried.at(place).effectiveSeconds().orElseThrow();
      assertThat(right).isCloseTo(1 / 1024.0, within(0.013 / 1024));
      wrong =
          Math.max(
              wrong, Math.abs(asTheyStand.at(place).effectiveSeconds().orElseThrow() * 1024 - 1));
    }
    assertThat(wrong).isGreaterThan(0.02);
  }

  @Test
  void travelGoesFromEdgeToEdgeOfTheFrame() {
    CurtainTravel travel =
        new InventedCurtains(accelerating(13e-3, 0), accelerating(12e-3, 10e-3), PARALLEL, 0.5, 0.5)
            .travel(HALF);
    // A spring that pulls evenly is one end of what the curve allows for.
    assertThat(travel.first().orElseThrow().edgeSeconds()).isCloseTo(13e-3, within(0.2e-3));
    assertThat(travel.second().orElseThrow().edgeSeconds()).isCloseTo(12e-3, within(0.2e-3));
    assertThat(travel.first().get().edgeSeconds())
        .isCloseTo(13e-3, within(travel.first().get().plusMinusSeconds()));
    assertThat(travel.first().get().lastHalfMetresPerSecond())
        .isGreaterThan(travel.first().get().firstHalfMetresPerSecond());
    // Released at 10 ms less what both take to the start.
    double toStart = 13e-3 * Math.sqrt(8) / (Math.sqrt(44) - Math.sqrt(8));
    double window = 10e-3 + toStart * 12 / 13 - (toStart + 13e-3);
    assertThat(travel.windowSeconds().orElseThrow()).isCloseTo(window, within(0.3e-3));
    assertThat(travel.windowSeconds().getAsDouble())
        .isCloseTo(window, within(travel.windowPlusMinusSeconds()));
    assertThat(travel.travelDifferenceSeconds().orElseThrow()).isLessThan(-0.8e-3);
  }

  /**
   * 5 mm in 300 mm make the way at the curtain 1.7 % shorter than at the sensors; more of it is
   * slow way near the edges.
   */
  @Test
  void distancesShrinkTheSpan() {
    InventedCurtains curtains = alike(1 / 128.0, LAMP);
    double known = curtains.travel(HALF).first().orElseThrow().edgeSeconds();
    CurtainGeometry unsaid = new CurtainGeometry(36, 16.2, 0.5, 5, 300, 10, false);
    CurtainTravel travel =
        new CurtainMethod(unsaid, HALF, 1e-6)
            .measure(curtains.firing(), LevelPair.GAUSS, InventedCurtains.RATE)
            .curtains()
            .orElseThrow();
    double unknown = travel.first().orElseThrow().edgeSeconds();
    assertThat(known / unknown).isBetween(1.016, 1.025);
    assertThat(travel.first().get().plusMinusSeconds()).isGreaterThan(0.017 * unknown);
    assertThat(travel.notes()).containsExactly(CurtainNote.DISTANCES_NOT_SAID);
  }

  /** A second curtain that is quicker overtakes the first: no light at the end. */
  @Test
  void aDarkPlaceIsCappedWhereItsSensorIsKnownToWork() {
    InventedCurtains curtains =
        new InventedCurtains(
            accelerating(13e-3, 0), accelerating(12e-3, 1.62e-3), PARALLEL, 0.5, 0.5);
    CurtainTravel travel = curtains.travel(HALF);
    assertThat(travel.at(Place.END).isDark()).isTrue();
    assertThat(travel.capped()).containsExactly(Place.END);
    assertThat(travel.slopeStops()).isEmpty();
    OuterSensors onlyA =
        new OuterSensors(
            HALF.centreLightCounts(),
            HALF.a(),
            HALF.b(),
            Set.of(Channel.OUTER_A),
            HALF.direction());
    CurtainTravel unknown = curtains.travel(onlyA);
    assertThat(unknown.capped()).isEmpty();
    assertThat(unknown.unlit()).containsExactly(Place.END);
    assertThat(unknown.notes()).contains(CurtainNote.SENSOR_DARK);
  }

  @Test
  void aShutterThatClosesBeforeTheCentreIsCappedThere() {
    Exposure exposure =
        new InventedCurtains(accelerating(13e-3, 0), accelerating(9e-3, 3.6e-3), PARALLEL, 0.5, 0.5)
            .measured(HALF);
    assertThat(exposure).isInstanceOf(Exposure.NeverFullyOpen.class);
    assertThat(exposure.curtains().orElseThrow().capped())
        .containsExactlyInAnyOrder(Place.CENTRE, Place.END);
  }

  /** Two releases and a pause: the second comes back over the end and lets light in. */
  @Test
  void lightAfterTheSecondCurtainIsBounce() {
    DoubleUnaryOperator second = accelerating(13e-3, 4e-3);
    DoubleUnaryOperator bouncing =
        at -> {
          double place = second.applyAsDouble(at);
          boolean bounces = at > 28e-3 && at < 33e-3;
          return bounces ? place - 10 * Math.sin((at - 28e-3) / 5e-3 * Math.PI) : place;
        };
    PlacePassing end =
        new InventedCurtains(accelerating(13e-3, 0), bouncing, PARALLEL, 0.5, 0.5)
            .travel(HALF)
            .at(Place.END);
    assertThat(end.bounceSeconds().orElseThrow()).isBetween(2e-3, 3.5e-3);
    assertThat(end.bounceAfterSeconds().orElseThrow()).isPositive();
    assertThat(end.effectiveSeconds().orElseThrow())
        .isCloseTo(4e-3 + end.bounceSeconds().getAsDouble(), within(1e-6));
    assertThat(end.bounceStops()).isBetween(0.5, 0.9);
    assertThat(end.dipSeconds()).isEmpty();
  }

  @Test
  void lightThatLacksWhileOpenIsADip() {
    DoubleUnaryOperator first = accelerating(13e-3, 0);
    DoubleUnaryOperator bouncing =
        at ->
            at > 24e-3 && at < 27e-3
                ? 24 - 10 * Math.sin((at - 24e-3) / 3e-3 * Math.PI)
                : first.applyAsDouble(at);
    PlacePassing end =
        new InventedCurtains(bouncing, accelerating(13e-3, 30e-3), PARALLEL, 0.5, 0.5)
            .travel(HALF)
            .at(Place.END);
    assertThat(end.dipSeconds().orElseThrow()).isBetween(0.8e-3, 2.2e-3);
    assertThat(end.bounceSeconds()).isEmpty();
    assertThat(end.effectiveSeconds().orElseThrow())
        .isCloseTo(30e-3 - end.dipSeconds().getAsDouble(), within(1e-6));
  }

  /** The first curtain covers the end again before the second is there. */
  @Test
  void aFirstCurtainThatComesBackIsNotTakenForTheSecond() {
    DoubleUnaryOperator first = accelerating(13e-3, 0);
    DoubleUnaryOperator back =
        at -> at > 24e-3 ? Math.max(10, 24 - (at - 24e-3) * 6e3) : first.applyAsDouble(at);
    CurtainTravel travel =
        new InventedCurtains(back, accelerating(13e-3, 16e-3), PARALLEL, 0.5, 0.5).travel(HALF);
    assertThat(travel.second()).isEmpty();
    PlacePassing end = travel.at(Place.END);
    assertThat(end.coversSeconds()).isEmpty();
    assertThat(end.dipSeconds().orElseThrow()).isPositive();
    assertThat(end.effectiveSeconds().orElseThrow()).isLessThan(8e-3);
    assertThat(travel.notes()).doesNotContain(CurtainNote.ONE_CURTAIN);
  }

  @Test
  void theDirectionThatWasLearntHolds() {
    CurtainTravel travel = alike(1 / 128.0, PARALLEL).reversed().travel(HALF);
    assertThat(travel.direction()).isEqualTo(Direction.A_TO_B);
    assertThat(travel.notes()).containsExactly(CurtainNote.TRAVEL_REVERSED);
    assertThat(travel.first()).isEmpty();
    CurtainTravel learnt =
        alike(1 / 128.0, PARALLEL).reversed().travel(HALF.going(Direction.B_TO_A));
    assertThat(learnt.notes()).isEmpty();
    assertThat(learnt.first()).isPresent();
  }

  /** Nobody tells the order from a firing that one outer sensor alone saw. */
  @Test
  void oneOuterSensorTellsNoDirection() {
    OuterSensors nothing = OuterSensors.UNKNOWN;
    CurtainTravel travel = alike(1 / 128.0, PARALLEL).withDead(Channel.OUTER_B).travel(nothing);
    assertThat(travel.notes())
        .contains(
            CurtainNote.DIRECTION_NOT_KNOWN,
            CurtainNote.SENSOR_DARK,
            CurtainNote.OUTER_LIGHT_NOT_READ);
    assertThat(travel.capped()).isEmpty();
  }

  /** With the centre and an outer plug exchanged the centre is not passed between the others. */
  @Test
  void exchangedSensorsAreNoticed() {
    List<Channel> as = List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH, Channel.OUTER_A);
    Firing right = alike(1 / 128.0, PARALLEL).firing();
    // The outer one at the start is plugged in as the centre, and the centre as A.
    List<Edge> wrong = new ArrayList<>();
    for (Edge edge : right.edges()) {
      switch (edge.channel()) {
        case OUTER_A -> {
          wrong.add(new Edge(as.get(0), edge.high(), edge.ticks() - 500));
          wrong.add(new Edge(as.get(1), edge.high(), edge.ticks() + 500));
        }
        case CENTRE_LOW -> wrong.add(new Edge(as.get(2), edge.high(), edge.ticks()));
        case OUTER_B -> wrong.add(edge);
        default -> {}
      }
    }
    wrong.replaceAll(
        edge ->
            edge.channel().code() < Channel.OUTER_A.code() && !edge.high()
                ? new Edge(
                    edge.channel(),
                    false,
                    edge.ticks() + (edge.channel() == as.get(0) ? 1000 : -1000))
                : edge);
    wrong.sort(Comparator.comparingLong(Edge::ticks));
    Exposure exposure =
        new CurtainMethod(PARALLEL, HALF, 1e-6)
            .measure(new Firing(wrong, List.of()), LevelPair.GAUSS, InventedCurtains.RATE);
    assertThat(exposure.curtains().orElseThrow().notes()).contains(CurtainNote.SENSORS_CROSSED);
  }

  /** A lens at f/2 in front of a gap of 5 mm widens each shadow by 2.5 mm. */
  @Test
  void aLensThatIsLeftOnIsSeenInTheRamps() {
    CurtainTravel travel = alike(1 / 128.0, LAMP).withLens(2.5).travel(HALF);
    assertThat(travel.notes()).containsExactly(CurtainNote.RAMPS_TOO_LONG);
    assertThat(alike(1 / 128.0, LAMP).travel(HALF).notes()).isEmpty();
  }

  /** A lamp that is too near or large blurs a slit of 1 mm away. */
  @Test
  void blurWiderThanTheSlitIsSaid() {
    CurtainGeometry near = new CurtainGeometry(36, 16.2, 0.5, 8, 90, 30);
    Exposure exposure =
        new InventedCurtains(accelerating(17e-3, 0), accelerating(17e-3, 0.55e-3), near, 0.5, 0.5)
            .measured(HALF);
    assertThat(exposure).isInstanceOf(Exposure.NeverFullyOpen.class);
    assertThat(exposure.curtains().orElseThrow().notes())
        .contains(CurtainNote.BLUR_WIDER_THAN_SLIT);
    assertThat(exposure.curtains().get().capped()).isEmpty();
  }

  @Test
  void aSensorThatSwitchesTooFarFromHalfIsSaid() {
    InventedCurtains curtains =
        new InventedCurtains(
            accelerating(13e-3, 0), accelerating(13e-3, 1 / 128.0), LAMP, 0.8, 0.5);
    assertThat(curtains.travel(sensors(0.8, 0.5)).notes())
        .containsExactly(CurtainNote.OUTER_LEVEL_OFF);
  }

  /** The second curtain stops before the end: the sensor there stays in light. */
  @Test
  void oneCurtainOnlyIsSaid() {
    DoubleUnaryOperator second = accelerating(13e-3, 4e-3);
    CurtainTravel travel =
        new InventedCurtains(
                accelerating(13e-3, 0),
                at -> Math.min(10, second.applyAsDouble(at)),
                PARALLEL,
                0.5,
                0.5)
            .travel(HALF);
    assertThat(travel.notes()).containsExactly(CurtainNote.ONE_CURTAIN);
    assertThat(travel.first()).isPresent();
    assertThat(travel.second()).isEmpty();
    assertThat(travel.at(Place.END).effectiveSeconds()).isEmpty();
  }

  /** Where no outer sensor has ever seen light, the slit is timed as blades are. */
  @Test
  void withoutOuterLightTheCentreIsTimedAsBladesAre() {
    InventedCurtains curtains =
        alike(1 / 128.0, PARALLEL).withDead(Channel.OUTER_A, Channel.OUTER_B);
    assertThat(curtains.measured(OuterSensors.UNKNOWN))
        .isEqualTo(
            LeafExposureMethod.measure(curtains.firing(), LevelPair.GAUSS, InventedCurtains.RATE));
  }

  @ParameterizedTest
  @CsvSource({"8, 13", "13, 9", "30, 8"})
  void theCurveGoesThroughItsThreePoints(double before, double after) {
    CurtainCurve curve = new CurtainCurve(16, 1, 1 + before, 1 + before + after);
    assertThat(curve.secondsAt(-16)).isCloseTo(1, within(1e-9));
    assertThat(curve.secondsAt(0)).isCloseTo(1 + before, within(1e-9));
    assertThat(curve.secondsAt(16)).isCloseTo(1 + before + after, within(1e-9));
    assertThat(curve.secondsAt(18)).isGreaterThan(curve.secondsAt(16));
    assertThat(curve.secondsAt(-18)).isLessThan(1);
    double speed = (17e-3 - 15e-3) / (curve.secondsAt(17) - curve.secondsAt(15));
    assertThat(curve.metresPerSecondAt(16)).isCloseTo(speed, within(0.02 * speed));
  }

  /** Half light in the middle, and the same whichever side. */
  @ParameterizedTest
  @CsvSource({"0.5, 0", "0.5, 0.17", "0.3, 0.6"})
  void aShadowIsSymmetric(double slit, double blur) {
    EdgeShadow shadow = new EdgeShadow(slit, blur);
    assertThat(shadow.light(0)).isCloseTo(0.5, within(1e-12));
    assertThat(shadow.light(shadow.widthMillimetres() / 2)).isCloseTo(1, within(1e-12));
    for (double light : new double[] {0.1, 0.3, 0.45}) {
      assertThat(shadow.millimetresAt(light))
          .isCloseTo(-shadow.millimetresAt(1 - light), within(1e-9));
      assertThat(shadow.light(shadow.millimetresAt(light))).isCloseTo(light, within(1e-9));
    }
  }
}
