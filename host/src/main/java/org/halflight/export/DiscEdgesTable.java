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
  private static final List<String> HEADINGS =
      List.of(
          "rig",
          "kind",
          "firmware",
          "ticks_per_second",
          "dark_counts",
          "full_counts",
          "low_counts",
          "high_counts",
          "channel",
          "light",
          "ticks");

  private DiscEdgesTable() {}

  /** Writes them. */
  public static void write(DiscEdges edges, OutFile to) {
    LightLevels light = edges.light();
    List<List<String>> rows = new ArrayList<>();
    for (Edge edge : edges.edges()) {
      rows.add(
          List.of(
              edges.rig().serial(),
              edges.rig().kind(),
              edges.rig().firmware(),
              String.valueOf(edges.rate().ticksPerSecond()),
              counts(light.darkCounts()),
              counts(light.fullCounts()),
              counts(light.lowCounts()),
              counts(light.highCounts()),
              edge.channel() == Channel.CENTRE_LOW ? "low" : "high",
              edge.high() ? "1" : "0",
              String.valueOf(edge.ticks())));
    }
    new CsvTable(HEADINGS, rows).write(to, CsvTable.Dialect.PLAIN);
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
      for (List<String> row : table.rows()) {
        long ticks = Long.parseLong(row.get(10));
        if (ticks < before) {
          throw new Trouble(Words.say("disc.order", path, edges.size() + 2));
        }
        before = ticks;
        edges.add(
            new Edge(
                row.get(8).equals("low") ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
                row.get(9).equals("1"),
                ticks));
      }
      List<String> first = table.rows().get(0);
      return new DiscEdges(
          new ProfiledRig(first.get(0), first.get(1), first.get(2)),
          new TickRate(Long.parseLong(first.get(3))),
          new LightLevels(
              Double.parseDouble(first.get(4)),
              Double.parseDouble(first.get(5)),
              Double.parseDouble(first.get(6)),
              Double.parseDouble(first.get(7))),
          edges);
    } catch (IllegalArgumentException e) {
      throw new Trouble(Words.say("disc.file", path), e);
    }
  }

  private static String counts(double counts) {
    return String.format(Locale.ROOT, "%.4f", counts);
  }
}
