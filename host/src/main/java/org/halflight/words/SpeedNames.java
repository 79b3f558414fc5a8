package org.halflight.words;

import java.util.List;
import org.halflight.speeds.MarkedSpeed;

/** Several marked speeds in a sentence. */
public final class SpeedNames {
  private static final int LISTED_UP_TO = 2;

  private SpeedNames() {}

  /**
   * {@code 1 to 1/15} where the speeds stand side by side on the dial, else {@code 1, 1/4 and
   * 1/15}.
   *
   * @param speeds at least one, slow to fast
   * @param dial all speeds that there are, slow to fast
   */
  public static String of(List<MarkedSpeed> speeds, List<MarkedSpeed> dial) {
    if (speeds.isEmpty()) {
      throw new IllegalArgumentException("no speeds to name");
    }
    int from = dial.indexOf(speeds.get(0));
    boolean sideBySide =
        from >= 0
            && from + speeds.size() <= dial.size()
            && dial.subList(from, from + speeds.size()).equals(speeds);
    String last = Numbers.speed(speeds.get(speeds.size() - 1));
    if (speeds.size() == 1) {
      return last;
    }
    if (sideBySide && speeds.size() > LISTED_UP_TO) {
      return Words.say("speeds.range", speeds.get(0), last);
    }
    String before =
        String.join(
            ", ", speeds.subList(0, speeds.size() - 1).stream().map(Numbers::speed).toList());
    return Words.say("speeds.and", before, last);
  }
}
