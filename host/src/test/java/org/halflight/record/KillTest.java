package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.fixtures.Seed;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A bench that is killed in the middle of its work loses nothing that had settled. The kill is
 * SIGKILL on Linux and macOS. It ends the process, not the system: what a power cut does to a disk
 * is not shown here.
 */
@Tag("kill")
class KillTest {
  private static final int KILLS = 50;

  /** Some firings' worth of printed lines after the start of the child. */
  private static final int LINES_MOST = 60;

  @TempDir private Path folder;
  private Path recordFile;
  private Path sessionFile;
  private final Set<FiringKey> settled = new LinkedHashSet<>();
  private Optional<FiringKey> settling = Optional.empty();
  private final Set<FiringKey> everKept = new LinkedHashSet<>();
  private int recovered;
  private long bootCount;

  @BeforeEach
  void name() {
    recordFile = folder.resolve("record.sqlite");
    sessionFile = folder.resolve("killed.session");
  }

  @Test
  void killedFiftyTimesAtRandomMomentsItLosesNothing(@Seed long seed) throws Exception {
    Random random = new Random(seed);
    for (int kill = 0; kill < KILLS; kill++) {
      int lines = 1 + random.nextInt(LINES_MOST);
      try (ChildJvm child = child(random.nextLong(), "never", 0)) {
        for (int i = 0; i < lines; i++) {
          onLine(child.line().orElseThrow());
        }
        child.kill().forEach(this::onLine);
      }
      checkAll();
    }
    System.out.println(
        "KillTest: killed "
            + KILLS
            + " times, "
            + settled.size()
            + " settled firings all there, "
            + recovered
            + " more recovered from the session file (simulated firings)");
    assertThat(settled).hasSizeGreaterThan(KILLS);
    assertThat(recovered).isPositive();
  }

  @Test
  void killedAtEachPlaceOnceItLosesNothing() throws Exception {
    Set<BenchChild.Stand> shown = EnumSet.noneOf(BenchChild.Stand.class);
    for (BenchChild.Stand stand : BenchChild.Stand.values()) {
      // The first writes of a child note its session and take the session file in; the later ones
      // keep firings. Lines are added for each event, a handful for each firing.
      for (int time : new int[] {2, 12}) {
        settling = Optional.empty();
        try (ChildJvm child = child(stand.name().hashCode(), stand.name(), time)) {
          String line = child.line().orElseThrow();
          while (!line.equals("STANDS")) {
            onLine(line);
            line = child.line().orElseThrow();
          }
          child.kill();
        }
        // A firing that was recovered before was there already, whatever happened now.
        Optional<FiringKey> inTheMiddle =
            settling.filter(key -> !settled.contains(key) && !everKept.contains(key));
        if (inTheMiddle.isPresent()) {
          shown.add(stand);
          try (WorkshopRecord record = RecordFixture.open(recordFile)) {
            assertThat(record.firing(inTheMiddle.get()).isPresent())
                .as("firing kept when killed at " + stand + ", time " + time)
                .isEqualTo(stand == BenchChild.Stand.COMMITTED);
          }
        }
        checkAll();
      }
    }
    assertThat(shown)
        .contains(
            BenchChild.Stand.SESSION_FORCED,
            BenchChild.Stand.BEGUN,
            BenchChild.Stand.WRITTEN,
            BenchChild.Stand.COMMITTED);
    assertThat(settled).isNotEmpty();
    assertThat(recovered).isPositive();
  }

  private ChildJvm child(long seed, String stand, int time) throws IOException {
    bootCount++;
    return new ChildJvm(
        BenchChild.class,
        recordFile.toString(),
        sessionFile.toString(),
        String.valueOf(bootCount),
        String.valueOf(seed),
        stand,
        String.valueOf(time));
  }

  private void onLine(String line) {
    String[] words = line.split(" ", -1);
    boolean whole = words.length >= 3;
    if (whole && words[0].startsWith("SETTLE")) {
      FiringKey key = new FiringKey("R-1", Long.parseLong(words[1]), Long.parseLong(words[2]));
      if (words[0].equals("SETTLED")) {
        assertThat(words[3]).isNotEqualTo("DIFFERS");
        settled.add(key);
      } else {
        settling = Optional.of(key);
      }
    }
  }

  /** Opens what the killed child left, and looks for everything. */
  private void checkAll() throws IOException {
    if (!Files.exists(sessionFile)) {
      return;
    }
    try (WorkshopRecord record = RecordFixture.open(recordFile)) {
      assertThat(record.integrityFaults()).isEmpty();
      List<FiringKey> lost = new ArrayList<>();
      for (FiringKey key : settled) {
        if (record.firing(key).isEmpty()) {
          lost.add(key);
        }
      }
      assertThat(lost).isEmpty();
      ImportOutcome taken = record.importSession(sessionFile);
      assertThat(taken.differing()).isZero();
      recovered += taken.added();
      List<FiringResult> all =
          SessionReducer.replay(SessionFile.read(sessionFile).events()).session().results();
      for (FiringResult firing : all) {
        KeptFiring kept = record.firing(firing.key()).orElseThrow();
        everKept.add(firing.key());
        assertThat(kept.result().firing().edges()).isEqualTo(firing.firing().edges());
        boolean closed = !firing.firing().edges().get(firing.firing().edges().size() - 1).high();
        if (kept.cutOff() && closed && firing.firing().edges().size() == 4) {
          assertThat(kept.result().outcome()).isEqualTo(Outcome.TIMED);
        }
      }
      assertThat(record.importSession(sessionFile).added()).isZero();
      assertThat(record.cameras().size()).isLessThanOrEqualTo(1);
    }
  }
}
