package org.halflight.workflow;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.halflight.session.FiringCondition;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;

/**
 * The keys 1 to 9 that say something special about firings. Both hands are on the camera while it
 * is fired, so what is of one firing is said of the firing just made. How the camera is held,
 * warmed or stopped down is set before it is fired, so it is said of the firings to come, until it
 * is said otherwise; the last key says it of the firing just made as well. A second press takes it
 * back.
 */
public enum ConditionKey {
  /** The firing just made was the first after a rest, or was not. */
  REST("1"),
  /** Warmed, from the next firing on. */
  WARMED("2"),
  /** The next attitude, from the next firing on; behind the last comes that of the run again. */
  ATTITUDE("3"),
  /** The dial of the firing just made was turned from the other side. */
  DIAL("4"),
  /** The firing just made was a quick tap. */
  QUICK_TAP("5"),
  /** The firing just made was a long press. */
  LONG_PRESS("6"),
  /** Wide open, from the next firing on. */
  WIDE_OPEN("7"),
  /** Stopped down, from the next firing on. */
  STOPPED_DOWN("8"),
  /** The firing just made was as the next ones are said to be. */
  LAST_TOO("9");

  private final String digit;

  ConditionKey(String digit) {
    this.digit = digit;
  }

  /** The key of a digit. */
  public static Optional<ConditionKey> of(String digit) {
    return Arrays.stream(values()).filter(key -> key.digit.equals(digit)).findFirst();
  }

  /** Its digit. */
  public String digit() {
    return digit;
  }

  /** What pressing it says now; empty where there is no firing yet that it could be said of. */
  Optional<SessionInput> press(Session now) {
    FiringConditions next = now.conditions();
    return switch (this) {
      case WARMED -> said(next.toggled(FiringCondition.WARMED));
      case WIDE_OPEN -> said(next.toggled(FiringCondition.WIDE_OPEN));
      case STOPPED_DOWN -> said(next.toggled(FiringCondition.STOPPED_DOWN));
      case ATTITUDE -> said(nextAttitude(next, now.setup()));
      case REST -> ofLast(now, ConditionKey::restTurned);
      case DIAL -> ofLast(now, toggling(FiringCondition.DIAL_FROM_OTHER_SIDE));
      case QUICK_TAP -> ofLast(now, toggling(FiringCondition.QUICK_TAP));
      case LONG_PRESS -> ofLast(now, toggling(FiringCondition.LONG_PRESS));
      case LAST_TOO -> ofLast(now, last -> last.conditions().lastingAs(next));
    };
  }

  /** Whether its condition holds: of the firing just made, or of the next one. */
  public boolean isOn(FiringConditions next, Optional<FiringResult> last) {
    FiringConditions its = last.map(FiringResult::conditions).orElse(FiringConditions.NONE);
    return switch (this) {
      case WARMED -> next.has(FiringCondition.WARMED);
      case WIDE_OPEN -> next.has(FiringCondition.WIDE_OPEN);
      case STOPPED_DOWN -> next.has(FiringCondition.STOPPED_DOWN);
      case ATTITUDE -> next.of(FiringCondition.Kind.ATTITUDE).isPresent();
      case REST -> last.filter(FiringResult::afterRest).isPresent();
      case DIAL -> its.has(FiringCondition.DIAL_FROM_OTHER_SIDE);
      case QUICK_TAP -> its.has(FiringCondition.QUICK_TAP);
      case LONG_PRESS -> its.has(FiringCondition.LONG_PRESS);
      case LAST_TOO -> false;
    };
  }

  private static Optional<SessionInput> said(FiringConditions next) {
    return Optional.of(new SessionInput.ConditionsAre(next));
  }

  private static Optional<SessionInput> ofLast(
      Session now, Function<FiringResult, FiringConditions> conditions) {
    return now.lastFiring()
        .map(last -> new SessionInput.FiringUnder(last.key(), conditions.apply(last)));
  }

  private static Function<FiringResult, FiringConditions> toggling(FiringCondition condition) {
    return last -> last.conditions().toggled(condition);
  }

  /** The program knows the first firing of a run by itself; the person may know better. */
  private static FiringConditions restTurned(FiringResult last) {
    FiringConditions its = last.conditions();
    if (its.of(FiringCondition.Kind.REST).isPresent()) {
      return its.without(FiringCondition.Kind.REST);
    }
    return its.with(
        last.afterRest() ? FiringCondition.NOT_AFTER_REST : FiringCondition.FIRST_AFTER_REST);
  }

  private static FiringConditions nextAttitude(FiringConditions now, Optional<RunSetup> run) {
    List<FiringCondition> special =
        FiringConditions.special(
            FiringCondition.Kind.ATTITUDE,
            run.map(RunSetup::conditions).orElse(RunConditions.NONE));
    int following =
        now.of(FiringCondition.Kind.ATTITUDE).map(special::indexOf).map(i -> i + 1).orElse(0);
    return following < special.size()
        ? now.with(special.get(following))
        : now.without(FiringCondition.Kind.ATTITUDE);
  }
}
