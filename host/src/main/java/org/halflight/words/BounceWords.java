package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.extratest.Bounce;
import org.halflight.speeds.MarkedSpeed;

/** Bounce, early light and light while cocking in sentences. */
final class BounceWords {
  private BounceWords() {}

  static List<String> lines(Bounce bounce) {
    List<String> lines = new ArrayList<>();
    if (bounce.worst().isPresent()) {
      lines.add(afterClosing(bounce, bounce.worst().get()));
    }
    if (!bounce.early().isEmpty()) {
      List<MarkedSpeed> early = bounce.early().stream().map(Bounce.AtSpeed::speed).toList();
      double most =
          bounce.early().stream().mapToDouble(at -> at.early().mean().get()).max().orElseThrow();
      lines.add(Words.say("bounce.early", SpeedNames.of(early, dial(bounce)), share(most)));
    }
    // What is wrong is said first.
    whileCocking(bounce).ifPresent(said -> lines.add(bounce.leaks() > 0 ? 0 : lines.size(), said));
    return lines;
  }

  /** Bounce and light while cocking, without what else there is to know. */
  static String inShort(Bounce bounce) {
    Optional<String> closing = bounce.worst().map(worst -> afterClosing(bounce, worst));
    return Stream.of(bounce.leaks() > 0 ? whileCocking(bounce) : Optional.<String>empty(), closing)
        .flatMap(Optional::stream)
        .reduce((first, second) -> first + " " + second)
        .orElseGet(() -> lines(bounce).get(0));
  }

  private static Optional<String> whileCocking(Bounce bounce) {
    if (bounce.cockings() == 0) {
      return Optional.empty();
    }
    return Optional.of(
        bounce.leaks() > 0
            ? Words.count("bounce.leak", bounce.leaks(), bounce.leaks())
            : Words.count("bounce.cocking", bounce.cockings(), bounce.cockings()));
  }

  private static String afterClosing(Bounce bounce, Bounce.AtSpeed worst) {
    if (worst.lateShare() < Bounce.LEAST_SHARE) {
      return Words.say(
          worst.curves() > 0 ? "bounce.none.curve" : "bounce.none",
          SpeedNames.of(dial(bounce), dial(bounce)));
    }
    return Words.say(
        worst.overExposureStops() >= Bounce.FAULT_STOPS ? "bounce.fault" : "bounce.little",
        worst.speed(),
        share(worst.lateShare()),
        Numbers.plainStops(worst.overExposureStops()),
        fainter(worst.lateShare()));
  }

  /** How much fainter the second image is than the first, in stops. */
  private static String fainter(double share) {
    return String.format(Locale.ROOT, "%.1f", -Math.log(share) / Math.log(2));
  }

  private static String share(double share) {
    return Numbers.percent(share);
  }

  private static List<MarkedSpeed> dial(Bounce bounce) {
    return bounce.speeds().stream().map(Bounce.AtSpeed::speed).toList();
  }
}
