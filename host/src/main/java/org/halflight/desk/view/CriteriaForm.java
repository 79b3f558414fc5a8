package org.halflight.desk.view;

import java.util.Objects;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.LinkageLimits;
import org.halflight.session.Measurand;
import org.halflight.speeds.Tolerances;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * What the verdicts of a run are about, as it is typed and chosen.
 *
 * @param tolerance as {@link Tolerances#find} reads it; empty for trade custom
 * @param measurand what is decided on
 * @param untilDecided whether a speed is fired until it is decided
 * @param stops what a stop check is about
 * @param linkage as {@link LinkageLimits#find} reads it; empty for the usual limits
 * @param flashContact whether it is wired
 */
public record CriteriaForm(
    String tolerance,
    Measurand measurand,
    boolean untilDecided,
    StopsForm stops,
    String linkage,
    boolean flashContact) {
  /** Trade custom, the mean of each setting, a fixed number. */
  public static final CriteriaForm USUAL = of(AcceptanceCriteria.USUAL);

  public CriteriaForm {
    Objects.requireNonNull(tolerance);
    Objects.requireNonNull(measurand);
    Objects.requireNonNull(stops);
  }

  /** The form of acceptance criteria. */
  public static CriteriaForm of(AcceptanceCriteria criteria) {
    return new CriteriaForm(
        criteria.tolerances().text(),
        criteria.measurand(),
        criteria.untilDecided(),
        StopsForm.of(criteria.stops()),
        criteria.linkage().text(),
        criteria.flashContact());
  }

  /**
   * The criteria.
   *
   * @throws Trouble where something cannot be understood, with a sentence for the person
   */
  public AcceptanceCriteria read() {
    Tolerances tolerances =
        Tolerances.find(tolerance)
            .orElseThrow(() -> new Trouble(Words.say("desk.run.badTolerance", tolerance)));
    LinkageLimits limits =
        LinkageLimits.find(linkage)
            .orElseThrow(() -> new Trouble(Words.say("linkage.badLimits", linkage)));
    return new AcceptanceCriteria(
        tolerances, measurand, untilDecided, stops.read(), limits, flashContact);
  }
}
