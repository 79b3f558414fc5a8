package org.halflight.rig.practice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import org.halflight.rig.RigMessage;
import org.halflight.signal.SampledLight;

/** The lines of a light curve, as the line protocol has them. */
final class CurveLines {
  private static final int DIGITS_MOST = 64;

  private CurveLines() {}

  /**
   * The messages of a curve, each still without its line counter.
   *
   * @param number of the curve, 0 to 255
   * @param startTicks when the board that tells it started
   */
  static List<IntFunction<RigMessage>> of(SampledLight light, int number, long startTicks) {
    List<IntFunction<RigMessage>> lines = new ArrayList<>();
    for (int i = 0; i < light.parts().size(); i++) {
      SampledLight.Part part = light.parts().get(i);
      boolean last = i + 1 == light.parts().size();
      lines.add(
          at ->
              new RigMessage.CurvePart(
                  at,
                  light.sensor(),
                  number,
                  part.kind(),
                  (int) (part.firstTicks() - startTicks),
                  part.periodTicks(),
                  part.values().size(),
                  last,
                  part.gapBefore(),
                  last && light.cutOff()));
      addValues(part, number, lines);
    }
    return lines;
  }

  private static void addValues(
      SampledLight.Part part, int number, List<IntFunction<RigMessage>> lines) {
    int digitsEach = part.kind().isOfMeans() ? 4 : 2;
    int valuesEach = DIGITS_MOST / digitsEach;
    for (int from = 0; from < part.values().size(); from += valuesEach) {
      int index = from;
      StringBuilder digits = new StringBuilder();
      part.values()
          .subList(from, Math.min(part.values().size(), from + valuesEach))
          .forEach(
              value -> digits.append(String.format(Locale.ROOT, "%0" + digitsEach + "X", value)));
      lines.add(at -> new RigMessage.CurveValues(at, number, index, digits.toString()));
    }
  }
}
