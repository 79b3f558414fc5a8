package org.halflight.bench;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.session.SessionInput;

/** The values of the marks that tell what a session is measured with. */
final class ProfileMarks {
  /** A profile is in use, refused or left out from here on. */
  static final String PROFILE = "profile";

  /** The rig was checked. */
  static final String CHECK = "rig-check";

  private static final String IS = "is";
  private static final String IN_USE = "in-use";
  private static final String REFUSED = "refused";
  private static final String LEFT_OUT = "left-out";
  private static final String TEXT = "text";
  private static final String ON = "on";
  private static final String MOST_DAYS = "most-days";
  private static final String BECAUSE = "because";
  private static final String IN_CONTROL = "in-control";
  static final String CLOCK = "clock";
  private static final String FAST_PPM = "fast-ppm";
  private static final String UNCERTAINTY_PPM = "uncertainty-ppm";
  private static final String SIGNAL = "signal";

  private ProfileMarks() {}

  /** The mark of an input, if it is one of these. */
  static Optional<BenchEvent.Mark> of(
      long hostNanos, SessionInput input, Map<String, String> values) {
    if (input instanceof SessionInput.ProfileInUse use) {
      values.put(IS, IN_USE);
      values.put(ON, use.on().toString());
      use.mostDays().ifPresent(days -> values.put(MOST_DAYS, String.valueOf(days)));
      values.put(TEXT, ProfileFile.write(use.profile()));
    } else if (input instanceof SessionInput.ProfileRefused refused) {
      values.put(IS, REFUSED);
      values.put(BECAUSE, Mismatch.WORDS.word(refused.why()));
    } else if (input instanceof SessionInput.ProfileLeftOut) {
      values.put(IS, LEFT_OUT);
    } else if (input instanceof SessionInput.RigChecked checked) {
      values.put("rig", checked.rigSerial());
      values.put(IS, checked.inControl() ? IN_CONTROL : SIGNAL);
      return Optional.of(new BenchEvent.Mark(hostNanos, CHECK, values));
    } else if (input instanceof SessionInput.ClockHeld held) {
      values.put("rig", held.rigSerial());
      values.put(FAST_PPM, number(held.rate().fastPpm()));
      values.put(UNCERTAINTY_PPM, number(held.rate().standardUncertaintyPpm()));
      return Optional.of(new BenchEvent.Mark(hostNanos, CLOCK, values));
    } else {
      return Optional.empty();
    }
    return Optional.of(new BenchEvent.Mark(hostNanos, PROFILE, values));
  }

  /**
   * What a mark about a profile says; empty where it is damaged.
   *
   * @throws IllegalArgumentException where it is damaged, too
   */
  static Optional<SessionInput> profile(Map<String, String> values) {
    return switch (values.getOrDefault(IS, "")) {
      case IN_USE -> inUse(values);
      case REFUSED ->
          Optional.of(
              new SessionInput.ProfileRefused(
                  Mismatch.WORDS.parse(values.getOrDefault(BECAUSE, ""))));
      case LEFT_OUT -> Optional.of(new SessionInput.ProfileLeftOut());
      default -> Optional.empty();
    };
  }

  private static Optional<SessionInput> inUse(Map<String, String> values) {
    try {
      LocalDate on = LocalDate.parse(values.getOrDefault(ON, ""));
      OptionalInt most =
          values.containsKey(MOST_DAYS)
              ? OptionalInt.of(Integer.parseInt(values.get(MOST_DAYS)))
              : OptionalInt.empty();
      return ProfileFile.read(values.getOrDefault(TEXT, "")) instanceof ProfileFile.Read read
          ? Optional.of(new SessionInput.ProfileInUse(read.profile(), on, most))
          : Optional.empty();
    } catch (DateTimeException damaged) {
      return Optional.empty();
    }
  }

  /**
   * What a mark about the pings says; empty where it is damaged.
   *
   * @throws IllegalArgumentException where it is damaged, too
   */
  static Optional<SessionInput> clock(Map<String, String> values) {
    return Optional.of(
        new SessionInput.ClockHeld(
            values.getOrDefault("rig", ""),
            new ClockRate(
                Marks.finite(values.getOrDefault(FAST_PPM, "")),
                Marks.finite(values.getOrDefault(UNCERTAINTY_PPM, "")),
                Double.POSITIVE_INFINITY,
                ClockRate.Source.HOST_CLOCK)));
  }

  private static String number(double ppm) {
    return String.format(Locale.ROOT, "%.3f", ppm);
  }

  /** What a mark about a rig check says; empty where it is damaged. */
  static Optional<SessionInput> check(Map<String, String> values) {
    String rig = values.getOrDefault("rig", "");
    return switch (values.getOrDefault(IS, "")) {
      case IN_CONTROL -> Optional.of(new SessionInput.RigChecked(rig, true));
      case SIGNAL -> Optional.of(new SessionInput.RigChecked(rig, false));
      default -> Optional.empty();
    };
  }
}
