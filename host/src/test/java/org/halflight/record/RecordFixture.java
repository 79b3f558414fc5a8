package org.halflight.record;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.session.Check;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;

/** What the tests of the record share. All cameras and firings are invented. */
final class RecordFixture {
  static final Instant NOW = Instant.parse("2026-11-25T10:00:00Z");
  static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);

  private RecordFixture() {}

  static WorkshopRecord open(Path file) {
    return WorkshopRecord.open(file, CLOCK);
  }

  /**
   * A session with one of each: before a run, timed, rejected, moved, stuck open, closed by hand,
   * not opened, by the self-timer, never fully open, behind a lens cap, B and T, in two runs.
   */
  static List<BenchEvent> everything(String rigSerial) {
    return everything(rigSerial, "Old 6x6");
  }

  /** The same of a camera of a label. */
  static List<BenchEvent> everything(String rigSerial, String camera) {
    return BenchScript.events(
        rigSerial,
        7,
        script ->
            script
                .begins("2026-11-24T09:00:00Z")
                .greets()
                .fires(16)
                .lightIsSet()
                .run(camera, Phase.AS_FOUND, 3, "1/60", "1/125")
                .fires(30)
                .fires(17)
                .fires(17.5)
                .tell(new SessionInput.LastRejected("knocked the bench"))
                .fires(16.5)
                .movesLastTo("1/125")
                .pressesInVain()
                .tell(new SessionInput.LastRejected("not cocked"))
                .pressesInVain()
                .waits(3)
                .fires(18)
                .opens()
                .tell(new SessionInput.ClosedByHand())
                .closesAfter(3000)
                .quiet()
                .fires(0.6)
                .curve(0.6)
                .opensAndCloses(8.5)
                .curve(8.5)
                .quiet()
                .run(camera, Phase.AS_LEFT, List.of(Check.B, Check.T), "1/60", "1/125")
                .fires(15.7)
                .fires(15.6)
                .fires(7.8)
                .fires(7.9)
                .fires(650)
                .fires(20)
                .tell(new SessionInput.LensCap(true))
                .pressesInVain()
                .tell(new SessionInput.Ends()));
  }

  static Path write(Path file, List<BenchEvent> events) {
    try (SessionFile session = SessionFile.create(file)) {
      events.forEach(session::add);
      session.settle();
    }
    return file;
  }
}
