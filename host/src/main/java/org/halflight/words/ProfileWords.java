package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.profile.ClockRate;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.RigProfile;
import org.halflight.session.ProfileUse;
import org.halflight.verdict.CalibrationStatus;

/** What a profile holds, and why one is not used, in sentences. */
public final class ProfileWords {
  private ProfileWords() {}

  /** Why a file is no profile, and what to do. */
  public static String refused(String file, ProfileFile.Reason reason) {
    return Words.of("profile.refused", reason, file);
  }

  /** Why a profile does not fit what is on the bench, and what to do. */
  public static String mismatch(Optional<RigProfile> profile, ProfileFit.Mismatch mismatch) {
    if (mismatch == ProfileFit.Mismatch.OTHER_KIND
        && profile.flatMap(RigProfile::clock).isEmpty()) {
      return Words.say("profile.mismatch.other-kind.nothing");
    }
    return Words.of(
        "profile.mismatch",
        mismatch,
        profile.map(RigProfile::date).map(String::valueOf).orElse(""),
        profile.map(its -> its.rig().firmware()).orElse(""));
  }

  /**
   * What firings are measured with: calibrated, or each reason why not with what to do, a sentence
   * each.
   */
  public static List<String> standing(ProfileUse use) {
    if (!use.mismatches().isEmpty()) {
      return use.mismatches().stream().map(why -> mismatch(use.profile(), why)).toList();
    }
    return List.of(
        use.profile()
            .map(profile -> Words.say("profile.stands.calibrated", profile.date()))
            .orElseGet(() -> Words.say("profile.stands.none")));
  }

  /** What some firings were measured with, each sentence once. */
  public static List<String> standing(CalibrationStatus standing) {
    return standing.uses().stream().flatMap(use -> standing(use).stream()).distinct().toList();
  }

  /** How fast a clock runs, how sure that is, and by what. */
  public static String clock(ClockRate clock) {
    return Words.say(
        clock.fastPpm() < 0 ? "profile.clock.slow" : "profile.clock.fast",
        ppm(Math.abs(clock.fastPpm()), clock),
        ppm(clock.standardUncertaintyPpm(), clock),
        Words.of("profile.clock.source", clock.source()));
  }

  /** All of it, a sentence a line. */
  public static List<String> lines(RigProfile profile) {
    List<String> lines = new ArrayList<>();
    lines.add(
        Words.say(
            "profile.of",
            profile.rig().serial(),
            profile.rig().kind(),
            profile.rig().firmware(),
            profile.date()));
    lines.add(
        Words.say(
            "profile.light",
            number(profile.light().darkCounts()),
            number(profile.light().leastFullCounts()),
            number(profile.light().greatestFullCounts())));
    profile
        .clock()
        .ifPresentOrElse(
            clock -> lines.add(clock(clock)), () -> lines.add(Words.say("profile.clock.unknown")));
    profile
        .lag()
        .ifPresent(
            lag ->
                lines.add(
                    Words.say(
                        "profile.lag",
                        micros(lag.seconds()),
                        micros(lag.standardUncertaintySeconds()))));
    profile
        .delays()
        .forEach(
            (channel, delays) ->
                lines.add(
                    Words.say(
                        "profile.delays",
                        Words.say("profile.channel." + channel.label()),
                        micros(delays.riseSeconds()),
                        micros(delays.fallSeconds()),
                        micros(delays.widthOffsetSeconds()),
                        micros(width(delays)))));
    profile
        .tripPoints()
        .forEach(
            (channel, trip) ->
                lines.add(
                    Words.say(
                        trip.offsetCounts() < 0 ? "profile.trip.below" : "profile.trip.above",
                        Words.say("profile.channel." + channel.label()),
                        number(Math.abs(trip.offsetCounts())),
                        number(trip.hysteresisCounts()))));
    if (profile.shortestTrustworthySeconds().isPresent()) {
      lines.add(
          Words.say(
              "profile.shortest",
              Numbers.time(profile.shortestTrustworthySeconds().getAsDouble())));
    } else {
      lines.add(Words.say("profile.shortest.none"));
    }
    return lines;
  }

  private static double width(EdgeDelays delays) {
    return delays.widthStandardUncertaintySeconds();
  }

  /** A short time in microseconds with two decimals. */
  public static String micros(double seconds) {
    return String.format(Locale.ROOT, "%.2f", Numbers.withoutNegativeZero(seconds * 1e6, 2));
  }

  /** No more digits than the uncertainty of the clock supports. */
  private static String ppm(double value, ClockRate clock) {
    return clock.standardUncertaintyPpm() < 10
        ? number(value)
        : String.format(Locale.ROOT, "%.0f", value);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
