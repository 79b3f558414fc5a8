package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The light meter in the terminal, on the practice rig in virtual time. */
class AimCommandTest {
  private static final long SEED = 7;

  @TempDir private Path folder;

  /** Presses Enter once something was printed. */
  private static final class Person extends InputStream {
    private final CountDownLatch seen = new CountDownLatch(1);
    private boolean pressed;

    @Override
    public int read(byte[] into, int from, int most) {
      int key = most == 0 ? 0 : read();
      if (key > 0) {
        into[from] = (byte) key;
      }
      return Integer.compare(key, 0);
    }

    @Override
    public int read() {
      try {
        seen.await();
      } catch (InterruptedException over) {
        return -1;
      }
      boolean first = !pressed;
      pressed = true;
      return first ? '\n' : -1;
    }
  }

  @Test
  void theMeterRunsUntilEnterAndNothingIsWritten() {
    PracticeRig rig = PracticeOperator.unpacedRig(SEED, Instant.EPOCH);
    PracticeOperator camera = new PracticeOperator(rig, SEED);
    camera.placeLamp(0.5);
    camera.hold(true);
    Person person = new Person();
    ByteArrayOutputStream out =
        new ByteArrayOutputStream() {
          @Override
          public synchronized void write(byte[] bytes, int from, int count) {
            super.write(bytes, from, count);
            if (toString(StandardCharsets.UTF_8).contains("outer B")) {
              person.seen.countDown();
            }
          }
        };
    Surroundings surroundings =
        new Surroundings(
            new Terminal(new PrintStream(out, true, StandardCharsets.UTF_8), person),
            ports -> camera.ports(),
            new AtomicLong()::incrementAndGet,
            () -> Instant.EPOCH,
            folder,
            "test");
    assertThat(Halflight.execute(surroundings, "aim")).isZero();
    String printed = out.toString(StandardCharsets.UTF_8);
    assertThat(printed)
        .contains(Words.say("aim.begins"), Words.say("aim.move.a-little-closer"))
        .containsPattern("\rcentre \\[\\.+\\|\\.*=+!+\\] 2\\.0 V  outer A \\d\\.\\d V  outer B")
        .endsWith(Words.say("aim.ended") + System.lineSeparator());
    assertThat(printed.lines()).allMatch(line -> line.length() < 100);
    assertThat(folder).isEmptyDirectory();
  }
}
