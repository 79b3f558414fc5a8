package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.OptionalInt;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

/**
 * An edge late in a long firing makes as much as one early in it, and so does a firing late in a
 * long session: counted by the bytes that are made for it, which grow with every list that is
 * copied, and not by a clock.
 */
class WorkIsFlatTest {
  private static final ThreadMXBean MEMORY = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private final Session session = new Session();
  private long ticks = 16_000_000;

  @Test
  void doesNotGrowWithTheFiring() {
    session.handle(new SessionInput.RigIs("R-1", 1, BoardTraits.USUAL, ""));
    double early = bytesOfAnEdge(2000);
    bytesOfAnEdge(18_000);
    double late = bytesOfAnEdge(2000);
    System.out.printf(Locale.ROOT, "WorkIsFlatTest: %.0f bytes early, %.0f late%n", early, late);
    assertThat(late).isLessThan(3 * early);
  }

  @Test
  void doesNotGrowWithTheSession() {
    session.handle(new SessionInput.RigIs("R-1", 1, BoardTraits.USUAL, ""));
    session.handle(new SessionInput.LightSet(new LightLevels(20, 820, 189, 651)));
    session.handle(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/125")));
    bytesOfAFiring(300);
    double early = bytesOfAFiring(100);
    bytesOfAFiring(4000);
    double late = bytesOfAFiring(100);
    System.out.printf(Locale.ROOT, "WorkIsFlatTest: %.0f bytes early, %.0f late%n", early, late);
    assertThat(session.results()).hasSize(4500);
    assertThat(late).isLessThan(2 * early);
  }

  /** A shutter that reads almost like its slower neighbour, in light that has faded. */
  private double bytesOfAFiring(int firings) {
    long before = MEMORY.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < firings; i++) {
      ticks += 8_000_000;
      long width = 235_000L + i % 7 * 100L;
      edge(Channel.CENTRE_LOW, true, ticks);
      edge(Channel.CENTRE_HIGH, true, ticks + 4000);
      session.handle(
          new SessionInput.BeatAt(ticks + 100_000, 3, OptionalInt.of(i % 40 == 0 ? 13_000 : 9000)));
      edge(Channel.CENTRE_HIGH, false, ticks + width - 4000);
      edge(Channel.CENTRE_LOW, false, ticks + width);
      session.handle(new SessionInput.BeatAt(ticks + width + 4_000_000, 0));
    }
    return (double) (MEMORY.getCurrentThreadAllocatedBytes() - before) / firings;
  }

  private void edge(Channel channel, boolean high, long atTicks) {
    session.handle(new SessionInput.EdgeAt(new Edge(channel, high, atTicks)));
  }

  private double bytesOfAnEdge(int edges) {
    long before = MEMORY.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < edges; i++) {
      ticks += 20_000;
      Channel channel = i % 3 == 0 ? Channel.CENTRE_LOW : Channel.CONTACT;
      session.handle(new SessionInput.EdgeAt(new Edge(channel, i % 2 == 0, ticks)));
      if (i % 100 == 0) {
        session.isQuiet();
      }
    }
    return (double) (MEMORY.getCurrentThreadAllocatedBytes() - before) / edges;
  }
}
