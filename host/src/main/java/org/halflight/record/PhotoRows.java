package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.Visit;

/** Pictures of visits as rows of their table. */
final class PhotoRows {
  static final String TABLE = "photo";

  private PhotoRows() {}

  static Photo keep(Connection connection, Photo photo, Instant now) throws SQLException {
    Columns columns =
        new Columns()
            .set("visit_id", photo.visit().value())
            .set("file", photo.file())
            .set("name", photo.name())
            .set("sha256", photo.sha256())
            .set("bytes", photo.bytes())
            .set("taken_at_millis", photo.takenAt())
            .set("taken_by", Photo.TakenBy.WORDS, photo.takenBy())
            .setOptional("caption", Optional.of(photo.caption()).filter(c -> !c.isEmpty()))
            .setIf("taken_off", photo.isOff());
    return photo.withId(columns.keep(connection, TABLE, photo.id(), now));
  }

  static Optional<Photo> find(Connection connection, Id<Photo> id) throws SQLException {
    return Query.first(connection, "SELECT * FROM photo WHERE id = ?", PhotoRows::read, id.value());
  }

  /** The pictures of a visit, those taken off too, in the order in which they were taken. */
  static List<Photo> of(Connection connection, Id<Visit> visit) throws SQLException {
    return Query.list(
        connection,
        "SELECT * FROM photo WHERE visit_id = ? ORDER BY taken_at_millis, id",
        PhotoRows::read,
        visit.value());
  }

  /** The rows of one picture, of whatever visit. */
  static List<Photo> ofSum(Connection connection, String sha256) throws SQLException {
    return Query.list(
        connection, "SELECT * FROM photo WHERE sha256 = ? ORDER BY id", PhotoRows::read, sha256);
  }

  static Photo read(ResultSet row) throws SQLException {
    return new Photo(
        new Id<>(row.getLong("id")),
        new Id<>(row.getLong("visit_id")),
        Row.given(row, "file"),
        Row.given(row, "name"),
        Row.given(row, "sha256"),
        row.getLong("bytes"),
        Row.moment(row, "taken_at_millis").orElseThrow(),
        Row.word(row, "taken_by", Photo.TakenBy.WORDS),
        Row.text(row, "caption").orElse(""),
        Row.isYes(row, "taken_off"));
  }
}
