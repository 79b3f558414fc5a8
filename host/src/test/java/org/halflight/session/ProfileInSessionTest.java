package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.words.ProfileWords;
import org.junit.jupiter.api.Test;

/** What a session does with a profile; rig and shutter are invented. */
class ProfileInSessionTest {
  private static final LocalDate MADE = LocalDate.of(2026, 3, 9);
  private static final double EFFECTIVE = 1.0 / 64;

  private final InventedBench bench = new InventedBench();

  static RigProfile profile(String serial, Map<Channel, ComparatorTrips> trips) {
    return profile(serial, "full", trips);
  }

  private static RigProfile profile(
      String serial, String kind, Map<Channel, ComparatorTrips> trips) {
    EdgeDelays delays = new EdgeDelays(1e-6, 1e-8, 9e-6, 1e-8);
    return new RigProfile(
        new ProfiledRig(serial, kind, "1.0.0"),
        MADE,
        new LightRange(InventedBench.DARK, 700, 900),
        Optional.empty(),
        trips,
        Optional.of(new ClockRate(5000, 1, Double.POSITIVE_INFINITY, ClockRate.Source.GENERATOR)),
        Optional.empty(),
        Map.of(Channel.CENTRE_LOW, delays, Channel.CENTRE_HIGH, delays),
        Map.of(),
        OptionalDouble.empty());
  }

  private static final RigProfile OWN = profile("R-0001", Map.of());

  private static SessionInput.ProfileInUse inUse(RigProfile profile, int days) {
    return new SessionInput.ProfileInUse(profile, MADE.plusDays(days), OptionalInt.of(90));
  }

  private double seconds(int number) {
    return bench.result(number).effectiveSeconds().orElseThrow();
  }

  @Test
  void delaysAndClockAreTakenOutAndRawEdgesStay() {
    bench.begin(Phase.AS_LEFT, 5, InventedBench.S60);
    bench.fire(EFFECTIVE);
    bench.handle(inUse(OWN, 1));
    bench.fire(EFFECTIVE);

    assertThat(seconds(1)).isCloseTo(EFFECTIVE, within(1e-7));
    // By hand: 8 us of unlike delays less, and 1.005 times as many ticks a second.
    assertThat(seconds(2)).isCloseTo((EFFECTIVE - 8e-6) / 1.005, within(1e-7));
    assertThat(bench.result(1).profileUse().calibration()).isEqualTo(ProfileUse.NONE);
    assertThat(bench.result(2).profileUse().isCalibrated()).isTrue();
    assertThat(bench.result(2).profileUse().id().orElseThrow().label())
        .startsWith("R-0001/2026-03-09/");
    long raw = bench.result(2).firing().lastTicks() - bench.result(2).firing().firstTicks();
    long before = bench.result(1).firing().lastTicks() - bench.result(1).firing().firstTicks();
    assertThat(raw).isCloseTo(before, within(1L));
    assertThat(bench.news(SessionEvent.ProfileStands.class)).hasSize(1);
  }

  /** Offsets of 20 counts of 800: moved once, the levels lie 0.025 higher; twice, 0.05. */
  @Test
  void theComparatorsAreCorrectedOnceAndTheLightSettingsFindingWins() {
    ComparatorTrips off = ComparatorTrips.around(20, 0, 0.3);
    RigProfile offset =
        profile("R-0001", Map.of(Channel.CENTRE_LOW, off, Channel.CENTRE_HIGH, off));
    bench.begin(Phase.AS_LEFT, 5, InventedBench.S60);
    bench.handle(inUse(offset, 1));
    bench.fire(EFFECTIVE);
    LightLevels light = bench.session.light().orElseThrow();
    bench.handle(new SessionInput.LightSet(light, new TripPoints(off, off)));
    bench.fire(EFFECTIVE);
    ComparatorTrips other = ComparatorTrips.around(-8, 0, 0.3);
    bench.handle(new SessionInput.LightSet(light, new TripPoints(other, other)));
    bench.fire(EFFECTIVE);

    double node = light.lowCounts() - InventedBench.DARK;
    assertThat(bench.result(1).levels().orElseThrow().low())
        .isCloseTo((node + 20) / 800, within(1e-9));
    assertThat(bench.result(2).levels()).isEqualTo(bench.result(1).levels());
    assertThat(seconds(2)).isEqualTo(seconds(1));
    assertThat(bench.result(3).levels().orElseThrow().low())
        .isCloseTo((node - 8) / 800, within(1e-9));
  }

  @Test
  void theProfileOfAnotherRigIsNotUsedAndSaid() {
    bench.begin(Phase.AS_LEFT, 5, InventedBench.S60);
    bench.handle(inUse(profile("R-0002", Map.of()), 1));
    bench.fire(EFFECTIVE);
    assertThat(seconds(1)).isCloseTo(EFFECTIVE, within(1e-7));
    assertThat(bench.result(1).profileUse().calibration())
        .isEqualTo(new ProfileUse(Optional.empty(), Set.of(Mismatch.OTHER_RIG)));
    // Its own comes to hand later, and then holds.
    bench.handle(inUse(OWN, 1));
    bench.fire(EFFECTIVE);
    assertThat(bench.result(2).profileUse().isCalibrated()).isTrue();
  }

