package org.halflight.validation.invented;

import java.util.List;
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

  /** A shutter with a fault of this size. */
  public static CurtainShutter drawn(CurtainFault fault, double size, Draws draws) {
    Build build = Build.values()[draws.upTo(2)];
    double frame = build.frame;
    double travel = build.quickest * Math.pow(build.slowest / build.quickest, draws.between(0, 1));
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
    double firstPace = firstLaw.pace(firstWay, travel * (1 + 0.01 * draws.normal()));
    double secondPace = secondLaw.pace(secondWay, travel * (1 + 0.01 * draws.normal()));
    CurtainMotion first = firstLaw.motion(firstWay, firstPace);
    CurtainMotion second = secondLaw.motion(secondWay, secondPace);
    double exact = first.passes(0) - second.passes(0);

    Fault its = new Fault(size, frame, draws);
    switch (fault) {
      case FIRST_SLOW -> first = first.stretched(1 + 0.08 * size);
      case SECOND_SLOW -> second = second.stretched(1 + 0.08 * size);
      case BOTH_SLOW -> {
        first = first.stretched(1 + 0.2 * size);
        second = second.stretched(1 + 0.2 * size);
      }
      case FIRST_DRAGS -> first = its.dragging(firstLaw).motion(firstWay, firstPace);
      case SECOND_DRAGS -> second = its.dragging(secondLaw).motion(secondWay, secondPace);
      case FIRST_BOUNCES -> first = its.bouncing(firstLaw).motion(firstWay, firstPace);
      case SECOND_BOUNCES -> second = its.bouncing(secondLaw).motion(secondWay, secondPace);
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
   * @param draws for its particulars
   */
  private record Fault(double size, double frame, Draws draws) {
    double lateSeconds(CurtainFault fault) {
      return switch (fault) {
        case LATE_LATCH -> 0.3e-3 * size;
        case SLIT_WRONG -> -0.25e-3 * size;
        default -> 0;
      };
    }

    /** From somewhere in the second half on, up to the edge. */
    CurtainLaw dragging(CurtainLaw law) {
      double from = frame * draws.between(0.1, 0.25);
      return law.withHold(new Hold(from, frame / 2, Math.min(0.95, 0.5 * size), 0.3, 0));
    }

    /** Hardly a brake, and a stop that throws it back. */
    CurtainLaw bouncing(CurtainLaw law) {
      Hold old = law.holds().get(0);
      Hold worn = new Hold(old.from(), old.to(), 0.3 * draws.between(0, 1), 0.05, 0);
      return law.stopping(List.of(worn), Math.min(0.8, draws.between(0.2, 0.4) * Math.sqrt(size)));
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
