package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LevelCorrection;
import org.halflight.exposure.LevelPair;
import org.halflight.fixtures.Seed;
import org.halflight.fixtures.Seeds;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.LightPaths;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/**
 * Edges of an invented disc, whose geometry is the truth: a slot's part of a turn is its angle over
 * 360, whatever clock and speed.
 */
class DiscReadingTest {
  private static final List<Double> SLOTS = PrintedDisc.SLOT_DEGREES;
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final FrontEnd CENTRE = SensorSet.IDEAL.centre();
  private static final LevelPair LEVELS = LevelPair.GAUSS;
  private static final PrintedDisc CUT_WELL = new PrintedDisc(SLOTS, 0.01, 63);

  /** What a rig sees of it; {@code clockShare} is how much too fast it counts. */
  private static List<Edge> edges(
      TurningDisc disc, int turns, double clockShare, LevelPair levels) {
    SeededDraws draws = new SeededDraws(Seeds.usually(1));
    List<Edge> edges = new ArrayList<>();
    double at = 0;
    for (int turn = 0; turn < turns; turn++) {
      List<Edge> of =
          SensorSet.IDEAL.edges(
              LightPaths.same(disc.turn(turn, 1)),
              0,
              millivolts(levels.low()),
              millivolts(levels.high()),
              draws);
      for (Edge edge : of) {
        double seconds = at + RATE.seconds(edge.ticks());
        edges.add(new Edge(edge.channel(), edge.high(), RATE.ticks(seconds * clockShare)));
      }
      at += disc.turnSeconds(turn);
    }
    return edges;
  }

  private static double millivolts(double level) {
    return CENTRE.darkMillivolts() + level * (CENTRE.fullMillivolts() - CENTRE.darkMillivolts());
  }

  private static DiscReading.Outcome outcome(PrintedDisc disc, List<Edge> edges) {
    return DiscReading.of(disc, edges, RATE, new LevelCorrection(LEVELS, LEVELS), Optional.empty());
  }

  private static DiscReading reading(TurningDisc disc) {
    return ((DiscReading.Found) outcome(CUT_WELL, edges(disc, 30, 1, LEVELS))).reading();
  }

  private static DiscTrouble trouble(List<Edge> edges) {
    return ((DiscReading.Failed) outcome(CUT_WELL, edges)).trouble();
  }

  private static TurningDisc disc() {
    return TurningDisc.of(SLOTS, 10, 4);
  }

  @Test
  void everySlotReadsItsAngleWhateverTheClock() {
    DiscReading reading =
        ((DiscReading.Found) outcome(CUT_WELL, edges(disc(), 30, 1.00345, LEVELS))).reading();
    assertThat(reading.slots()).hasSize(5);
    for (DiscReading.Slot slot : reading.slots()) {
      // Stamps of 62.5 ns, the high level by software (8 ticks), on the narrowest slot of 1 ms.
      assertThat(slot.error()).as(slot.degrees() + " degrees").isCloseTo(0, within(3e-4));
    }
    // 1 ms by true time, 1.00345 ms by the fast clock.
    assertThat(reading.slots().get(0).effectiveSeconds()).isCloseTo(1.00345e-3, within(3e-7));
    assertThat(reading.turnSeconds()).isCloseTo(0.100345, within(1e-6));
    assertThat(reading.agrees()).isTrue();
    assertThat(reading.forward()).isTrue();
    assertThat(reading.clock(600, 50).orElseThrow().fastPpm()).isCloseTo(3450, within(10.0));
    assertThat(reading.clock(600, 50).orElseThrow().standardUncertaintyPpm()).isBetween(50.0, 51.0);
    assertThat(reading.clock(300, 50)).isEmpty();
    // The light of 2.8 mm at 63 mm is 2.55 degrees wide.
    assertThat(reading.beamDegrees()).isCloseTo(2.55, within(0.02));
  }

  @Test
  void aDiscOffItsCentreIsFoundAndTakenOut() {
    for (double where : new double[] {0, 75, 200}) {
      TurningDisc off = disc().offCentre(0.5, where).uneven(2e-4, 1e-3);
      DiscReading reading = reading(off);
      assertThat(reading.disc().millimetres(reading.swingDegrees())).isCloseTo(0.5, within(0.02));
      for (int i = 0; i < 5; i++) {
        DiscReading.Slot slot = reading.slots().get(i);
        double seen = slot.effectiveSeconds() / reading.turnSeconds() * 360;
        assertThat(seen / off.degreesSeen(i) - 1).isCloseTo(0, within(1e-3));
        assertThat(Math.abs(slot.error())).isLessThan(3 * slot.errorSd());
      }
      assertThat(reading.agrees()).as("off towards " + where).isTrue();
    }
  }

  @Test
  void turnedTheOtherWayItReadsTheSame() {
    List<Double> backward = new ArrayList<>(SLOTS);
    Collections.reverse(backward);
    DiscReading reading = reading(TurningDisc.of(backward, 7, 4).offCentre(0.4, 30));
    assertThat(reading.forward()).isFalse();
    assertThat(reading.agrees()).isTrue();
    assertThat(reading.disc().millimetres(reading.swingDegrees())).isCloseTo(0.4, within(0.02));
  }

  /**
   * A low level that lies 4 % of full light too low makes every slot too long by the same time: by
   * 0.02 of what both ramps take, which the chord of a circle tells.
   */
  @Test
  void aLevelBesideItsPlaceIsFoundAsTheSameTimeInEverySlot() {
    LevelPair low = new LevelPair(LEVELS.low() - 0.04, LEVELS.high());
    DiscReading reading =
        ((DiscReading.Found) outcome(CUT_WELL, edges(disc(), 30, 1, low))).reading();
    // A chord at q of a circle: dq/dx = 4/pi sqrt(1 - x^2), x = -0.472 at the node, over the width.
    double perLevel = 2.546 / 360 * 0.1 * Math.PI / 4 / Math.sqrt(1 - 0.472 * 0.472);
    assertThat(reading.offsetSeconds()).isCloseTo(0.04 * perLevel, within(0.1 * 0.04 * perLevel));
    assertThat(reading.slopeError()).isCloseTo(0, within(5e-4));
    assertThat(reading.agrees()).isFalse();
  }

