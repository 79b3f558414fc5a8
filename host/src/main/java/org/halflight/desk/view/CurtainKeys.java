package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.CurtainStep;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.words.CurtainWords;
import org.halflight.words.Words;

/** The keys of somebody who adjusts curtains: steps, and turns. */
public final class CurtainKeys {
  /** Each step has a key of its own, so that any can be opened directly. */
  static final Map<UserAction, CurtainStep> STEPS = steps();

  private CurtainKeys() {}

  private static Map<UserAction, CurtainStep> steps() {
    Map<UserAction, CurtainStep> steps = new EnumMap<>(UserAction.class);
    for (CurtainStep step : CurtainStep.values()) {
      steps.put(opening(step), step);
    }
    return Collections.unmodifiableMap(steps);
  }

  /** The act that opens a step. */
  static UserAction opening(CurtainStep step) {
    return UserAction.valueOf("STEP_" + step.name());
  }

  /** Whether an act belongs to adjusting curtains. */
  static boolean isOfCurtains(UserAction act) {
    return STEPS.containsKey(act)
        || act == UserAction.STEP_NEXT
        || act == UserAction.TURN_TIGHTER
        || act == UserAction.TURN_LOOSER;
  }

  /** Whether such an act means anything now. */
  static boolean means(UserAction act, BenchView view) {
    if (!CurtainBench.isLed(view)) {
      return false;
    }
    boolean turns = act == UserAction.TURN_TIGHTER || act == UserAction.TURN_LOOSER;
    return turns
        ? CurtainBench.adjuster(view, Optional.empty()).isPresent()
        : Optional.ofNullable(STEPS.get(act))
            .map(step -> step.isFor(CurtainBench.has(view)))
            .orElse(true);
  }

  /** The step that an act opens; empty where the person is not led, or it opens none. */
  public static Optional<CurtainStep> step(UserAction act, BenchView view) {
    if (!means(act, view)) {
      return Optional.empty();
    }
    return act == UserAction.STEP_NEXT
        ? Optional.of(CurtainBench.next(view))
        : Optional.ofNullable(STEPS.get(act));
  }

  /** What a key of turns has turned; empty where there is nothing to turn. */
  public static Optional<AdjusterTurn> turn(
      UserAction act, BenchView view, Optional<CurtainAdvice> advice) {
    double by = act == UserAction.TURN_TIGHTER ? CurtainBench.KEY_TURNS : -CurtainBench.KEY_TURNS;
    return CurtainBench.isLed(view)
        ? CurtainBench.adjuster(view, advice).map(its -> AdjusterTurn.turned(its, by))
        : Optional.empty();
  }

  /** The caps of the moment. */
  static List<KeyHints.Hint> hints(BenchView view) {
    List<KeyHints.Hint> hints = new ArrayList<>();
    if (!CurtainBench.isLed(view)) {
      return hints;
    }
    Optional<Adjuster> turns = CurtainBench.adjuster(view, Optional.empty());
    if (turns.isPresent()) {
      String way = turns.get().isTension() ? "tension" : "screw";
      hints.add(
          KeyHints.hint(UserAction.TURN_TIGHTER, Words.say("desk.key.turn-tighter." + way), true));
      hints.add(
          KeyHints.hint(UserAction.TURN_LOOSER, Words.say("desk.key.turn-looser." + way), true));
    }
    hints.add(
        KeyHints.hint(
            UserAction.STEP_NEXT,
            Words.say("desk.key.step-next.to", CurtainWords.step(CurtainBench.next(view))),
            false));
    return hints;
  }
}
