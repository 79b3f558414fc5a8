package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.RigCheck;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;

/** Calibration and rig check in sentences. */
public final class CalibrationSentences {
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

  /** How sharply the widths were tested; empty where all pulses had one width. */
  public static Optional<String> slope(ChainFit fit) {
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
