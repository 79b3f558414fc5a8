package org.halflight.validation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.halflight.session.FiringResult;
import org.halflight.stats.Interval;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.Hole;
import org.halflight.validation.invented.InventedSession;
import org.halflight.validation.invented.Light;
import org.halflight.validation.invented.Motion;
import org.halflight.validation.invented.Rig;
import org.halflight.verdict.SpeedSummary;

/**
 * Cases in which an earlier method said what is false. Each has one figure, so that what it came to
 * before can stand beside what it comes to now.
 */
final class CaseStudy {
  private static final int SESSIONS = 2000;
  private static final int FIRINGS = 5;
  private static final double SCATTER_STOPS = 0.01;
  private static final double RAMP_SECONDS = 1e-3;

  /** Half a ramp: what a sensor that shows the two channels unlike light makes of a width. */
  private static final double WIDTH_FAULT_SECONDS = RAMP_SECONDS / 2;

  /** One tick at the low level and eight at the high one, in the mean of both widths. */
  private static final double STAMP_SECONDS = 4.5 / 16e6;

  private CaseStudy() {}

  /** All figures, by the words of their case. */
  static Map<String, String> figures() {
    Map<String, String> figures = new LinkedHashMap<>();
    rebound(figures, "1/125", 1 / 128.0, 0.20, 4.4e-3);
    rebound(figures, "1/500", 1 / 512.0, 0.30, 1.35e-3);
    dwelling(figures);
    for (Speed speed : SPEEDS) {
      figures.put(
          "sound light called different, " + speed.label() + ", lamp wanders by 0.35 %",
          percent(unlike(speed, 0)));
    }
    for (Speed speed : SPEEDS) {
      figures.put(
          "a width off by half a ramp found, " + speed.label(),
          percent(unlike(speed, WIDTH_FAULT_SECONDS)));
    }
    bound(figures);
    for (Speed speed : SPEEDS) {
      figures.put(
          "interval holds the truth, accelerating blades, " + speed.label(),
          percent(accelerating(speed)));
    }
    reversing(figures);
    pupil(figures, 0.5);
    pupil(figures, 0.2);
    return figures;
  }

  private record Speed(String label, double seconds) {}

  private static final List<Speed> SPEEDS =
      List.of(
          new Speed("1", 1),
          new Speed("1/60", 1 / 64.0),
          new Speed("1/125", 1 / 128.0),
          new Speed("1/250", 1 / 256.0),
          new Speed("1/500", 1 / 512.0));

  /** Blades that spring open again for a while, fully, a millisecond after they have shut. */
  private static void rebound(
      Map<String, String> figures, String label, double exact, double main, double length) {
    Draws draws = new Draws(Validation.SEED);
    Scattered scattered = new Scattered(draws);
    List<Light> lights = new ArrayList<>();
    double truth = 0;
    for (int i = 0; i < FIRINGS; i++) {
      Light light = even(RAMP_SECONDS, exact * Math.pow(2, main + scattered.stops()), 0);
      light = light.with(new Light.Bump(light.shutSeconds() + 1e-3, length, 1));
      truth += Math.log(light.trueSeconds() / exact) / Math.log(2) / FIRINGS;
      lights.add(light);
    }
    SpeedSummary said =
        StudiedMethod.directly(InventedSession.of(label, Rig.exact(), false, false, lights, draws))
            .speed()
            .orElseThrow();
    figures.put(
        String.format(
            Locale.ROOT,
            "%s, main opening %+.2f stop, full rebound of %.2f ms, truly %+.3f stop",
            label,
            main,
            length * 1e3,
            truth),
        String.format(
            Locale.ROOT,
            "%+.3f stop, %s",
            said.meanStops().orElseThrow(),
            StudiedMethod.verdict(said)));
  }

