package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Direction;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.Place;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a session learns of curtains and their sensors from firing to firing. */
class CurtainsInSessionTest {
  private static final LightLevels LIGHT =
      new LightLevels(20, 820, 20 + 800 * LevelPair.GAUSS.low(), 20 + 800 * LevelPair.GAUSS.high());
  private static final double[] EVEN = {8e-3, 8e-3, 8e-3};
  private static final double[] CAPPED = {1.2e-3, 0.6e-3, 0};

  private final InventedBench bench = new InventedBench();

  private record Event(Channel channel, boolean high, double seconds) {}

  private void begin(ShutterKind kind, String frame) {
    RunConditions conditions =
        frame.isEmpty()
            ? RunConditions.NONE
            : new RunConditions(OptionalDouble.empty(), Map.of(RunOption.FRAME.name(), frame));
    bench.begin(
        InventedBench.setup(
                Phase.AS_LEFT, 9, List.of(InventedBench.S125), List.of(), CameraCustoms.NONE)
            .withShutterKind(kind)
            .withConditions(conditions));
  }

  private void begin() {
    begin(ShutterKind.CURTAIN_LONG_SIDE, "24 x 36");
  }

  /** Exposures at start, centre and end; 0 is dark. The first curtain takes 6 and 5 ms. */
  private void fire(Channel start, Channel end, double... exposures) {
    List<Event> events = new ArrayList<>();
    double[] opens = {0, 6e-3, 11e-3};
    Channel[] channels = {start, Channel.CENTRE_LOW, end};
    double ramp = 0.15e-3;
    for (int i = 0; i < 3; i++) {
      if (exposures[i] > 0) {
        boolean centre = i == 1;
        double early = centre ? ramp / 2 / Math.sqrt(3) : 0;
        double shuts = opens[i] + exposures[i];
        events.add(new Event(channels[i], true, opens[i] - early));
        events.add(new Event(channels[i], false, shuts + early));
        if (centre) {
          events.add(new Event(Channel.CENTRE_HIGH, true, opens[i] + early));
          events.add(new Event(Channel.CENTRE_HIGH, false, shuts - early));
        }
      }
    }
    events.sort(Comparator.comparingDouble(Event::seconds));
    double from = bench.now;
    events.forEach(each -> bench.edge(each.channel(), each.high(), from + each.seconds()));
    bench.now = from + 30e-3;
    bench.quiet();
  }

  private void fire(double... exposures) {
    fire(Channel.OUTER_A, Channel.OUTER_B, exposures);
  }

  private CurtainTravel travel(int number) {
    return bench.result(number).exposure().curtains().orElseThrow();
  }