  @Test
  void ageLightFirmwareAndDamageAreEachSaidAndTheTimesStay() {
    bench.begin(Phase.AS_LEFT, 9, InventedBench.S60);
    bench.handle(inUse(OWN, 91));
    bench.fire(EFFECTIVE);
    assertThat(bench.result(1).profileUse().mismatches()).containsExactly(Mismatch.TOO_OLD);
    assertThat(seconds(1)).isCloseTo((EFFECTIVE - 8e-6) / 1.005, within(1e-7));

    bench.handle(inUse(OWN, 90));
    bench.handle(new SessionInput.LightSet(new LightLevels(20, 520, 126, 414)));
    bench.fire(EFFECTIVE);
    assertThat(bench.result(2).profileUse().mismatches()).containsExactly(Mismatch.OTHER_LIGHT);
    assertThat(bench.result(2).profileUse().profile()).contains(OWN);

    bench.setLight();
    bench.handle(new SessionInput.RigIs("R-0001", 8, BoardTraits.USUAL, "1.1.0"));
    bench.fire(EFFECTIVE);
    assertThat(bench.result(3).profileUse().mismatches()).containsExactly(Mismatch.OTHER_FIRMWARE);

    bench.handle(new SessionInput.ProfileLeftOut());
    bench.handle(new SessionInput.ProfileRefused(Mismatch.FILE_EDITED));
    bench.fire(EFFECTIVE);
    assertThat(bench.result(4).profileUse().mismatches()).containsExactly(Mismatch.FILE_EDITED);
    assertThat(seconds(4)).isCloseTo(EFFECTIVE, within(1e-7));
  }

  @Test
  void aBoardThatComesBackAsAnotherKindKeepsItsFiringsAndItsClockAndNothingElse() {
    bench.begin(Phase.AS_LEFT, 5, InventedBench.S60);
    bench.fire(EFFECTIVE);
    bench.handle(inUse(profile("R-0001", "small", Map.of()), 1));
    bench.fire(EFFECTIVE);
    assertThat(bench.session.results()).hasSize(2);
    ProfileUse use = bench.result(2).profileUse();
    assertThat(use.mismatches()).containsExactly(Mismatch.OTHER_KIND);
    assertThat(use.isCalibrated()).isFalse();
    // A clock that is 0.5 % fast, and no delays: those were of the other front end.
    assertThat(seconds(2)).isCloseTo(EFFECTIVE / 1.005, within(1e-7));
    assertThat(use.profile().orElseThrow().delays()).isEmpty();
    assertThat(bench.session.isRigCheckDue()).isFalse();
    assertThat(ProfileWords.standing(use))
        .singleElement()
        .asString()
        .contains("as another kind of rig", "clock still holds", "Calibrate it again");
  }

  @Test
  void aSignalOfTheRigCheckTakesCalibratedOffTheRun() {
    bench.handle(inUse(OWN, 1));
    bench.begin(Phase.AS_FOUND, 1, InventedBench.S60);
    bench.fire(EFFECTIVE);
    bench.begin(Phase.AS_LEFT, 3, InventedBench.S60);
    bench.fire(EFFECTIVE);
    double before = seconds(2);
    bench.handle(new SessionInput.RigChecked("R-0001", false));
    bench.fire(EFFECTIVE);
    bench.handle(new SessionInput.RigChecked("R-0001", true));
    bench.fire(EFFECTIVE);

    assertThat(bench.session.results().stream().map(r -> r.profileUse().isCalibrated()))
        .containsExactly(true, false, false, true);
    assertThat(seconds(2)).isEqualTo(before);
    assertThat(bench.news(SessionEvent.Changed.class)).hasSize(1);
    assertThat(
            bench.news(SessionEvent.ProfileStands.class).stream().map(n -> n.use().isCalibrated()))
        .containsExactly(true, false, true);
  }

  private static SessionInput.ClockHeld pings(double fastPpm, double uncertaintyPpm) {
    return new SessionInput.ClockHeld(
        "R-0001",
        new ClockRate(
            fastPpm, uncertaintyPpm, Double.POSITIVE_INFINITY, ClockRate.Source.HOST_CLOCK));
  }

