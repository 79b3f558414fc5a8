package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethodVersion;
import org.halflight.exposure.LevelPair;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringNotes;
import org.halflight.session.FiringPlace;
import org.halflight.session.FiringResult;
import org.halflight.session.MeasuredWith;
import org.halflight.session.OneLevel;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;
import org.jspecify.annotations.Nullable;

/** Firings as rows: their raw edges, and what the session and the person said about them. */
final class FiringRows {
  private static final String SELECT = select("firing_result.firing_id = firing.id");

  /** As if there were no results. */
  private static final String SELECT_RAW = select("0");

  /** Stands in until it is worked out from the raw edges. */
  private static final Exposure NOT_WORKED_OUT =
      new Exposure.Unusable(Exposure.Reason.NO_LIGHT, List.of());

  private FiringRows() {}

  private static String select(String result) {
    return "SELECT firing.*, firing_result.*, run.id AS run_id, "
        + ProfileRows.TEXT
        + " FROM firing"
        + " LEFT JOIN firing_result ON "
        + result
        + " LEFT JOIN run ON run.session_id = firing.session_id"
        + " AND run.run_ordinal = firing.run_ordinal"
        + ProfileRows.JOIN
        + " ";
  }

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
   * Keeps a firing, or what is new about a known one. Edges are only added, and so is damage where
   * the firing was not cut off.
   *
   * @param cutOff whether its last edges may be missing
   * @param mayChange whether what is said about a known firing now holds over what was said before
   */
  static SaveOutcome keep(
      Connection connection,
      long sessionId,
      FiringResult result,
      boolean cutOff,
      boolean mayChange,
      Instant now)
      throws SQLException {
    Optional<Long> id = idOf(connection, result.key());
    if (id.isEmpty()) {
      insert(connection, new Columns(), sessionId, result, cutOff, now);
      return SaveOutcome.ADDED;
    }
    Optional<Numbered> there = find(connection, result.key());
    if (there.isEmpty()) {
      mend(connection, id.get(), sessionId, result, cutOff, now);
      return SaveOutcome.MENDED;
    }
    return keep(connection, there.get(), result, cutOff, mayChange, now);
  }

  private static SaveOutcome keep(
      Connection connection,
      Numbered there,
      FiringResult told,
      boolean cutOff,
      boolean mayChange,
      Instant now)
      throws SQLException {
    long id = there.id();
    KeptFiring known = there.firing();
    Firing before = known.result().firing();
    FiringResult result =
        (cutOff || known.cutOff() ? told : FiringMerge.asDamagedAs(before, told))
            .withKnob(before.knob());
    if (FiringMerge.isMore(result.firing(), cutOff, mayChange, there)) {
      FiringResult whole = mayChange ? result : FiringMerge.ofLess(result, known);
      FiringResult curved = FiringMerge.curved(whole, result, known);
      complete(connection, id, curved.withKnob(result.firing().knob()), cutOff, now);
      return SaveOutcome.COMPLETED;
    }
    if (!before.withKnob(result.firing().knob()).equals(result.firing())
        || !known.result().rate().equals(result.rate())) {
      // The same file cut short, or damage that only means that it or the record ended there.
      boolean lessOfTheSame =
          FiringMerge.holds(before, result.firing())
              && (cutOff
                  || known.cutOff()
                  || before.edges().size() > result.firing().edges().size());
      return lessOfTheSame ? SaveOutcome.KNOWN : SaveOutcome.DIFFERS;
    }
    FiringResult said =
        FiringMerge.curved(mayChange ? result : known.result(), result, known)
            .withKnob(result.firing().knob());
    if (said.equals(known.result())) {
      return SaveOutcome.KNOWN;
    }
    Columns columns = new Columns();
    setSaid(columns, connection, said);
    CurveColumns.setRaw(columns, said);
    setKnob(columns, said.firing());
    columns.update(connection, "firing", id);
    // What an older method worked out stays its, also with a curve that came later.
    keepResult(
        connection, id, said, mayChange ? ExposureMethodVersion.CURRENT : known.methodVersion());
    return SaveOutcome.CHANGED;
  }