  /** Blades that stand still at 85 % of full light; the light is set again afterwards, the same. */
  static void dwelling(Map<String, String> figures) {
    Draws draws = new Draws(Validation.SEED);
    Scattered scattered = new Scattered(draws);
    List<Light> lights = new ArrayList<>();
    for (int i = 0; i < FIRINGS; i++) {
      Light ramps =
          new Light(
              Hole.ROUND,
              Motion.EVEN,
              Motion.EVEN,
              RAMP_SECONDS,
              0,
              RAMP_SECONDS,
              Hole.ROUND.placeSeen(0.85, 0),
              0,
              List.of());
      double wanted = 1 / 64.0 * Math.pow(2, scattered.stops());
      lights.add(ramps.open((wanted - ramps.trueSeconds()) / 0.85));
    }
    InventedSession session =
        InventedSession.of("1/60", Rig.exact(), false, true, lights, draws).withLightAgain();
    figures.put(
        "1/60, blades that dwell at 0.85 of full light, with a light curve, truly 0",
        StudiedMethod.directly(session)
            .speed()
            .filter(said -> said.meanStops().isPresent())
            .map(
                said ->
                    String.format(
                        Locale.ROOT,
                        "%+.3f stop, %s",
                        said.meanStops().getAsDouble(),
                        StudiedMethod.verdict(said)))
            .orElse("no time"));
  }

  /** The part of firings whose edges and curve are said to have seen unlike light. */
  private static double unlike(Speed speed, double widthFault) {
    int found = 0;
    int all = 0;
    int sessions = speed.seconds() > 0.1 ? 400 : 800;
    for (int i = 0; i < sessions; i++) {
      Draws draws = new Draws(Validation.SEED * 1_000_003 + i);
      Scattered scattered = new Scattered(draws);
      List<Light> lights = new ArrayList<>();
      for (int k = 0; k < FIRINGS; k++) {
        lights.add(even(RAMP_SECONDS, speed.seconds() * Math.pow(2, scattered.stops()), 0));
      }
      Rig rig = Rig.exact().withLamp(0, 0.0035).withLateFall(widthFault);
      InventedSession session = InventedSession.of(speed.label(), rig, false, true, lights, draws);
      for (FiringResult firing : StudiedMethod.directly(session).firings()) {
        found += StudiedMethod.seesUnlikeLight(firing) ? 1 : 0;
        all++;
      }
    }
    return found / (double) all;
  }

  /** Errors of the rule beyond its stated bound, over laws of opening and closing. */
  private static void bound(Map<String, String> figures) {
    int beyond = 0;
    int all = 0;
    double worst = 0;
    for (Hole hole : Hole.values()) {
      for (Motion opening : motions(hole)) {
        for (Motion closing : motions(hole)) {
          Light light = Light.plain(hole, opening, closing, RAMP_SECONDS, 0, RAMP_SECONDS, 0);
          light = light.open(1 / 128.0 - light.trueSeconds());
          FiringResult firing = StudiedMethod.once("1/125", light);
          double error = Math.abs(firing.effectiveSeconds().orElseThrow() - light.trueSeconds());
          double stated = StudiedMethod.ruleBoundSeconds(firing);
          // The steps of the stamps are not the rule's.
          beyond += error > stated + STAMP_SECONDS ? 1 : 0;
          worst = Math.max(worst, error / stated);
          all++;
        }
      }
    }
    figures.put(
        "error of the rule beyond its bound and the steps of the stamps, fully open, "
            + all
            + " pairs of laws",
        String.format(Locale.ROOT, "%d, at worst %.2f of the bound", beyond, worst));
  }

  /** Powers of the way, or for round holes of the radius, from 0.5 to 4 in the light. */
  private static List<Motion> motions(Hole hole) {
    List<Motion> motions = new ArrayList<>();
    double least = hole == Hole.EVEN_AREA ? 0.5 : 1;
    double most = hole == Hole.EVEN_AREA ? 4 : 2;
    for (int i = 0; i <= 4; i++) {
      double power = least * Math.pow(most / least, i / 4.0);
      motions.add(new Motion(power, false));
      if (power != 1) {
        motions.add(new Motion(power, true));
      }
    }
    return motions;
  }