  @Test
  void withoutAProfileTimesAreCorrectedByThePingsAndByEachOnlyOnce() {
    bench.begin(Phase.AS_LEFT, 9, InventedBench.S60);
    bench.fire(EFFECTIVE);
    bench.handle(pings(5000, 30));
    bench.fire(EFFECTIVE);
    bench.handle(new SessionInput.ClockHeld("R-0002", pings(-900, 30).rate()));
    bench.fire(EFFECTIVE);
    bench.handle(inUse(OWN, 1));
    bench.fire(EFFECTIVE);
    bench.handle(new SessionInput.ProfileLeftOut());
    bench.handle(new SessionInput.ClocksForgotten());
    bench.fire(EFFECTIVE);

    assertThat(seconds(1)).isCloseTo(EFFECTIVE, within(1e-7));
    assertThat(seconds(2)).isCloseTo(EFFECTIVE / 1.005, within(1e-7));
    assertThat(bench.result(2).profileUse().state().liveClock()).contains(pings(5000, 30).rate());
    assertThat(bench.result(2).profileUse().isCalibrated()).isFalse();
    assertThat(seconds(3)).as("another rig's clock").isEqualTo(seconds(2));
    // The profile's 5000 ppm and nothing beside it; the other part are its delays.
    assertThat(seconds(4)).isCloseTo((EFFECTIVE - 8e-6) / 1.005, within(1e-7));
    assertThat(bench.result(4).profileUse().state().liveClock()).isEmpty();
    assertThat(seconds(5)).isEqualTo(seconds(1));
    // A rate that changes is no other calibration.
    assertThat(bench.news(SessionEvent.ProfileStands.class)).hasSize(2);
  }

  @Test
  void aProfileThatThePingsContradictIsSaidOnceAndCorrectsAlone() {
    bench.begin(Phase.AS_LEFT, 9, InventedBench.S60);
    bench.handle(inUse(OWN, 1));
    // Joint: 30 ppm, 1 ppm of the profile, 29 ppm for the temperature; twice that is 83 ppm.
    bench.handle(pings(5080, 30));
    assertThat(bench.news(SessionEvent.ClocksDisagree.class)).isEmpty();
    bench.handle(pings(5090, 30));
    bench.handle(pings(5095, 30));
    assertThat(bench.news(SessionEvent.ClocksDisagree.class)).hasSize(1);
    bench.fire(EFFECTIVE);
    assertThat(seconds(1)).isCloseTo((EFFECTIVE - 8e-6) / 1.005, within(1e-7));
    bench.handle(pings(5001, 30));
    bench.handle(pings(4900, 30));
    assertThat(bench.news(SessionEvent.ClocksDisagree.class)).hasSize(2);
  }

  private void read(LightReading.What what, double counts, long ticks) {
    bench.handle(
        new SessionInput.LightRead(LightReading.of(what, "", false, counts, 0.3, 1000, ticks)));
  }

  private OptionalDouble panelFall(int number) {
    return bench.result(number).profileUse().state().panelFall();
  }

  /** In place, moved to either side, in place again; firings before the end know nothing of it. */
  @Test
  void aFiringKnowsWhatTheTestOfThePanelLimits() {
    double dark = InventedBench.DARK;
    bench.begin(Phase.AS_LEFT, 9, InventedBench.S60);
    bench.fire(EFFECTIVE);
    read(LightReading.What.PANEL_IN_PLACE, dark + 800, 1);
    // 5 % less when moved: by hand, 2 times 0.05 over 2.05.
    read(LightReading.What.PANEL_MOVED, dark + 760, 2);
    bench.fire(EFFECTIVE);
    read(LightReading.What.PANEL_MOVED, dark + 780, 3);
    read(LightReading.What.PANEL_IN_PLACE, dark + 800, 4);
    bench.fire(EFFECTIVE);
    assertThat(panelFall(1)).isEmpty();
    assertThat(panelFall(2)).isEmpty();
    assertThat(panelFall(3).orElseThrow()).isCloseTo(0.1 / 2.05 + 0.0009, within(5e-5));
  }

  /** The shutter was not held open: nothing is limited by readings in the dark. */
  @Test
  void aPanelTestInTheDarkIsNone() {
    bench.begin(Phase.AS_LEFT, 9, InventedBench.S60);
    read(LightReading.What.PANEL_IN_PLACE, InventedBench.DARK + 3, 1);
    read(LightReading.What.PANEL_MOVED, InventedBench.DARK + 3, 2);
    read(LightReading.What.PANEL_IN_PLACE, InventedBench.DARK + 3, 3);
    bench.fire(EFFECTIVE);
    assertThat(panelFall(1)).isEmpty();
  }

  @Test
  void aFiringKnowsTheLightAndWhetherTheRigWasChecked() {
    bench.begin(Phase.AS_LEFT, 9, InventedBench.S60);
    bench.handle(inUse(OWN, 1));
    assertThat(bench.session.isRigCheckDue()).isTrue();
    bench.fire(EFFECTIVE);
    bench.handle(new SessionInput.RigChecked("R-0001", true));
    assertThat(bench.session.isRigCheckDue()).isFalse();
    bench.fire(EFFECTIVE);
    assertThat(bench.result(1).profileUse().state())
        .isEqualTo(new RigState(Optional.empty(), false, OptionalDouble.of(800)));
    assertThat(bench.result(2).profileUse().state().checked()).isTrue();
  }
}
