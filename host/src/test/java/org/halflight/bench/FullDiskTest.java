package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.halflight.record.ChildJvm;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is full now and then, in the middle of lines: what counts stands in the file. */
class FullDiskTest {
  private static final BenchEvent.Mark BEGINS = new BenchEvent.Mark(0, Marks.BEGINS, Map.of());

  @TempDir private Path folder;
  private int sequence;
  private int ticks = 16_000_000;

  @Test
  void anActThatDidNotFitDoesNotCountAndIsRefused() throws IOException {
    FullDisk disk = new FullDisk(Integer.MAX_VALUE);
    Workbench bench = bench(disk, SessionForm.SECOND);
    fire(bench, new ArrayList<>());
    for (int more = 0; more < 60; more++) {
      disk.room(disk.text().length() + more % 30);
      assertThatThrownBy(() -> bench.reject("knocked the bench")).isInstanceOf(Trouble.class);
      assertThat(bench.fold().session().toReject()).isPresent();
      assertSame(bench, disk);
    }
    disk.room(Integer.MAX_VALUE);
    bench.reject("knocked the bench");
    assertThat(bench.fold().session().toReject()).isEmpty();
    bench.handle(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/60")));
    assertSame(bench, disk);
    assertThat(read(disk).damagedLines()).isZero();
  }

  @Test
  void liveAndFileAreTheSameHoweverOftenItIsFull(@Seed long seed) throws IOException {
    Random random = new Random(seed);
    int refused = 0;
    for (int session = 0; session < 30; session++) {
      FullDisk disk = new FullDisk(Integer.MAX_VALUE);
      SessionForm form = session % 2 == 0 ? SessionForm.FIRST : SessionForm.SECOND;
      Workbench bench = bench(disk, form);
      sequence = 0;
      ticks = 16_000_000;
      List<String> said = new ArrayList<>();
      int noted = 0;
      for (int step = 0; step < 40; step++) {
        // In the first form the torn end of a file may read as another event until it is ended.
        disk.shortens(form == SessionForm.FIRST || random.nextInt(4) > 0);
        disk.room(
            random.nextInt(3) > 0 ? Integer.MAX_VALUE : disk.text().length() + random.nextInt(120));
        try {
          switch (random.nextInt(6)) {
            case 5 -> {
              noted++;
              bench.handle(new SessionInput.LightBeingSet(random.nextInt(3) == 0));
            }
            case 0 -> bench.reject("knocked the bench");
            case 1 -> bench.handle(new SessionInput.NextChosen());
            case 2 -> bench.undo();
            default -> refused += fire(bench, said);
          }
        } catch (Trouble full) {
          refused++;
        }
        assertSame(bench, disk);
      }
      disk.shortens(true);
      disk.room(Integer.MAX_VALUE);
      refused += fire(bench, said);
      assertSame(bench, disk);
      bench.close();
      // Every line of the rig is there, in its order.
      assertThat(lines(disk)).as("seed %d, session %d", seed, session).isEqualTo(said);
      assertThat(
              read(disk).events().stream()
                  .filter(BenchEvent.Mark.class::isInstance)
                  .filter(e -> ((BenchEvent.Mark) e).kind().equals("light-being-set")))
          .hasSize(noted);
    }
    assertThat(refused).isGreaterThan(50);
  }

  /** The same with the system's own limit, which lets a part of a line in as a full disk does. */
  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void soIsItWhereTheSystemRefuses() throws Exception {
    Path path = folder.resolve("limited.session");
    try (ChildJvm child =
        ChildJvm.behind(
            List.of("sh", "-c", "ulimit -f 40; exec \"$@\"", "sh"),
            FullDiskChild.class,
            path.toString())) {
      String live = child.line().orElseThrow();
      assertThat(Integer.parseInt(child.line().orElseThrow())).isGreaterThan(50);
      SessionFile.Contents contents = SessionFile.read(path);
      assertThat(contents.damagedLines()).isZero();
      SessionReducer replayed = new SessionReducer();
      replayed.onEvents(contents.events());
      assertThat(FullDiskChild.stand(replayed.session())).isEqualTo(live);
      child.kill();
    }
    try (SessionFile file = SessionFile.resume(path)) {
      file.add(new BenchEvent.Mark(1, "next", Map.of()));
    }
    assertThat(SessionFile.read(path).damagedLines()).isZero();
  }

  private Workbench bench(FullDisk disk, SessionForm form) throws IOException {
    Path path = folder.resolve("full.session");
    SessionLock lock = SessionLock.acquire(path).orElseThrow();
    lock.close();
    return Workbench.begin(SessionFile.begun(path, lock, disk, form), () -> 0, BEGINS);
  }

  /** Fires; gives how often there was trouble. */
  private int fire(Workbench bench, List<String> said) {
    int refused = 0;
    refused += say(bench, said, new RigMessage.Beat(next(), ticks - 1_000_000L, 0, 320));
    refused += say(bench, said, edge(Channel.CENTRE_LOW, true, 0));
    refused += say(bench, said, edge(Channel.CENTRE_HIGH, true, 8_000));
    refused += say(bench, said, edge(Channel.CENTRE_HIGH, false, 100_000));
    refused += say(bench, said, edge(Channel.CENTRE_LOW, false, 108_000));
    refused += say(bench, said, new RigMessage.Beat(next(), ticks + 8_000_000L, 0, 320));
    ticks += 16_000_000;
    return refused;
  }

  private RigMessage edge(Channel channel, boolean high, int after) {
    return new RigMessage.EdgeSeen(next(), channel, high, ticks + after);
  }

  private int next() {
    return sequence++ & 0xFFFF;
  }

  private static int say(Workbench bench, List<String> said, RigMessage message) {
    String line = LineCodec.format(message);
    said.add(line);
    try {
      bench.onEvent(new BenchEvent.Received(0, line));
      return 0;
    } catch (Trouble full) {
      return 1;
    }
  }

  private void assertSame(Workbench bench, FullDisk disk) throws IOException {
    SessionReducer replayed = new SessionReducer();
    replayed.onEvents(read(disk).events());
    assertThat(bench.fold().session().results()).isEqualTo(replayed.session().results());
    assertThat(bench.fold().session().setting()).isEqualTo(replayed.session().setting());
    assertThat(bench.fold().linkStatistics()).isEqualTo(replayed.linkStatistics());
  }

  private List<String> lines(FullDisk disk) throws IOException {
    return read(disk).events().stream()
        .filter(BenchEvent.Received.class::isInstance)
        .map(event -> ((BenchEvent.Received) event).line())
        .toList();
  }

  private SessionFile.Contents read(FullDisk disk) throws IOException {
    return SessionFile.read(Files.write(folder.resolve("read.session"), disk.bytes()));
  }
}
