package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.halflight.job.Id;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;

/** Strip sheets as rows of their table: entries are added and never changed. */
final class SheetRows {
  private SheetRows() {}

  static SheetEntry add(Connection connection, SheetEntry entry) throws SQLException {
    return entry.withId(
        new Id<>(
            new Columns()
                .set("visit_id", entry.visit().value())
                .set("line", entry.line())
                .set("at_millis", entry.at())
                .set("item", SheetItem.WORDS, entry.item())
                .set("place", entry.place())
                .set("words", entry.words())
                .set("state", SheetState.WORDS, entry.state())
                .insert(connection, "sheet_entry")));
  }

  static StripSheet of(Connection connection, Id<Visit> visit) throws SQLException {
    return StripSheet.of(
        Query.list(
            connection,
            "SELECT * FROM sheet_entry WHERE visit_id = ? ORDER BY id",
            SheetRows::read,
            visit.value()));
  }

  static SheetEntry read(ResultSet row) throws SQLException {
    return new SheetEntry(
        new Id<>(row.getLong("id")),
        new Id<>(row.getLong("visit_id")),
        row.getInt("line"),
        Row.moment(row, "at_millis").orElseThrow(),
        Row.word(row, "item", SheetItem.WORDS),
        Row.given(row, "place"),
        Row.given(row, "words"),
        Row.word(row, "state", SheetState.WORDS));
  }
}
