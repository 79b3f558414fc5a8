package org.halflight.firstlight;

import java.util.List;
import java.util.Optional;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/**
 * Watches what a rig says while a person moves a hand: the inputs, one step at a time. A state
 * machine that knows no port and no clock; what it says is a {@link Finding}. Not safe for use by
 * several threads.
 */
public final class StepWatch {
  private final BoardTraits board;
  private final FirstStep step;
  private RigFacts facts;

  /** Readings of a lit sensor in a row before its cover is looked for. */
  private int litReadings;

  private boolean armed;

  /** A fault that has shown itself: what the hand does later cannot unsay it. */
  private Optional<Finding> plain = Optional.empty();

  /** What is said while it waits for the light again. */
  private Finding covered = Finding.waiting(List.of());

  /**
   * @param step one about an input
   */
  public StepWatch(BoardTraits board, FirstStep step) {
    this.board = board;
    this.step = step;
    facts = new RigFacts(board);
    armed = !isOuter();
  }

  private boolean isOuter() {
    return step == FirstStep.OUTER_A || step == FirstStep.OUTER_B;
  }

  /** Hears what the rig says. */
  public void onEvent(RigEvent event) {
    facts.onEvent(event);
    if (isOuter() && event instanceof RigMessage.LightBlock block) {
      if (armed) {
        disarm();
      } else {
        arm(block.channel());
      }
    }
  }

  /** A hand that covers both outer sensors shows nothing: it waits for the light again. */
  private void disarm() {
    Channel own = step.input().orElseThrow();
    now();
    if (facts.swung(own) && facts.swung(LightJudge.otherOuter(own))) {
      covered = new LightJudge(board, facts, true).of(step, false);
      armed = false;
      litReadings = 0;
      facts = facts.fromNow();
    }
  }

  /** A lamp that is only just switched on must not be taken for a finger. */
  private void arm(Channel read) {
    Channel own = step.input().orElseThrow();
    if (read != own) {
      return;
    }
    litReadings = facts.isLit(own) ? litReadings + 1 : 0;
    boolean both = facts.isLit(LightJudge.otherOuter(own));
    if (litReadings >= (both ? LightJudge.LIT_READINGS : LightJudge.LIT_READINGS_ALONE)) {
      armed = true;
      covered = Finding.waiting(List.of());
      facts = facts.fromNow();
    }
  }

  /** What was seen so far; a fault only where it is plain. */
  public Finding now() {
    return judge(false);
  }

  /** The person has done what the step asks for: what was seen, or what to check. */
  public Finding verdict() {
    return judge(true);
  }

  private Finding judge(boolean done) {
    if (plain.isEmpty()) {
      Finding found = judged(done);
      boolean isPlain = found.fault().filter(its -> its != Fault.BOTH_COVERED).isPresent();
      if (!isPlain || done) {
        return found;
      }
      plain = Optional.of(found);
    }
    return plain.get();
  }

  private Finding judged(boolean done) {
    return switch (step) {
      case CENTRE, OUTER_A, OUTER_B ->
          !armed && covered.fault().isPresent()
              ? covered
              : new LightJudge(board, facts, armed).of(step, done);
      default -> ContactJudge.of(facts, step.input().orElseThrow(), done);
    };
  }
}