  @Test
  void whatALaterFiringTellsHoldsForTheEarlierOnes() {
    begin();
    fire(CAPPED);
    assertThat(travel(1).capped()).isEmpty();
    assertThat(travel(1).notes())
        .contains(CurtainNote.SENSOR_DARK, CurtainNote.DIRECTION_NOT_KNOWN);
    fire(EVEN);
    assertThat(travel(1).capped()).containsExactly(Place.END);
    assertThat(travel(1).notes())
        .doesNotContain(CurtainNote.SENSOR_DARK, CurtainNote.DIRECTION_NOT_KNOWN);
    assertThat(bench.news(SessionEvent.Changed.class))
        .extracting(each -> each.result().key())
        .containsExactly(bench.result(1).key());
    assertThat(bench.result(1).measuredWith().outer().seen())
        .containsExactlyInAnyOrder(Channel.OUTER_A, Channel.OUTER_B);
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.TIMED);
    assertThat(bench.result(1).effectiveSeconds().getAsDouble()).isCloseTo(0.6e-3, within(1e-6));
  }

  /** The bar may hang the other way round: that is found, and what was dark was not the end. */
  @Test
  void theDirectionIsLearntOnce() {
    begin();
    fire(Channel.OUTER_B, Channel.OUTER_A, EVEN);
    assertThat(travel(1).direction()).isEqualTo(Direction.B_TO_A);
    assertThat(travel(1).first()).isPresent();
    fire(EVEN);
    assertThat(travel(2).direction()).isEqualTo(Direction.B_TO_A);
    assertThat(travel(2).notes()).contains(CurtainNote.TRAVEL_REVERSED);
    fire(EVEN);
    // Each note is said once in a run, however often it holds.
    assertThat(bench.news(SessionEvent.CurtainsNoted.class))
        .containsOnlyOnce(new SessionEvent.CurtainsNoted(CurtainNote.TRAVEL_REVERSED));
    begin(ShutterKind.CURTAIN_SHORT_SIDE, "24 x 36");
    fire(EVEN);
    assertThat(travel(4).direction()).isEqualTo(Direction.A_TO_B);
    assertThat(travel(4).geometry().frameMillimetres()).isEqualTo(24);
  }

  /** With its light read, a sensor is known to work before it has seen a firing. */
  @Test
  void theLightThatWasSetTellsWhichSensorsWork() {
    bench.handle(
        new SessionInput.LightSet(
            LIGHT,
            TripPoints.EXACT,
            Map.of(
                Channel.OUTER_A, new SensorLight(20, 820),
                Channel.OUTER_B, new SensorLight(20, 620))));
    begin();
    fire(CAPPED);
    assertThat(travel(1).capped()).containsExactly(Place.END);
    assertThat(travel(1).notes())
        .containsExactlyInAnyOrder(CurtainNote.DIRECTION_NOT_KNOWN, CurtainNote.DISTANCES_NOT_SAID);
    assertThat(bench.result(1).measuredWith().outer().a().orElseThrow().level())
        .isCloseTo(0.5, within(1e-9));
    assertThat(bench.result(1).measuredWith().outer().b().orElseThrow().level())
        .isCloseTo(400 / 600.0, within(1e-9));
  }

  @Test
  void aShutterThatClosesBeforeTheCentreDidOpen() {
    begin();
    fire(EVEN);
    bench.press();
    bench.now += 20e-3;
    fire(0.5e-3, 0, 0);
    assertThat(bench.outcomes()).containsExactly(Outcome.TIMED, Outcome.NEVER_FULLY_OPEN);
    assertThat(travel(2).capped()).containsExactlyInAnyOrder(Place.CENTRE, Place.END);
    Exposure.NeverFullyOpen never = (Exposure.NeverFullyOpen) bench.result(2).exposure();
    assertThat(never.lowestSeconds()).isZero();
    assertThat(bench.result(2).errorStops()).isEmpty();
  }

  /** Lag is from the press to first light at the start, and not at the centre 6 ms later. */
  @Test
  void theDelayIsToLightAtTheStart() {
    begin();
    bench.press();
    bench.now += 12e-3;
    fire(EVEN);
    assertThat(bench.result(1).releaseDelaySeconds().getAsDouble()).isCloseTo(12e-3, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "CURTAIN_LONG_SIDE, 24 x 36, FULL, OUTER_DARK",
    "CURTAIN_LONG_SIDE, '', FULL, NO_GEOMETRY",
    "ROTARY, 24 x 36, FULL, OTHER_KIND",
    "CURTAIN_LONG_SIDE, 24 x 36, STARTER, ONE_SENSOR"
  })
  void itSaysOnceWhyOnlyTheCentreIsTimed(
      ShutterKind kind, String frame, BoardTraits.Kind board, CentreOnly why) {
    if (board != BoardTraits.Kind.FULL) {
      bench.handle(
          new SessionInput.RigIs(
              "R-0002", 7, new BoardTraits(InventedBench.RATE, board, false), ""));
    }
    begin(kind, frame);
    fire(0, 8e-3, 0);
    fire(0, 8e-3, 0);
    assertThat(bench.result(1).exposure().curtains()).isEmpty();
    assertThat(bench.news(SessionEvent.CurtainsAtTheCentre.class))
        .containsExactly(new SessionEvent.CurtainsAtTheCentre(why));
  }

  /** Leaves let the outer sensors see light too; nothing is learnt or said of it. */
  @Test
  void bladesHaveNoOuterSensors() {
    begin(ShutterKind.LEAF, "24 x 36");
    fire(EVEN);
    assertThat(bench.result(1).exposure().curtains()).isEmpty();
    assertThat(bench.result(1).measuredWith().outer().seen()).isEqualTo(Set.of());
    assertThat(bench.news(SessionEvent.CurtainsAtTheCentre.class)).isEmpty();
  }
}
