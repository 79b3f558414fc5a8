package org.halflight.record;

import java.time.Instant;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;

/**
 * A change of what a person has noted. Making it gives the edit that takes it back, and making that
 * one gives an edit that does it again. Nothing is lost either way: what an edit takes the place of
 * is kept as a correction.
 */
@FunctionalInterface
public interface Edit {
  /**
   * Makes the change.
   *
   * @return what takes it back
   */
  Edit on(WorkshopRecord record);

  /** Changes nothing. */
  Edit NONE = record -> Edit.NONE;

  /** This one, then another; both are taken back together. */
  default Edit then(Edit other) {
    return record -> {
      Edit back = on(record);
      return other.on(record).then(back);
    };
  }

  /** Keeps a camera; a new one is not taken back. */
  static Edit of(Camera camera) {
    return of(camera, camera.id(), WorkshopRecord::camera, WorkshopRecord::keep, c -> c, Edit::of);
  }

  /** Keeps a visit with its lists; a new one is struck when it is taken back. */
  static Edit of(Visit visit) {
    return visit.id().isNew() ? record -> struck(record.keep(visit).id(), true) : ofKnown(visit);
  }

  /** A visit no longer counts, or does again. */
  static Edit struck(Id<Visit> visit, boolean off) {
    return record -> {
      record.strike(visit, off);
      return struck(visit, !off);
    };
  }

  private static Edit ofKnown(Visit visit) {
    return of(visit, visit.id(), WorkshopRecord::visit, WorkshopRecord::keep, v -> v, Edit::of);
  }

  /** Keeps an entry of the work log; a new one is struck when it is taken back. */
  static Edit of(WorkEntry entry) {
    return of(
        entry,
        entry.id(),
        WorkshopRecord::workEntry,
        WorkshopRecord::keep,
        kept -> kept.struck(true),
        Edit::of);
  }

  /** Keeps what is noted of a picture; a new one is taken off when it is taken back. */
  static Edit of(Photo photo) {
    return of(
        photo,
        photo.id(),
        WorkshopRecord::photo,
        WorkshopRecord::keep,
        kept -> kept.off(true),
        Edit::of);
  }

  /** Adds an entry to a strip sheet; what the line said before is added again to take it back. */
  static Edit of(SheetEntry entry, Instant now) {
    return record -> {
      Optional<SheetEntry> before =
          record.stripSheet(entry.visit()).line(entry.line()).map(StripSheet.Line::now);
      SheetEntry kept = record.add(entry);
      return of(
          before.map(was -> was.again(now)).orElseGet(() -> kept.turned(SheetState.STRUCK, now)),
          now);
    };
  }

  private static <T> Edit of(
      T value,
      Id<T> id,
      BiFunction<WorkshopRecord, Id<T>, Optional<T>> find,
      BiFunction<WorkshopRecord, T, T> keep,
      UnaryOperator<T> withoutNew,
      Function<T, Edit> again) {
    return record -> {
      Optional<T> before = id.isNew() ? Optional.empty() : find.apply(record, id);
      T kept = keep.apply(record, value);
      return again.apply(before.orElseGet(() -> withoutNew.apply(kept)));
    };
  }
}
