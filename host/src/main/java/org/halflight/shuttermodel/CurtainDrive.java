package org.halflight.shuttermodel;

/**
 * All that moves one curtain, for each unit of its mass. Places are in millimetres from the start
 * of the frame along the travel, accelerations in mm/s².
 *
 * @param startsAt where its edge is when it is wound, below zero
 * @param pull of the spring there
 * @param slackening how much less the spring pulls a millimetre further on
 * @param dry friction that does not ask for the speed
 * @param viscous friction for each mm/s
 * @param sticking what holds it on its first third of a millimetre
 * @param dragsFrom where something drags
 * @param drag what drags from there on
 * @param stopsAt where it hits its stop, beyond the frame
 * @param brakeMillimetres length of the brake before the stop
 * @param brake its friction
 * @param rebound the share of its speed with which it is thrown back from the stop
 */
record CurtainDrive(
    double startsAt,
    double pull,
    double slackening,
    double dry,
    double viscous,
    double sticking,
    double dragsFrom,
    double drag,
    double stopsAt,
    double brakeMillimetres,
    double brake,
    double rebound) {
  private static final double STICKS_MILLIMETRES = 0.3;

  /** Slower than this at its stop, it stays there. */
  private static final double RESTS_MILLIMETRES_A_SECOND = 30;

  private static final double SECONDS_MOST = 0.4;

  CurtainDrive withBrake(double millimetres, double friction) {
    return new CurtainDrive(
        startsAt,
        pull,
        slackening,
        dry,
        viscous,
        sticking,
        dragsFrom,
        drag,
        stopsAt,
        millimetres,
        friction,
        rebound);
  }

  /** Lets it go, until it rests. */
  CurtainMotion run() {
    double step = CurtainMotion.STEP_SECONDS;
    CurtainMotion.Builder motion = new CurtainMotion.Builder(startsAt);
    double at = startsAt;
    double speed = 0;
    for (int i = 0; i < SECONDS_MOST / step; i++) {
      double acceleration = acceleration(at, speed);
      if (speed == 0 && acceleration == 0) {
        break;
      }
      double guess = speed + acceleration * step;
      if (guess * speed < 0) {
        // It comes to a stand within the step: what friction does then depends on what pulls.
        at += speed * Math.abs(speed / acceleration) / 2;
        speed = 0;
      } else {
        // The mean of the force here and the force there (Heun): second order.
        at += speed * step + acceleration * step * step / 2;
        speed += (acceleration + acceleration(at, guess)) / 2 * step;
      }
      if (at >= stopsAt) {
        at = stopsAt;
        speed = -rebound * speed;
        if (Math.abs(speed) < RESTS_MILLIMETRES_A_SECOND) {
          motion.add(at);
          break;
        }
      }
      motion.add(at);
    }
    return motion.motion();
  }

  private double acceleration(double at, double speed) {
    double pulls = pull - slackening * (at - startsAt);
    double holds = dry + (at - startsAt < STICKS_MILLIMETRES ? sticking : 0);
    holds += at >= dragsFrom ? drag : 0;
    holds += at >= stopsAt - brakeMillimetres ? brake : 0;
    if (speed == 0) {
      // At its stop it is pressed against it.
      return at >= stopsAt ? 0 : Math.signum(pulls) * Math.max(0, Math.abs(pulls) - holds);
    }
    return pulls - Math.signum(speed) * holds - viscous * speed;
  }
}
