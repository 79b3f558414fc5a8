package org.halflight.record;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.LevelPair;
import org.halflight.job.CameraId;
import org.halflight.job.RunId;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;

/** Firings as rows: their raw edges, and what the session and the person said about them. */
final class FiringRows {
  private static final String SELECT =
      "SELECT * FROM firing JOIN firing_result ON firing_result.firing_id = firing.id ";

  private FiringRows() {}

  /** Where a firing belongs. */
  record Place(long sessionId, Optional<RunId> run) {}

  /**
   * A firing and its number in the table.
   *
   * @param settledOutcome what the session called it
   * @param settledExposure the case of exposure that the session went by
   * @param closedByHand whether the session knew that it was closed by hand
   */
  record Numbered(
      long id,
      KeptFiring firing,
      Outcome settledOutcome,
      String settledExposure,
      boolean closedByHand) {}

  /**
   * Keeps a firing, or what is new about a known one.
   *
   * @param cutOff whether its last edges may be missing
   * @param mayChange whether what is said about a known firing now holds over what was said before
   */
  static Settling keep(
      Connection connection,
      Place place,
      FiringResult result,
      boolean cutOff,
      boolean mayChange,
      Instant now)
      throws SQLException {
    if (!isKnown(connection, result.key())) {
      insert(connection, OptionalLong.empty(), place, result, cutOff, now);
      return Settling.ADDED;
    }
    Numbered there = find(connection, result.key()).orElseThrow();
    KeptFiring known = there.firing();
    long id = there.id();
    Optional<RunId> run = known.run().isPresent() ? known.run() : place.run();
    Place stays = new Place(place.sessionId(), run);
    Firing before = known.result().firing();
    boolean sameRaw = before.equals(result.firing()) && known.result().rate().equals(result.rate());
    if (known.cutOff() && isMore(result.firing(), cutOff, before)) {
      delete(connection, id);
      insert(connection, OptionalLong.of(id), stays, merged(result, known), cutOff, now);
      return Settling.COMPLETED;
    }
    if (!sameRaw) {
      // The same file cut short, or damage that only means that the record ended there.
      boolean lessOfTheSame =
          begins(before, result.firing())
              && (known.cutOff() || before.edges().size() > result.firing().edges().size());
      return lessOfTheSame ? Settling.KNOWN : Settling.DIFFERS;
    }
    FiringResult said = mayChange ? merged(result, known) : known.result();
    if (said.equals(known.result()) && run.equals(known.run())) {
      return Settling.KNOWN;
    }
    Columns columns = new Columns();
    setSaid(columns, stays, said);
    columns.update(connection, "firing", id);
    if (!said.equals(known.result())) {
      keepResult(connection, id, said);
    }
    return Settling.CHANGED;
  }

  private static boolean isKnown(Connection connection, FiringKey key) throws SQLException {
    return Query.first(
            connection,
            "SELECT id FROM firing WHERE rig_serial = ? AND boot_count = ? AND first_ticks = ?",
            row -> row.getLong(1),
            key.rigSerial(),
            key.bootCount(),
            key.firstTicks())
        .isPresent();
  }

  static Optional<Numbered> find(Connection connection, FiringKey key) throws SQLException {
    return Query.first(
        connection,
        SELECT + "WHERE rig_serial = ? AND boot_count = ? AND first_ticks = ?",
        FiringRows::read,
        key.rigSerial(),
        key.bootCount(),
        key.firstTicks());
  }

  /** The firings of a run, in order of firing. */
  static List<KeptFiring> of(Connection connection, RunId run) throws SQLException {
    return Query.list(
        connection,
        SELECT + "WHERE run_id = ? ORDER BY firing_number, id",
        row -> read(row).firing(),
        run.value());
  }

  /** All firings of a session, those before its first run too, in order of firing. */
  static List<KeptFiring> of(Connection connection, String sessionKey) throws SQLException {
    return Query.list(
        connection,
        SELECT
            + "WHERE session_id = (SELECT id FROM bench_session WHERE session_key = ?)"
            + " ORDER BY firing_number, id",
        row -> read(row).firing(),
        sessionKey);
  }

  /** All firings after one of a number, by number, at most so many. */
  static List<Numbered> after(Connection connection, long id, int most) throws SQLException {
    return Query.list(
        connection, SELECT + "WHERE id > ? ORDER BY id LIMIT ?", FiringRows::read, id, most);
  }

  /** The firings of a camera after one of a number, by number, at most so many. */
  static List<Numbered> after(Connection connection, CameraId camera, long id, int most)
      throws SQLException {
    return Query.list(
        connection,
        SELECT
            + "WHERE id > ? AND run_id IN (SELECT run.id FROM run JOIN visit"
            + " ON visit.id = run.visit_id WHERE visit.camera_id = ?) ORDER BY id LIMIT ?",
        FiringRows::read,
        id,
        camera.value(),
        most);
  }

  /** Keeps what was worked out today, in the place of what was worked out before. */
  static void keepResult(Connection connection, long id, FiringResult result) throws SQLException {
    ResultRows.keep(
        connection,
        id,
        result.outcome(),
        result.exposure(),
        result.errorStops(),
        ExposureMethodVersion.CURRENT);
  }

  /** The same firing with something else worked out from its edges. */
  static FiringResult with(FiringResult result, Outcome outcome, LeafExposure exposure) {
    return new FiringResult(
        result.number(),
        result.key(),
        result.firing(),
        result.rate(),
        result.shown(),
        result.reference(),
        result.phase(),
        outcome,
        exposure,
        result.levels(),
        result.afterRest(),
        result.rejection());
  }

