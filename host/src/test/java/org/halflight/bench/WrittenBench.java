package org.halflight.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;

/** A bench with an invented shutter whose session is written to a file and can be gone on with. */
public final class WrittenBench implements AutoCloseable {
  public static final List<MarkedSpeed> SPEEDS =
      List.of(MarkedSpeed.parse("1/30"), MarkedSpeed.parse("1/60"), MarkedSpeed.parse("1/125"));

  private static final long RATE = 16_000_000;
  private static final long QUIET = 8_000_000;
  private static final BenchEvent.Mark BEGINS = new BenchEvent.Mark(0, Marks.BEGINS, Map.of());

  private final Path path;
  private Workbench bench;
  private long nowTicks = RATE;
  private int sequence;
  private int starts;

  public WrittenBench(Path path) {
    this.path = path;
    bench = Workbench.begin(SessionFile.create(path), () -> 0, BEGINS);
    greet();
  }

  public static RunSetup setup(Phase phase, int firings) {
    return new RunSetup("invented", phase, "leaf", SPEEDS, Reference.EXACT, firings);
  }

  public Workbench bench() {
    return bench;
  }

  public Session session() {
    return bench.fold().session();
  }

  public List<SessionEvent> handle(SessionInput input) {
    return bench.handle(input);
  }

  /** The program ends, in order or not, and another start goes on. */
  public void startAgain() {
    bench.close();
    SessionFile file = SessionFile.resume(path);
    bench = Workbench.resume(file, () -> 0, file.before(), BEGINS);
    greet();
  }

  private void greet() {
    sequence = 0;
    nowTicks = RATE;
    starts++;
    say(new RigMessage.Greeting(next(), 1, RATE, "full", 0x7F, "R-1", starts, "power", "1", 0));
  }

  /** Fires for so long. */
  public void fire(double seconds) {
    long open = (long) (seconds * RATE);
    edge(Channel.CENTRE_LOW, true, 0);
    edge(Channel.CENTRE_HIGH, true, 8_000);
    edge(Channel.CENTRE_HIGH, false, open - 8_000);
    edge(Channel.CENTRE_LOW, false, open);
    quiet(open);
  }

  /** The release is pressed, and nothing opens. */
  public void press() {
    edge(Channel.RELEASE, true, 0);
    edge(Channel.RELEASE, false, 400_000);
    quiet(400_000);
  }

  private void quiet(long afterTicks) {
    nowTicks += afterTicks + QUIET;
    say(new RigMessage.Beat(next(), nowTicks, 0, 16 * 20));
    nowTicks += QUIET;
  }

  private void edge(Channel channel, boolean high, long afterTicks) {
    say(new RigMessage.EdgeSeen(next(), channel, high, (int) (nowTicks + afterTicks)));
  }

  public void say(RigMessage message) {
    bench.onEvent(new BenchEvent.Received(bench.now(), LineCodec.format(message)));
  }

  private int next() {
    return sequence++ & 0xFFFF;
  }

  @Override
  public void close() {
    bench.close();
  }
}