  static Optional<Numbered> find(Connection connection, FiringKey key) throws SQLException {
    return list(
            connection,
            "WHERE firing.rig_serial = ? AND boot_count = ? AND first_ticks = ?",
            key.rigSerial(),
            key.bootCount(),
            key.firstTicks())
        .stream()
        .findFirst();
  }

  /** A firing by its number, with no result worked out; empty where its own row is damaged. */
  static Optional<Numbered> withoutResult(Connection connection, long id) throws SQLException {
    return Query.first(connection, SELECT_RAW + "WHERE firing.id = ?", FiringRows::read, id);
  }

  /** The number of a firing, whether its row is damaged or not. */
  static Optional<Long> idOf(Connection connection, FiringKey key) throws SQLException {
    return Query.first(
        connection,
        "SELECT id FROM firing WHERE rig_serial = ? AND boot_count = ? AND first_ticks = ?",
        row -> row.getLong(1),
        key.rigSerial(),
        key.bootCount(),
        key.firstTicks());
  }

  /** The firings of a run, in order of firing. */
  static List<KeptFiring> of(Connection connection, Id<Run> run) throws SQLException {
    return firings(
        list(connection, "WHERE run.id = ? ORDER BY firing_number, firing.id", run.value()));
  }

  /** All firings of a session, those before its first run too, in order of firing. */
  static List<KeptFiring> of(Connection connection, String sessionKey) throws SQLException {
    return firings(
        list(
            connection,
            "WHERE firing.session_id = (SELECT id FROM bench_session WHERE session_key = ?)"
                + " ORDER BY firing_number, firing.id",
            sessionKey));
  }

  /** All firings with numbers after the first and up to the second, by number. */
  static List<Numbered> between(Connection connection, long after, long last) throws SQLException {
    return list(
        connection, "WHERE firing.id > ? AND firing.id <= ? ORDER BY firing.id", after, last);
  }

  /** The firings of a camera with numbers after the first and up to the second, by number. */
  static List<Numbered> between(Connection connection, Id<Camera> camera, long after, long last)
      throws SQLException {
    return list(
        connection,
        "WHERE firing.id > ? AND firing.id <= ? AND run.visit_id IN"
            + " (SELECT id FROM visit WHERE camera_id = ?) ORDER BY firing.id",
        after,
        last,
        camera.value());
  }

  /** The number that so many firings end at, from one of a number on; 0 where there are no more. */
  static long lastOf(Connection connection, long after, int most) throws SQLException {
    return Query.one(
        connection,
        "SELECT coalesce(max(id), 0) FROM"
            + " (SELECT id FROM firing WHERE id > ? ORDER BY id LIMIT ?)",
        row -> row.getLong(1),
        after,
        most);
  }

  private static List<KeptFiring> firings(List<Numbered> firings) {
    return firings.stream().map(Numbered::firing).toList();
  }

