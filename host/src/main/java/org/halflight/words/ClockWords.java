package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.LiveClock;
import org.halflight.profile.ClockRate;
import org.halflight.profile.RigProfile;
import org.halflight.session.ProfileUse;
import org.halflight.session.Source;

/** The clocks of rig and computer while measuring, in sentences. */
public final class ClockWords {
  private ClockWords() {}

  /**
   * All there is to say about the clock while measuring; nothing where nobody watches it.
   *
   * @param serial of the rig; empty before it greeted
   * @param use what firings are measured with now
   */
  public static List<String> lines(LiveClock clock, HostClock host, String serial, ProfileUse use) {
    List<String> lines = new ArrayList<>();
    if (serial.isEmpty() || clock instanceof LiveClock.NotWatched) {
      return lines;
    }
    lines.add(live(clock));
    if (clock instanceof LiveClock.NotComparable) {
      return lines;
    }
    if (clock instanceof LiveClock.Known) {
      lines.add(used(serial, use));
    }
    lines.add(host(host));
    return lines;
  }

  private static String live(LiveClock clock) {
    if (clock instanceof LiveClock.Known known) {
      return Words.say(
          known.rate().fastPpm() < 0 ? "clock.live.slow" : "clock.live.fast",
          number(Math.abs(known.rate().fastPpm())),
          number(known.rate().standardUncertaintyPpm()),
          known.pings(),
          Math.round(known.spanSeconds()));
    }
    if (clock instanceof LiveClock.TooFew few) {
      return Words.say("clock.live.tooFew", few.pings(), few.wanted());
    }
    return Words.say(
        clock instanceof LiveClock.Contradiction
            ? "clock.live.contradiction"
            : "clock.live.notComparable");
  }

  private static String used(String serial, ProfileUse use) {
    if (Source.of(serial) == Source.SIMULATOR) {
      return Words.say("clock.live.simulated");
    }
    if (use.profile().flatMap(RigProfile::clock).isPresent()) {
      return Words.say("clock.live.profileHolds");
    }
    return Words.say(
        use.state().liveClock().isPresent() ? "clock.live.used" : "clock.live.notYetUsed");
  }

  /** Whether the clock of this computer is steered, and what that is worth here. */
  public static String host(HostClock host) {
    String key =
        host.steered() == HostClock.Steered.YES && !host.stampsFollow()
            ? "yes-elsewhere"
            : Words.key(host.steered());
    return Words.say("clock.host." + key, number(host.standardUncertaintyPpm()));
  }

  /** The pings and the profile tell rates that cannot both be right. */
  public static String disagree(ClockRate kept, ClockRate live) {
    return Words.say("news.clocksDisagree", signed(live.fastPpm()), signed(kept.fastPpm()));
  }

  private static String signed(double ppm) {
    return String.format(Locale.ROOT, "%+.1f", ppm);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
