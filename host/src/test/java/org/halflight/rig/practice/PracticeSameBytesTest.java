package org.halflight.rig.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.halflight.fixtures.Turns;
import org.halflight.link.LinkLostException;
import org.halflight.rig.RigCommand;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

/**
 * The practice rig says the same for the same seed, today and later.
 *
 * <p>The golden file is written anew by
 *
 * <pre>mvn test -Dtest=PracticeSameBytesTest -Dhalflight.golden=write</pre>
 *
 * and its change is read as a diff before it is committed.
 */
class PracticeSameBytesTest {
  private static final Path GOLDEN = Path.of("fixtures", "practice", "short_session.txt");

  private static PracticeRig dirty(long seed) {
    return PracticeRig.unpaced(
        InventedShutters.dirtySlowTrain(InventedShutters.dial(), seed), SensorSet.INVENTED, seed);
  }

  /** Every kind of line: greeting, thresholds, light, two firings, B, a restart. */
  private static String shortSession(long seed) {
    List<MarkedSpeed> dial = InventedShutters.dial();
    PracticeRig rig = dirty(seed);
    Listener listener = new Listener(rig);
    listener.send(new RigCommand.SetThresholds(0x2C, 0xA2));
    listener.send(new RigCommand.AskThresholds());
    listener.send(new RigCommand.MeasureLight(Channel.CENTRE_LOW, 6));
    listener.receive();
    for (MarkedSpeed speed : List.of(dial.get(4), dial.get(9))) {
      rig.chooseSpeed(speed);
      rig.fire();
    }
    rig.holdOpen(true);
    rig.rest(0.5);
    rig.holdOpen(false);
    listener.send(new RigCommand.Ping(0x1234));
    listener.send(new RigCommand.AskStatus());
    listener.receive();
    rig.pullCable();
    Listener after = new Listener(rig.plugIn());
    after.receive();
    return listener.text() + after.text();
  }

  @Test
  void twoRunsOfOneSeedAreTheSameAndAnotherSeedIsNot() {
    String once = shortSession(1);
    assertThat(shortSession(1)).isEqualTo(once);
    assertThat(shortSession(2)).isNotEqualTo(once);
  }

  @Test
  void aShortSessionIsTheOneOfTheGoldenFile() throws IOException {
    String session = shortSession(20260101);
    if ("write".equals(System.getProperty("halflight.golden"))) {
      Files.createDirectories(GOLDEN.getParent());
      Files.writeString(GOLDEN, session, StandardCharsets.US_ASCII);
      fail("written, not compared: %s; run again without -Dhalflight.golden", GOLDEN);
    }
    assertThat(session).isEqualTo(Files.readString(GOLDEN, StandardCharsets.US_ASCII));
  }

  /** However far a reading thread has come when the camera is fired, the bytes are the same. */
  @Test
  void aReadingThreadChangesNothing() throws Exception {
    String alone = tenFirings(dirty(5), false);
    for (int i = 0; i < 3; i++) {
      assertThat(tenFirings(dirty(5), true)).isEqualTo(alone);
    }
  }

  private static String tenFirings(PracticeRig rig, boolean reading) throws Exception {
    StringBuilder text = new StringBuilder();
    CompletableFuture<Void> done = new CompletableFuture<>();
    Thread reader = new Thread(() -> readToTheEnd(rig, text, done));
    if (reading) {
      reader.start();
    }
    for (MarkedSpeed speed : InventedShutters.dial()) {
      rig.chooseSpeed(speed);
      rig.fire();
      rig.holdOpen(false);
      rig.chooseSpeed(speed);
    }
    rig.pullCableIn(0.5);
    rig.rest(1);
    if (!reading) {
      reader.start();
    }
    Turns.get(done);
    Turns.end(reader);
    return text.toString();
  }

  private static void readToTheEnd(
      PracticeRig rig, StringBuilder text, CompletableFuture<Void> done) {
    byte[] buffer = new byte[256];
    try {
      while (true) {
        int count = rig.read(buffer);
        text.append(new String(buffer, 0, count, StandardCharsets.US_ASCII));
      }
    } catch (LinkLostException end) {
      done.complete(null);
    } catch (RuntimeException e) {
      done.completeExceptionally(e);
    }
  }
}
