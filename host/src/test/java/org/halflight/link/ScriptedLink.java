package org.halflight.link;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.function.Supplier;
import org.halflight.fixtures.Turns;

/**
 * A link whose other end follows a script and fails on anything that is not in it.
 *
 * <p>Reads at a step that takes a line, and at the end of the script, find nothing, and the clock
 * stands still; a write that comes before its step waits for it. So a script is one order of
 * things, whatever threads read and write. Turns of waiting are counted; what breaks the script is
 * kept for {@link #assertDone}.
 */
public final class ScriptedLink implements Link {
  /** Reads at a standstill after which nobody writes any more. */
  private static final int STANDSTILLS_MOST = 2_000;

  private static final int READ_WAIT_MILLIS = 100;

  /** How long a read really waits while the clock of the test stands still. */
  private static final long STANDSTILL_MILLIS = 5;

  private sealed interface Step {}

  private record Says(Supplier<String> text) implements Step {}

  private record Passes(long millis) implements Step {}

  private record Takes(String body) implements Step {}

  private record Speed(int baudRate) implements Step {}

  private record Breaks() implements Step {}

  private record Refuses() implements Step {}

  private record Runs(Runnable what) implements Step {}

  private final String name;
  private final FakeClock clock;
  private final Deque<Step> script = new ArrayDeque<>();
  private final List<String> broken = Collections.synchronizedList(new ArrayList<>());
  private boolean closed;
  private boolean gone;
  private boolean refusing;
  private int standstills;

  public ScriptedLink(String name, FakeClock clock) {
    this.name = name;
    this.clock = clock;
  }

  /** The other end sends a line. */
  public ScriptedLink says(String line) {
    return sends(line + "\n");
  }

  /** The other end sends a line that is made up when its turn comes. */
  public ScriptedLink says(Supplier<String> line) {
    return add(new Says(() -> line.get() + "\n"));
  }

  /** The other end sends bytes of ASCII as they are. */
  public ScriptedLink sends(String text) {
    return add(new Says(() -> text));
  }

  /** Nothing happens for a while. */
  public ScriptedLink passes(long millis) {
    return add(new Passes(millis));
  }

  /** The other end gets a line, given without its CRC. */
  public ScriptedLink expects(String body) {
    return add(new Takes(body));
  }

  /** The speed is changed. */
  public ScriptedLink changesTo(int baudRate) {
    return add(new Speed(baudRate));
  }

  /** The other end goes away. */
  public ScriptedLink breaks() {
    return add(new Breaks());
  }

  /** The other end takes no line, and none from then on. */
  public ScriptedLink refusesWrites() {
    return add(new Refuses());
  }

  /** Something happens on the thread that reads. */
  public ScriptedLink then(Runnable what) {
    return add(new Runs(what));
  }

  private synchronized ScriptedLink add(Step step) {
    script.addLast(step);
    notifyAll();
    return this;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public synchronized int read(byte[] buffer) {
    while (script.peekFirst() instanceof Runs runs) {
      stepDone();
      runs.what().run();
    }
    if (closed || gone) {
      throw new LinkLostException(name + " is gone");
    }
    Step step = script.peekFirst();
    if (step == null || step instanceof Takes || step instanceof Refuses) {
      return standstill(step);
    }
    stepDone();
    if (step instanceof Breaks) {
      gone = true;
      throw new LinkLostException(name + " is gone");
    }
    if (step instanceof Passes passes) {
      clock.passMillis(Math.min(passes.millis(), READ_WAIT_MILLIS));
      if (passes.millis() > READ_WAIT_MILLIS) {
        script.addFirst(new Passes(passes.millis() - READ_WAIT_MILLIS));
      }
      return 0;
    }
    if (step instanceof Says says) {
      byte[] bytes = says.text().get().getBytes(StandardCharsets.ISO_8859_1);
      System.arraycopy(bytes, 0, buffer, 0, bytes.length);
      return bytes.length;
    }
    throw breaksScript("read at " + step);
  }

  private int standstill(Step step) {
    if (step != null && standstills++ == STANDSTILLS_MOST) {
      throw breaksScript("nobody wrote");
    }
    try {
      boolean waited = false;
      while (!waited && script.peekFirst() == step && !closed) {
        wait(STANDSTILL_MILLIS);
        waited = true;
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    return 0;
  }

  /** Goes on to the next step. */
  private void stepDone() {
    script.removeFirst();
    standstills = 0;
    notifyAll();
  }

  @Override
  public synchronized void write(byte[] bytes) {
    String line = new String(bytes, StandardCharsets.ISO_8859_1);
    waitUntil(
        () ->
            gone
                || closed
                || refusing
                || script.peekFirst() instanceof Takes
                || script.peekFirst() instanceof Refuses,
        "not in the script: " + line);
    if (script.peekFirst() instanceof Refuses) {
      refusing = true;
      stepDone();
    }
    if (gone || closed || refusing) {
      throw new LinkLostException(name + " is gone");
    }
    Takes takes = (Takes) script.peekFirst();
    if (!line.startsWith(takes.body() + "#") || !line.endsWith("\n")) {
      throw breaksScript("expected " + takes.body() + " and got " + line);
    }
    stepDone();
  }

  @Override
  public synchronized void setBaudRate(int baudRate) {
    if (gone || closed) {
      throw new LinkLostException(name + " is gone");
    }
    if (!new Speed(baudRate).equals(script.peekFirst())) {
      throw breaksScript("speed changed to " + baudRate);
    }
    stepDone();
  }

  @Override
  public synchronized void close() {
    closed = true;
    notifyAll();
  }

  public synchronized boolean isClosed() {
    return closed;
  }

  /** Fails if the script was broken, or is never followed to its end. */
  public synchronized void assertDone() {
    waitUntil(() -> script.isEmpty() || closed || !broken.isEmpty(), "not followed");
    if (!broken.isEmpty() || !script.isEmpty()) {
      throw new AssertionError(name + ": " + broken + ", not followed: " + script);
    }
  }

  private void waitUntil(Supplier<Boolean> condition, String otherwise) {
    Turns.await(
        this,
        condition::get,
        () -> {
          broken.add(otherwise);
          return name + ": " + otherwise + ", next in the script: " + script.peekFirst();
        });
  }

  private AssertionError breaksScript(String what) {
    broken.add(what);
    return new AssertionError(name + ": " + what + ", next in the script: " + script.peekFirst());
  }
}
