package org.halflight.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.InventedAdvance;
import org.halflight.session.Phase;

/** How right the interval between film advance and opening is on invented clicks. */
final class LinkageStudy {
  private static final long SEED = 2026;
  private static final int TRIALS = 200;

  private LinkageStudy() {}

  static List<String> page() {
    List<String> lines = new ArrayList<>();
    lines.add("## Advance timing");
    lines.add("");
    lines.add(
        "Each trial has two invented clicks with 3 ms of ringing each, 1 to 50 ms apart (evenly on a");
    lines.add(
        "logarithmic scale), after the sound of the blades alone was learnt from three firings. 'Found' means that there is an interval; the other trials are called too close to separate. The clicks are edges only, without sensor or camera; the");
    lines.add("same through the real firmware is `box.LinkageOnTheBoardTest`, within 20 \u00b5s.");
    lines.add("");
    lines.add("| order | trials | found | worst error | nearest found | furthest not found |");
    lines.add("|---|---|---|---|---|---|");
    lines.add(row(true));
    lines.add(row(false));
    lines.add("");
    return lines;
  }

  private static String row(boolean advanceFirst) {
    Random random = new Random(SEED);
    int told = 0;
    double worst = 0;
    double nearest = Double.MAX_VALUE;
    double furthest = 0;
    for (int i = 0; i < TRIALS; i++) {
      double apart = 0.001 * Math.pow(50, random.nextDouble());
      double injected = InventedAdvance.BLADES + (advanceFirst ? apart : -apart);
      AdvanceTrial trial = InventedAdvance.trials(Phase.ADJUSTING, injected).timing().newest();
      if (trial.interval().isPresent()) {
        told++;
        worst = Math.max(worst, Math.abs(trial.interval().get().seconds() - injected));
        nearest = Math.min(nearest, apart);
      } else {
        furthest = Math.max(furthest, apart);
      }
    }
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %.2f \u00b5s | %.1f ms | %s |",
        advanceFirst ? "advance before the blades" : "advance after the blades",
        TRIALS,
        told,
        1e6 * worst,
        1e3 * nearest,
        furthest == 0 ? "none" : String.format(Locale.ROOT, "%.1f ms", 1e3 * furthest));
  }

  /** Writes the section alone. */
  public static void main(String[] args) {
    page().forEach(System.out::println);
  }
}
