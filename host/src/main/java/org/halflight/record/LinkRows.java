package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.OptionalLong;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigMessage.Losses;

/** Link statistics of runs as rows of their table. */
final class LinkRows {
  private LinkRows() {}

  static void keep(Connection connection, Id<Run> run, LinkStatistics link) throws SQLException {
    Optional<Losses> rig = link.rigLosses();
    new Columns()
        .set("run_id", run.value())
        .set("lines", link.lines())
        .set("bytes", link.bytes())
        .set("bad_form", link.badForm())
        .set("bad_crc", link.badCrc())
        .set("bad_fields", link.badFields())
        .set("too_long", link.tooLong())
        .set("unknown", link.unknown())
        .set("repeated", link.repeated())
        .set("missing", link.missing())
        .set("last_beat_ticks", link.lastBeatTicks())
        .setOptional("rig_edges", rig.map(Losses::edges))
        .setOptional("rig_snapshots_lost", rig.map(Losses::snapshotsLost))
        .setOptional("rig_captures_lost", rig.map(Losses::capturesLost))
        .setOptional("rig_floods", rig.map(Losses::floods))
        .setOptional("rig_bad_lines", rig.map(Losses::badLines))
        .setOptional("rig_long_lines", rig.map(Losses::longLines))
        .setOptional("rig_bytes_lost", rig.map(Losses::bytesLost))
        .replace(connection, "link_statistics");
  }

  static Optional<LinkStatistics> of(Connection connection, Id<Run> run) throws SQLException {
    return Query.first(
        connection, "SELECT * FROM link_statistics WHERE run_id = ?", LinkRows::read, run.value());
  }

  /** What came between two looks at the same link; ticks and the rig's own counters as last. */
  static LinkStatistics between(LinkStatistics before, LinkStatistics after) {
    return new LinkStatistics(
        after.lines() - before.lines(),
        after.bytes() - before.bytes(),
        after.badForm() - before.badForm(),
        after.badCrc() - before.badCrc(),
        after.badFields() - before.badFields(),
        after.tooLong() - before.tooLong(),
        after.unknown() - before.unknown(),
        after.repeated() - before.repeated(),
        after.missing() - before.missing(),
        after.lastBeatTicks(),
        after.rigLosses());
  }

  private static LinkStatistics read(ResultSet row) throws SQLException {
    OptionalLong rigEdges = Row.integer(row, "rig_edges");
    Optional<Losses> rig =
        rigEdges.isPresent()
            ? Optional.of(
                new Losses(
                    0,
                    rigEdges.getAsLong(),
                    row.getInt("rig_snapshots_lost"),
                    row.getInt("rig_captures_lost"),
                    row.getInt("rig_floods"),
                    row.getInt("rig_bad_lines"),
                    row.getInt("rig_long_lines"),
                    row.getInt("rig_bytes_lost")))
            : Optional.empty();
    return new LinkStatistics(
        row.getLong("lines"),
        row.getLong("bytes"),
        row.getLong("bad_form"),
        row.getLong("bad_crc"),
        row.getLong("bad_fields"),
        row.getLong("too_long"),
        row.getLong("unknown"),
        row.getLong("repeated"),
        row.getLong("missing"),
        Row.integer(row, "last_beat_ticks"),
        rig);
  }
}