  /**
   * Whether the person closed the shutter by hand: 'stuck open' is what the session calls that, but
   * its edges do end in the dark.
   */
  static boolean isClosedByHand(FiringResult result) {
    List<Edge> low = result.firing().of(Channel.CENTRE_LOW);
    return result.exposure() instanceof LeafExposure.StuckOpen
        && !low.isEmpty()
        && !low.get(low.size() - 1).high();
  }

  /** Whether a firing tells more than what was cut off before: more edges, or that none came. */
  private static boolean isMore(Firing now, boolean cutOff, Firing before) {
    if (!begins(now, before)) {
      return false;
    }
    return now.edges().size() > before.edges().size()
        || (!cutOff && before.damage().containsAll(now.damage()));
  }

  /** Whether a firing begins with all edges of another. */
  private static boolean begins(Firing firing, Firing other) {
    int n = other.edges().size();
    return firing.edges().size() >= n && firing.edges().subList(0, n).equals(other.edges());
  }

  /** What is said now, but once not counted stays not counted. */
  private static FiringResult merged(FiringResult now, KeptFiring known) {
    Optional<String> before = known.result().rejection();
    return now.rejection().isEmpty() && before.isPresent() ? now.rejected(before.get()) : now;
  }

  private static void insert(
      Connection connection,
      OptionalLong id,
      Place place,
      FiringResult result,
      boolean cutOff,
      Instant now)
      throws SQLException {
    Columns columns =
        new Columns()
            .set("id", id)
            .set("rig_serial", result.key().rigSerial())
            .set("boot_count", result.key().bootCount())
            .set("first_ticks", result.key().firstTicks())
            .set("ticks_per_second", result.rate().ticksPerSecond())
            .set("edges", EdgeBlob.of(result.firing().edges()))
            .set("damage", Word.inOrder(result.firing().damage()))
            .set("cut_off", cutOff)
            .set("session_id", place.sessionId())
            .set("kept_at_millis", now);
    setSaid(columns, place, result);
    keepResult(connection, columns.insert(connection, "firing"), result);
  }

  private static void setSaid(Columns columns, Place place, FiringResult result) {
    columns
        .setOptional("run_id", place.run().map(RunId::value))
        .set("firing_number", result.number())
        .setOptional("marked_speed", result.shown().map(MarkedSpeed::label))
        .setOptional("marked_literal_seconds", result.shown().map(MarkedSpeed::literalSeconds))
        .setOptional("marked_exact_seconds", result.shown().map(MarkedSpeed::exactSeconds))
        .set("reference", result.reference())
        .setOptional("phase", result.phase())
        .set("after_rest", result.afterRest())
        .setOptional("level_low", result.levels().map(LevelPair::low))
        .setOptional("level_high", result.levels().map(LevelPair::high))
        .setOptional("rejection", result.rejection())
        .set("settled_outcome", result.outcome())
        .set("settled_exposure", ResultRows.kind(result.exposure()))
        .set("closed_by_hand", isClosedByHand(result));
  }

  private static void delete(Connection connection, long id) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("DELETE FROM firing WHERE id = ?")) {
      statement.setLong(1, id);
      statement.executeUpdate();
    }
  }

  private static Numbered read(ResultSet row) throws SQLException {
    long firstTicks = row.getLong("first_ticks");
    List<Edge> edges =
        EdgeBlob.read(row.getBytes("edges"), firstTicks)
            .orElseThrow(() -> new EdgeBlob.Unreadable(firstTicks));
    Optional<String> phase = Row.text(row, "phase");
    OptionalLong run = Row.integer(row, "run_id");
    FiringResult result =
        new FiringResult(
            row.getInt("firing_number"),
            new FiringKey(row.getString("rig_serial"), row.getLong("boot_count"), firstTicks),
            new Firing(edges, Word.readAll(Firing.Damage.class, row.getString("damage"))),
            new TickRate(row.getLong("ticks_per_second")),
            shown(row),
            Row.word(row, "reference", Reference.class),
            phase.isPresent() ? Optional.of(Word.read(Phase.class, phase.get())) : Optional.empty(),
            Row.word(row, "outcome", Outcome.class),
            ResultRows.read(row),
            levels(row),
            row.getBoolean("after_rest"),
            Row.text(row, "rejection"));
    return new Numbered(
        row.getLong("id"),
        new KeptFiring(
            result,
            row.getInt("method_version"),
            run.isPresent() ? Optional.of(new RunId(run.getAsLong())) : Optional.empty(),
            row.getBoolean("cut_off")),
        Row.word(row, "settled_outcome", Outcome.class),
        row.getString("settled_exposure"),
        row.getBoolean("closed_by_hand"));
  }

  private static Optional<MarkedSpeed> shown(ResultSet row) throws SQLException {
    Optional<String> label = Row.text(row, "marked_speed");
    if (label.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new MarkedSpeed(
            label.get(),
            row.getDouble("marked_literal_seconds"),
            row.getDouble("marked_exact_seconds")));
  }

  private static Optional<LevelPair> levels(ResultSet row) throws SQLException {
    OptionalDouble low = Row.real(row, "level_low");
    OptionalDouble high = Row.real(row, "level_high");
    return low.isPresent() && high.isPresent()
        ? Optional.of(new LevelPair(low.getAsDouble(), high.getAsDouble()))
        : Optional.empty();
  }
}
