package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;

/**
 * One shutter on its way back into its camera, stage by stage, in plain numbers. All figures are
 * our own, none was counted on shutters.
 *
 * @param fault that it has
 * @param sizeStops by how much that slows or hurries the slow speed
 * @param stages in order
 */
public record Repair(Fault fault, double sizeStops, List<Stage> stages) {
  /** What may be wrong. */
  public enum Fault {
    NOTHING("nothing"),
    /** The ring pinches the case: the train drags, the top speed does not. */
    PINCHED_CASE("case pinched by the tight ring"),
    /** A cell touches blades or ring: all drags. */
    TOUCHING_CELL("cell that touches"),
    /** The cover sits wrong: all speeds shift, either way. */
    WRONG_COVER("cover not home");

    private final String words;

    Fault(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * One stage.
   *
   * @param cover whether it is on
   * @param rear whether the rear cell is in
   * @param front likewise
   * @param place 0 on the bench, 1 loose in the camera, 2 with its ring tight
   * @param isFaulty whether the fault shows in it and not in the stage before
   * @param slowStops errors of the firings with a time
   * @param slowFailed firings without
   * @param topStops error of the one firing at the top speed; empty where it failed
   * @param closesAtOnce whether it closed at once when it was let go on B
   */
  public record Stage(
      boolean cover,
      boolean rear,
      boolean front,
      int place,
      boolean isFaulty,
      List<Double> slowStops,
      int slowFailed,
      List<Double> topStops,
      boolean closesAtOnce) {}

  /** The smallest and the largest fault. */
  public static final double LEAST_STOPS = 0.15;

  public static final double MOST_STOPS = 1;

  private static final int SLOW_FIRINGS = 3;
  private static final double ACCIDENT = 0.003;

  public Repair {
    stages = List.copyOf(stages);
  }

  /** The next one with a fault, of any size, evenly in its logarithm. */
  public static Repair drawn(Fault fault, Draws draws) {
    double size = LEAST_STOPS * Math.pow(MOST_STOPS / LEAST_STOPS, draws.between(0, 1));
    return of(fault, fault == Fault.NOTHING ? 0 : size, draws);
  }

  /** The next one with a fault of a size. */
  public static Repair of(Fault fault, double sizeStops, Draws draws) {
    return new Work(fault, sizeStops, draws).repair();
  }

  /** What is drawn for one repair. */
  private static final class Work {
    private final Fault fault;
    private final double size;
    private final Draws draws;
    private final double slowSd;
    private final double topSd;
    private final double runIn;
    private final double warming;
    private final double sign;
    private final double topPart;
    private final boolean rearFirst;
    private final boolean rearTouches;
    private final boolean closesLate;
    private double slow;
    private double top;

    Work(Fault fault, double size, Draws draws) {
      this.fault = fault;
      this.size = size;
      this.draws = draws;
      slow = 0.1 + 0.25 * draws.normal();
      top = 0.2 + 0.2 * draws.normal();
      slowSd = Math.min(0.08, draws.around(0.03, 0.45));
      topSd = Math.min(0.06, draws.around(0.025, 0.4));
      runIn = draws.between(0, 0.08);
      warming = draws.between(0, 0.06);
      sign = fault == Fault.WRONG_COVER && draws.coin() ? -1 : 1;
      topPart =
          switch (fault) {
            case TOUCHING_CELL -> draws.between(0.5, 1.5);
            case WRONG_COVER -> draws.between(0.5, 1);
            default -> draws.between(0, 0.1);
          };
      rearFirst = draws.chance(0.7);
      rearTouches = draws.chance(0.7);
      closesLate = sign > 0 && draws.chance(Math.min(0.8, size));
    }

    Repair repair() {
      // Mostly cover before cells. One in five puts it on last before the camera.
      boolean coverFirst = draws.chance(0.8);
      List<int[]> order = new ArrayList<>();
      order.add(new int[] {0, 0, 0, 0});
      if (coverFirst) {
        order.add(new int[] {1, 0, 0, 0});
      }
      int on = coverFirst ? 1 : 0;
      if (draws.chance(0.7)) {
        order.add(new int[] {on, rearFirst ? 1 : 0, rearFirst ? 0 : 1, 0});
      }
      order.add(new int[] {on, 1, 1, 0});
      if (!coverFirst) {
        order.add(new int[] {1, 1, 1, 0});
      }
      order.add(new int[] {1, 1, 1, 1});
      order.add(new int[] {1, 1, 1, 2});
      List<Stage> stages = new ArrayList<>();
      int[] before = order.get(0);
      for (int[] each : order) {
        stages.add(stage(before, each));
        before = each;
      }
      return new Repair(fault, size, stages);
    }

    private boolean shows(int[] stage) {
      return switch (fault) {
        case NOTHING -> false;
        case PINCHED_CASE -> stage[3] == 2;
        case TOUCHING_CELL -> stage[rearTouches ? 1 : 2] == 1;
        case WRONG_COVER -> stage[0] == 1;
      };
    }

    private Stage stage(int[] before, int[] now) {
      // From one stage to the next some minutes go by: oil, warmth, the way it lies.
      slow += 0.02 * draws.normal() - warming * draws.between(0, 0.3);
      top += 0.015 * draws.normal();
      if (before[1] != now[1] || before[2] != now[2]) {
        // Another pupil: the ramps weigh otherwise at the top. The light is set again to 0.3 %.
        top += 0.12 * draws.normal();
        slow += 0.004 * draws.normal();
      }
      boolean shows = shows(now);
      double drag = shows ? sign * size : 0;
      double jams = shows && sign > 0 ? Math.max(0, Math.min(0.5, size - 0.5)) : 0;
      List<Double> slowStops = new ArrayList<>();
      int failed = 0;
      for (int i = 0; i < SLOW_FIRINGS; i++) {
        if (draws.chance(ACCIDENT) || (jams > 0 && draws.chance(jams))) {
          failed++;
          continue;
        }
        double sd = slowSd * (shows ? 1.5 : 1);
        slowStops.add(slow + drag + sd * tailed() + runIn * Math.exp(-i / 2.0));
      }
      List<Double> topStops =
          draws.chance(ACCIDENT) ? List.of() : List.of(top + topPart * drag + topSd * tailed());
      return new Stage(
          now[0] == 1,
          now[1] == 1,
          now[2] == 1,
          now[3],
          shows && !shows(before),
          slowStops,
          failed,
          topStops,
          !(shows && closesLate));
    }

    /** Mostly normal; one in twenty is two and a half times as far off. */
    private double tailed() {
      return draws.normal() * (draws.chance(0.05) ? 2.5 : 1);
    }
  }
}
