package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class DiscReadingTest {
  /** A disc at 10 turns a second before a light 2 degrees wide; its ramps are straight. */
  private static List<Edge> edges(int turns, double clockShare) {
    List<Edge> edges = new ArrayList<>();
    double gap = (360 - 3.6 - 7.2 - 14.4 - 28.8 - 57.6) / 5;
    for (int turn = 0; turn < turns; turn++) {
      double at = 360.0 * turn;
      for (double slot : DiscReading.SLOT_DEGREES) {
        for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH)) {
          double q = channel == Channel.CENTRE_LOW ? 0.2113 : 0.7887;
          edges.add(new Edge(channel, true, ticks(at + 2 * q, clockShare)));
          edges.add(new Edge(channel, false, ticks(at + slot + 2 * (1 - q), clockShare)));
        }
        at += slot + gap;
      }
    }
    return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
  }

  private static long ticks(double degrees, double clockShare) {
    return 1_000_000 + Math.round(degrees / 3600 * 16e6 * clockShare);
  }

  @Test
  void everySlotReadsItsAngleWhateverTheClock() {
    DiscReading reading =
        ((DiscReading.Found) DiscReading.of(edges(20, 1.00345), TickRate.BOARD_16_MHZ)).reading();
    assertThat(reading.slots()).hasSize(5);
    for (DiscReading.Slot slot : reading.slots()) {
      // Stamps of 62.5 ns on the narrowest slot of 1 ms.
      assertThat(slot.error()).as(slot.degrees() + " degrees").isCloseTo(0, within(1e-4));
    }
    // 1 ms by true time, 1.00345 ms by the fast clock.
    assertThat(reading.slots().get(0).effectiveSeconds()).isCloseTo(1.00345e-3, within(1e-7));
    assertThat(reading.turnSeconds()).isCloseTo(0.100345, within(1e-6));
  }

  @Test
  void tooFewTurnsAreSaid() {
    assertThat(DiscReading.of(edges(3, 1), TickRate.BOARD_16_MHZ))
        .isInstanceOf(DiscReading.TooFewTurns.class);
    assertThat(DiscReading.of(List.of(), TickRate.BOARD_16_MHZ))
        .isEqualTo(new DiscReading.TooFewTurns(0));
  }
}
