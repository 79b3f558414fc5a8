package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.assertj.core.data.Offset;
import org.halflight.bench.BenchEvent;
import org.halflight.job.Camera;
import org.halflight.job.Checklist;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.halflight.speeds.Tolerance;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HistoryTest {
  private static final Offset<Double> TICK_STOPS = Offset.offset(2e-5);

  @TempDir private Path folder;
  private WorkshopRecord record;
  private Camera camera;

  @BeforeEach
  void open() {
    record = RecordFixture.open(folder.resolve("record.sqlite"));
    camera =
        record.keep(
            new Camera(
                org.halflight.job.Id.ofNew(),
                "Aunt Åse's",
                "S-99_1",
                ShutterKind.LEAF,
                BenchScript.DIAL,
                java.util.OptionalDouble.empty(),
                Optional.empty(),
                ""));
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void searchFindsByLabelSerialAndJobNumberInCapitalsOrNot() {
    Camera other = record.keep(Camera.of("100% other", ShutterKind.LEAF, BenchScript.DIAL));
    record.keep(Visit.begins(camera.id(), "J-7/2024", Instant.parse("2024-03-01T12:00:00Z")));
    record.keep(Visit.begins(camera.id(), "J-12/2026", Instant.parse("2026-03-01T12:00:00Z")));
    record.keep(Visit.begins(other.id(), "", Instant.parse("2025-03-01T12:00:00Z")));
    for (String text : List.of("åSE", "s-99_", "j-7/", "12/2026", " aunt ")) {
      assertThat(record.search(text))
          .as(text)
          .extracting(CameraLine::camera)
          .containsExactly(camera);
    }
    assertThat(record.search("%")).extracting(CameraLine::camera).containsExactly(other);
    assertThat(record.search("nobody")).isEmpty();
    assertThat(record.search(" ")).extracting(CameraLine::camera).containsExactly(camera, other);
    CameraLine line = record.search("åse").get(0);
    assertThat(line.jobNumbers()).containsExactly("J-7/2024", "J-12/2026");
    assertThat(line.visits()).isEqualTo(2);
    assertThat(line.lastReceivedAt()).contains(Instant.parse("2026-03-01T12:00:00Z"));
  }

  @Test
  void driftIsFromAsLeftToTheNextAsFound() {
    visit("2024-03-01T12:00:00Z", 31.25, 15.625);
    visit("2026-03-01T12:00:00Z", 17, 16);
    CameraHistory history = record.history(camera.id()).orElseThrow();
    assertThat(history.runs()).hasSize(4);
    assertThat(history.runs())
        .extracting(run -> run.run().asked().phase())
        .containsExactly(Phase.AS_FOUND, Phase.AS_LEFT, Phase.AS_FOUND, Phase.AS_LEFT);
    List<SpeedDrift> drifts = history.drifts();
    assertThat(drifts).extracting(SpeedDrift::speed).containsExactly(MarkedSpeed.parse("1/60"));
    SpeedDrift drift = drifts.get(0);
    assertThat(drift.points()).hasSize(4);
    // 1/60 is 1/64 s = 15.625 ms (APEX, ASA PH2.5-1960): twice that is one stop slow.
    assertThat(drift.points().get(0).summary().meanStops().orElseThrow()).isCloseTo(1, TICK_STOPS);
    assertThat(drift.betweenVisits()).hasSize(1);
    assertThat(drift.betweenVisits().get(0).stops().orElseThrow())
        .isCloseTo(Math.log(17 / 15.625) / Math.log(2), TICK_STOPS);
  }

  @Test
  void theToleranceIsTheUsualOneOfTheDial() {
    visit("2024-03-01T12:00:00Z", 31.25, 15.625);
    assertThat(record.history(camera.id()).orElseThrow().runs().get(0).speeds().get(0).tolerance())
        .isEqualTo(Tolerance.THIRD);
    assertThat(record.history(new org.halflight.job.Id<Camera>(99))).isEmpty();
  }

  @Test
  void aToleranceThatCannotBeReadIsSaidAndNotTakenForTheUsualOne() {
    visit("2024-03-01T12:00:00Z", 31.25, 15.625);
    record.database.write(
        connection -> {
          try (var statement = connection.createStatement()) {
            statement.execute(
                "INSERT INTO run_condition (run_id, name, words) VALUES"
                    + " (1, 'aim-tolerance', 'a bit')");
            RowCrc.sealAll(connection);
            return true;
          }
        });
    assertThatThrownBy(() -> record.history(camera.id()))
        .isInstanceOf(RecordTrouble.class)
        .hasMessageContaining("aim-tolerance cannot be read: a bit");
  }

  @Test
  void anAdjustingRunCountsWhatFollowsTheLastMarkAndLosesNoOtherSpeed() {
    Visit visit = record.keep(Visit.begins(camera.id(), "", Instant.parse("2024-03-01T12:00:00Z")));
    record.importSession(
        BenchScript.events(
            "R-1",
            1,
            script ->
                script
                    .begins("2024-03-01T12:00:00Z")
                    .greets()
                    .lightIsSet()
                    .run(camera.label(), Phase.ADJUSTING, 2, "1/60", "1/125")
                    .fires(15.625)
                    .fires(15.625)
                    .fires(15.625)
                    .fires(7.8125)
                    .handle(new SessionInput.Ends())),
        "a.session");
    Run run = record.history(camera.id()).orElseThrow().runs().get(0).run();
    record.keep(
        new WorkEntry(
            Id.ofNew(),
            visit.id(),
            Instant.parse("2024-03-01T12:10:00Z"),
            WorkKind.ADJUSTED,
            "spring eased",
            Optional.empty(),
            Optional.of(run.id()),
            OptionalInt.of(3)));
    List<SpeedDrift> drifts = record.history(camera.id()).orElseThrow().drifts();
    assertThat(drifts)
        .extracting(SpeedDrift::speed)
        .containsExactly(MarkedSpeed.parse("1/60"), MarkedSpeed.parse("1/125"));
    // 1/125 is 1/128 s = 7.8125 ms: one firing a stop slow before the mark, one right after it.
    assertThat(drifts.get(1).points().get(0).summary().meanStops().orElseThrow())
        .isCloseTo(0, TICK_STOPS);
  }

  private void visit(String at, double foundMillis, double leftMillis) {
    Instant received = Instant.parse(at);
    Visit visit = record.keep(Visit.begins(camera.id(), "", received));
    List<BenchEvent> events =
        BenchScript.events(
            "R-1",
            received.getEpochSecond(),
            script ->
                script
                    .begins(at)
                    .greets()
                    .lightIsSet()
                    .run(camera.label(), Phase.AS_FOUND, 2, "1/60")
                    .fires(40)
                    .fires(foundMillis)
                    .fires(foundMillis)
                    .run(camera.label(), Phase.AS_LEFT, 2, "1/60")
                    .fires(leftMillis)
                    .fires(leftMillis)
                    .handle(new SessionInput.Ends()));
    record.importSession(events, "a.session");
    record.keep(visit.handedBack(received.plusSeconds(3600), Checklist.EMPTY));
  }
}
