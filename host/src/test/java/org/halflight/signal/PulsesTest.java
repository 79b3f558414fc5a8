package org.halflight.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;

class PulsesTest {
  private static Firing firing(Edge... edges) {
    return new Firing(List.of(edges), List.of());
  }

  private static Edge low(boolean high, long ticks) {
    return new Edge(Channel.CENTRE_LOW, high, ticks);
  }

  @Test
  void edgesArePaired() {
    Pulses pulses =
        Pulses.of(
            firing(low(true, 10), low(false, 30), low(true, 50), low(false, 55)),
            Channel.CENTRE_LOW);
    assertThat(pulses.pulses()).containsExactly(new Pulse(10, 30), new Pulse(50, 55));
    assertThat(pulses.startsHigh()).isFalse();
    assertThat(pulses.stillHighSince()).isEmpty();
  }

  @Test
  void aFallFirstMeansHighBefore() {
    Pulses pulses = Pulses.of(firing(low(false, 10)), Channel.CENTRE_LOW);
    assertThat(pulses.startsHigh()).isTrue();
    assertThat(pulses.pulses()).isEmpty();
    assertThat(pulses.isEmpty()).isFalse();
  }

  @Test
  void aRiseLastMeansStillHigh() {
    Pulses pulses = Pulses.of(firing(low(true, 10)), Channel.CENTRE_LOW);
    assertThat(pulses.stillHighSince()).hasValue(10);
  }

  @Test
  void ofTwoEqualLevelsTheFirstCounts() {
    Pulses pulses =
        Pulses.of(
            firing(low(true, 10), low(true, 20), low(false, 30), low(false, 40)),
            Channel.CENTRE_LOW);
    assertThat(pulses.pulses()).containsExactly(new Pulse(10, 30));
  }

  @Test
  void anotherChannelHasNone() {
    assertThat(Pulses.of(firing(low(true, 10)), Channel.CENTRE_HIGH).isEmpty()).isTrue();
  }

  @Test
  void partOfAPulse() {
    assertThat(new Pulse(10, 30).ticksWithin(20, 100)).isEqualTo(10);
    assertThat(new Pulse(10, 30).ticksWithin(40, 100)).isZero();
    assertThatIllegalArgumentException().isThrownBy(() -> new Pulse(10, 9));
  }
}
