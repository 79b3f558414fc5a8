package org.halflight.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import org.halflight.fixtures.Seed;
import org.halflight.profile.ProfileFile.Reason;
import org.halflight.profile.ProfileFile.Refused;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;

class ProfileFileTest {
  private static final ProfiledRig RIG = new ProfiledRig("R-0001", "full", "1.0.0");
  private static final LocalDate DATE = LocalDate.of(2025, 3, 9);

  static final RigProfile PROFILE =
      new RigProfile(
          RIG,
          DATE,
          new LightRange(4.25, 700, 820.5),
          Optional.of(new ThresholdCounts(172.1, 633.7)),
          Map.of(Channel.CENTRE_LOW, new ComparatorTrips(1.25, -0.75, 0.3)),
          Optional.of(
              new ClockRate(
                  3450.0123456789, 0.2, Double.POSITIVE_INFINITY, ClockRate.Source.HOST_CLOCK)),
          Optional.of(new FrontEndLag(1.1e-6, 2e-8)),
          Map.of(Channel.CENTRE_HIGH, new EdgeDelays(1e-6, 1e-8, 4.5e-6, 2e-8)),
          Map.of(Channel.CENTRE_HIGH, new WidthLine(3.5e-6, 1, 1e-16, 0, 0, 1e-7, 149)),
          OptionalDouble.of(1e-4));

  @Test
  void comesBackTheSame() {
    assertThat(ProfileFile.read(ProfileFile.write(PROFILE)))
        .isEqualTo(new ProfileFile.Read(PROFILE));
    RigProfile bare = InventedProfiles.bare(RIG, DATE, new LightRange(0, 1, 2));
    assertThat(ProfileFile.read(ProfileFile.write(bare))).isEqualTo(new ProfileFile.Read(bare));
  }

  @Test
  void lineEndsOfOtherSystemsDoNoHarm() {
    assertThat(ProfileFile.read(ProfileFile.write(PROFILE).replace("\n", "\r\n")))
        .isEqualTo(new ProfileFile.Read(PROFILE));
  }

  @Test
  void everyEditOfOneCharacterIsRefused(@Seed(5) long seed) {
    String text = ProfileFile.write(PROFILE);
    SplittableRandom random = new SplittableRandom(seed);
    for (int at = 0; at < text.length(); at++) {
      char was = text.charAt(at);
      char is = (char) ('!' + random.nextInt(90));
      if (was == is || Character.isWhitespace(was)) {
        continue;
      }
      String edited = text.substring(0, at) + is + text.substring(at + 1);
      assertThat(ProfileFile.read(edited))
          .as("seed " + seed + ", place " + at)
          .isInstanceOf(Refused.class);
    }
  }

  @Test
  void everyCutIsRefused() {
    String text = ProfileFile.write(PROFILE);
    for (int length = 0; length < text.length() - 1; length++) {
      assertThat(ProfileFile.read(text.substring(0, length)))
          .as("length " + length)
          .isInstanceOf(Refused.class);
    }
  }

  @Test
  void eachKindOfDamageHasItsReason() {
    String text = ProfileFile.write(PROFILE);
    assertThat(ProfileFile.read("")).isEqualTo(new Refused(Reason.NO_PROFILE));
    assertThat(ProfileFile.read("time,value\n1,2\n")).isEqualTo(new Refused(Reason.NO_PROFILE));
    assertThat(ProfileFile.read(text.replace("profile 1", "profile 2")))
        .isEqualTo(new Refused(Reason.LATER_FORM));
    assertThat(ProfileFile.read(text.substring(0, text.length() - 12)))
        .isEqualTo(new Refused(Reason.CUT));
    assertThat(ProfileFile.read(text.replace("3450.01", "345.01")))
        .isEqualTo(new Refused(Reason.EDITED));
  }

  @Test
  void whatDoesNotFitIsTold() {
    assertThat(fits(RIG, DATE.plusDays(30), OptionalDouble.of(760), OptionalInt.of(30))).isEmpty();
    assertThat(fits(RIG, DATE.plusDays(31), OptionalDouble.of(760), OptionalInt.of(30)))
        .containsExactly(Mismatch.TOO_OLD);
    assertThat(fits(RIG, DATE.plusYears(9), OptionalDouble.empty(), OptionalInt.empty())).isEmpty();
    assertThat(fits(RIG, DATE, OptionalDouble.of(500), OptionalInt.empty()))
        .containsExactly(Mismatch.OTHER_LIGHT);
    assertThat(
            fits(
                new ProfiledRig("R-0001", "full", "1.0.1"),
                DATE,
                OptionalDouble.empty(),
                OptionalInt.empty()))
        .containsExactly(Mismatch.OTHER_FIRMWARE);
    assertThat(
            fits(
                new ProfiledRig("R-0002", "full", "1.0.0"),
                DATE,
                OptionalDouble.empty(),
                OptionalInt.empty()))
        .containsExactly(Mismatch.OTHER_RIG)
        .allMatch(Mismatch::forbidsUse);
    // The same board, grown into another rig with the firmware for it.
    ProfiledRig grown = new ProfiledRig("R-0001", "starter", "1.3.0");
    assertThat(fits(grown, DATE.plusYears(1), OptionalDouble.of(500), OptionalInt.of(30)))
        .containsExactly(Mismatch.OTHER_KIND);
    RigProfile moved = PROFILE.movedTo(grown).orElseThrow();
    assertThat(moved.clock()).isEqualTo(PROFILE.clock()).isPresent();
    assertThat(moved.hasPulses()).isFalse();
    assertThat(moved.tripPoints()).isEmpty();
    assertThat(moved.lag()).isEmpty();
    assertThat(moved.delays()).isEmpty();
    assertThat(moved.rig()).isEqualTo(grown);
  }

  private static Set<Mismatch> fits(
      ProfiledRig rig, LocalDate today, OptionalDouble full, OptionalInt most) {
    return ProfileFit.of(PROFILE, rig, today, full, most);
  }
}
