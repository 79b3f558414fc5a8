package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;

/**
 * What moves one curtain, and what holds it: an equation of motion over the way {@code w} from its
 * wound place (0) to its stop (1), in a time of its own that {@link #motion} stretches to the
 * travel that is wanted. All figures are our own, none was measured on a camera.
 *
 * @param kick speed with which it starts, for curtains that something pushes off
 * @param fall by which part the pull of the spring falls over the way
 * @param heavier by which part there is more to move at the end than at the start
 * @param dry friction that does not hang on the speed, as a part of the first pull
 * @param wet friction that does
 * @param waves by which part the force goes up and down along the way
 * @param wavesOnTheWay how often
 * @param phase of these waves
 * @param arm the curtain hangs on an arm that swings from {@code -arm} to {@code 0.8 arm} radians;
 *     0 if it is wound on a roller
 * @param holds zones that take speed from it
 * @param springBack with which part of its speed it comes back from its stop
 */
record CurtainLaw(
    double kick,
    double fall,
    double heavier,
    double dry,
    double wet,
    double waves,
    double wavesOnTheWay,
    double phase,
    double arm,
    List<Hold> holds,
    double springBack) {
  private static final double STEP = 1 / 1500.0;
  private static final int MOST_STEPS = 60_000;
  private static final int MOST_BOUNCES = 6;

  /**
   * A zone of friction: a brake, a tape that rubs.
   *
   * @param from where it begins, in millimetres from the centre of the frame
   * @param to where it ends
   * @param takes which part of the energy at its begin it would take by itself
   * @param after which part of its force is left once the curtain has been at its stop
   * @param sticks more friction that does not hang on the speed, as a part of the first pull
   */
  record Hold(double from, double to, double takes, double after, double sticks) {}

  /**
   * Where a curtain runs.
   *
   * @param wound its place before the release, in millimetres from the centre of the frame
   * @param frame of the picture, in the direction of travel
   * @param stop its place at the end
   */
  record Way(double wound, double frame, double stop) {
    double length() {
      return stop - wound;
    }
  }

  CurtainLaw withHold(Hold more) {
    List<Hold> all = new ArrayList<>(holds);
    all.add(more);
    return new CurtainLaw(
        kick, fall, heavier, dry, wet, waves, wavesOnTheWay, phase, arm, all, springBack);
  }

  /** The same with another brake, and another stop. */
  CurtainLaw stopping(List<Hold> brakes, double back) {
    return new CurtainLaw(
        kick, fall, heavier, dry, wet, waves, wavesOnTheWay, phase, arm, brakes, back);
  }

  /**
   * The motion with this pace of time.
   *
   * @param pace seconds to one unit of the law's own time
   */
  CurtainMotion motion(Way way, double pace) {
    List<double[]> states = states(way);
    double[] places = new double[states.size()];
    double[] speeds = new double[states.size()];
    for (int i = 0; i < places.length; i++) {
      places[i] = way.wound() + way.length() * reach(states.get(i)[0]);
      speeds[i] = way.length() * reachSlope(states.get(i)[0]) * states.get(i)[1] / pace;
    }
    return new CurtainMotion(STEP * pace, places, speeds);
  }

  /** The pace at which the edge crosses the frame in so many seconds. */
  double pace(Way way, double travelSeconds) {
    CurtainMotion own = motion(way, 1);
    return travelSeconds / (own.passes(way.frame() / 2) - own.passes(-way.frame() / 2));
  }

  /** How far the edge is, for a way of the roller or the arm. */
  private double reach(double w) {
    if (arm == 0) {
      return w;
    }
    return (Math.sin(angle(w)) + Math.sin(arm)) / (Math.sin(0.8 * arm) + Math.sin(arm));
  }

  private double reachSlope(double w) {
    return arm == 0 ? 1 : 1.8 * arm * Math.cos(angle(w)) / (Math.sin(0.8 * arm) + Math.sin(arm));
  }

  private double angle(double w) {
    return arm * (1.8 * w - 1);
  }

  private List<double[]> states(Way way) {
    double[] strength = new double[holds.size()];
    List<double[]> all = new ArrayList<>();
    double w = 0;
    double v = kick;
    int bounces = 0;
    all.add(new double[] {w, v});
    while (all.size() < MOST_STEPS) {
      double place = way.wound() + way.length() * reach(w);
      double held = 0;
      for (int i = 0; i < strength.length; i++) {
        Hold hold = holds.get(i);
        if (place >= hold.from() && place < hold.to()) {
          if (strength[i] == 0) {
            double zone = (hold.to() - hold.from()) / way.length() / Math.max(0.3, reachSlope(w));
            strength[i] = hold.sticks() + hold.takes() * v * v / 2 / zone;
          }
          held += strength[i] * (bounces > 0 ? hold.after() : 1);
        }
      }
      // The middle of the step by half a step (Runge and Kutta, second order).
      double halfV = v + STEP / 2 * force(w, v, held);
      double halfW = w + STEP / 2 * v;
      double nextV = v + STEP * force(halfW, halfV, held);
      double nextW = w + STEP * halfV;
      boolean comesToRest = (v > 0 && nextV <= 0) || (v < 0 && nextV >= 0);
      if (comesToRest && force(w, 0, held) <= 0) {
        all.add(new double[] {w, 0});
        return all;
      }
      nextV = comesToRest ? 0 : nextV;
      if (nextW >= 1) {
        bounces++;
        nextW = 1;
        nextV = -springBack * Math.abs(nextV);
        if (bounces > MOST_BOUNCES || Math.abs(nextV) < 0.01) {
          all.add(new double[] {1, 0});
          return all;
        }
      }
      w = nextW;
      v = nextV;
      all.add(new double[] {w, v});
    }
    return all;
  }

  private double force(double w, double v, double held) {
    double pull =
        (1 - fall * w) * (1 + waves * Math.sin(2 * Math.PI * (wavesOnTheWay * w + phase)));
    double against = (dry + held) * (v < 0 ? -1 : 1);
    return (pull - against - wet * v) / (1 + heavier * w);
  }
}