  /** Firings with their results; one without any is damaged, and noted and left out like those. */
  private static List<Numbered> list(Connection connection, String which, Object... values)
      throws SQLException {
    return Query.list(
            connection,
            SELECT + which,
            row -> {
              if (row.getString("exposure") == null) {
                DamagedRows.note(
                    connection,
                    new DamagedRows.DamagedRow("firing_result", List.of(Row.given(row, "id"))));
                return Optional.<Numbered>empty();
              }
              return Optional.of(read(row));
            },
            values)
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  /** Keeps what was worked out today, in the place of what was worked out before. */
  static void keepResult(Connection connection, long id, FiringResult result) throws SQLException {
    keepResult(connection, id, result, ExposureMethodVersion.CURRENT);
  }

  private static void keepResult(
      Connection connection, long id, FiringResult result, int methodVersion) throws SQLException {
    ResultRows.keep(
        connection,
        id,
        result.outcome(),
        result.exposure(),
        result.curve(),
        result.errorStops(),
        methodVersion);
  }

  /**
   * Whether the person closed the shutter by hand: 'stuck open' is what the session calls that, but
   * its edges do end in the dark.
   */
  static boolean isClosedByHand(FiringResult result) {
    List<Edge> low = result.firing().of(Channel.CENTRE_LOW);
    return result.exposure() instanceof Exposure.StuckOpen
        && !low.isEmpty()
        && !low.get(low.size() - 1).high();
  }

  private static void mend(
      Connection connection,
      long id,
      long sessionId,
      FiringResult result,
      boolean cutOff,
      Instant now)
      throws SQLException {
    try (Quarantine aside = Quarantine.begin(connection, now)) {
      aside.move("firing_result", id);
      aside.move("firing", id);
    }
    insert(connection, new Columns().set("id", id), sessionId, result, cutOff, now);
  }

  private static void insert(
      Connection connection,
      Columns columns,
      long sessionId,
      FiringResult result,
      boolean cutOff,
      Instant now)
      throws SQLException {
    columns
        .set("rig_serial", result.key().rigSerial())
        .set("boot_count", result.key().bootCount())
        .set("first_ticks", result.key().firstTicks())
        .set("ticks_per_second", result.rate().ticksPerSecond())
        .set("session_id", sessionId);
    setSeen(columns, result.firing(), cutOff, now);
    setSaid(columns, connection, result);
    CurveColumns.setRaw(columns, result);
    keepResult(connection, columns.insert(connection, "firing"), result);
  }

  private static void complete(
      Connection connection, long id, FiringResult result, boolean cutOff, Instant now)
      throws SQLException {
    Columns columns = new Columns();
    setSeen(columns, result.firing(), cutOff, now);
    setSaid(columns, connection, result);
    CurveColumns.setRaw(columns, result);
    columns.update(connection, "firing", id);
    keepResult(connection, id, result);
  }

  private static void setSeen(Columns columns, Firing firing, boolean cutOff, Instant now) {
    columns
        .set("edges", EdgeBlob.of(firing.edges(), firing.firstTicks()))
        .set("damage", Word.inOrder(Firing.Damage.WORDS, firing.damage()))
        .set("cut_off", cutOff)
        .set("kept_at_millis", now);
    setKnob(columns, firing);
  }

  private static void setSaid(Columns columns, Connection connection, FiringResult result)
      throws SQLException {
    FiringNotes notes = result.notes();
    columns
        .set("run_ordinal", result.run())
        .set("firing_number", result.number())
        .setOptional("marked_speed", result.shown().map(MarkedSpeed::label))
        .setOptional("marked_literal_seconds", result.shown().map(MarkedSpeed::literalSeconds))
        .setOptional("marked_exact_seconds", result.shown().map(MarkedSpeed::exactSeconds))
        .setOptional("b_or_t", UntimedTest.WORDS, result.untimedTest())
        .set("reference", Reference.WORDS, result.reference())
        .setOptional("phase", Phase.WORDS, result.phase())
        .set("after_rest", result.place().afterRest())
        .setOptional("level_low", result.levels().map(LevelPair::low))
        .setOptional("level_high", result.levels().map(LevelPair::high))
        .setOptional(
            "one_level", AlternatingLevels.Level.WORDS, result.oneLevel().map(OneLevel::level))
        .set(
            "level_gap_seconds",
            result.oneLevel().map(OneLevel::gapSeconds).orElse(OptionalDouble.empty()))
        .set("release_delay_seconds", notes.releaseDelaySeconds())
        .set("plateau_counts", notes.plateauCounts())
        .set("plateau_share", notes.plateauShare())
        .set("light_doubtful", notes.lightDoubtful())
        .set(
            "full_light_after",
            result.curve().map(FiringCurve::fullLightAfter).orElse(OptionalDouble.empty()))
        .set("leak", notes.leak())
        .set("cap_on", notes.capOn())
        .setOptional("moved_from", notes.movedFrom().map(MarkedSpeed::label))
        .setOptional("rejection", notes.rejection())
        .setOptional(
            "conditions", Optional.of(notes.conditions().words()).filter(words -> !words.isEmpty()))
        .setOptional("first_reason", notes.firstReason())
        .set("settled_outcome", Outcome.WORDS, result.outcome())
        .set("settled_exposure", ResultRows.kind(result.exposure()))
        .set("closed_by_hand", isClosedByHand(result));
    CurtainColumns.set(columns, result.measuredWith().outer());
    ProfileRows.set(columns, connection, result.profileUse());
  }

  private static Numbered read(ResultSet row) throws SQLException {
    long firstTicks = row.getLong("first_ticks");
    List<Edge> edges = edges(row.getBytes("edges"), firstTicks);
    byte @Nullable [] knob = row.getBytes("knob_edges");
    OptionalLong run = Row.integer(row, "run_id");
    boolean workedOut = row.getString("exposure") != null;
    FiringResult result =
        new FiringResult(
            row.getInt("firing_number"),
            new FiringKey(Row.given(row, "rig_serial"), row.getLong("boot_count"), firstTicks),
            new Firing(
                edges,
                Word.readAll(Firing.Damage.WORDS, Row.given(row, "damage")),
                knob == null ? List.of() : edges(knob, firstTicks)),
            new TickRate(row.getLong("ticks_per_second")),
            new FiringPlace(
                row.getInt("run_ordinal"),
                setting(row),
                Row.word(row, "reference", Reference.WORDS),
                Row.optionalWord(row, "phase", Phase.WORDS),
                row.getBoolean("after_rest")),
            Row.word(row, workedOut ? "outcome" : "settled_outcome", Outcome.WORDS),
            workedOut ? ResultRows.read(row) : NOT_WORKED_OUT,
            new MeasuredWith(
                levels(row), oneLevel(row), ProfileRows.read(row), CurtainColumns.readOuter(row)),
            notes(row),
            CurveColumns.read(row, firstTicks));
    return new Numbered(
        row.getLong("id"),
        new KeptFiring(
            result,
            row.getInt("method_version"),
            run.isPresent() ? Optional.of(new Id<>(run.getAsLong())) : Optional.empty(),
            row.getBoolean("cut_off")),
        Row.word(row, "settled_outcome", Outcome.WORDS),
        Row.given(row, "settled_exposure"),
        row.getBoolean("closed_by_hand"));
  }

  private static List<Edge> edges(byte[] blob, long firstTicks) throws SQLException {
    return EdgeBlob.read(blob, firstTicks).orElseThrow(() -> new EdgeBlob.Unreadable(firstTicks));
  }

  private static void setKnob(Columns columns, Firing firing) {
    if (!firing.knob().isEmpty()) {
      columns.set("knob_edges", EdgeBlob.of(firing.knob(), firing.firstTicks()));
    }
  }

  private static Optional<DialSetting> setting(ResultSet row) throws SQLException {
    Optional<String> label = Row.text(row, "marked_speed");
    if (label.isPresent()) {
      return Optional.of(
          new DialSetting.Speed(
              new MarkedSpeed(
                  label.get(),
                  row.getDouble("marked_literal_seconds"),
                  row.getDouble("marked_exact_seconds"))));
    }
    return Row.optionalWord(row, "b_or_t", UntimedTest.WORDS).map(DialSetting.Untimed::new);
  }

  private static FiringNotes notes(ResultSet row) throws SQLException {
    return new FiringNotes(
        Row.real(row, "release_delay_seconds"),
        Row.real(row, "plateau_counts"),
        Row.real(row, "plateau_share"),
        row.getBoolean("light_doubtful"),
        row.getBoolean("leak"),
        row.getBoolean("cap_on"),
        Row.text(row, "moved_from").map(MarkedSpeed::parse),
        Row.text(row, "rejection"),
        Row.text(row, "first_reason"),
        conditions(row));
  }

  private static FiringConditions conditions(ResultSet row) throws SQLException {
    return FiringConditions.parse(Row.text(row, "conditions").orElse(""));
  }

  private static Optional<OneLevel> oneLevel(ResultSet row) throws SQLException {
    OptionalDouble gap = Row.real(row, "level_gap_seconds");
    return Row.optionalWord(row, "one_level", AlternatingLevels.Level.WORDS)
        .map(level -> new OneLevel(level, gap));
  }

  private static Optional<LevelPair> levels(ResultSet row) throws SQLException {
    OptionalDouble low = Row.real(row, "level_low");
    OptionalDouble high = Row.real(row, "level_high");
    return low.isPresent() && high.isPresent()
        ? Optional.of(new LevelPair(low.getAsDouble(), high.getAsDouble()))
        : Optional.empty();
  }
}
