package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;

/**
 * Works results out again from raw edges with today's method, some hundred firings a transaction so
 * that firings of a run that is under way are not held up.
 *
 * <p>The outcome is that of the session's own rule for releases. What the session judged by more
 * than the edges (light while cocking, held open for the light) stays as long as the edges come to
 * the same case of exposure; where today's method comes to another case, the outcome follows that.
 */
final class Recomputing {
  private static final int AT_ONCE = 500;

  private static final Set<Outcome> BY_MORE_THAN_EDGES =
      Set.of(Outcome.LIGHT_WHILE_COCKING, Outcome.HELD_FOR_LIGHT);

  private final Database database;
  private final Optional<Id<Camera>> camera;
  private final Map<Optional<Id<Run>>, ExposureMethod> methods = new HashMap<>();
  private long doneId;
  private int firings;
  private int changed;

  Recomputing(Database database, Optional<Id<Camera>> camera) {
    this.database = database;
    this.camera = camera;
  }

  Recomputed all() {
    while (database.write(this::some)) {
      // The next ones begin after the last one done.
    }
    return new Recomputed(firings, changed, ExposureMethodVersion.CURRENT);
  }

  /** Does some; gives whether there may be more. */
  private boolean some(Connection connection) throws SQLException {
    long last = FiringRows.lastOf(connection, doneId, AT_ONCE);
    List<FiringRows.Numbered> some =
        camera.isPresent()
            ? FiringRows.between(connection, camera.get(), doneId, last)
            : FiringRows.between(connection, doneId, last);
    for (FiringRows.Numbered each : some) {
      FiringResult before = each.firing().result();
      FiringResult now = again(each, methodOfRun(connection, each));
      boolean same = now.equals(before);
      if (!same || each.firing().methodVersion() != ExposureMethodVersion.CURRENT) {
        FiringRows.keepResult(connection, each.id(), now);
      }
      changed += same ? 0 : 1;
      firings++;
    }
    doneId = last;
    return FiringRows.lastOf(connection, last, 1) > 0;
  }

  /**
   * Works the result of one firing out where there is none that can be read.
   *
   * @return whether there is such a firing
   */
  static boolean anew(Connection connection, long id) throws SQLException {
    Optional<FiringRows.Numbered> raw = FiringRows.withoutResult(connection, id);
    if (raw.isEmpty()) {
      return false;
    }
    FiringRows.keepResult(connection, id, again(raw.get(), method(connection, raw.get())));
    return true;
  }

  private ExposureMethod methodOfRun(Connection connection, FiringRows.Numbered kept)
      throws SQLException {
    Optional<Id<Run>> run = kept.firing().run();
    ExposureMethod known = methods.get(run);
    if (known == null) {
      known = method(connection, kept);
      methods.put(run, known);
    }
    return known;
  }

  /** That of the shutter of its run; that of blades where there is no run. */
  private static ExposureMethod method(Connection connection, FiringRows.Numbered kept)
      throws SQLException {
    Optional<Id<Run>> run = kept.firing().run();
    return run.isPresent()
        ? RunRows.find(connection, run.get())
            .map(its -> its.asked().exposureMethod())
            .orElse(ExposureMethod.LEAF)
        : ExposureMethod.LEAF;
  }

  private static FiringResult again(FiringRows.Numbered kept, ExposureMethod method) {
    FiringResult result = kept.firing().result();
    Exposure exposure =
        result.exposureBy(result.oneLevel().<ExposureMethod>map(seen -> seen).orElse(method));
    if (kept.closedByHand() && exposure instanceof Exposure.Timed timed) {
      exposure = timed.asStuckOpen();
    }
    boolean stays =
        BY_MORE_THAN_EDGES.contains(kept.settledOutcome())
            && ResultRows.kind(exposure).equals(kept.settledExposure());
    Outcome outcome = stays ? kept.settledOutcome() : result.outcomeWith(exposure);
    FiringResult now = result.workedOut(outcome, exposure);
    return result
        .curve()
        .map(
            curve ->
                FiringCurve.of(curve.sampled(), curve.light(), result.realRate())
                    .withFullLightAfter(curve.fullLightAfter()))
        .map(now::withCurve)
        .orElse(now);
  }
}