  @Test
  void aSlotThatWasCutTooWideStandsOutAndIsCutWorseThanStated() {
    DiscReading reading = reading(disc().cut(2, 0.2));
    assertThat(reading.isCutWorse()).isTrue();
    DiscReading.Slot wide = reading.slots().get(2);
    assertThat(wide.error()).isGreaterThan(0.004);
    // What it scatters by is what it is uncertain by then.
    assertThat(reading.agrees()).isTrue();
    PrintedDisc measured = new PrintedDisc(List.of(3.6, 7.2, 14.6, 28.8, 57.6), 0.01, 63);
    DiscReading told =
        ((DiscReading.Found) outcome(measured, edges(disc().cut(2, 0.2), 30, 1, LEVELS))).reading();
    assertThat(Math.abs(told.slots().get(2).error())).isLessThan(3e-3);
  }

  @Test
  void aSlotThatIsTooNarrowForTheLightIsLeftOut() {
    for (double light : new double[] {4.4, 5, 6}) {
      DiscReading reading = reading(disc().light(light));
      assertThat(reading.leftOut()).as(light + " mm").containsExactly(3.6);
      assertThat(reading.agrees()).isTrue();
    }
    assertThat(trouble(edges(disc().light(12), 30, 1, LEVELS)))
        .isInstanceOf(DiscTrouble.NeverFullLight.class);
  }

  @Test
  void wrongUseIsToldApart() {
    assertThat(trouble(List.of())).isEqualTo(new DiscTrouble.NoEdges());
    assertThat(trouble(edges(disc(), 3, 1, LEVELS))).isInstanceOf(DiscTrouble.TooFewTurns.class);
    assertThat(trouble(edges(TurningDisc.of(SLOTS.subList(0, 4), 10, 1), 30, 1, LEVELS)))
        .isEqualTo(new DiscTrouble.OtherNumber(4));
    assertThat(trouble(edges(TurningDisc.of(List.of(10., 10., 10.), 10, 1), 30, 1, LEVELS)))
        .isInstanceOf(DiscTrouble.AllAlike.class);
    assertThat(trouble(edges(TurningDisc.of(List.of(5., 20., 9., 40., 60.), 10, 1), 30, 1, LEVELS)))
        .isEqualTo(new DiscTrouble.OtherDisc());
    assertThat(trouble(edges(disc().uneven(0.004, 0), 30, 1, LEVELS)))
        .isInstanceOf(DiscTrouble.Wanders.class);
    assertThat(trouble(edges(disc().offCentre(3, 10), 30, 1, LEVELS)))
        .isInstanceOf(DiscTrouble.OffCentre.class);
    assertThat(trouble(edges(TurningDisc.of(SLOTS, 25, 1), 60, 1, LEVELS)))
        .isInstanceOf(DiscTrouble.TooFast.class);
  }

  @Test
  void turnsInWhichEdgesWereLostAreLeftOut() {
    List<Edge> edges = new ArrayList<>(edges(disc(), 30, 1, LEVELS));
    edges.remove(nth(edges, Channel.CENTRE_LOW, 61));
    edges.remove(nth(edges, Channel.CENTRE_LOW, 120));
    edges.remove(nth(edges, Channel.CENTRE_HIGH, 180));
    DiscReading reading = ((DiscReading.Found) outcome(CUT_WELL, edges)).reading();
    assertThat(reading.turns()).isBetween(15, 25);
    assertThat(reading.agrees()).isTrue();
  }

  private static Edge nth(List<Edge> edges, Channel channel, int n) {
    return edges.stream()
        .filter(edge -> edge.channel() == channel)
        .skip(n)
        .findFirst()
        .orElseThrow();
  }

  /** Stated intervals of offset and slope hold the truth for discs cut as badly as was stated. */
  @Test
  void theStatedUncertaintyHoldsForDiscsThatAreCutThatBadly(@Seed(20261125) long seed) {
    int agree = 0;
    int discs = 200;
    for (int i = 0; i < discs; i++) {
      SeededDraws draws = new SeededDraws(SeededDraws.seedOf(seed, i));
      List<Double> opens = new ArrayList<>();
      List<Double> closes = new ArrayList<>();
      TurningDisc right = disc();
      double reach = PrintedDisc.AS_PRINTED.degrees(PrintedDisc.EDGE_MILLIMETRES);
      for (int slot = 0; slot < SLOTS.size(); slot++) {
        opens.add(right.openDegrees().get(slot) + reach * (2 * draws.uniform() - 1));
        closes.add(right.closeDegrees().get(slot) + reach * (2 * draws.uniform() - 1));
      }
      TurningDisc cut =
          new TurningDisc(opens, closes, 10, 0, 5e-4, 0.3, 360 * draws.uniform(), 63, 2.8, i);
      DiscReading reading =
          ((DiscReading.Found) outcome(PrintedDisc.AS_PRINTED, edges(cut, 15, 1, LEVELS)))
              .reading();
      agree += reading.agrees() ? 1 : 0;
    }
    // 95 % by statement, and more where the edges scatter more than stated; 3.3 binomial sd less.
    assertThat(agree).isGreaterThanOrEqualTo(180);
    System.out.printf("simulated: %d of %d discs agree%n", agree, discs);
  }
}
