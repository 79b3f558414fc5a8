package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.halflight.bench.BenchEvent;
import org.halflight.fixtures.Seed;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CurveInRecordTest {
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

  @Test
  void bytesBringTheCurveBack(@Seed(20261125) long seed) {
    Random random = new Random(seed);
    for (int turn = 0; turn < 50; turn++) {
      SampledLight curve =
          new SampledLight(
              Channel.ofCode(turn % 4 == 1 ? 0 : turn % 4).orElseThrow(),
              List.of(
                  part(random, Kind.OPENING, 1_000_000, 256, 255),
                  part(random, Kind.PLATEAU, 5_000_000, 4096, 16_368),
                  part(random, Kind.CLOSING, 900_000_000_000L, 256, 255),
                  part(random, Kind.TAIL, 900_000_100_000L, 1024, 16_368)),
              random.nextBoolean());
      assertThat(CurveBlob.read(CurveBlob.of(curve, 1_003_000), 1_003_000))
          .as("seed %s turn %s", seed, turn)
          .contains(curve);
    }
  }

  private static Part part(Random random, Kind kind, long first, long period, int most) {
    List<Integer> values =
        IntStream.range(0, random.nextInt(300))
            .mapToObj(i -> random.nextInt(most + 2) - 1)
            .toList();
    return new Part(kind, first, period, values, random.nextBoolean());
  }

  @Test
  void bytesThatAreNoCurveAreRefused() {
    byte[] whole =
        CurveBlob.of(
            new SampledLight(
                List.of(new Part(Kind.OPENING, 5, 256, List.of(1, 2, 300), false)), false),
            7);
    assertThat(CurveBlob.read(new byte[] {}, 7)).isEmpty();
    assertThat(CurveBlob.read(new byte[] {2, 0}, 7)).isEmpty();
    for (int cut = 1; cut < whole.length; cut++) {
      assertThat(CurveBlob.read(java.util.Arrays.copyOf(whole, cut), 7))
          .as("cut %s", cut)
          .isEmpty();
    }
  }

  @Test
  void theCurveIsKeptAndReadAndTakingTheFileInAgainChangesNothing() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      List<BenchEvent> all = events(script -> script.opensAndCloses(8.2).curve(8.2).quiet());
      record.importSession(all, "a.session");
      FiringResult kept = record.firings(SessionStart.of(all.get(0), "").key()).get(0).result();
      FiringResult folded = ReducedSession.of(all).firings().get(0);
      assertThat(folded.curveExposure().get().measured()).isPresent();
      assertThat(kept).isEqualTo(folded);
      assertThat(record.importSession(all, "a.session").known()).isEqualTo(1);
      assertThat(record.recompute().changed()).isZero();
    }
  }

  @Test
  void aCurveThatComesLateIsAddedOnceAndThenStays() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      List<BenchEvent> all = events(script -> script.fires(8.2).curve(8.2));
      List<BenchEvent> without = events(script -> script.fires(8.2));
      String key = SessionStart.of(all.get(0), "").key();
      record.importSession(without, "a.session");
      assertThat(record.firings(key).get(0).result().curve()).isEmpty();
      assertThat(record.importSession(all, "a.session").changed()).isEqualTo(1);
      FiringResult kept = record.firings(key).get(0).result();
      assertThat(kept).isEqualTo(ReducedSession.of(all).firings().get(0));
      // The shorter file knows less; the curve stays all the same.
      record.importSession(without, "a.session");
      assertThat(record.firings(key).get(0).result()).isEqualTo(kept);
      assertThatThrownBy(
              () ->
                  record.database.write(
                      c -> {
                        try (var statement = c.createStatement()) {
                          return statement.execute("UPDATE firing SET curve = x'0100'");
                        }
                      }))
          .hasMessageContaining("what was measured is never changed");
    }
  }

  @Test
  void aCurveThatComesLateLeavesAnOldResultToItsMethod() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      List<BenchEvent> longer =
          events(script -> script.fires(8.2).fires(8).fires(8).fires(8).fires(8).fires(8));
      List<BenchEvent> curved = events(script -> script.fires(8.2).curve(8.2));
      assertThat(curved).hasSizeLessThan(longer.size());
      record.importSession(longer, "a.session");
      record.database.write(
          c -> {
            try (var statement = c.createStatement()) {
              boolean done = statement.execute("UPDATE firing_result SET method_version = 1");
              RowCrc.sealAll(c);
              return done;
            }
          });
      record.importSession(curved, "a.session");
      KeptFiring kept = record.firings(SessionStart.of(longer.get(0), "").key()).get(0);
      assertThat(kept.result().curve()).isPresent();
      assertThat(kept.methodVersion()).isEqualTo(1);
    }
  }

  @Test
  void whatTheCurveComesToIsWorkedOutAgainFromItsReadings() {
    try (WorkshopRecord record = RecordFixture.open(folder.resolve("record.sqlite"))) {
      List<BenchEvent> all = RecordFixture.everything("R-1");
      record.importSession(all, "a.session");
      String key = SessionStart.of(all.get(0), "").key();
      List<KeptFiring> before = record.firings(key);
      assertThat(before.stream().filter(f -> f.result().curve().isPresent())).hasSize(2);
      assertThat(
              before.stream()
                  .filter(f -> f.result().outcome() == Outcome.NEVER_FULLY_OPEN)
                  .map(f -> f.result().curveExposure().flatMap(e -> e.measured())))
          .isNotEmpty()
          .allMatch(measured -> measured.isPresent() && !measured.get().openedFully());
      record.database.write(
          c -> {
            try (var statement = c.createStatement()) {
              boolean done =
                  statement.execute(
                      "UPDATE firing_result SET curve_effective_seconds = 1, method_version = 1");
              RowCrc.sealAll(c);
              return done;
            }
          });
      assertThat(record.firings(key)).isNotEqualTo(before);
      assertThat(record.recompute().changed()).isPositive();
      assertThat(record.firings(key)).isEqualTo(before);
    }
  }

  @Test
  void aRecordOfVersionOneHasNoCurvesAndACopyIsMadeFirst() throws Exception {
    Path file = folder.resolve("record.sqlite");
    Files.copy(Path.of("fixtures/record/v1.sqlite"), file);
    try (WorkshopRecord record = RecordFixture.open(file)) {
      List<BenchEvent> all = events(script -> script.opensAndCloses(8.2).curve(8.2).quiet());
      record.importSession(all, "a.session");
      assertThat(record.firings(SessionStart.of(all.get(0), "").key()).get(0).result().curve())
          .isPresent();
    }
    assertThat(folder.resolve("record.before-version-" + Migrations.OWN.newest() + ".sqlite"))
        .exists();
  }
}
