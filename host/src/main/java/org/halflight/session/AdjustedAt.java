package org.halflight.session;

/**
 * An adjustment that the person has made, or noted as it was found.
 *
 * @param run the run in whose course it was done; 0 before one was begun
 * @param afterFiring number of the last firing before it; 0 for none
 * @param words what was done
 */
public record AdjustedAt(int run, int afterFiring, String words) {
  /** Whether nothing was done: an adjuster was noted as it was found. */
  public boolean isFound() {
    return AdjusterTurn.find(words).filter(AdjusterTurn::isAsFound).isPresent();
  }
}
