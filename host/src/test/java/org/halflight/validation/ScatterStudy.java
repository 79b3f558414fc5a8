package org.halflight.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.halflight.stats.Interval;
import org.halflight.validation.invented.Blades;
import org.halflight.validation.invented.Cell;
import org.halflight.validation.invented.Condition;
import org.halflight.validation.invented.Scatter;

/**
 * What becomes of the interval where firings do not scatter normally, and where the light over the
 * pupil is as even or as uneven as may be.
 */
final class ScatterStudy {
  private static final int SESSIONS = 2000;
  private static final double SCATTER_STOPS = 0.03;
  private static final List<Integer> FIRINGS = List.of(3, 5, 10);
  private static final Cell SCATTERED =
      new Cell(Blades.ROUND_EVEN, Cell.Speed.SIXTIETH, Condition.CALIBRATED);

  private ScatterStudy() {}

  /** Parts of the sessions whose interval holds the mean and the median. */
  private record Held(double mean, double median) {}

  private static Held held(Scatter scatter, int firings) {
    double median = SCATTER_STOPS * scatter.median();
    List<Interval> stated =
        IntStream.range(0, SESSIONS)
            .parallel()
            .mapToObj(i -> SCATTERED.scattered(scatter, SCATTER_STOPS, firings, i))
            .map(tried -> StudiedMethod.directly(tried.session()).interval().orElseThrow())
            .toList();
    return new Held(
        stated.stream().filter(each -> each.contains(0)).count() / (double) SESSIONS,
        stated.stream().filter(each -> each.contains(median)).count() / (double) SESSIONS);
  }

  private static double held(Blades blades, Condition condition, double fall) {
    Cell cell = new Cell(blades, Cell.Speed.FIVE_HUNDREDTH, condition);
    return IntStream.range(0, SESSIONS)
            .parallel()
            .mapToObj(i -> cell.before(fall, i))
            .filter(
                tried ->
                    StudiedMethod.directly(tried.session())
                        .interval()
                        .filter(each -> each.contains(tried.trueStops()))
                        .isPresent())
            .count()
        / (double) SESSIONS;
  }

  static List<String> page() {
    List<String> page = new ArrayList<>();
    page.add("### Firings that do not scatter normally");
    page.add("");
    page.add(
        "The interval of a mean is Student's, which assumes normal scatter. The table shows what other scatter does to it, at 1/60 with even blades, calibrated, "
            + SESSIONS
            + " sessions each; the scatter is "
            + SCATTER_STOPS
            + " stop, so the interval comes from the firings and not from the rig. The first figure is how often"
            + " it holds the mean of the setting, the second how often it holds the median.");
    page.add("");
    page.add("| scatter | 3 firings | 5 firings | 10 firings |");
    page.add("|---|---|---|---|");
    for (Scatter scatter : Scatter.values()) {
      StringBuilder row = new StringBuilder("| " + words(scatter));
      for (int firings : FIRINGS) {
        Held held = held(scatter, firings);
        row.append(
            String.format(
                Locale.ROOT, " | %.1f %%, %.1f %%", 100 * held.mean(), 100 * held.median()));
      }
      page.add(row + " |");
    }
    page.add("");
    page.add("### Even and uneven light over the pupil");
    page.add("");
    page.add(
        "In the table of cells the fall of the light towards the edge of the pupil is drawn between"
            + " none and the untested allowance. Here it is at either end, at 1/500.");
    page.add("");
    page.add("| blades | calibrated: even | falls by 20 % | light curve: even | falls by 20 % |");
    page.add("|---|---|---|---|---|");
    for (Blades blades : Blades.values()) {
      StringBuilder row = new StringBuilder("| " + blades.words());
      for (Condition condition : List.of(Condition.CALIBRATED, Condition.CALIBRATED_WITH_CURVE)) {
        for (double fall : new double[] {0, Cell.MOST_FALL}) {
          row.append(String.format(Locale.ROOT, " | %.1f %%", 100 * held(blades, condition, fall)));
        }
      }
      page.add(row + " |");
    }
    page.add("");
    return page;
  }

  private static String words(Scatter scatter) {
    return switch (scatter) {
      case NORMAL -> "normal";
      case T3 -> "Student's t, 3 degrees of freedom";
      case LATE -> "exponential, towards slow";
      case EARLY -> "exponential, towards fast";
      case FAR_OUT -> "normal, 5 % late by six standard deviations more";
    };
  }

  /** Prints the sections alone. */
  public static void main(String[] args) {
    page().forEach(System.out::println);
  }
}
