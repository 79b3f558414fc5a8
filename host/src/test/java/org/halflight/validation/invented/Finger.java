package org.halflight.validation.invented;

/**
 * A finger on a release button: a mass on a spring and a damper that a hand moves on. When the load
 * drops the spring lets it jump. What a person means to do is the way of the hand; the button goes
 * where the forces let it. Stiffness and damping are of the order that is usual for a finger that
 * presses by some newtons; all figures are our own.
 */
public final class Finger {
  private static final double STEP = 0.0002;
  private static final double LONGEST = 40;

  /** Millimetres a second squared of one newton on nine grams. */
  private static final double PER_NEWTON = 1e3 / 0.009;

  private final Draws draws;
  private final double stiffness;
  private final double damping;
  private final double reaction;
  private final double haste;
  private final double stepMm;

  /** The hand of one person. */
  public Finger(Button.Nature nature, Draws draws) {
    this.draws = draws;
    stiffness = draws.between(0.3, 0.9);
    damping = draws.between(0.003, 0.008);
    reaction = draws.around(nature.reactionSeconds(), 0.12);
    haste = draws.around(1, 0.3);
    stepMm = draws.around(0.15, 0.3);
  }

  /** How the speed goes along the stroke. */
  private enum Manner {
    EVEN,
    FASTER,
    SLOWER,
    RESTING,
    UNEVEN
  }

  /**
   * One press.
   *
   * @param camera with its places
   * @param pace as asked for
   * @param stops whether the person stops at the first thing noticed, or presses to the end
   */
  public Press press(Button camera, Pace pace, boolean stops) {
    Button button = camera.inOnePress(draws);
    Hand hand = new Hand(camera, pace);
    double reacts = Math.max(0.1, draws.around(reaction, 0.18));
    double brake = draws.around(0.04, 0.3);
    double rests = draws.between(0.1, 0.4);
    double back = draws.between(15, 60);
    boolean hears = !camera.silent() && draws.chance(0.97);
    double feltDelay = pace.turnsWind() ? draws.between(0.01, 0.03) : 0;
    boolean feels =
        pace.turnsWind()
            ? draws.chance(pace.windNoticed())
            : camera.load().unlockDrop() > 0.25 && draws.chance(0.7);
    double tremorSize = draws.between(0.01, 0.05);
    double tremorRate = 2 * Math.PI * draws.between(8, 11);
    double tremorPhase = draws.between(0, 2 * Math.PI);

    double stiffness = this.stiffness * (pace.rolled() ? 4 : 1);
    double damping = this.damping * (pace.rolled() ? 2 : 1);
    double perButton = (stiffness + camera.load().newtonPerMm()) / stiffness;
    double at = -0.1;
    double speed = 0;
    double way = 0;
    double deepest = 0;
    double unlocked = Double.NaN;
    double tripped = Double.NaN;
    double noticed = Double.NaN;
    double bottomed = Double.NaN;
    double stopsAt = Double.POSITIVE_INFINITY;
    boolean locked = true;
    double time = 0;
    while (time < LONGEST) {
      double sinceStop = time - stopsAt;
      if (sinceStop < 0) {
        way += hand.speed(at) * STEP;
      } else if (sinceStop < rests) {
        way += hand.lastSpeed() * Math.exp(-sinceStop / brake) * STEP;
      } else {
        way -= back * STEP;
        if (at < 0.02) {
          break;
        }
      }
      double tremor = tremorSize * Math.sin(tremorRate * time + tremorPhase);
      // The hand's rest place lies beyond the button by what the spring holds.
      double rest = way * perButton + camera.load().startNewton() / stiffness + tremor;
      double push = stiffness * (rest - at) - damping * speed;
      speed +=
          PER_NEWTON
              * (push - button.newton(at, !Double.isNaN(unlocked), !Double.isNaN(tripped)))
              * STEP;
      at += speed * STEP;
      deepest = Math.max(deepest, at);
      if (Double.isNaN(bottomed) && at >= camera.endMm()) {
        bottomed = time;
      }
      if (Double.isNaN(unlocked) && at >= button.unlockMm()) {
        unlocked = time;
        locked = false;
        if (hears || feels) {
          noticed = earlier(noticed, hears ? time : time + feltDelay);
        }
      }
      if (Double.isNaN(tripped) && at >= button.tripMm()) {
        tripped = time;
        noticed = earlier(noticed, time);
      }
      if (Double.isInfinite(stopsAt)) {
        if (stops && !Double.isNaN(noticed)) {
          stopsAt = noticed + reacts;
        } else if (way > camera.endMm() + 0.5) {
          stopsAt = time;
        }
      } else if (stops && time < stopsAt && way > camera.endMm() + 0.5) {
        stopsAt = time;
      }
      time += STEP;
    }
    locked |= camera.relocks() && Double.isNaN(tripped) && !pace.turnsWind();
    double light = tripped + camera.toLightSeconds();
    return new Press(
        unlocked,
        tripped,
        light,
        light + Button.OPEN_SECONDS,
        noticed,
        bottomed,
        time,
        deepest,
        !locked);
  }

  private static double earlier(double one, double other) {
    return Double.isNaN(one) ? other : Math.min(one, other);
  }

  /** The way of the hand in one press, until it stops. */
  private final class Hand {
    private final double usual;
    private final double travel;
    private final Manner manner;
    private final Pace pace;
    private final double slowFrom;
    private final double restAt;
    private double rest;
    private double wander;
    private double inStep;
    private double pause;
    private double last;
    private double done;

    Hand(Button camera, Pace pace) {
      this.pace = pace;
      travel = camera.endMm();
      usual = travel / (pace.seconds() * haste * draws.around(1, 0.15));
      Manner[] all = Manner.values();
      manner = pace.steps() ? Manner.EVEN : all[draws.upTo(all.length - 1)];
      slowFrom = camera.firstMm() * Math.min(0.95, 0.7 * draws.around(1, 0.15));
      restAt = draws.between(0.1, 0.9);
      rest = manner == Manner.RESTING && pace.seconds() > 0.5 ? draws.between(0.3, 1.0) : 0;
      inStep = draws.around(stepMm, 0.3);
    }

    double speed(double at) {
      double part = Math.max(0, Math.min(1, done / travel));
      double speed = usual;
      switch (manner) {
        case FASTER -> speed *= 0.5 + part;
        case SLOWER -> speed *= 1.5 - part;
        case RESTING -> {
          if (part > restAt && rest > 0) {
            rest -= STEP;
            speed = 0;
          }
        }
        case UNEVEN -> {
          wander += (-wander * STEP / 0.1) + 0.5 * Math.sqrt(2 * STEP / 0.1) * draws.normal();
          speed *= Math.exp(wander - 0.125);
        }
        case EVEN -> {}
      }
      if (at > slowFrom) {
        speed *= pace.endPart();
      }
      if (pace.steps()) {
        if (pause > 0) {
          pause -= STEP;
          speed = 0;
        } else if ((inStep -= speed * STEP) < 0) {
          pause = draws.between(0.3, 0.6);
          inStep = draws.around(stepMm, 0.3);
        }
      }
      done += speed * STEP;
      last = speed;
      return speed;
    }

    double lastSpeed() {
      return last;
    }
  }
}
