package org.halflight.record;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.profile.ClockRate;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;

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
                .handle(new SessionInput.LastRejected("knocked the bench"))
                .fires(16.5)
                .movesLastTo("1/125")
                .pressesInVain()
                .handle(new SessionInput.LastRejected("not cocked"))
                .pressesInVain()
                .waits(3)
                .fires(18)
                .opens()
                .handle(new SessionInput.ClosedByHand())
                .closesAfter(3000)
                .quiet()
                .fires(0.6)
                .curve(0.6)
                .opensAndCloses(8.5)
                .curve(8.5)
                .quiet()
                .run(camera, Phase.AS_LEFT, List.of(UntimedTest.B, UntimedTest.T), "1/60", "1/125")
                .fires(15.7)
                .fires(15.6)
                .fires(7.8)
                .fires(7.9)
                .fires(650)
                .fires(20)
                .handle(new SessionInput.LensCap(true))
                .pressesInVain()
                .handle(new SessionInput.Ends()));
  }

  /** An invented profile of a rig. */
  static RigProfile profile(String rigSerial) {
    EdgeDelays delays = new EdgeDelays(1e-6, 1e-8, 9e-6, 1e-8);
    return new RigProfile(
        new ProfiledRig(rigSerial, "full", "1.0.0"),
        LocalDate.of(2026, 11, 20),
        new LightRange(20, 700, 900),
        Optional.empty(),
        Map.of(),
        Optional.of(new ClockRate(5000, 1, Double.POSITIVE_INFINITY, ClockRate.Source.GENERATOR)),
        Optional.empty(),
        Map.of(Channel.CENTRE_LOW, delays, Channel.CENTRE_HIGH, delays),
        Map.of(),
        OptionalDouble.empty());
  }

  /** A run of four firings: without a profile, two with one, and one with it too old. */
  static List<BenchEvent> calibrated(String rigSerial, String camera) {
    return BenchScript.events(rigSerial, 7, script -> calibrated(script, camera, rigSerial));
  }

  static BenchScript calibrated(BenchScript script, String camera, String rigSerial) {
    RigProfile profile = profile(rigSerial);
    LocalDate day = LocalDate.of(2026, 11, 24);
    return script
        .begins("2026-11-24T11:00:00Z")
        .greets()
        .lightIsSet()
        .run(camera, Phase.AS_LEFT, 4, "1/60")
        .fires(16)
        .handle(new SessionInput.ProfileInUse(profile, day, OptionalInt.of(90)))
        .fires(16.1)
        .fires(16.2)
        .handle(new SessionInput.ProfileInUse(profile, day, OptionalInt.of(1)))
        .fires(16.3);
  }

  /** A run of three firings: before the clock was held against the host's, after it, checked. */
  static List<BenchEvent> pinged(String rigSerial, String camera) {
    return BenchScript.events(
        rigSerial,
        8,
        script ->
            script
                .begins("2026-11-25T11:00:00Z")
                .greets()
                .lightIsSet()
                .run(camera, Phase.AS_LEFT, 3, "1/60")
                .fires(16)
                .handle(
                    new SessionInput.ClockHeld(
                        rigSerial,
                        new ClockRate(
                            3450.125, 29.5, Double.POSITIVE_INFINITY, ClockRate.Source.HOST_CLOCK)))
                .fires(16.1)
                .handle(new SessionInput.RigChecked(rigSerial, true))
                .fires(16.2));
  }

  static Path write(Path file, List<BenchEvent> events) {
    try (SessionFile session = SessionFile.create(file)) {
      events.forEach(session::add);
      session.settle();
    }
    return file;
  }
}
