package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.profile.ProfileId;
import org.halflight.profile.RigProfile;
import org.halflight.session.ProfileUse;
import org.halflight.session.RigState;

/** Profiles that firings were measured with, whole, as rows of their table. */
final class ProfileRows {
  /** What a query of firings needs so that {@link #read} finds its columns. */
  static final String JOIN = " LEFT JOIN profile ON profile.id = firing.profile_id";

  /** The column of the text in such a query. */
  static final String TEXT = "profile.text AS profile_text";

  private ProfileRows() {}

  static void set(Columns columns, Connection connection, ProfileUse use) throws SQLException {
    Optional<Long> id = Optional.empty();
    if (use.profile().isPresent()) {
      id = Optional.of(idOf(connection, use.profile().get()));
    }
    columns
        .setOptional("profile_id", id)
        .set("profile_mismatches", Word.inOrder(Mismatch.WORDS, use.mismatches()))
        .setOptional("live_clock_fast_ppm", use.state().liveClock().map(ClockRate::fastPpm))
        .setOptional(
            "live_clock_uncertainty_ppm",
            use.state().liveClock().map(ClockRate::standardUncertaintyPpm))
        .set("rig_checked", use.state().checked())
        .set("light_span_counts", use.state().lightSpanCounts())
        .set("panel_fall", use.state().panelFall());
  }

  private static long idOf(Connection connection, RigProfile profile) throws SQLException {
    ProfileId id = ProfileId.of(profile);
    Optional<Long> known =
        Query.first(
            connection,
            "SELECT id FROM profile WHERE rig_serial = ? AND made_on = ? AND check_sum = ?",
            row -> row.getLong(1),
            id.serial(),
            id.date().toString(),
            id.checkSum());
    if (known.isPresent()) {
      return known.get();
    }
    return new Columns()
        .set("rig_serial", id.serial())
        .set("made_on", id.date().toString())
        .set("check_sum", id.checkSum())
        .set("text", ProfileFile.write(profile))
        .insert(connection, "profile");
  }

  /** The use of a firing; a text that somebody edited here is no profile either. */
  static ProfileUse read(ResultSet row) throws SQLException {
    List<Mismatch> mismatches =
        new ArrayList<>(Word.readAll(Mismatch.WORDS, Row.given(row, "profile_mismatches")));
    Optional<RigProfile> profile = Optional.empty();
    Optional<String> text = Row.text(row, "profile_text");
    if (text.isPresent()) {
      ProfileFile.Outcome outcome = ProfileFile.read(text.get());
      if (outcome instanceof ProfileFile.Read read) {
        profile = Optional.of(read.profile());
      } else {
        mismatches.add(
            org.halflight.profile.ProfileFit.of(((ProfileFile.Refused) outcome).reason()));
      }
    } else if (Row.integer(row, "profile_id").isPresent()) {
      // The row of the profile cannot be found under its number any more.
      mismatches.add(Mismatch.FILE_UNREADABLE);
    }
    return new ProfileUse(profile, java.util.Set.copyOf(mismatches), state(row));
  }

  private static RigState state(ResultSet row) throws SQLException {
    OptionalDouble fast = Row.real(row, "live_clock_fast_ppm");
    OptionalDouble uncertainty = Row.real(row, "live_clock_uncertainty_ppm");
    return new RigState(
        fast.isPresent() && uncertainty.isPresent()
            ? Optional.of(
                new ClockRate(
                    fast.getAsDouble(),
                    uncertainty.getAsDouble(),
                    Double.POSITIVE_INFINITY,
                    ClockRate.Source.HOST_CLOCK))
            : Optional.empty(),
        row.getBoolean("rig_checked"),
        Row.real(row, "light_span_counts"),
        Row.real(row, "panel_fall"));
  }

  /** All profiles in a record, the newest of a rig first. */
  static List<RigProfile> all(Connection connection) throws SQLException {
    return Query.list(
            connection,
            "SELECT text FROM profile ORDER BY rig_serial, made_on DESC, id DESC",
            row -> ProfileFile.read(row.getString(1)))
        .stream()
        .filter(ProfileFile.Read.class::isInstance)
        .map(outcome -> ((ProfileFile.Read) outcome).profile())
        .toList();
  }
}
