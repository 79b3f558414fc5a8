package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.job.Camera;
import org.halflight.job.CurtainCamera;
import org.halflight.job.Detail;
import org.halflight.job.Id;
import org.halflight.session.Adjuster;
import org.halflight.session.OwnTravel;
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
            .set(Detail.OF_CAMERA, camera.details())
            .setOptional(
                "own_travel_ms", camera.curtains().ownTravel().map(OwnTravel::milliseconds))
            .setOptional(
                "own_travel_span_mm", camera.curtains().ownTravel().map(OwnTravel::spanMillimetres))
            .setOptional("x_speed", camera.curtains().xSpeed().map(MarkedSpeed::label))
            .setOptional("adjusters", adjusters(camera.curtains().adjusters()));
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
        Columns.details(row, Detail.OF_CAMERA),
        curtains(row));
  }

  /** All adjusters need no words: rows of earlier forms stay as they are. */
  private static Optional<String> adjusters(Set<Adjuster> adjusters) {
    return Optional.of(adjusters).filter(its -> !its.equals(Adjuster.ALL)).map(Adjuster::text);
  }

  private static Set<Adjuster> adjusters(String words) throws SQLException {
    return words.isEmpty()
        ? Adjuster.ALL
        : Adjuster.findAll(words).orElseThrow(() -> new Word.Unknown(words));
  }

  private static CurtainCamera curtains(ResultSet row) throws SQLException {
    OptionalDouble travel = Row.real(row, "own_travel_ms");
    OptionalDouble span = Row.real(row, "own_travel_span_mm");
    return new CurtainCamera(
        travel.isPresent() && span.isPresent()
            ? Optional.of(new OwnTravel(travel.getAsDouble(), span.getAsDouble()))
            : Optional.empty(),
        Row.text(row, "x_speed").map(MarkedSpeed::parse),
        adjusters(Row.text(row, "adjusters").orElse("")));
  }
}
