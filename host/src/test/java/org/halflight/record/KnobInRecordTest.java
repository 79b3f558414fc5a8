package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.halflight.bench.BenchEvent;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.signal.Edge;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The edges of the knob contact in the record: kept beside their firing, and only added to. */
class KnobInRecordTest {
  @TempDir private Path folder;

  private static List<BenchEvent> events(Consumer<BenchScript> firing) {
    return BenchScript.events(
        "R-1",
        7,
        script -> {
          script
              .begins("2026-11-24T09:00:00Z")
              .greets()
              .lightIsSet()
              .run("Old 6x6", Phase.ADJUSTING, 9, "1/125");
          firing.accept(script);
        });
  }

  private static FiringResult only(WorkshopRecord record, List<BenchEvent> all) {
    List<KeptFiring> kept = record.firings(SessionStart.of(all.get(0), "").key());
    assertThat(kept).hasSize(1);
    return kept.get(0).result();
  }

  @Test
  void theyAreKeptAndReadAndImportingTheFileAgainChangesNothing() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      List<BenchEvent> all =
          events(s -> s.foil(true).waits(1).foil(false).fires(8.2).foil(true).waits(2));
      record.importSession(all, "a.session");
      FiringResult kept = only(record, all);
      assertThat(kept.firing().knob()).extracting(Edge::high).startsWith(true, false);
      assertThat(kept).isEqualTo(ReducedSession.of(all).firings().get(0));
      assertThat(record.importSession(all, "a.session").known()).isEqualTo(1);
      assertThat(record.recompute().changed()).isZero();
      assertThat(only(record, all)).isEqualTo(kept);
    }
  }

  @Test
  void whatComesLateIsAddedAndAFileThatKnowsLessTakesNothingAway() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      Consumer<BenchScript> begun = s -> s.foil(true).opensAndCloses(8.2).quiet();
      List<BenchEvent> shorter = events(begun.andThen(s -> {}));
      List<BenchEvent> all = events(begun.andThen(s -> s.foil(false).waits(2)));
      record.importSession(shorter, "a.session");
      assertThat(only(record, all).firing().knob()).hasSize(1);
      record.importSession(all, "a.session");
      FiringResult kept = only(record, all);
      assertThat(kept.firing().knob()).extracting(Edge::high).containsExactly(true, false);
      assertThat(kept).isEqualTo(ReducedSession.of(all).firings().get(0));
      record.importSession(shorter, "a.session");
      assertThat(only(record, all)).isEqualTo(kept);
      for (String fewer : List.of("NULL", "x'0100'")) {
        assertThatThrownBy(
                () ->
                    record.database.write(
                        c -> {
                          try (var statement = c.createStatement()) {
                            return statement.execute("UPDATE firing SET knob_edges = " + fewer);
                          }
                        }))
            .hasMessageContaining("what was measured is never changed");
      }
    }
  }
}
