package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.halflight.session.InventedBench.S125;
import static org.halflight.session.InventedBench.S60;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How often a speed is fired: tries follow the plan. */
class PlansTest {
  private final InventedBench bench = new InventedBench();

  @ParameterizedTest
  @ValueSource(ints = {3, 5, 7, 10, 12, 30})
  void everyPlanComesToItsEnd(int planned) {
    bench.begin(Phase.AS_LEFT, planned, S60, S125);
    for (int i = 0; i < planned; i++) {
      assertThat(bench.session.shown()).contains(S60);
      bench.fire(S60, 0);
    }
    assertThat(bench.session.shown()).contains(S125);
    assertThat(bench.session.goodAt(S60)).isEqualTo(planned);
    assertThat(bench.news(SessionEvent.EnoughToKnow.class)).isEmpty();
  }

  /**
   * It ended with nine, since the first after rest is in no mean and the tenth try was the last.
   */
  @Test
  void tenPlannedAsFoundAreTen() {
    bench.begin(Phase.AS_FOUND, 10, S60, S125);
    for (int i = 0; i < 11; i++) {
      assertThat(bench.session.shown()).contains(S60);
      bench.fire(S60, 0);
    }
    assertThat(bench.session.shown()).contains(S125);
    assertThat(bench.session.goodAt(S60)).isEqualTo(10);
  }

  @Test
  void anErraticSpeedIsLeftInTheEnd() {
    assertThat(
            List.of(1, 3, 5, 7, 10, 20, 30).stream()
                .map(planned -> new RunPlan(List.of(S60), planned, List.of()).mostTries()))
        .containsExactly(10, 10, 10, 12, 15, 30, 45);
    bench.begin(Phase.AS_LEFT, 10, S60, S125);
    for (int i = 0; i < 15; i++) {
      assertThat(bench.session.shown()).contains(S60);
      bench.releaseWithoutLight();
    }
    assertThat(bench.news(SessionEvent.EnoughToKnow.class))
        .containsExactly(new SessionEvent.EnoughToKnow(S60, 15, 0));
    assertThat(bench.session.shown()).contains(S125);
  }

  /** What an earlier version fired at the next speed has to stay there. */
  @Test
  void aRunOfAnEarlierVersionMovesOnAfterTenTries() {
    RunSetup old =
        InventedBench.custom(Phase.AS_LEFT, 12, S60, S125).withMostTries(RunPlan.TRIES_OF_OLD);
    bench.begin(old);
    for (int i = 0; i < 10; i++) {
      bench.fire(S60, 0);
    }
    assertThat(bench.session.shown()).contains(S125);

    InventedBench other = new InventedBench();
    other.begin(old);
    other.fire(S60, 0);
    other.begin(InventedBench.custom(Phase.AS_LEFT, 12, S60, S125));
    assertThat(other.session.run()).as("the run goes on").isEqualTo(1);
    for (int i = 0; i < 11; i++) {
      assertThat(other.session.shown()).contains(S60);
      other.fire(S60, 0);
    }
    assertThat(other.session.shown()).contains(S125);
    assertThatThrownBy(() -> old.withMostTries(0)).isInstanceOf(IllegalArgumentException.class);
  }
}
