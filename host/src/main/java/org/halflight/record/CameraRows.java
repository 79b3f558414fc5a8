package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.halflight.job.Camera;
import org.halflight.job.Detail;
import org.halflight.job.Id;
import org.halflight.speeds.Dial;
import org.halflight.speeds.FrameSize;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;

/** Cameras as rows of their table. */
final class CameraRows {
  private CameraRows() {}

  static Camera keep(Connection connection, Camera camera, Instant now) throws SQLException {
    Columns columns =
        new Columns()
            .set("label", camera.label())
            .set("serial_number", camera.serialNumber())
            .set("shutter", ShutterKind.WORDS, camera.shutter())
            .set("dial", camera.dial().name())
            .set("dial_speeds", speeds(camera.dial().speeds()))
            .set("dial_reference", Reference.WORDS, camera.dial().reference())
            .set("widest_f_number", camera.widestFNumber())
            .setOptional("frame_width_micrometres", camera.frame().map(FrameSize::widthMicrometres))
            .setOptional(
                "frame_height_micrometres", camera.frame().map(FrameSize::heightMicrometres))
            .set("firing_without_film", camera.firingWithoutFilm())
            .set(Detail.OF_CAMERA, camera.details());
    return camera.withId(columns.keep(connection, "camera", camera.id(), now));
  }

  static Optional<Camera> find(Connection connection, Id<Camera> id) throws SQLException {
    return Query.first(
        connection, "SELECT * FROM camera WHERE id = ?", CameraRows::read, id.value());
  }

  static List<Camera> all(Connection connection) throws SQLException {
    return Query.list(connection, "SELECT * FROM camera ORDER BY id", CameraRows::read);
  }

  static List<Camera> ofLabel(Connection connection, String label) throws SQLException {
    return Query.list(
        connection, "SELECT * FROM camera WHERE label = ? ORDER BY id", CameraRows::read, label);
  }

  static String speeds(List<MarkedSpeed> speeds) {
    return speeds.stream().map(MarkedSpeed::label).collect(Collectors.joining(","));
  }

  static List<MarkedSpeed> speeds(String labels) {
    return labels.isEmpty()
        ? List.of()
        : Arrays.stream(labels.split(",", -1)).map(MarkedSpeed::parse).toList();
  }

  static Camera read(ResultSet row) throws SQLException {
    OptionalLong width = Row.integer(row, "frame_width_micrometres");
    OptionalLong height = Row.integer(row, "frame_height_micrometres");
    return new Camera(
        new Id<>(row.getLong("id")),
        Row.given(row, "label"),
        Row.given(row, "serial_number"),
        Row.word(row, "shutter", ShutterKind.WORDS),
        new Dial(
            Row.given(row, "dial"),
            speeds(Row.given(row, "dial_speeds")),
            Row.word(row, "dial_reference", Reference.WORDS)),
        Row.real(row, "widest_f_number"),
        width.isPresent() && height.isPresent()
            ? Optional.of(new FrameSize(width.getAsLong(), height.getAsLong()))
            : Optional.empty(),
        Row.given(row, "firing_without_film"),
        Columns.details(row, Detail.OF_CAMERA));
  }
}
