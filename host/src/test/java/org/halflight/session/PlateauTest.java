package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.halflight.session.InventedBench.DARK;
import static org.halflight.session.InventedBench.FULL;
import static org.halflight.session.InventedBench.S60;
import static org.halflight.session.InventedBench.S8;

import org.assertj.core.data.Offset;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Full light, measured again by every slow firing. */
class PlateauTest {
  private static final double SPAN = FULL - DARK;

  private final InventedBench bench = new InventedBench();

  @BeforeEach
  void begin() {
    bench.begin(Phase.ADJUSTING, 99, S8);
  }

  @Test
  void aGoodPlateauIsNotedAndSaysNothing() {
    bench.fireWithPlateau(FULL);
    assertThat(bench.result(1).notes().plateauCounts().orElseThrow()).isEqualTo(FULL);
    assertThat(bench.result(1).notes().plateauShare().orElseThrow())
        .isCloseTo(1, Offset.offset(1e-9));
    assertThat(bench.news(SessionEvent.PlateauOff.class)).isEmpty();
  }

  @Test
  void fivePercentIsAllowedAndMoreIsNot() {
    bench.fireWithPlateau(DARK + 0.951 * SPAN);
    bench.fireWithPlateau(DARK + 1.049 * SPAN);
    assertThat(bench.session.isLightInDoubt()).isFalse();
    bench.fireWithPlateau(DARK + 0.949 * SPAN);
    assertThat(bench.session.isLightInDoubt()).isTrue();
    bench.fireWithPlateau(FULL);
    assertThat(bench.session.isLightInDoubt()).isFalse();
    bench.fireWithPlateau(DARK + 1.051 * SPAN);
    assertThat(bench.session.isLightInDoubt()).isTrue();
  }

  @Test
  void firingsSinceTheLastGoodPlateauAreMarkedAndNotRescaled() {
    bench.fireWithPlateau(FULL);
    bench.fire(S60, 0);
    double before = bench.result(2).effectiveSeconds().orElseThrow();
    bench.fireWithPlateau(DARK + 0.48 * SPAN);
    assertThat(bench.session.results())
        .extracting(r -> r.notes().lightDoubtful())
        .containsExactly(false, true, true);
    SessionEvent.PlateauOff off = bench.news(SessionEvent.PlateauOff.class).get(0);
    assertThat(off.share()).isCloseTo(0.48, Offset.offset(0.001));
    assertThat(off.firings()).containsExactly(bench.result(2).key(), bench.result(3).key());
    assertThat(bench.result(2).effectiveSeconds().orElseThrow()).isEqualTo(before);
    assertThat(bench.result(2).isGood()).isTrue();
    assertThat(bench.news(SessionEvent.Changed.class)).hasSize(1);
  }

  @Test
  void theDoubtLastsUntilAPlateauIsGoodOrTheLightIsSet() {
    bench.fireWithPlateau(DARK + 0.48 * SPAN);
    bench.fire(S60, 0);
    bench.fireWithPlateau(DARK + 0.48 * SPAN);
    bench.fireWithPlateau(FULL);
    bench.fire(S60, 0);
    bench.fireWithPlateau(DARK + 0.48 * SPAN);
    bench.setLight();
    bench.fire(S60, 0);
    assertThat(bench.session.results())
        .extracting(r -> r.notes().lightDoubtful())
        .containsExactly(true, true, true, false, true, true, false);
    // Told once each time that the doubt begins.
    assertThat(bench.news(SessionEvent.PlateauOff.class)).hasSize(2);
  }

  @Test
  void aBeatTooSoonAfterOpeningIsNoPlateau() {
    openWithBeatAfter(0.0020);
    assertThat(bench.result(1).notes().plateauCounts()).isEmpty();
    openWithBeatAfter(0.0030);
    assertThat(bench.result(2).notes().plateauCounts()).isPresent();
  }

  @Test
  void aBeatAfterTheClosingIsNoPlateauEvenIfItsEdgeComesLater() {
    double start = bench.now;
    bench.edge(Channel.CENTRE_LOW, true, start);
    bench.edge(Channel.CENTRE_HIGH, true, start + 0.001);
    bench.now = start + 0.0501;
    bench.beat(300);
    bench.edge(Channel.CENTRE_HIGH, false, start + 0.0500);
    bench.edge(Channel.CENTRE_LOW, false, start + 0.0510);
    bench.now = start + 0.051;
    bench.quiet();
    assertThat(bench.result(1).notes().plateauCounts()).isEmpty();
  }

  @Test
  void withoutASetLightThePlateauIsKeptAndJudgesNothing() {
    InventedBench blind = new InventedBench();
    blind.handle(new SessionInput.LightSet(new LightLevels(20, 25, 21, 22)));
    blind.fireWithPlateau(500);
    assertThat(blind.result(1).notes().plateauCounts().orElseThrow()).isEqualTo(500);
    assertThat(blind.result(1).notes().plateauShare()).isEmpty();
    assertThat(blind.news(SessionEvent.PlateauOff.class)).isEmpty();
  }

  /** Low at 0, high at 1 ms, so fully open at 1.366 ms by an even ramp. */
  private void openWithBeatAfter(double secondsAfterHigh) {
    double start = bench.now;
    bench.edge(Channel.CENTRE_LOW, true, start);
    bench.edge(Channel.CENTRE_HIGH, true, start + 0.001);
    bench.now = start + 0.001 + secondsAfterHigh;
    bench.beat(FULL);
    bench.edge(Channel.CENTRE_HIGH, false, start + 0.049);
    bench.edge(Channel.CENTRE_LOW, false, start + 0.050);
    bench.now = start + 0.050;
    bench.quiet();
  }
}
