package org.halflight.session;

import java.util.Objects;
import org.halflight.speeds.Tolerances;

/**
 * What the verdicts of a run are about, chosen before its first firing.
 *
 * @param tolerances that each speed is held against
 * @param measurand what is decided on
 * @param untilDecided whether a speed is fired until its verdict is in, and not a number of times
 *     that is fixed beforehand
 * @param stops what a stop check is about
 * @param linkage what the linkage between film advance and release is held against
 * @param flashContact whether the flash contact is wired and asked about, so that one that never
 *     closes is a fault
 */
public record AcceptanceCriteria(
    Tolerances tolerances,
    Measurand measurand,
    boolean untilDecided,
    StopsAsked stops,
    LinkageLimits linkage,
    boolean flashContact) {
  /** Usual tolerances, the usual exposure of each setting, a fixed number of firings. */
  public static final AcceptanceCriteria USUAL =
      new AcceptanceCriteria(Tolerances.USUAL, Measurand.MEAN_OF_SETTING, false, StopsAsked.USUAL);

  public AcceptanceCriteria {
    Objects.requireNonNull(tolerances);
    Objects.requireNonNull(measurand);
    Objects.requireNonNull(stops);
    Objects.requireNonNull(linkage);
  }

  /** Criteria with the usual limits of the linkage, without the flash contact. */
  public AcceptanceCriteria(
      Tolerances tolerances, Measurand measurand, boolean untilDecided, StopsAsked stops) {
    this(tolerances, measurand, untilDecided, stops, LinkageLimits.USUAL, false);
  }

  /** The same criteria with other limits of the linkage. */
  public AcceptanceCriteria withLinkage(LinkageLimits limits) {
    return new AcceptanceCriteria(tolerances, measurand, untilDecided, stops, limits, flashContact);
  }

  /** The same criteria, with the flash contact wired or not. */
  public AcceptanceCriteria withFlashContact(boolean wired) {
    return new AcceptanceCriteria(tolerances, measurand, untilDecided, stops, linkage, wired);
  }
}
