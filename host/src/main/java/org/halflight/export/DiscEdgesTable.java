package org.halflight.export;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.DiscEdges;
import org.halflight.exposure.LightLevels;
import org.halflight.files.OutFile;
import org.halflight.profile.ProfiledRig;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The raw edges of a slotted disc in a file, with the light and the thresholds that they were taken
 * at, so that a reading can be worked out again.
 */
public final class DiscEdgesTable {
  private record Row(DiscEdges disc, Edge edge) {}

  private static final List<Column<Row>> COLUMNS =
      List.of(
          Column.text("rig", row -> row.disc.rig().serial()),
          Column.text("kind", row -> row.disc.rig().kind()),
          Column.text("firmware", row -> row.disc.rig().firmware()),
          Column.count("ticks_per_second", row -> row.disc.rate().ticksPerSecond()),
          Column.text("dark_counts", row -> counts(row.disc.light().darkCounts())),
          Column.text("full_counts", row -> counts(row.disc.light().fullCounts())),
          Column.text("low_counts", row -> counts(row.disc.light().lowCounts())),
          Column.text("high_counts", row -> counts(row.disc.light().highCounts())),
          Column.text("channel", row -> row.edge.channel() == Channel.CENTRE_LOW ? "low" : "high"),
          Column.text("light", row -> row.edge.high() ? "1" : "0"),
          Column.count("ticks", row -> row.edge.ticks()));

  private static final List<String> HEADINGS = Column.names(COLUMNS);

  private DiscEdgesTable() {}

  /** Writes them. */
  public static void write(DiscEdges disc, OutFile to) {
    CsvTable.of(COLUMNS, disc.edges().stream().map(edge -> new Row(disc, edge)).toList())
        .write(to, CsvTable.Dialect.PLAIN);
  }

  /**
   * Reads them.
   *
   * @throws Trouble when the file is none of these
   */
  public static DiscEdges read(Path path) {
    CsvTable table = CsvTable.read(path);
    if (!table.headings().equals(HEADINGS) || table.rows().isEmpty()) {
      throw new Trouble(Words.say("disc.file", path));
    }
    try {
      List<Edge> edges = new ArrayList<>();
      long before = Long.MIN_VALUE;
      for (int row = 0; row < table.rows().size(); row++) {
        long ticks = Long.parseLong(table.cell(row, "ticks"));
        if (ticks < before) {
          throw new Trouble(Words.say("disc.order", path, edges.size() + 2));
        }
        before = ticks;
        edges.add(
            new Edge(
                table.cell(row, "channel").equals("low") ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
                table.cell(row, "light").equals("1"),
                ticks));
      }
      return new DiscEdges(
          new ProfiledRig(table.cell(0, "rig"), table.cell(0, "kind"), table.cell(0, "firmware")),
          new TickRate(Long.parseLong(table.cell(0, "ticks_per_second"))),
          new LightLevels(
              Double.parseDouble(table.cell(0, "dark_counts")),
              Double.parseDouble(table.cell(0, "full_counts")),
              Double.parseDouble(table.cell(0, "low_counts")),
              Double.parseDouble(table.cell(0, "high_counts"))),
          edges);
    } catch (IllegalArgumentException e) {
      throw new Trouble(Words.say("disc.file", path), e);
    }
  }

  private static String counts(double counts) {
    return String.format(Locale.ROOT, "%.4f", counts);
  }
}
