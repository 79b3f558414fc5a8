package org.halflight.validation.invented;

import java.util.List;

/**
 * A leaf shutter as it comes to the bench, firing by firing, in stops. What it does depends on what
 * was fired before: it runs in and it remembers that it rested. All figures are our own, none was
 * counted on shutters.
 */
public final class OldShutter {
  /** Its dial, slow to fast. */
  public static final List<String> DIAL =
      List.of("1", "1/2", "1/4", "1/8", "1/15", "1/30", "1/60", "1/125", "1/250", "1/500");

  private static final double PER_SPEED = 0.06;
  private static final double PER_GROUP = 0.06;

  /** What may be wrong, with a size in stops. */
  public enum Fault {
    NOTHING("nothing"),
    /** Old oil: most at 1 s, less towards 1/8, a quarter of it at 1/15 to 1/60; it runs in. */
    SLOW_WITH_TAIL("slow speeds slow with a tail"),
    /** The pallet does not lift out: 1/15 to 1/60 slow and uneven. */
    STICKY_MIDDLE("1/15 to 1/60 slow and sticky"),
    /** A worn step of the cam. */
    ONE_SPEED("one speed off, any of the ten"),
    TOP_SLOW("top speed slow"),
    /** Two in five firings of 1 to 1/8 are off, the others right. */
    TWO_HEAPS("two heaps at 1 to 1/8"),
    /** Only the first firing is slow. */
    AFTER_REST("first firing after rest slow"),
    /** One firing in six at 1 to 1/8 hangs; the size plays no part. */
    HANGS("one firing in six hangs at 1 to 1/8");

    private final String words;

    Fault(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  private final Fault fault;
  private final double sizeStops;
  private final Draws draws;
  private final double[] off = new double[DIAL.size()];
  private final double[] sd = new double[DIAL.size()];
  private final int odd;
  private final double oddSign;
  private int fired;

  /** The next shutter with such a fault. */
  public OldShutter(Fault fault, double sizeStops, Draws draws) {
    this.fault = fault;
    this.sizeStops = sizeStops;
    this.draws = draws;
    double[] ofGroup = {draws.normal(), draws.normal(), draws.normal(), draws.normal()};
    double scatter = Math.min(0.07, draws.around(0.03, 0.4));
    for (int i = 0; i < off.length; i++) {
      off[i] = PER_GROUP * ofGroup[group(i)] + PER_SPEED * draws.normal();
      sd[i] = scatter * draws.around(1, 0.2);
    }
    // Top speeds are usually slow by age, and judged by half a stop.
    off[off.length - 1] += 0.1;
    odd = draws.upTo(DIAL.size() - 1);
    oddSign = draws.coin() ? 1 : -1;
  }

  /** What one part governs: train with pallet, train alone, spring alone, extra spring. */
  private static int group(int speed) {
    return speed < 4 ? 0 : speed < 7 ? 1 : speed < 9 ? 2 : 3;
  }

  /** Whether the fault shows at a speed of the dial. */
  public boolean isAt(int speed) {
    return switch (fault) {
      case NOTHING, AFTER_REST -> false;
      case SLOW_WITH_TAIL, TWO_HEAPS, HANGS -> group(speed) == 0;
      case STICKY_MIDDLE -> group(speed) == 1;
      case ONE_SPEED -> speed == odd;
      case TOP_SLOW -> group(speed) == 3;
    };
  }

  /** The error of the next firing at a speed of the dial; not a number where it hangs. */
  public double fire(int speed) {
    double more = 0;
    double wider = 1;
    // It runs in within some firings, and is back where it was the next morning.
    double rested = Math.exp(-fired / 8.0);
    boolean first = fired == 0;
    fired++;
    switch (fault) {
      case SLOW_WITH_TAIL -> {
        double[] tail = {1, 0.85, 0.7, 0.55, 0.3, 0.25, 0.2, 0, 0, 0};
        more = sizeStops * tail[speed] * (0.75 + 0.5 * rested);
        wider = isAt(speed) ? 1 + 2 * sizeStops : 1;
      }
      case STICKY_MIDDLE -> {
        more = isAt(speed) ? sizeStops * draws.between(0.6, 1.4) : 0;
      }
      case ONE_SPEED -> more = isAt(speed) ? oddSign * sizeStops : 0;
      case TOP_SLOW -> more = isAt(speed) ? sizeStops : 0;
      case TWO_HEAPS -> more = isAt(speed) && draws.chance(0.4) ? -sizeStops : 0;
      case AFTER_REST -> more = first ? sizeStops : 0;
      case HANGS -> {
        if (isAt(speed) && draws.chance(1 / 6.0)) {
          return Double.NaN;
        }
      }
      case NOTHING -> {}
    }
    double far = draws.chance(0.03) ? 2.5 : 1;
    return off[speed] + more + sd[speed] * wider * far * draws.normal() + 0.03 * rested;
  }
}
