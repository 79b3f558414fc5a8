package org.halflight.verdict;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.session.Adjuster;
import org.halflight.session.CurtainStep;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainSign.Kind;

/**
 * What to do next about the curtains: one act, the step of the work that it belongs to, and why.
 *
 * @param act what to do
 * @param step the step of the work
 * @param why the sign it is about; empty where nothing is out
 */
public record CurtainAdvice(Act act, CurtainStep step, Optional<CurtainSign> why) {
  /** One thing to do. */
  public enum Act {
    /** The spring has more turns than it had: stop, something drags. */
    STOP_SOMETHING_DRAGS,
    /** Clean, and leave the tension alone. */
    CLEAN_DO_NOT_WIND,
    /** Leave the slit alone; even out the travels. */
    CAPPED_LOOK_AT_TRAVELS,
    /** Look at brake, tape and dirt of the first curtain. */
    LOOK_AT_FIRST_DRAG,
    /** The same of the second. */
    LOOK_AT_SECOND_DRAG,
    /** Look at the edge of the first curtain, its light trap and the latch. */
    LOOK_AT_START,
    /** More tension on the first curtain. */
    MORE_FIRST,
    /** Less tension on the first curtain. */
    LESS_FIRST,
    /** More tension on the second curtain. */
    MORE_SECOND,
    /** Less tension on the second curtain. */
    LESS_SECOND,
    /** A narrower slit: the second curtain is let go sooner. */
    NARROWER_SLIT,
    /** A wider slit. */
    WIDER_SLIT,
    /** A little more brake on the second curtain. */
    MORE_SECOND_BRAKE,
    /** A little more brake on the first curtain. */
    MORE_FIRST_BRAKE,
    /** The contact cannot be right yet: the curtains first. */
    CURTAINS_BEFORE_CONTACT,
    /** The contact is to close later. */
    CONTACT_LATER,
    /** The contact is to close sooner. */
    CONTACT_SOONER,
    /** The slow speeds: 1/8 first. */
    ESCAPEMENT,
    /** Nothing is out. */
    NOTHING
  }

  /**
   * What is known beside the figures.
   *
   * @param adjusters what the camera has to turn
   * @param firstTurnsMore turns of the first spring since it was found, more are above 0
   * @param secondTurnsMore the same of the second
   * @param slowSpeed a slow speed that is out of its tolerance; empty where there is none
   */
  public record Known(
      Set<Adjuster> adjusters,
      OptionalDouble firstTurnsMore,
      OptionalDouble secondTurnsMore,
      Optional<MarkedSpeed> slowSpeed) {
    /** Everything can be turned, and nothing has been. */
    public static final Known NOTHING =
        new Known(Adjuster.ALL, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());

    public Known {
      adjusters = Set.copyOf(adjusters);
    }
  }

  /**
   * The next act for what stands out.
   *
   * @param signs of {@link CurtainSigns}
   */
  public static CurtainAdvice of(List<CurtainSign> signs, Known known) {
    return new Chooser(signs, known).next();
  }

  private record Chooser(List<CurtainSign> signs, Known known) {
    CurtainAdvice next() {
      return stop()
          .or(this::clean)
          .or(() -> about(Kind.CAPPED_AT_END, Act.CAPPED_LOOK_AT_TRAVELS).filter(a -> !isUneven()))
          .or(() -> about(Kind.FIRST_DRAGS, Act.LOOK_AT_FIRST_DRAG))
          .or(() -> about(Kind.SECOND_DRAGS, Act.LOOK_AT_SECOND_DRAG))
          .or(() -> about(Kind.START_DIFFERS, Act.LOOK_AT_START))
          .or(this::wedge)
          .or(() -> about(Kind.FIRST_SLOW, Act.MORE_FIRST))
          .or(() -> about(Kind.FIRST_QUICK, Act.LESS_FIRST))
          .or(() -> about(Kind.SECOND_SLOW, Act.MORE_SECOND))
          .or(() -> about(Kind.SECOND_QUICK, Act.LESS_SECOND))
          .or(() -> about(Kind.BOTH_SLOW, Act.MORE_FIRST))
          .or(() -> about(Kind.BOTH_QUICK, Act.LESS_FIRST))
          .or(() -> about(Kind.LATCH_LATE, Act.NARROWER_SLIT))
          .or(() -> about(Kind.LATCH_EARLY, Act.WIDER_SLIT))
          .or(() -> about(Kind.SECOND_BOUNCES, Act.MORE_SECOND_BRAKE))
          .or(() -> about(Kind.FIRST_BOUNCES, Act.MORE_FIRST_BRAKE))
          .or(() -> about(Kind.NO_WINDOW, Act.CURTAINS_BEFORE_CONTACT))
          .or(() -> about(Kind.CONTACT_EARLY, Act.CONTACT_LATER))
          .or(() -> about(Kind.CONTACT_LATE, Act.CONTACT_SOONER))
          .or(() -> known.slowSpeed().map(speed -> advice(Act.ESCAPEMENT, Optional.empty())))
          .orElseGet(() -> advice(Act.NOTHING, Optional.empty()));
    }

