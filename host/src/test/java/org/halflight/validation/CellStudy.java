package org.halflight.validation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.halflight.stats.Interval;
import org.halflight.validation.invented.Cell;

/** How often the stated interval holds the truth, cell by cell. */
final class CellStudy {
  /** Sessions of each cell on the page. */
  static final int SESSIONS = 5500;

  /** One session in so many goes the public way too. */
  static final int PUBLIC_EVERY = 100;

  /** Sessions that one thread takes at a time. */
  private static final int AT_A_TIME = 250;

  /**
   * What came of the sessions of a cell.
   *
   * @param sessions how many
   * @param held of these the interval holds the truth
   * @param none of these have no interval
   * @param halfStops sum of the half widths
   * @param missedLow of these the truth lies below the interval
   * @param publicly how many went the public way too
   * @param differences what that way said otherwise
   */
  record Count(
      int sessions,
      int held,
      int none,
      double halfStops,
      int missedLow,
      int publicly,
      List<String> differences) {
    static final Count NOTHING = new Count(0, 0, 0, 0, 0, 0, List.of());

    Count and(Count other) {
      List<String> all = new ArrayList<>(differences);
      all.addAll(other.differences);
      return new Count(
          sessions + other.sessions,
          held + other.held,
          none + other.none,
          halfStops + other.halfStops,
          missedLow + other.missedLow,
          publicly + other.publicly,
          all);
    }

    /** The part of the intervals that hold the truth. */
    double coverage() {
      return held / (double) (sessions - none);
    }

    double meanHalfStops() {
      return halfStops / (sessions - none);
    }
  }

  private CellStudy() {}

  /** Some sessions of a cell. */
  static Count of(Cell cell, int from, int to, int publicEvery, Path folder) throws IOException {
    int held = 0;
    int none = 0;
    int low = 0;
    int publicly = 0;
    double half = 0;
    List<String> differences = new ArrayList<>();
    for (int i = from; i < to; i++) {
      Cell.Tried tried = cell.session(i);
      StudiedMethod.Message said = StudiedMethod.directly(tried.session());
      Optional<Interval> stated = said.interval();
      held += stated.filter(s -> s.contains(tried.trueStops())).isPresent() ? 1 : 0;
      low += stated.filter(s -> tried.trueStops() < s.low()).isPresent() ? 1 : 0;
      none += stated.isPresent() ? 0 : 1;
      half += stated.map(s -> (s.high() - s.low()) / 2).orElse(0.0);
      if (i % publicEvery == publicEvery - 1) {
        publicly++;
        for (String each : StudiedMethod.differences(tried.session(), said, folder)) {
          differences.add(cell + ", session " + i + ": " + each);
        }
      }
    }
    return new Count(to - from, held, none, half, low, publicly, differences);
  }

  /** All cells, by as many threads as there are processors; their number changes nothing. */
  static Map<Cell, Count> all(int sessions, int publicEvery) throws IOException {
    Path folder = Files.createTempDirectory("halflight-cells");
    int threads = Runtime.getRuntime().availableProcessors();
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    Map<Cell, List<Future<Count>>> parts = new LinkedHashMap<>();
    for (Cell cell : Cell.ALL) {
      for (int from = 0; from < sessions; from += AT_A_TIME) {
        int first = from;
        int end = Math.min(sessions, from + AT_A_TIME);
        parts
            .computeIfAbsent(cell, any -> new ArrayList<>())
            .add(pool.submit(() -> inAFolderOfItsOwn(cell, first, end, publicEvery, folder)));
      }
    }
    try {
      Map<Cell, Count> counts = new LinkedHashMap<>();
      for (Map.Entry<Cell, List<Future<Count>>> each : parts.entrySet()) {
        Count sum = Count.NOTHING;
        for (Future<Count> part : each.getValue()) {
          sum = sum.and(part.get());
        }
        counts.put(each.getKey(), sum);
      }
      return counts;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the study was interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a cell failed", e.getCause());
    } finally {
      pool.shutdownNow();
      Files.delete(folder);
    }
  }

  private static Count inAFolderOfItsOwn(
      Cell cell, int from, int to, int publicEvery, Path folder) {
    try {
      Path own = Files.createTempDirectory(folder, "cell");
      try {
        return of(cell, from, to, publicEvery, own);
      } finally {
        Files.delete(own);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Prints one line a cell; for a look at it, or to keep what an earlier method came to.
   *
   * @param args sessions of each cell
   */
  public static void main(String[] args) throws IOException {
    int sessions = args.length > 0 ? Integer.parseInt(args[0]) : SESSIONS;
    System.out.println(
        "blades,speed,condition,sessions,held,none,coverage,half_stops,truth_below,publicly,different");
    all(sessions, PUBLIC_EVERY)
        .forEach(
            (cell, count) -> {
              System.out.printf(
                  Locale.ROOT,
                  "%s,%s,%s,%d,%d,%d,%.4f,%.5f,%d,%d,%d%n",
                  cell.blades(),
                  cell.speed(),
                  cell.condition(),
                  count.sessions(),
                  count.held(),
                  count.none(),
                  count.coverage(),
                  count.meanHalfStops(),
                  count.missedLow(),
                  count.publicly(),
                  count.differences().size());
              count.differences().stream().limit(2).forEach(System.err::println);
            });
  }
}
