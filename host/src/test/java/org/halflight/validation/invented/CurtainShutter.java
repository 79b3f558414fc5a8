package org.halflight.validation.invented;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Predicate;
import org.halflight.validation.invented.CurtainLaw.Hold;
import org.halflight.validation.invented.CurtainLaw.Way;

/**
 * An invented shutter of two curtains. All figures of it are our own, none was measured on a
 * camera; the ranges of travels and of places around the frame are those of common practice.
 *
 * @param frame of the picture in the direction of travel, in millimetres
 * @param travelSeconds that its maker wanted, edge to edge
 * @param fault what is wrong with it
 * @param size how wrong, from 0.4 (hardly) over 1 (clearly) to 1.6
 * @param first how the first curtain moves, from its release
 * @param second how the second does
 * @param apartMillimetres from the plane of the first curtain to that of the second, towards the
 *     film
 * @param exactDelay seconds from the release of the first curtain to that of the second that would
 *     make an exposure of no time at the centre of a shutter in order
 * @param lateSeconds by how much the second is released late
 * @param jitterSeconds of the release of the second, a standard deviation
 * @param paceScatter of both curtains from firing to firing, a standard deviation as a part
 */
public record CurtainShutter(
    double frame,
    double travelSeconds,
    CurtainFault fault,
    double size,
    CurtainMotion first,
    CurtainMotion second,
    double apartMillimetres,
    double exactDelay,
    double lateSeconds,
    double jitterSeconds,
    double paceScatter) {
  /** Frames with the travels that go with them, in seconds. */
  private enum Build {
    SHORT_SIDE(24, 3e-3, 8e-3),
    LONG_SIDE(36, 8e-3, 18e-3),
    ROLL_FILM(56, 18e-3, 35e-3);

    private final double frame;
    private final double quickest;
    private final double slowest;

    Build(double frame, double quickest, double slowest) {
      this.frame = frame;
      this.quickest = quickest;
      this.slowest = slowest;
    }
  }

  /** A shutter with this fault, which is hardly to clearly there. */
  public static CurtainShutter drawn(CurtainFault fault, Draws draws) {
    return drawn(fault, draws.between(0.4, 1.6), draws);
  }

  /** A shutter with a fault of this size, that was in order before the fault came. */
  public static CurtainShutter drawn(CurtainFault fault, double size, Draws draws) {
    Build build = Build.values()[draws.upTo(2)];
    double frame = build.frame;
    double travel = build.quickest * Math.pow(build.slowest / build.quickest, draws.between(0, 1));
    Sound sound = Sound.drawn(build, travel, draws);
    while (!sound.isInOrder()) {
      sound = Sound.drawn(build, travel, draws);
    }
    CurtainLaw firstLaw = sound.firstLaw();
    CurtainLaw secondLaw = sound.secondLaw();
    Way firstWay = sound.firstWay();
    Way secondWay = sound.secondWay();
    double firstPace = sound.firstPace();
    double secondPace = sound.secondPace();
    CurtainMotion first = sound.first();
    CurtainMotion second = sound.second();
    double exact = sound.exactDelay();
    Fault its = new Fault(size, frame, travel, draws);
    switch (fault) {
      case FIRST_SLOW -> first = first.stretched(1 + its.lostSeconds() / travel);
      case SECOND_SLOW -> second = second.stretched(1 + its.lostSeconds() / travel);
      case BOTH_SLOW -> {
        first = first.stretched(1 + 0.2 * size);
        second = second.stretched(1 + 0.2 * size);
      }
      case FIRST_DRAGS -> first = its.dragging(firstLaw, firstWay, firstPace);
      case SECOND_DRAGS -> second = its.dragging(secondLaw, secondWay, secondPace);
      case FIRST_BOUNCES -> first = its.bouncing(firstLaw, firstWay, firstPace);
      case SECOND_BOUNCES -> second = its.bouncing(secondLaw, secondWay, secondPace);
      case FIRST_BRAKED_EARLY ->
          first = its.brakedEarly(firstLaw, firstWay).motion(firstWay, firstPace);
      case SECOND_BRAKED_EARLY ->
          second = its.brakedEarly(secondLaw, secondWay).motion(secondWay, secondPace);
      case FIRST_STICKS -> first = its.sticking(firstLaw, firstWay).motion(firstWay, firstPace);
      case NOTHING, LATE_LATCH, SLIT_WRONG -> {}
    }
    return new CurtainShutter(
        frame,
        travel,
        fault,
        size,
        first,
        second,
        build == Build.SHORT_SIDE ? draws.between(0.2, 0.8) : draws.between(0, 0.3),
        exact,
        its.lateSeconds(fault),
        draws.around(8e-6, 0.6),
        draws.around(1e-3, 0.5));
  }

  /** One firing. */
  public CurtainShot fired(double openSeconds, Draws draws) {
    double release = exactDelay + openSeconds + lateSeconds + jitterSeconds * draws.normal();
    return new CurtainShot(
        frame,
        first.stretched(1 + paceScatter * draws.normal()),
        second.stretched(1 + paceScatter * draws.normal()),
        release,
        apartMillimetres);
  }

  /**
   * Two curtains as somebody let them go who knows the trade.
   *
   * @param travelSeconds that was wanted
   */
  private record Sound(
      double travelSeconds,
      CurtainLaw firstLaw,
      CurtainLaw secondLaw,
      Way firstWay,
      Way secondWay,
      double firstPace,
      double secondPace,
      CurtainMotion first,
      CurtainMotion second) {
    /** A third of a stop at the top speed is what good practice allows (no source). */
    private static final double MOST_RANGE = Math.cbrt(2);

    private static final double TOP_SLIT = 1;

    /** Spring tensions are set so well. */
    private static final double SET_SECONDS = 0.05e-3;

    static Sound drawn(Build build, double travel, Draws draws) {
      double frame = build.frame;
      // In parts of the frame: 7 mm behind a frame of 36 is a published figure, the rest our own.
      double runUp = frame * draws.between(0.06, 0.25);
      double overrun = frame * draws.between(0.03, 0.12);
      Way firstWay = new Way(-frame / 2 - runUp, frame, frame / 2 + overrun);
      Way secondWay =
          new Way(
              -frame / 2 - runUp * draws.between(0.8, 1.3),
              frame,
              frame / 2 + overrun * draws.between(0.7, 1.3));
      CurtainLaw law = law(build, draws);
      CurtainLaw firstLaw = braked(law, firstWay, draws);
      CurtainLaw secondLaw = braked(alike(law, draws), secondWay, draws);
      double firstTravel = travel * (1 + 0.01 * draws.normal());
      double firstPace = firstLaw.pace(firstWay, firstTravel);
      double secondPace = secondLaw.pace(secondWay, firstTravel + SET_SECONDS * draws.normal());
      return new Sound(
          travel,
          firstLaw,
          secondLaw,
          firstWay,
          secondWay,
          firstPace,
          secondPace,
          firstLaw.motion(firstWay, firstPace),
          secondLaw.motion(secondWay, secondPace));
    }

    /** From release to release, for no time at all at the centre. */
    double exactDelay() {
      return first.passes(0) - second.passes(0);
    }

    /** Whether the film would be even between the outer sensors at the top speed. */
    boolean isInOrder() {
      double frame = firstWay.frame();
      double top = 1 / 1024.0;
      double slit = frame / travelSeconds * top;
      double open = slit / 2 >= TOP_SLIT ? top / 2 : top;
      double least = Double.POSITIVE_INFINITY;
      double most = 0;
      for (double place = -0.45; place <= 0.45; place += 0.05) {
        double its =
            open + exactDelay() + second.passes(place * frame) - first.passes(place * frame);
        least = Math.min(least, its);
        most = Math.max(most, its);
      }
      return least > 0 && most / least <= MOST_RANGE;
    }
  }

  private static CurtainLaw law(Build build, Draws draws) {
    boolean onArms = build == Build.SHORT_SIDE && draws.chance(0.7);
    boolean kicked = draws.chance(0.3);
    return new CurtainLaw(
        kicked ? draws.between(0.2, 0.7) : 0,
        draws.between(0.1, 0.6),
        draws.between(-0.2, 0.3),
        draws.between(0.05, 0.25),
        draws.between(0, 0.6),
        0.03 * Math.abs(draws.normal()),
        draws.between(1, 3),
        draws.between(0, 1),
        onArms ? draws.between(0.5, 0.9) : 0,
        List.of(),
        0);
  }

  /** Of the same make, and still another piece: other friction, other unevenness. */
  private static CurtainLaw alike(CurtainLaw law, Draws draws) {
    return new CurtainLaw(
        law.kick(),
        law.fall() * draws.between(0.9, 1.1),
        law.heavier() + draws.between(-0.03, 0.03),
        law.dry() * draws.between(0.8, 1.25),
        law.wet() * draws.between(0.8, 1.25),
        0.03 * Math.abs(draws.normal()),
        draws.between(1, 3),
        draws.between(0, 1),
        law.arm(),
        List.of(),
        0);
  }

  /**
   * A brake that begins about the edge of the frame, and a stop that takes most of what is left.
   */
  private static CurtainLaw braked(CurtainLaw law, Way way, Draws draws) {
    double edge = way.frame() / 2;
    double from = edge + draws.between(-0.02, 0.4) * (way.stop() - edge);
    Hold brake = new Hold(from, way.stop() + 1, draws.between(0.5, 0.9), 0.05, 0);
    return law.stopping(List.of(brake), draws.between(0.05, 0.25));
  }

  /**
   * What a fault does to the law of a curtain.
   *
   * @param size how wrong it is
   * @param frame in millimetres
   * @param travelSeconds edge to edge
   * @param draws for its particulars
   */
  private record Fault(double size, double frame, double travelSeconds, Draws draws) {
    private static final double MOST_TAKEN = 40;

    double lateSeconds(CurtainFault fault) {
      return switch (fault) {
        case LATE_LATCH -> 0.3e-3 * size;
        case SLIT_WRONG -> -0.25e-3 * size;
        default -> 0;
      };
    }

    /** What a slow curtain loses over the frame: a third of a stop of 1/1000 at the least. */
    double lostSeconds() {
      return size * Math.max(0.35e-3, 0.03 * travelSeconds);
    }

    /** From somewhere in the second half on, up to the edge; it loses as much there. */
    CurtainMotion dragging(CurtainLaw law, Way way, double pace) {
      double from = frame * draws.between(0.1, 0.25);
      double end = law.motion(way, pace).passes(0.45 * frame);
      return found(
          MOST_TAKEN,
          takes -> law.withHold(new Hold(from, frame / 2, takes, 0.3, 0)).motion(way, pace),
          motion ->
              Double.isNaN(motion.passes(frame / 2))
                  || motion.passes(0.45 * frame) - end >= lostSeconds());
    }

    /** Hardly a brake, and a stop that throws it back into the frame. */
    CurtainMotion bouncing(CurtainLaw law, Way way, double pace) {
      Hold old = law.holds().get(0);
      Hold worn = new Hold(old.from(), old.to(), 0.3 * draws.between(0, 1), 0.05, 0);
      double reached = frame * (0.5 - 0.1 * size * draws.between(0.7, 1.3));
      return found(
          1,
          back -> law.stopping(List.of(worn), back).motion(way, pace),
          motion -> motion.passings(reached).size() > 1);
    }

    /** The motion at which something that grows is enough. */
    private static CurtainMotion found(
        double most, DoubleFunction<CurtainMotion> motion, Predicate<CurtainMotion> isEnough) {
      double low = 0;
      double high = most;
      for (int turn = 0; turn < 24; turn++) {
        double middle = (low + high) / 2;
        if (isEnough.test(motion.apply(middle))) {
          high = middle;
        } else {
          low = middle;
        }
      }
      return motion.apply(low);
    }

    /** The brake reaches well into the frame. */
    CurtainLaw brakedEarly(CurtainLaw law, Way way) {
      Hold old = law.holds().get(0);
      double from = frame / 2 - frame * draws.between(0.05, 0.12) * size;
      Hold early = new Hold(from, way.stop() + 1, old.takes(), old.after(), 0);
      return law.stopping(List.of(early), law.springBack());
    }

    /** Something holds it until it is well in the frame. */
    CurtainLaw sticking(CurtainLaw law, Way way) {
      double to = frame * (draws.between(0.02, 0.1) - 0.5);
      double holds = Math.min(0.9, 0.35 * size) * (1 - law.dry());
      return law.withHold(new Hold(way.wound(), to, 0, 0, holds));
    }
  }
}
