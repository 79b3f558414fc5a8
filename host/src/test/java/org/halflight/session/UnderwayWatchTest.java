package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.halflight.exposure.Exposure;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;
import org.junit.jupiter.api.Test;

class UnderwayWatchTest {
  private final PartsOfASession parts = new PartsOfASession();
  private final UnderwayWatch watch = new UnderwayWatch(parts.progress, parts.meter);
  private final FiringGrouper grouper = new FiringGrouper(ticks(0.2), BoardTraits.USUAL);

  private static long ticks(double seconds) {
    return BoardTraits.USUAL.rate().ticks(seconds);
  }

  private void publish(double seconds) {
    watch.publish(grouper, BoardTraits.USUAL.rate(), ticks(seconds), parts.events);
  }

  @Test
  void aFigureIsSaidOnceTheShutterHasClosed() {
    for (Edge edge : PartsOfASession.firing(1, 10e-3).edges()) {
      assertThat(parts.events).isEmpty();
      grouper.add(edge);
      publish(1.02);
    }
    publish(1.03);
    assertThat(parts.events(SessionEvent.Provisional.class)).hasSize(1);
    assertThat(parts.events(SessionEvent.Provisional.class).get(0).errorStops())
        .as("no speed is shown")
        .isEqualTo(OptionalDouble.empty());
  }

  @Test
  void aShutterThatStaysOpenIsNamed() {
    Firing firing = PartsOfASession.firing(1, 10e-3);
    grouper.add(firing.edges().get(0));
    grouper.add(firing.edges().get(1));
    publish(2.9);
    assertThat(parts.events).isEmpty();
    publish(3.1);
    assertThat(parts.events(SessionEvent.StillOpen.class)).hasSize(1);
  }

  @Test
  void whatThePersonClosedWasStuckOpen() {
    Firing firing = PartsOfASession.firing(1, 10e-3);
    Exposure timed = parts.meter.exposure(firing);
    watch.onClosedByHand(ticks(0.5));
    assertThat(watch.asClosed(firing, timed)).as("before it").isSameAs(timed);
    watch.onClosedByHand(ticks(1.005));
    assertThat(watch.asClosed(firing, timed)).isInstanceOf(Exposure.StuckOpen.class);
    assertThat(watch.asClosed(firing, timed)).as("one key, one firing").isSameAs(timed);
  }
}
