package org.halflight.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What the knob contact does beside firings: it is kept with them, and changes nothing of them. */
class KnobTrailTest {
  private static final long MS = 16_000;
  private static final long QUIET = 200 * MS;
  private static final long LIGHT = 10_000 * MS;

  private final FiringGrouper grouper = new FiringGrouper(QUIET, BoardTraits.USUAL);
  private final List<Firing> over = new ArrayList<>();

  private void edge(Channel channel, boolean high, long ticks) {
    over.addAll(grouper.add(new Edge(channel, high, ticks)));
  }

  private void knob(boolean high, long ticks) {
    edge(Channel.KNOB, high, ticks);
  }

  private void firing(long ticks) {
    edge(Channel.CENTRE_LOW, true, ticks);
    edge(Channel.CENTRE_LOW, false, ticks + 125 * MS);
  }

  private void beat(long ticks, int levels) {
    over.addAll(grouper.beat(ticks, levels));
  }

  private static List<Long> ticks(List<Edge> edges) {
    return edges.stream().map(Edge::ticks).toList();
  }

  @Test
  void aKnobThatMovesAloneIsNoFiring() {
    for (int i = 0; i < 100; i++) {
      knob(i % 2 == 0, i * 90L * MS);
      assertThat(grouper.isUnderway()).isFalse();
      assertThat(grouper.underway()).isEmpty();
    }
    beat(60_000 * MS, 0);
    assertThat(over).isEmpty();
    assertThat(grouper.drainLateKnob()).isEmpty();
    assertThat(grouper.finish()).isEmpty();
  }

  @Test
  void aFiringGetsWhatTheKnobDidUpToThreeSecondsBeforeItsLight() {
    knob(true, LIGHT - 3001 * MS);
    knob(false, LIGHT - 3000 * MS);
    knob(true, LIGHT - 20 * MS);
    firing(LIGHT);
    knob(false, LIGHT + 100 * MS);
    beat(LIGHT + 500 * MS, 0);
    assertThat(over).hasSize(1);
    Firing only = over.get(0);
    assertThat(ticks(only.knob()))
        .containsExactly(LIGHT - 3000 * MS, LIGHT - 20 * MS, LIGHT + 100 * MS);
    assertThat(only.of(Channel.KNOB)).isEqualTo(only.knob());
    assertThat(only.firstTicks()).isEqualTo(LIGHT);
    assertThat(only.edges()).hasSize(2);
  }

  @Test
  void whatComesWithinASecondOfTheLightIsHandedOnLater() {
    firing(LIGHT);
    beat(LIGHT + 400 * MS, 0);
    assertThat(over).hasSize(1);
    knob(true, LIGHT + 700 * MS);
    knob(false, LIGHT + 1000 * MS);
    knob(true, LIGHT + 1001 * MS);
    assertThat(grouper.drainLateKnob()).isEmpty();
    beat(LIGHT + 1100 * MS, 0x80);
    List<FiringGrouper.LateKnob> late = grouper.drainLateKnob();
    assertThat(late).hasSize(1);
    assertThat(late.get(0).firstTicks()).isEqualTo(LIGHT);
    assertThat(ticks(late.get(0).edges())).containsExactly(LIGHT + 700 * MS, LIGHT + 1000 * MS);
    assertThat(grouper.drainLateKnob()).isEmpty();
  }

  @Test
  void aPressWithoutLightHasItsKnobAroundIt() {
    knob(true, LIGHT - 2000 * MS);
    edge(Channel.RELEASE, true, LIGHT);
    knob(false, LIGHT + 10 * MS);
    edge(Channel.RELEASE, false, LIGHT + 50 * MS);
    beat(LIGHT + 400 * MS, 0);
    assertThat(over).hasSize(1);
    assertThat(ticks(over.get(0).knob())).containsExactly(LIGHT - 2000 * MS, LIGHT + 10 * MS);
  }

  @Test
  void theWindowGoesByTheLightAndNotByThePressBeforeIt() {
    edge(Channel.RELEASE, true, LIGHT - 2000 * MS);
    // A contact that chatters holds press and light together.
    IntStream.range(0, 20)
        .forEach(i -> edge(Channel.CONTACT, i % 2 == 0, LIGHT - (1900 - 95L * i) * MS));
    knob(true, LIGHT - 50 * MS);
    firing(LIGHT);
    knob(false, LIGHT + 200 * MS);
    beat(LIGHT + 600 * MS, 0);
    assertThat(over).hasSize(1);
    assertThat(ticks(over.get(0).knob())).containsExactly(LIGHT - 50 * MS, LIGHT + 200 * MS);
  }

  @Test
  void oneThatIsNearTwoFiringsGoesToBoth() {
    firing(LIGHT);
    beat(LIGHT + 400 * MS, 0);
    knob(true, LIGHT + 500 * MS);
    firing(LIGHT + 2000 * MS);
    beat(LIGHT + 3500 * MS, 0x80);
    assertThat(over).hasSize(2);
    assertThat(grouper.drainLateKnob())
        .singleElement()
        .satisfies(late -> assertThat(late.firstTicks()).isEqualTo(LIGHT));
    assertThat(ticks(over.get(1).knob())).containsExactly(LIGHT + 500 * MS);
  }

  @Test
  void aKnobThatChattersWithoutEndExtendsNoFiringAndIsNotKeptForEver() {
    long ticks = 0;
    for (int i = 0; i < 40_000; i++) {
      ticks = i * 5L * MS;
      knob(i % 2 == 0, ticks);
      if (i == 2000) {
        firing(ticks);
      }
      if (i % 50 == 0) {
        beat(ticks, 0);
      }
    }
    assertThat(over).hasSize(1);
    assertThat(over.get(0).damage()).isEmpty();
    assertThat(over.get(0).edges()).hasSize(2);
    // 3 s before, and what came until the firing was handed over.
    assertThat(over.get(0).knob()).hasSizeBetween(600, 700);
    assertThat(grouper.drainLateKnob())
        .singleElement()
        .satisfies(
            late -> assertThat(late.edges().size() + over.get(0).knob().size()).isEqualTo(801));
    assertThat(grouper.damageBetweenFirings()).isZero();
  }

  @Test
  void aKnobLevelThatABeatDeniesDamagesNothing() {
    knob(true, LIGHT - 600 * MS);
    beat(LIGHT - 300 * MS, 0);
    firing(LIGHT);
    beat(LIGHT + 600 * MS, 0x80);
    assertThat(over).singleElement().satisfies(f -> assertThat(f.damage()).isEmpty());
    assertThat(grouper.damageBetweenFirings()).isZero();
    assertThat(grouper.drainLateDamage()).isEmpty();
  }

  @Test
  void whatIsKnownAtTheEndIsHandedOver() {
    knob(false, LIGHT - 5 * MS);
    firing(LIGHT);
    beat(LIGHT + 400 * MS, 0);
    knob(true, LIGHT + 700 * MS);
    grouper.finish();
    assertThat(ticks(over.get(0).knob())).containsExactly(LIGHT - 5 * MS);
    assertThat(grouper.drainLateKnob()).hasSize(1);
    // Ticks may start again: nothing of before is near what comes now.
    firing(10 * MS);
    beat(600 * MS, 0);
    assertThat(over.get(1).knob()).isEmpty();
  }
}
