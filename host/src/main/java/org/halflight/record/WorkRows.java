package org.halflight.record;

import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.halflight.job.Id;
import org.halflight.job.MeasuredValue;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;

/** The work log as rows of its table. */
final class WorkRows {
  private WorkRows() {}

  static WorkEntry keep(Connection connection, WorkEntry entry, Instant now) throws SQLException {
    OptionalInt after = entry.afterFiring();
    Columns columns =
        new Columns()
            .set("visit_id", entry.visit().value())
            .set("at_millis", entry.at())
            .set("kind", WorkKind.WORDS, entry.kind())
            .set("text", entry.text())
            .setOptional("measured_value", entry.measured().map(m -> m.value().toPlainString()))
            .setOptional("measured_unit", entry.measured().map(MeasuredValue::unit))
            .setOptional("run_id", entry.run().map(Id::value))
            .set(
                "after_firing_number",
                after.isPresent() ? OptionalLong.of(after.getAsInt()) : OptionalLong.empty())
            .setIf("struck", entry.isStruck());
    return entry.withId(columns.keep(connection, "work_entry", entry.id(), now));
  }

  static Optional<WorkEntry> find(Connection connection, Id<WorkEntry> id) throws SQLException {
    return Query.first(
        connection, "SELECT * FROM work_entry WHERE id = ?", WorkRows::read, id.value());
  }

  /** The work log of a visit, in order of time, entries taken back too. */
  static List<WorkEntry> of(Connection connection, Id<Visit> visit) throws SQLException {
    return Query.list(
        connection,
        "SELECT * FROM work_entry WHERE visit_id = ? ORDER BY at_millis, id",
        WorkRows::read,
        visit.value());
  }

  static WorkEntry read(ResultSet row) throws SQLException {
    Optional<String> value = Row.text(row, "measured_value");
    Optional<String> unit = Row.text(row, "measured_unit");
    OptionalLong run = Row.integer(row, "run_id");
    return new WorkEntry(
        new Id<>(row.getLong("id")),
        new Id<>(row.getLong("visit_id")),
        Row.moment(row, "at_millis").orElseThrow(),
        Row.word(row, "kind", WorkKind.WORDS),
        Row.given(row, "text"),
        value.isPresent() && unit.isPresent()
            ? Optional.of(new MeasuredValue(new BigDecimal(value.get()), unit.get()))
            : Optional.empty(),
        run.isPresent() ? Optional.of(new Id<>(run.getAsLong())) : Optional.empty(),
        Row.count(row, "after_firing_number"),
        Row.isYes(row, "struck"));
  }
}
