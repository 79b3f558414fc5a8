package org.halflight.verdict;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.halflight.session.Assembly;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stored.StoredWords;
import org.halflight.verdict.Stage.Bulb;

/**
 * A stage of assembly compared with the one before.
 *
 * @param before the earlier stage
 * @param after the later one
 * @param changed the parts that one of them has and the other has not, the ring tight
 * @param slow the slowest speed of the train
 * @param top the top speed
 * @param known whether an earlier stage was found slow or failing and that is still so: firings
 *     that fail now and then belong to it
 */
public record StageChange(
    Stage before,
    Stage after,
    List<Assembly.Part> changed,
    OfSpeed slow,
    OfSpeed top,
    boolean known) {
  /** So many firings without a time where there were none before are no accident. Our choice. */
  public static final int FAILED_IN_A_ROW = 2;

  /** What is known of one speed. */
  public enum Shown {
    /** Slower than before, beyond the uncertainty. */
    SLOWER,
    /** Faster than before, beyond the uncertainty. */
    FASTER,
    /** No change beyond the uncertainty. */
    NO_CHANGE,
    /** One of the stages has no time of this speed, or the light was not set again. */
    NOT_KNOWN;

    /** As tables store them. */
    public static final StoredWords<Shown> WORDS =
        StoredWords.of(
            Shown.class,
            shown ->
                switch (shown) {
                  case SLOWER -> "slower";
                  case FASTER -> "faster";
                  case NO_CHANGE -> "no-change";
                  case NOT_KNOWN -> "not-known";
                });
  }

  /**
   * One speed in two stages.
   *
   * @param speed that was set
   * @param stops later less earlier mean, in stops; above zero is slower. Zero where not known
   * @param plusMinus its uncertainty, in stops: all comparisons of a repair together are covered
   * @param shown what that amounts to
   */
  public record OfSpeed(MarkedSpeed speed, double stops, double plusMinus, Shown shown) {
    /** Whether it moved. */
    public boolean isChange() {
      return shown == Shown.SLOWER || shown == Shown.FASTER;
    }
  }

  /** Why firings fail or B is wrong in one of the two stages and not in the other. */
  public enum Failing {
    /** In the later one. */
    BEGINS,
    /** In the earlier one. */
    ENDS,
    /** In none, in both, or it cannot be told. */
    NO
  }

  /** What to look at. */
  public enum Suspect {
    /** The case pinches the shutter: ring, shim or board. */
    PINCHED_CASE,
    /** A cell touches the blades or their ring. */
    TOUCHING_CELL,
    /** The cover or the speed ring below it is not home. */
    WRONG_COVER;

    /** As tables store them. */
    public static final StoredWords<Suspect> WORDS =
        StoredWords.of(
            Suspect.class,
            suspect ->
                switch (suspect) {
                  case PINCHED_CASE -> "pinched-case";
                  case TOUCHING_CELL -> "touching-cell";
                  case WRONG_COVER -> "wrong-cover";
                });
  }

  public StageChange {
    changed = List.copyOf(changed);
  }

  /** Firings without a time in the earlier stage. */
  public int failedBefore() {
    return before.failed();
  }

  /** Firings without a time in the later stage. */
  public int failedAfter() {
    return after.failed();
  }

  /** Whether a cell was put in or taken out. */
  public boolean cellsChanged() {
    return changed.stream().anyMatch(Assembly.Part::isCell);
  }

  /** Whether the cells changed and full light was not set since. */
  public boolean isLightOld() {
    return cellsChanged() && !after.lightSet();
  }

  /** Whether the top speed differs and so do the optics: nothing of the shutter's. */
  public boolean opticsDiffer() {
    return cellsChanged() && top.isChange();
  }

  /** Firings without a time. One alone may be an accident. */
  public Failing firings() {
    if (isLightOld()) {
      return Failing.NO;
    }
    boolean worked = before.failed() == 0 && before.fired() > 0;
    if (!known && worked && after.failed() >= FAILED_IN_A_ROW) {
      return Failing.BEGINS;
    }
    // Some that hang and some that do not say nothing: as many may go by luck. All of them do.
    boolean neverRan = before.slow().errors().n() == 0 && before.slow().failed() >= FAILED_IN_A_ROW;
    return neverRan && after.failed() == 0 && after.slow().errors().n() >= FAILED_IN_A_ROW
        ? Failing.ENDS
        : Failing.NO;
  }

  /** Whether from here on a shutter is known to be slow or failing, as it was before or not. */
  boolean isKnownAfter() {
    if (slow.shown() == Shown.SLOWER || firings() == Failing.BEGINS || bulb() == Failing.BEGINS) {
      return true;
    }
    return known
        && slow.shown() != Shown.FASTER
        && firings() != Failing.ENDS
        && bulb() != Failing.ENDS;
  }

  /** The test of B. */
  public Failing bulb() {
    if (before.bulb().isEmpty() || after.bulb().isEmpty()) {
      return Failing.NO;
    }
    Bulb was = before.bulb().get();
    Bulb is = after.bulb().get();
    if (was.isRight() && is.isWrong()) {
      return Failing.BEGINS;
    }
    return was.isWrong() && is.isRight() ? Failing.ENDS : Failing.NO;
  }

  /** Whether anything differs that the parts which changed may have done. */
  public boolean isFound() {
    return slow.isChange()
        || (top.isChange() && !cellsChanged())
        || firings() != Failing.NO
        || bulb() != Failing.NO;
  }

  /** What to look at; two or more where things of several kinds changed at once. */
  public Set<Suspect> suspects() {
    EnumSet<Suspect> suspects = EnumSet.noneOf(Suspect.class);
    if (isFound()) {
      changed.forEach(
          part ->
              suspects.add(
                  switch (part) {
                    case COVER -> Suspect.WRONG_COVER;
                    case REAR_CELL, FRONT_CELL -> Suspect.TOUCHING_CELL;
                    case CAMERA, RING -> Suspect.PINCHED_CASE;
                  }));
    }
    return Collections.unmodifiableSet(suspects);
  }
}
