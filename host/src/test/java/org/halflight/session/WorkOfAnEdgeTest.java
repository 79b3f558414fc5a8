package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/**
 * An edge late in a long firing makes as much as one early in it: counted by the bytes that are
 * made for it, which grow with every list that is copied, and not by a clock.
 */
class WorkOfAnEdgeTest {
  private static final ThreadMXBean MEMORY = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private final Session session = new Session();
  private long ticks = 16_000_000;

  @Test
  void doesNotGrowWithTheFiring() {
    session.take(new SessionInput.RigIs("R-1", 1, TickRate.BOARD_16_MHZ));
    double early = bytesOfAnEdge(2000);
    bytesOfAnEdge(18_000);
    double late = bytesOfAnEdge(2000);
    System.out.printf("WorkOfAnEdgeTest: %.0f bytes early, %.0f late%n", early, late);
    assertThat(late).isLessThan(3 * early);
  }

  private double bytesOfAnEdge(int edges) {
    long before = MEMORY.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < edges; i++) {
      ticks += 20_000;
      Channel channel = i % 3 == 0 ? Channel.CENTRE_LOW : Channel.CONTACT;
      session.take(new SessionInput.EdgeAt(new Edge(channel, i % 2 == 0, ticks)));
      if (i % 100 == 0) {
        session.isQuiet();
      }
    }
    return (double) (MEMORY.getCurrentThreadAllocatedBytes() - before) / edges;
  }
}
