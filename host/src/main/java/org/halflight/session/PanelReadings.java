package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.light.PanelTest;
import org.halflight.session.LightReading.What;

/** The test of the panel of light among readings of the light. */
public final class PanelReadings {
  /** With less than this share of full light the shutter was not held open. Our choice. */
  static final double LEAST_SHARE = 0.5;

  private PanelReadings() {}

  /**
   * The last test of a rig's panel that came to its end: in place, moved once or more, in place
   * again, all under the same light and board start.
   *
   * @param readings in order
   */
  public static Optional<PanelTest> last(List<LightReading> readings, String rigSerial) {
    Optional<PanelTest> last = Optional.empty();
    List<LightReading> open = new ArrayList<>();
    for (LightReading reading : readings) {
      boolean inPlace = reading.what() == What.PANEL_IN_PLACE;
      if (!reading.rigSerial().equals(rigSerial)
          || (!inPlace && reading.what() != What.PANEL_MOVED)) {
        continue;
      }
      if (inPlace && (open.size() < 2 || !isSameLight(open.get(0), reading))) {
        open.clear();
        open.add(reading);
      } else if (!inPlace && !open.isEmpty() && isSameLight(open.get(0), reading)) {
        open.add(reading);
      } else if (inPlace) {
        last = test(open, reading);
        open.clear();
      }
    }
    return last;
  }

  private static boolean isSameLight(LightReading one, LightReading other) {
    return one.bootCount() == other.bootCount()
        && one.darkCounts().equals(other.darkCounts())
        && one.fullCounts().equals(other.fullCounts());
  }

  private static Optional<PanelTest> test(List<LightReading> open, LightReading again) {
    LightReading first = open.get(0);
    if (first.darkCounts().isEmpty() || first.fullCounts().isEmpty()) {
      return Optional.empty();
    }
    double dark = first.darkCounts().getAsDouble();
    double least = LEAST_SHARE * (first.fullCounts().getAsDouble() - dark);
    if (!(first.counts() - dark >= least && again.counts() - dark >= least)) {
      return Optional.empty();
    }
    List<LightReading> moved = open.subList(1, open.size());
    double uncertainty =
        Math.max(first.standardUncertaintyCounts(), again.standardUncertaintyCounts());
    for (LightReading each : moved) {
      uncertainty = Math.max(uncertainty, each.standardUncertaintyCounts());
    }
    return Optional.of(
        new PanelTest(
            first.counts() - dark,
            moved.stream().map(each -> each.counts() - dark).toList(),
            again.counts() - dark,
            uncertainty));
  }
}
