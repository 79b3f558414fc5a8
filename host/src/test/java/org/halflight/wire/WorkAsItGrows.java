package org.halflight.wire;

import java.util.Locale;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.Dial;
import org.halflight.speeds.Reference;

/**
 * Prints what an edge takes in a firing of 6,000 and of 60,000 edges, and what a firing takes in a
 * session of 9,000 and of 90,000: flat, if the work does not grow. A command and no test, since it
 * goes by the clock of the machine.
 *
 * <pre>mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=org.halflight.wire.WorkAsItGrows</pre>
 */
public final class WorkAsItGrows {
  private static final int EDGES = 60_000;
  private static final int FIRINGS = 90_000;

  private WorkAsItGrows() {}

  /** Runs all of it. */
  public static void main(String[] words) {
    int firings = words.length > 0 ? Integer.parseInt(words[0]) : FIRINGS;
    edges(EDGES / 10);
    double[] edge = edges(EDGES);
    print("edge of a firing", edge, EDGES);
    firings(firings / 10);
    print("firing of a session", firings(firings), firings);
  }

  private static void print(String what, double[] nanos, int count) {
    System.out.printf(
        Locale.ROOT,
        "%s: %.2f us at %d, %.2f us at %d, ratio %.2f%n",
        what,
        nanos[0] / 1000,
        count / 10,
        nanos[1] / 1000,
        count,
        nanos[1] / nanos[0]);
  }

  /** Mean nanoseconds of an edge up to a tenth of all, and in the last tenth. */
  private static double[] edges(int count) {
    Session session = new Session();
    session.handle(new SessionInput.RigIs("R-1", 1, BoardTraits.USUAL, ""));
    Timing timing = new Timing(count);
    long ticks = 16_000_000;
    for (int i = 0; i < count; i++) {
      ticks += 20_000;
      Channel channel = i % 3 == 0 ? Channel.CENTRE_LOW : Channel.CONTACT;
      session.handle(new SessionInput.EdgeAt(new Edge(channel, i % 2 == 0, ticks)));
      if (i % 200 == 0) {
        session.handle(new SessionInput.BeatAt(ticks, 0));
        session.isQuiet();
      }
      timing.did(i);
    }
    return timing.means();
  }

  private static double[] firings(int count) {
    Session session = new Session();
    session.handle(new SessionInput.RigIs("R-1", 1, BoardTraits.USUAL, ""));
    Dial dial = Dial.find("leaf").orElseThrow();
    session.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented",
                Phase.AS_FOUND,
                dial.name(),
                dial.speeds(),
                dial.reference(),
                count / dial.speeds().size() + 1)));
    Timing timing = new Timing(count);
    long ticks = 16_000_000;
    for (int i = 0; i < count; i++) {
      ticks += 8_000_000;
      double wanted = session.shown().map(s -> s.seconds(Reference.EXACT)).orElse(0.01);
      long width = (long) (16e6 * Math.min(0.1, wanted * (1 + (i % 7) * 0.003)));
      long ramp = Math.min(4000, width / 8);
      edge(session, Channel.CENTRE_LOW, true, ticks);
      edge(session, Channel.CENTRE_HIGH, true, ticks + ramp);
      edge(session, Channel.CENTRE_HIGH, false, ticks + width - ramp);
      edge(session, Channel.CENTRE_LOW, false, ticks + width);
      session.handle(new SessionInput.BeatAt(ticks + width + 4_000_000, 0));
      if (session.question().isPresent()) {
        session.handle(new SessionInput.AcceptedAsShown());
      }
      timing.did(i);
    }
    FiringResult last = session.results().get(session.results().size() - 1);
    if (session.results().size() != count || last.firing().edges().size() != 4) {
      throw new IllegalStateException("not what was fired: " + session.results().size());
    }
    return timing.means();
  }

  private static void edge(Session session, Channel channel, boolean high, long ticks) {
    session.handle(new SessionInput.EdgeAt(new Edge(channel, high, ticks)));
  }

  private static final class Timing {
    private final int count;
    private long from = System.nanoTime();
    private double first;
    private double last;

    Timing(int count) {
      this.count = count;
    }

    void did(int index) {
      int tenth = count / 10;
      if (index + 1 == tenth) {
        first = (double) (System.nanoTime() - from) / tenth;
      } else if (index + 1 == count - tenth) {
        from = System.nanoTime();
      } else if (index + 1 == count) {
        last = (double) (System.nanoTime() - from) / tenth;
      }
    }

    double[] means() {
      return new double[] {first, last};
    }
  }
}
