package org.halflight.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;

/**
 * The speeds that stand for a dial when each is fired once: a slow, a middle and a fast one and the
 * top speed. Usually these are the groups that one part of a leaf shutter governs each: the train
 * with its pallet, the train without it, the mainspring alone, and the high-speed spring. Common
 * practice, no source.
 */
public final class QuickSpeeds {
  /** So many speeds stand for a dial. */
  public static final int MOST = 4;

  /** Where the slow, the middle and the fast speed usually are, in seconds. */
  private static final List<Double> USUAL_SECONDS = List.of(1 / 2.0, 1 / 32.0, 1 / 128.0);

  private QuickSpeeds() {}

  /**
   * From slow to fast. All of a dial of up to {@link #MOST}; else the top speed and, of the others,
   * the three that lie nearest to where such speeds usually are, by the sum of squares in stops; of
   * two choices as near, the slower one.
   *
   * @param dial in any order
   */
  public static List<MarkedSpeed> of(List<MarkedSpeed> dial) {
    List<MarkedSpeed> slowToFast =
        dial.stream()
            .distinct()
            .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
            .toList();
    int below = slowToFast.size() - 1;
    if (slowToFast.size() <= MOST) {
      return slowToFast;
    }
    List<MarkedSpeed> nearest = List.of();
    double least = Double.POSITIVE_INFINITY;
    for (int slow = 0; slow < below; slow++) {
      for (int middle = slow + 1; middle < below; middle++) {
        for (int fast = middle + 1; fast < below; fast++) {
          List<MarkedSpeed> three =
              List.of(slowToFast.get(slow), slowToFast.get(middle), slowToFast.get(fast));
          double away = squares(three);
          if (away < least) {
            least = away;
            nearest = three;
          }
        }
      }
    }
    List<MarkedSpeed> chosen = new ArrayList<>(nearest);
    chosen.add(slowToFast.get(below));
    return List.copyOf(chosen);
  }

  private static double squares(List<MarkedSpeed> three) {
    double sum = 0;
    for (int i = 0; i < three.size(); i++) {
      double stops = Stops.between(three.get(i).literalSeconds(), USUAL_SECONDS.get(i));
      sum += stops * stops;
    }
    return sum;
  }
}
