package org.halflight.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FiringGrouperTest {
  private static final long MS = 16_000;
  private static final long QUIET = 300 * MS;

  private final FiringGrouper grouper = new FiringGrouper(QUIET, BoardTraits.USUAL);
  private final List<Firing> over = new ArrayList<>();

  private void edge(Channel channel, boolean high, long ticks) {
    over.addAll(grouper.add(new Edge(channel, high, ticks)));
  }

  private void pulse(long startTicks, long endTicks) {
    edge(Channel.CENTRE_LOW, true, startTicks);
    edge(Channel.CENTRE_LOW, false, endTicks);
  }

  private void advance(long ticks) {
    over.addAll(grouper.advance(ticks));
  }

  @Test
  void aFiringIsOverWhenQuietAndLateTimeHavePassed() {
    pulse(1000, 1000 + 2 * MS);
    long end = 1000 + 2 * MS;
    advance(end + QUIET + BoardTraits.USUAL.lateTicks());
    assertThat(over).isEmpty();
    assertThat(grouper.underway()).isPresent();
    advance(end + QUIET + BoardTraits.USUAL.lateTicks() + 1);
    assertThat(over).hasSize(1);
    assertThat(over.get(0).edges()).hasSize(2);
    assertThat(over.get(0).damage()).isEmpty();
    assertThat(grouper.underway()).isEmpty();
  }

  @Test
  void aContactThatChattersForEverLetsTheFiringSettle() {
    pulse(0, 5 * MS);
    for (int i = 0; i < 4000; i++) {
      edge(Channel.CONTACT, i % 2 == 0, (6 + 10L * i) * MS);
    }
    assertThat(over).hasSize(1);
    assertThat(over.get(0).of(Channel.CENTRE_LOW)).hasSize(2);
    assertThat(over.get(0).lastTicks())
        .isBetween((FiringGrouper.QUIETS_AFTER_LIGHT - 1) * QUIET, 5 * MS + 10 * QUIET);
    // The next opening is not swallowed by the noise, and no edge is lost.
    pulse(40_010 * MS, 40_015 * MS);
    advance(50_000 * MS);
    assertThat(over.get(over.size() - 1).of(Channel.CENTRE_LOW)).hasSize(2);
    assertThat(over.stream().mapToInt(f -> f.edges().size()).sum()).isEqualTo(4004);
    assertThat(over).hasSize(2);
  }

  @Test
  void noiseWithoutLightIsCutUp() {
    long all = 3 * FiringGrouper.QUIETS_WITHOUT_LIGHT * QUIET / (100 * MS);
    for (int i = 0; i < all; i++) {
      edge(Channel.CLICK, i % 2 == 0, 100L * i * MS);
    }
    advance(4 * FiringGrouper.QUIETS_WITHOUT_LIGHT * QUIET);
    assertThat(over).hasSize(3);
  }

  @Test
  void nothingCutsAnExposureThatIsStillOpen() {
    edge(Channel.CENTRE_LOW, true, 0);
    for (int i = 1; i <= 20_000; i++) {
      edge(Channel.CLICK, i % 2 == 1, 100L * i * MS);
    }
    assertThat(over).isEmpty();
    edge(Channel.CENTRE_LOW, false, 2_000_100 * MS);
    advance(2_001_000 * MS);
    assertThat(over).hasSize(1);
  }

  @Test
  void anEdgeAfterTheQuietTimeStartsAnotherFiring() {
    pulse(0, MS);
    pulse(MS + QUIET + 1, MS + QUIET + 1 + MS);
    over.addAll(grouper.finish());
    assertThat(over).extracting(f -> f.edges().size()).containsExactly(2, 2);
  }

  @Test
  void anEdgeAtTheEndOfTheQuietTimeStillBelongs() {
    pulse(0, MS);
    pulse(MS + QUIET, MS + QUIET + MS);
    over.addAll(grouper.finish());
    assertThat(over).extracting(f -> f.edges().size()).containsExactly(4);
  }

  @Test
  void bounceStaysWithItsFiring() {
    pulse(0, 2 * MS);
    pulse(3 * MS, 3 * MS + 4000);
    pulse(5 * MS, 5 * MS + 900);
    advance(10 * QUIET);
    assertThat(over).hasSize(1);
    assertThat(Pulses.of(over.get(0), Channel.CENTRE_LOW).pulses()).hasSize(3);
  }

  @Test
  void aTimeExposureMayLastAnHourAndWrapTheLowBitsOften() {
    long start = 0xFFFF_FF00L;
    long hour = 3600L * 16_000_000;
    edge(Channel.CENTRE_LOW, true, start);
    edge(Channel.CENTRE_HIGH, true, start + 10);
    for (long t = start; t < start + hour; t += 1 << 22) {
      advance(t);
    }
    assertThat(over).isEmpty();
    assertThat(grouper.isLight()).isTrue();
    edge(Channel.CENTRE_HIGH, false, start + hour);
    edge(Channel.CENTRE_LOW, false, start + hour + 10);
    advance(start + hour + 2 * QUIET);
    assertThat(over).hasSize(1);
    assertThat(over.get(0).lastTicks() - over.get(0).firstTicks()).isEqualTo(hour + 10);
    assertThat(grouper.isLight()).isFalse();
  }

  @Test
  void contactClickAndReleaseThatStayHighHoldNothingOpen() {
    edge(Channel.RELEASE, true, 0);
    edge(Channel.CONTACT, true, 10);
    edge(Channel.CLICK, true, 20);
    pulse(30, 30 + MS);
    advance(30 + MS + 2 * QUIET);
    assertThat(over).hasSize(1);
    edge(Channel.RELEASE, false, 10 * QUIET);
    advance(12 * QUIET);
    assertThat(over).hasSize(2);
    assertThat(over.get(1).damage()).isEmpty();
  }

  @Test
  void everyLightChannelHoldsAFiringOpen() {
    for (Channel channel : Channel.values()) {
      FiringGrouper one = new FiringGrouper(QUIET, BoardTraits.USUAL);
      one.add(new Edge(channel, true, 0));
      assertThat(one.advance(5 * QUIET).isEmpty())
          .as("%s", channel)
          .isEqualTo(channel.isLight() || channel == Channel.KNOB);
    }
  }

  @Test
  void edgesOutOfOrderAcrossChannelsAreSortedAndEqualTicksStayAsTheyCame() {
    edge(Channel.CENTRE_LOW, true, 1000);
    edge(Channel.CENTRE_LOW, false, 300_000);
    edge(Channel.CENTRE_HIGH, true, 1500);
    edge(Channel.CONTACT, true, 1500);
    edge(Channel.CENTRE_HIGH, false, 299_000);
    advance(5 * QUIET);
    assertThat(over).hasSize(1);
    assertThat(over.get(0).edges())
        .extracting(Edge::ticks)
        .containsExactly(1000L, 1500L, 1500L, 299_000L, 300_000L);
    assertThat(over.get(0).edges().get(1).channel()).isEqualTo(Channel.CENTRE_HIGH);
    assertThat(over.get(0).damage()).isEmpty();
  }

  @Test
  void aLateEdgeOfTheOldFiringDoesNotFallIntoTheNew() {
    pulse(0, MS);
    long next = MS + QUIET + 100;
    edge(Channel.CENTRE_LOW, true, next);
    edge(Channel.CLICK, true, next - 200);
    edge(Channel.CENTRE_LOW, false, next + MS);
    advance(5 * QUIET);
    // The late click lies within the quiet time of the first firing, and its own quiet time then
    // reaches over to the next pulse: all one firing, as if the edges had come in order.
    assertThat(over).hasSize(1);
    assertThat(over.get(0).edges()).extracting(Edge::ticks).isSorted();
  }

  @Test
  void theSameLevelTwiceIsAContradiction() {
    edge(Channel.CENTRE_LOW, true, 0);
    edge(Channel.CENTRE_LOW, true, MS);
    edge(Channel.CENTRE_LOW, false, 2 * MS);
    assertThat(grouper.underway().orElseThrow().damage())
        .containsExactly(Firing.Damage.CONTRADICTION);
    advance(5 * QUIET);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.CONTRADICTION);
    pulse(10 * QUIET, 10 * QUIET + MS);
    advance(15 * QUIET);
    assertThat(over.get(1).damage()).isEmpty();
  }

  @Test
  void damageBelongsToTheFiringUntilItsQuietTimeHasPassed() {
    pulse(0, MS);
    advance(MS + QUIET);
    grouper.damage(Firing.Damage.EDGES_LOST);
    advance(5 * QUIET);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.EDGES_LOST);
    assertThat(grouper.damageBetweenFirings()).isZero();
  }

  @Test
  void damageBetweenFiringsIsCountedAndLeavesTheNextOneWhole() {
    pulse(0, MS);
    advance(5 * QUIET);
    grouper.damage(Firing.Damage.LINES_LOST);
    advance(5 * QUIET + 10 * MS);
    pulse(8 * QUIET, 8 * QUIET + MS);
    advance(11 * QUIET);
    assertThat(over).hasSize(2);
    assertThat(over.get(1).damage()).isEmpty();
    assertThat(grouper.damageBetweenFirings()).isEqualTo(1);
  }

  @Test
  void damageThatMayHaveComeWithinTheQuietTimeBeforeAFiringIsInIt() {
    advance(5 * QUIET);
    grouper.damage(Firing.Damage.LINES_LOST);
    pulse(8 * QUIET, 8 * QUIET + MS);
    advance(11 * QUIET);
    // Nothing says that what was lost did not come just before the light.
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.LINES_LOST);
  }

  @Test
  void lostLinesWithoutEdgesLeaveTheNextFiringWhole() {
    lostJustBeforeAFiring(Firing.Damage.LINES_LOST, true);
    assertThat(over.get(0).damage()).isEmpty();
    assertThat(grouper.damageBetweenFirings()).isEqualTo(1);
  }

  @Test
  void lostLinesWithEdgesStayLostHoweverOftenIsCountedBehindThem() {
    lostJustBeforeAFiring(Firing.Damage.LINES_LOST, false);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.LINES_LOST);
  }

  @Test
  void aCountOfEdgesThatCameSaysNothingOfThoseThatTheRigLost() {
    lostJustBeforeAFiring(Firing.Damage.EDGES_LOST, true);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.EDGES_LOST);
  }

  private void lostJustBeforeAFiring(Firing.Damage damage, boolean allCame) {
    advance(5 * QUIET);
    grouper.damage(damage);
    advance(8 * QUIET - QUIET / 2);
    grouper.edgesCounted(allCame);
    grouper.edgesCounted(true);
    pulse(8 * QUIET, 8 * QUIET + MS);
    advance(11 * QUIET);
    assertThat(over).hasSize(1);
  }

  @Test
  void damageOfAFiringThatWasStillInTheLateTimeDoesNotReachTheNext() {
    pulse(0, MS);
    grouper.damage(Firing.Damage.LINES_LOST);
    advance(2 * MS);
    pulse(3 * QUIET, 3 * QUIET + MS);
    advance(6 * QUIET);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.LINES_LOST);
    assertThat(over.get(1).damage()).isEmpty();
  }

  @Test
  void damageBetweenTwoEdgesThatWaitIsToldBetweenThem() {
    pulse(0, MS);
    advance(MS + QUIET / 2);
    // Both edges of a second opening are lost with what came between, then light comes again.
    grouper.damage(Firing.Damage.LINES_LOST);
    pulse(MS + 3 * QUIET, 2 * MS + 3 * QUIET);
    advance(9 * QUIET);
    assertThat(over).hasSize(2);
    assertThat(over).allSatisfy(f -> assertThat(f.damage()).isNotEmpty());
  }

  @Test
  void aBeatThatContradictsReachesBackToTheFiringThatIsOver() {
    over.addAll(grouper.beat(0, 0));
    edge(Channel.CONTACT, true, MS);
    edge(Channel.CONTACT, false, 2 * MS);
    long beat = 2 * MS + QUIET + 2 * BoardTraits.USUAL.lateTicks();
    over.addAll(grouper.beat(beat, 1 << Channel.CONTACT.code()));
    assertThat(over).hasSize(1);
    assertThat(grouper.drainLateDamage()).isEmpty();
    over.addAll(grouper.beat(2 * beat, 1 << Channel.CONTACT.code()));
    assertThat(grouper.drainLateDamage())
        .containsExactly(new FiringGrouper.LateDamage(Firing.Damage.CONTRADICTION, 2 * MS));
    assertThat(grouper.drainLateDamage()).isEmpty();
  }

  @Test
  void lightWhoseBeginningWasLostMarksTheFiringThatEndsIt() {
    over.addAll(grouper.beat(0, 0));
    for (int i = 1; i < 30; i++) {
      over.addAll(grouper.beat(i * QUIET, 1));
    }
    edge(Channel.CENTRE_LOW, false, 30 * QUIET);
    advance(33 * QUIET);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.CONTRADICTION);
  }

  @Test
  void anEdgeThatComesFarTooLateIsKeptInItsPlaceAndMarks() {
    edge(Channel.CENTRE_LOW, true, 10 * MS);
    edge(Channel.CENTRE_LOW, false, 100 * MS);
    advance(150 * MS);
    edge(Channel.CENTRE_LOW, true, 50 * MS);
    edge(Channel.CENTRE_LOW, false, 40 * MS);
    advance(5 * QUIET);
    assertThat(over).hasSize(1);
    assertThat(over.get(0).edges()).extracting(Edge::ticks).isSorted();
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.CONTRADICTION);
    assertThat(Pulses.of(over.get(0), Channel.CENTRE_LOW)).isNotNull();
  }

  @Test
  void aLostLinkEndsTheFiringWithItsDamageAndForgetsTheTime() {
    edge(Channel.CENTRE_LOW, true, 1L << 40);
    over.addAll(grouper.finish(Firing.Damage.LINK_LOST));
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.LINK_LOST);
    pulse(5, 5 + MS);
    advance(5 * QUIET);
    assertThat(over).hasSize(2);
    assertThat(over.get(1).damage()).isEmpty();
  }

  @Test
  void aLostLinkWithNothingUnderWayMakesNoFiring() {
    assertThat(grouper.finish(Firing.Damage.LINK_LOST)).isEmpty();
    assertThat(grouper.finish()).isEmpty();
    assertThat(grouper.damageBetweenFirings()).isEqualTo(1);
  }

  @Test
  void aBeatThatAgreesChangesNothing() {
    over.addAll(grouper.beat(0, 0));
    pulse(50 * MS, 52 * MS);
    over.addAll(grouper.beat(262 * MS, 0));
    over.addAll(grouper.beat(524 * MS, 0));
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).isEmpty();
    assertThat(grouper.damageBetweenFirings()).isZero();
  }

  @Test
  void aLostClosingIsFoundByTheBeatAndDoesNotHoldTheFiringOpen() {
    over.addAll(grouper.beat(0, 0));
    edge(Channel.CENTRE_LOW, true, 50 * MS);
    over.addAll(grouper.beat(262 * MS, 0));
    over.addAll(grouper.beat(524 * MS, 0));
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).containsExactly(Firing.Damage.CONTRADICTION);
  }

  @Test
  void aBeatWaitsForEdgesFromBeforeItThatComeBehindIt() {
    edge(Channel.CENTRE_LOW, true, 50 * MS);
    over.addAll(grouper.beat(262 * MS, 0));
    edge(Channel.CENTRE_LOW, false, 255 * MS);
    over.addAll(grouper.beat(524 * MS, 0));
    over.addAll(grouper.beat(786 * MS, 0));
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).isEmpty();
  }

  @Test
  void aBeatInTheSameInstantAsAnEdgeIsNoWitness() {
    edge(Channel.CENTRE_LOW, true, 50 * MS);
    over.addAll(grouper.beat(100 * MS, 0));
    edge(Channel.CENTRE_LOW, false, 100 * MS + 20);
    advance(5 * QUIET);
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).isEmpty();
  }

  @Test
  void lightFromBeforeTheFirstEdgeIsKnownFromTheBeat() {
    over.addAll(grouper.beat(0, 1));
    edge(Channel.CLICK, true, 50 * MS);
    advance(5 * QUIET);
    assertThat(over).isEmpty();
    edge(Channel.CENTRE_LOW, false, 6 * QUIET);
    advance(8 * QUIET);
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).isEmpty();
  }

  @Test
  void underwayShowsEdgesBeforeTheyAreSettled() {
    pulse(0, MS);
    assertThat(grouper.underway().orElseThrow().edges()).hasSize(2);
  }

  @Test
  void aPressAfterTheDarkBeginsAFiringThoughTheContactNeverRests() {
    edge(Channel.RELEASE, true, 0);
    edge(Channel.RELEASE, false, 1);
    pulse(2 * MS, 4 * MS);
    for (int i = 1; i < 100; i++) {
      edge(Channel.CONTACT, i % 2 == 1, 4 * MS + i * QUIET / 20);
    }
    long press = 4 * MS + 5 * QUIET;
    edge(Channel.RELEASE, true, press);
    edge(Channel.CONTACT, true, press + 1);
    pulse(press + MS, press + 2 * MS);
    advance(press + 5 * QUIET);
    assertThat(over).hasSize(2);
    assertThat(over.get(1).firstTicks()).isEqualTo(press);
  }

  @Test
  void aQuietTimeOfZeroIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new FiringGrouper(0, BoardTraits.USUAL));
  }
}