    /** Wound further than it was, and still slow: winding on hides what drags. */
    private Optional<CurtainAdvice> stop() {
      boolean first = isTooFar(known.firstTurnsMore()) && isAny(Kind.FIRST_SLOW, Kind.BOTH_SLOW);
      boolean second =
          isTooFar(known.secondTurnsMore())
              && isAny(Kind.SECOND_SLOW, Kind.WEDGE_END_BRIGHTER, Kind.BOTH_SLOW);
      Optional<CurtainSign> why =
          sign(first ? Kind.FIRST_SLOW : Kind.SECOND_SLOW)
              .or(() -> sign(Kind.BOTH_SLOW))
              .or(() -> sign(Kind.WEDGE_END_BRIGHTER));
      return first || second
          ? Optional.of(advice(Act.STOP_SOMETHING_DRAGS, why))
          : Optional.empty();
    }

    private static boolean isTooFar(OptionalDouble turns) {
      return turns.orElse(0) > CurtainLimits.MOST_TURNS_MORE;
    }

    /** Tension never hides gum. */
    private Optional<CurtainAdvice> clean() {
      return about(Kind.SLOW_AFTER_REST, Act.CLEAN_DO_NOT_WIND);
    }

    /** Of the two ways to make the travels alike, the one that brings both nearer their figure. */
    private Optional<CurtainAdvice> wedge() {
      Optional<CurtainSign> darker = sign(Kind.WEDGE_END_DARKER);
      Optional<CurtainSign> brighter = sign(Kind.WEDGE_END_BRIGHTER);
      if (darker.isPresent()) {
        return Optional.of(
            isAny(Kind.FIRST_SLOW, Kind.SECOND_SLOW)
                ? either(Act.MORE_FIRST, Act.LESS_SECOND, darker)
                : either(Act.LESS_SECOND, Act.MORE_FIRST, darker));
      }
      if (brighter.isPresent()) {
        return Optional.of(
            isAny(Kind.FIRST_QUICK, Kind.SECOND_QUICK)
                ? either(Act.LESS_FIRST, Act.MORE_SECOND, brighter)
                : either(Act.MORE_SECOND, Act.LESS_FIRST, brighter));
      }
      return Optional.empty();
    }

    private CurtainAdvice either(Act wanted, Act other, Optional<CurtainSign> why) {
      return advice(isThere(wanted) || !isThere(other) ? wanted : other, why);
    }

    private boolean isThere(Act act) {
      boolean first = act == Act.MORE_FIRST || act == Act.LESS_FIRST;
      return known.adjusters().contains(first ? Adjuster.FIRST_TENSION : Adjuster.SECOND_TENSION);
    }

    private boolean isUneven() {
      return isAny(
          Kind.WEDGE_END_DARKER, Kind.WEDGE_END_BRIGHTER, Kind.FIRST_DRAGS, Kind.SECOND_DRAGS);
    }

    private Optional<CurtainAdvice> about(Kind kind, Act act) {
      return sign(kind).map(sign -> advice(act, Optional.of(sign)));
    }

    private Optional<CurtainSign> sign(Kind kind) {
      return signs.stream().filter(sign -> sign.kind() == kind).findFirst();
    }

    private boolean isAny(Kind... kinds) {
      return signs.stream().anyMatch(sign -> List.of(kinds).contains(sign.kind()));
    }
  }

  private static CurtainAdvice advice(Act act, Optional<CurtainSign> why) {
    return new CurtainAdvice(act, step(act), why);
  }

  private static CurtainStep step(Act act) {
    return switch (act) {
      case STOP_SOMETHING_DRAGS, CLEAN_DO_NOT_WIND, LOOK_AT_START -> CurtainStep.CLEAN;
      case MORE_FIRST, LESS_FIRST -> CurtainStep.FIRST_TENSION;
      case MORE_SECOND, LESS_SECOND, CAPPED_LOOK_AT_TRAVELS, CURTAINS_BEFORE_CONTACT ->
          CurtainStep.SECOND_TENSION;
      case NARROWER_SLIT, WIDER_SLIT -> CurtainStep.SLIT;
      case LOOK_AT_FIRST_DRAG, LOOK_AT_SECOND_DRAG, MORE_SECOND_BRAKE, MORE_FIRST_BRAKE ->
          CurtainStep.BRAKE;
      case CONTACT_LATER, CONTACT_SOONER -> CurtainStep.CONTACT;
      case ESCAPEMENT -> CurtainStep.ESCAPEMENT;
      case NOTHING -> CurtainStep.NEXT_DAY;
    };
  }
}
