package org.halflight.workflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.bench.CalibrationRefusal;
import org.halflight.bench.RigCalibration;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.ClockFit;
import org.halflight.calibration.ClockPair;
import org.halflight.calibration.RigCheck;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;

/** Calibration and rig check in sentences. */
public final class CalibrationSentences {
  private static final double FIVE_HUNDREDTH_SECONDS = 1.0 / 512;

  private CalibrationSentences() {}

  /** Why it cannot be made, and what to do. */
  public static String refused(CalibrationRefusal refusal) {
    if (refusal instanceof CalibrationRefusal.NoLed) {
      return Words.say("calibration.refused.noLed");
    }
    if (refusal instanceof CalibrationRefusal.Inverted) {
      return Words.say("calibration.refused.inverted");
    }
    if (refusal instanceof CalibrationRefusal.Saturated) {
      return Words.say("calibration.refused.saturated");
    }
    if (refusal instanceof CalibrationRefusal.NotDark) {
      return Words.say("calibration.refused.notDark");
    }
    if (refusal instanceof CalibrationRefusal.TooDim) {
      return Words.say("calibration.refused.tooDim");
    }
    if (refusal instanceof CalibrationRefusal.NothingSeen nothing) {
      return Words.say("calibration.refused.nothingSeen", channel(nothing.channel().label()));
    }
    if (refusal instanceof CalibrationRefusal.WrongPolarity wrong) {
      return Words.say("calibration.refused.polarity", channel(wrong.channel().label()));
    }
    if (refusal instanceof CalibrationRefusal.Disturbed disturbed) {
      return Words.say(
          "calibration.refused.disturbed",
          channel(disturbed.channel().label()),
          disturbed.missed());
    }
    if (refusal instanceof CalibrationRefusal.TooFewPoints few) {
      return Words.say("calibration.refused.tooFew", channel(few.channel().label()), few.points());
    }
    if (refusal instanceof CalibrationRefusal.SlopeNotOne wrong) {
      return Words.say("calibration.refused.slope", ppm(wrong.test().slopeError()));
    }
    if (refusal instanceof CalibrationRefusal.Stopped) {
      return Words.say("calibration.refused.stopped");
    }
    return refusal instanceof CalibrationRefusal.Restarted
        ? Words.say("calibration.refused.restarted")
        : Words.say("calibration.refused.noAnswer");
  }

  /**
   * What came of a calibration beside the profile itself.
   *
   * @param clockSeconds how long the clocks were to be held against each other
   */
  public static List<String> lines(RigCalibration.Calibrated done, double clockSeconds) {
    List<String> lines = new ArrayList<>();
    if (!done.fit().lagIsSeparate()) {
      lines.add(Words.say("calibration.together"));
    }
    slope(done.fit()).ifPresent(lines::add);
    done.rampedExcessSeconds()
        .ifPresent(
            excess ->
                lines.add(
                    Words.say(
                        "calibration.ramped",
                        ProfileWords.micros(excess),
                        String.format(
                            Locale.ROOT,
                            "%.4f",
                            Math.log1p(excess / FIVE_HUNDREDTH_SECONDS) / Math.log(2)))));
    clockMissing(done, clockSeconds).ifPresent(lines::add);
    if (done.clock().map(ClockPair::received).orElse(null) instanceof ClockFit.Fitted fitted) {
      lines.add(
          Words.say(
              "calibration.clock.check",
              String.format(Locale.ROOT, "%+.2f", fitted.fit().fastPpm()),
              String.format(Locale.ROOT, "%+.2f", fitted.fit().medianFastPpm()),
              fitted.fit().stamps(),
              fitted.fit().dropped()));
    }
    return lines;
  }

  /** That the clock was wanted and left out all the same; empty where it was not. */
  public static Optional<String> clockMissing(RigCalibration.Calibrated done, double clockSeconds) {
    return clockSeconds > 0 && done.profile().clock().isEmpty()
        ? Optional.of(Words.say("calibration.clock.none"))
        : Optional.empty();
  }

  /** How sharply the widths were tested; empty where all pulses had one width. */
  private static Optional<String> slope(ChainFit fit) {
    return fit.slope()
        .map(
            test ->
                Words.say(
                    "calibration.slope",
                    ppm(test.slopeError()),
                    ppm(test.standardUncertainty()),
                    ppm(test.findable())));
  }

  private static String ppm(double share) {
    return String.format(Locale.ROOT, "%.1f", 1e6 * Math.abs(share));
  }

  private static String channel(String label) {
    return Words.say("profile.channel." + label);
  }

  /** What goes on. */
  public static String stage(RigCalibration.Stage stage) {
    return Words.of("calibration.stage", stage);
  }

  /** What a rig check came to, and what to do. */
  public static List<String> check(RigCheck check) {
    List<String> lines = new ArrayList<>();
    double mean =
        check.points().stream().mapToDouble(RigCheck.Point::value).average().orElseThrow();
    lines.add(
        Words.say(
            check.inControl() ? "check.inControl" : "check.signal",
            ProfileWords.micros(mean),
            ProfileWords.micros(check.limits().at(RigCheck.SINGLE_DEVIATIONS))));
    check.signals().stream()
        .sorted()
        .forEach(signal -> lines.add(Words.of("check.signal", signal)));
    return lines;
  }
}
