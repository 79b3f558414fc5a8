package org.halflight.job;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.session.AdjusterTurn;
import org.halflight.speeds.Millimetres;

/**
 * An entry of the work log of a visit.
 *
 * @param id what the record knows it by
 * @param visit which visit
 * @param at when it was written
 * @param kind what it tells
 * @param text in the person's words
 * @param measured a value that was measured, with its unit
 * @param run the run in whose course it was done, for adjustments whose effect is watched
 * @param afterFiring number of the firing of that session after which it was done
 * @param isStruck whether it was taken back; it stays and no longer counts
 */
public record WorkEntry(
    Id<WorkEntry> id,
    Id<Visit> visit,
    Instant at,
    WorkKind kind,
    String text,
    Optional<MeasuredValue> measured,
    Optional<Id<Run>> run,
    OptionalInt afterFiring,
    boolean isStruck) {
  /** The unit of turns. */
  public static final String TURNS = "turns";

  /** An entry that counts. */
  public WorkEntry(
      Id<WorkEntry> id,
      Id<Visit> visit,
      Instant at,
      WorkKind kind,
      String text,
      Optional<MeasuredValue> measured,
      Optional<Id<Run>> run,
      OptionalInt afterFiring) {
    this(id, visit, at, kind, text, measured, run, afterFiring, false);
  }

  /** An entry of words only, at no run. */
  public static WorkEntry of(Id<Visit> visit, Instant at, WorkKind kind, String text) {
    return new WorkEntry(
        Id.ofNew(), visit, at, kind, text, Optional.empty(), Optional.empty(), OptionalInt.empty());
  }

  /** An adjuster as found or turned, where it tells of one. */
  public Optional<AdjusterTurn> turn() {
    return AdjusterTurn.find(text);
  }

  /**
   * The same entry; where it tells of an adjuster, in the form in which that is kept, with its
   * turns as the value that was measured.
   */
  public WorkEntry counted() {
    return turn()
        .map(
            its ->
                with(
                    its.isAsFound() ? WorkKind.FOUND : WorkKind.ADJUSTED,
                    its.text(),
                    its.turns().isPresent()
                        ? Optional.of(
                            new MeasuredValue(
                                new BigDecimal(Millimetres.text(its.turns().getAsDouble())), TURNS))
                        : measured))
        .orElse(this);
  }

  /** The same entry under a number of the record. */
  public WorkEntry withId(Id<WorkEntry> id) {
    return new WorkEntry(id, visit, at, kind, text, measured, run, afterFiring, isStruck);
  }

  /** The same entry with other words; when and where in the work it was written stays. */
  public WorkEntry with(WorkKind kind, String text, Optional<MeasuredValue> measured) {
    return new WorkEntry(id, visit, at, kind, text, measured, run, afterFiring, isStruck);
  }

  /** The same entry taken back, or counted again. */
  public WorkEntry struck(boolean isStruck) {
    return new WorkEntry(id, visit, at, kind, text, measured, run, afterFiring, isStruck);
  }
}
