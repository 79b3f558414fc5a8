package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SharedScatterTest {
  @Test
  void theVarianceWithinSamplesKnowsNoMeans() {
    SharedScatter within = SharedScatter.within(List.of(Sample.of(1, 2, 3), Sample.of(11, 12)));
    // (2 + 0.5) / (2 + 1)
    assertThat(within.variance()).isCloseTo(2.5 / 3, within(1e-12));
    assertThat(within.degrees()).isEqualTo(3);
  }

  @Test
  void eachIsDrawnTowardsAllOthers() {
    SharedScatter one = new SharedScatter(1, 2);
    SharedScatter two = new SharedScatter(4, 2);
    SharedScatter three = new SharedScatter(7, 4);
    List<SharedScatter> drawn = SharedScatter.drawnTogether(List.of(one, two, three));
    // The others of the first: (2 * 4 + 4 * 7) / 6 = 6, at a weight of 4: (2 * 1 + 4 * 6) / 6.
    assertThat(drawn.get(0).variance()).isCloseTo(26 / 6.0, within(1e-12));
    assertThat(drawn.get(0).degrees()).isEqualTo(6);
    // Of the third: (2 * 1 + 2 * 4) / 4 = 2.5, at a weight of 4, all that the others have.
    assertThat(drawn.get(2).variance()).isCloseTo((28 + 10) / 8.0, within(1e-12));
  }

  @Test
  void othersWeighNoMoreThanTheyHave() {
    List<SharedScatter> drawn =
        SharedScatter.drawnTogether(List.of(new SharedScatter(1, 9), new SharedScatter(4, 2)));
    assertThat(drawn.get(0).degrees()).isEqualTo(11);
    assertThat(drawn.get(0).variance()).isCloseTo((9 + 8) / 11.0, within(1e-12));
    assertThat(SharedScatter.weight(2)).isEqualTo(4);
    assertThat(SharedScatter.weight(6)).isEqualTo(6);
    assertThat(SharedScatter.weight(29)).isEqualTo(8);
  }

  @Test
  void oneSpeedByItselfStaysAsItIs() {
    SharedScatter alone = new SharedScatter(1, 4);
    assertThat(SharedScatter.drawnTogether(List.of(alone))).containsExactly(alone);
    assertThat(SharedScatter.drawnTogether(List.of())).isEmpty();
  }

  @Test
  void refusesWhatMakesNoSense() {
    assertThatThrownBy(() -> new SharedScatter(-1, 4)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SharedScatter(1, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}