  /** Accelerating blades with a scatter of a hundredth of a stop, calibrated, without a curve. */
  private static double accelerating(Speed speed) {
    int held = 0;
    for (int i = 0; i < SESSIONS; i++) {
      Draws draws = new Draws(Validation.SEED * 7_000_003 + i);
      Scattered scattered = new Scattered(draws);
      Light ramps =
          Light.plain(
              Hole.ROUND,
              new Motion(2, false),
              new Motion(2, true),
              RAMP_SECONDS,
              0,
              RAMP_SECONDS,
              0);
      double inRamps = ramps.trueSeconds();
      List<Light> lights = new ArrayList<>();
      for (int k = 0; k < FIRINGS; k++) {
        lights.add(ramps.open(speed.seconds() * Math.pow(2, scattered.stops()) - inRamps));
      }
      Rig rig = Rig.drawn(draws);
      held +=
          StudiedMethod.directly(InventedSession.of(speed.label(), rig, true, false, lights, draws))
                  .interval()
                  .filter(stated -> stated.contains(0))
                  .isPresent()
              ? 1
              : 0;
    }
    return held / (double) SESSIONS;
  }

  /** Blades that turn back before they have opened fully, and never stand still. */
  private static void reversing(Map<String, String> figures) {
    int timed = 0;
    int silent = 0;
    double worst = 0;
    for (Hole hole : List.of(Hole.ROUND, Hole.EVEN_AREA)) {
      for (Motion opening : motions(hole)) {
        for (Motion closing : motions(hole)) {
          for (double peak : new double[] {0.82, 0.86, 0.90, 0.95}) {
            Light light =
                new Light(
                    hole,
                    opening,
                    closing,
                    2 * RAMP_SECONDS,
                    0,
                    2 * RAMP_SECONDS,
                    hole.placeSeen(peak, 0),
                    0,
                    List.of());
            FiringResult firing = StudiedMethod.once("1/500", light);
            if (firing.effectiveSeconds().isPresent()) {
              timed++;
              silent += StudiedMethod.mayNotBeFullyOpen(firing) ? 0 : 1;
              double error = firing.effectiveSeconds().getAsDouble() / light.trueSeconds() - 1;
              worst = Math.abs(error) > Math.abs(worst) ? error : worst;
            }
          }
        }
      }
    }
    figures.put(
        "blades that turn back at 82 to 95 % of full light and are timed anyway",
        String.format(
            Locale.ROOT,
            "%d, of these %d without a remark, worst error %+.1f %%",
            timed,
            silent,
            100 * worst));
  }

  /** Light that falls towards the edge of the pupil, at 1/500. */
  private static void pupil(Map<String, String> figures, double fall) {
    Draws draws = new Draws(Validation.SEED);
    List<Light> lights = new ArrayList<>();
    for (int i = 0; i < FIRINGS; i++) {
      lights.add(even(RAMP_SECONDS, 1 / 512.0 * Math.pow(2, 0.0005 * (i - 2)), fall));
    }
    SpeedSummary said =
        StudiedMethod.directly(
                InventedSession.of("1/500", Rig.exact(), false, false, lights, draws))
            .speed()
            .orElseThrow();
    Interval stated = said.expandedIntervalStops().orElseThrow();
    figures.put(
        String.format(
            Locale.ROOT, "1/500, light at the pupil's edge less by %.0f %%, truly 0", 100 * fall),
        String.format(
            Locale.ROOT,
            "%+.3f stop, stated %+.3f to %+.3f",
            said.meanStops().orElseThrow(),
            stated.low(),
            stated.high()));
  }

  /** A round hole whose radius grows and shrinks evenly. */
  private static Light even(double rampSeconds, double effectiveSeconds, double fall) {
    Light ramps =
        Light.plain(Hole.ROUND, Motion.EVEN, Motion.EVEN, rampSeconds, 0, rampSeconds, fall);
    return ramps.open(effectiveSeconds - ramps.trueSeconds());
  }

  private record Scattered(Draws draws) {
    double stops() {
      return SCATTER_STOPS * draws.normal();
    }
  }

  private static String percent(double part) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * part);
  }

  /** Prints the figures, for a look at them or to keep what an earlier method came to. */
  public static void main(String[] args) {
    figures().forEach((words, figure) -> System.out.println(words + " | " + figure));
  }
}
