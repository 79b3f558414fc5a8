package org.halflight.verdict;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Interval;

/** At which speeds an electronic flash lights the whole frame. */
public final class FlashSpeed {
  private FlashSpeed() {}

  /**
   * The fastest speed at which a flash is safe: no faster one than the slowest that is not. Empty
   * where not even the slowest is, or nothing is known of curtains.
   */
  public static Optional<MarkedSpeed> fastest(List<SpeedSummary> speeds) {
    return speeds.stream()
        .flatMap(speed -> speed.curtains().stream())
        .sorted(Comparator.comparingDouble(CurtainSpeed::wantedSeconds).reversed())
        .takeWhile(FlashSpeed::isSafe)
        .reduce((slower, faster) -> faster)
        .map(CurtainSpeed::speed);
  }

  /**
   * Whether the frame is open as a whole for the time of a flash, as far as it is known, and the
   * contact closes within that, where it is wired.
   */
  static boolean isSafe(CurtainSpeed speed) {
    OptionalDouble window = speed.mean(CurtainFigure.WINDOW);
    if (window.isEmpty() || speed.firings() == 0) {
      return false;
    }
    double least =
        Math.min(
                window.getAsDouble(),
                speed.interval(CurtainFigure.WINDOW).map(Interval::low).orElse(Double.MAX_VALUE))
            - speed.windowPlusMinusSeconds();
    OptionalDouble contact = speed.mean(CurtainFigure.CONTACT);
    return least - Math.max(0, contact.orElse(0)) >= CurtainLimits.FLASH_SECONDS
        && contact.orElse(0) >= 0;
  }
}
