package org.halflight.desk.view;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.words.Words;

/** The one act that the bench proposes now, for a pedal. */
public final class Proposal {
  /** Answers that take nothing out of the count and say nothing that only the person can know. */
  private static final Set<UserAction> SAFE =
      EnumSet.of(
          UserAction.ACCEPT,
          UserAction.FULL_LIGHT,
          UserAction.CLOSED_BY_HAND,
          UserAction.TO_RUN,
          UserAction.TO_LIGHT);

  private Proposal() {}

  /**
   * The act; empty where there is nothing to do but to fire the camera by hand. On the practice rig
   * that is an act, too.
   */
  public static Optional<UserAction> of(BenchView view) {
    return of(view, KeyHints.of(view));
  }

  /**
   * The act at a place where the bench is not to be seen: whatever is asked there must be read
   * first.
   */
  public static UserAction elsewhere(BenchView view) {
    if (view.question().isEmpty() && view.lightTest().isAsking()) {
      return UserAction.ACCEPT;
    }
    return of(view).filter(UserAction.TO_RUN::equals).orElse(UserAction.TO_BENCH);
  }

  /** What a person is told whose pedal has nothing to do. */
  public static String nothing(BenchView view) {
    return Words.say(view.linkage().asksForWind() ? "desk.pedal.wind" : "desk.pedal.nothing");
  }

  static Optional<UserAction> of(BenchView view, List<KeyHints.Hint> hints) {
    Optional<UserAction> answer =
        hints.stream()
            .filter(hint -> hint.answers() && SAFE.contains(hint.act()))
            .map(KeyHints.Hint::act)
            .findFirst();
    if (answer.isPresent() || view.lightTest().isUnderWay() || view.linkage().asksForWind()) {
      return answer;
    }
    if (view.setup().isEmpty()) {
      return Optional.of(view.light().set().isPresent() ? UserAction.TO_RUN : UserAction.TO_LIGHT);
    }
    return hints.stream().map(KeyHints.Hint::act).filter(UserAction.FIRE::equals).findFirst();
  }
}
