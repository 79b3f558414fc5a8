package org.halflight.session;

import java.util.List;
import java.util.Optional;

/**
 * One press of the linkage test, from the wind key before it to its own.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run; empty before one was begun
 * @param number counts the presses of the run from 1, in the order of their keys
 * @param step what was asked
 * @param wind what the person found when they tried the film advance after it
 * @param watched whether the rig saw all of it: no line was lost meanwhile, and the link was there
 * @param firings what the rig saw meanwhile, in order, sounds and moves of contacts too; none where
 *     it saw nothing
 */
public record LinkagePress(
    int run,
    Optional<Phase> phase,
    int number,
    LinkageStep step,
    WindState wind,
    boolean watched,
    List<FiringResult> firings) {
  public LinkagePress {
    firings = List.copyOf(firings);
  }

  /** The same press with other firings. */
  public LinkagePress with(List<FiringResult> others) {
    return new LinkagePress(run, phase, number, step, wind, watched, others);
  }

  /** How often the shutter let light through. */
  public int trips() {
    return (int) firings.stream().filter(LinkagePress::isTrip).count();
  }

  /** Whether a firing is light of a release, timed or not. */
  public static boolean isTrip(FiringResult firing) {
    return switch (firing.outcome()) {
      case TIMED, NEVER_FULLY_OPEN, STUCK_OPEN, DOUBLE, OPENS_HOLDS_CLOSES, DID_NOT_HOLD -> true;
      case UNUSABLE -> ReleaseTiming.hasLight(firing.firing());
      case DID_NOT_OPEN, LIGHT_WHILE_COCKING, HELD_FOR_LIGHT, NOT_A_SHUTTER_EVENT -> false;
    };
  }

  /**
   * Whether it says something about the linkage: the person did not take a firing of it back, and
   * no light can have been lost.
   */
  public boolean counts() {
    return firings.stream().noneMatch(firing -> firing.rejection().isPresent())
        && (trips() > 0
            || (watched && firings.stream().allMatch(f -> f.firing().damage().isEmpty())));
  }

  /** The presses of the last round: a rest check begins a new one. */
  public static List<LinkagePress> lastRound(List<LinkagePress> all) {
    int from = 0;
    for (int i = 0; i < all.size(); i++) {
      from = all.get(i).step() == LinkageStep.REST ? i : from;
    }
    return all.subList(from, all.size());
  }
}
