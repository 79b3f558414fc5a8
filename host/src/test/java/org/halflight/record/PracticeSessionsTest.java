package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigFeed;
import org.halflight.fixtures.Seeds;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Practice sessions beside each other in one record; all figures are simulated. */
class PracticeSessionsTest {
  private static final long SEED = Seeds.usually(20);

  @TempDir private Path folder;

  @Test
  void twoPracticeSessionsOfTheSameSeedAreBothKept() {
    List<BenchEvent> one = session(RecordFixture.NOW);
    List<BenchEvent> two = session(RecordFixture.NOW.plusSeconds(1));
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      assertThat(record.importSession(one, "one.session").added()).isEqualTo(3);
      ImportOutcome second = record.importSession(two, "two.session");
      assertThat(second.added()).isEqualTo(3);
      assertThat(second.differing()).isZero();
      assertThat(record.importSession(two, "two.session").known()).isEqualTo(3);
    }
  }

  private static List<BenchEvent> session(Instant at) {
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), SEED),
            SensorSet.INVENTED,
            SEED,
            PracticeRig.startsBefore(at));
    List<BenchEvent> events = new ArrayList<>();
    events.add(new BenchEvent.Mark(0, Marks.BEGINS, Map.of("session", at.toString())));
    try (PumpFeed feed = new PumpFeed(rig, () -> 0)) {
      for (int i = 0; i < 3; i++) {
        rig.fire();
        rig.rest(1);
      }
      for (Optional<RigFeed.Item> item = feed.next(); item.isPresent(); item = feed.next()) {
        if (item.get() instanceof RigFeed.Item.Line line) {
          events.add(line.event());
        }
      }
    }
    return events;
  }
}
