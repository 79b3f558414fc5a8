package org.halflight.exposure;

import org.halflight.stored.StoredWords;

/** What the time of a firing is by, or what stands in the way of one. */
public enum DecidedBy {
  /** The edges alone: no light curve has a say. */
  EDGES,
  /**
   * The edges, less the error of the two-level rule on the ramps that the light curve shows. It
   * opened fully.
   */
  EDGES_CORRECTED,
  /**
   * The light curve: the blades dwelt or stayed below full light, where the two-level rule does not
   * hold, and full light measured later was still full.
   */
  CURVE,
  /** Nothing: edges and light curve do not see the same light. The rig wants a check. */
  CHECK_RIG,
  /**
   * Nothing yet: the blades dwelt or stayed below full light, or the lamp has faded. Full light
   * measured again tells which.
   */
  FULL_LIGHT_AGAIN;

  /** As files store them. */
  public static final StoredWords<DecidedBy> WORDS =
      StoredWords.of(
          DecidedBy.class,
          by ->
              switch (by) {
                case EDGES -> "edges";
                case EDGES_CORRECTED -> "edges-corrected";
                case CURVE -> "curve";
                case CHECK_RIG -> "check-rig";
                case FULL_LIGHT_AGAIN -> "full-light-again";
              });

  /** Whether a firing has a time by it. */
  public boolean givesTime() {
    return this == EDGES || this == EDGES_CORRECTED || this == CURVE;
  }
}
