package org.halflight.validation;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.export.CsvTable;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.Exposure;
import org.halflight.link.serial.SerialPorts;
import org.halflight.session.FiringResult;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Interval;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.InventedSession;
import org.halflight.validation.invented.Light;
import org.halflight.validation.invented.Rig;
import org.halflight.validation.invented.SessionText;
import org.halflight.validation.invented.Told;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Verdict;

/**
 * The one place where studies ask the program: what does it say of an invented session? By the
 * method itself, and by the public way of lines in a file and a command.
 */
public final class StudiedMethod {
  /**
   * What is said of a session.
   *
   * @param firings in order
   * @param speed its one speed; empty where no firing was taken
   */
  public record Message(List<FiringResult> firings, Optional<SpeedSummary> speed) {
    /** The interval of the usual exposure with the rig in it; empty where none is given. */
    public Optional<Interval> interval() {
      return speed.flatMap(SpeedSummary::expandedIntervalStops);
    }
  }

  private StudiedMethod() {}

  /** By the method itself: edges, curves and marks are handed to the session. */
  public static Message directly(InventedSession invented) {
    Session session = new Session();
    session.handle(
        new SessionInput.RigIs(SessionText.RIG, 7, BoardTraits.USUAL, SessionText.FIRMWARE));
    session.handle(new SessionInput.BeatAt(0, 0, OptionalInt.of(0)));
    SessionText.marks(invented).forEach(mark -> input(mark).ifPresent(session::handle));
    invented.told().forEach(told -> session.handle(input(invented, told)));
    session.handle(new SessionInput.Ends());
    return said(session);
  }

  /** By the method itself, as a small rig sees it: at the low level and at the high one in turn. */
  static Message atOneLevel(InventedSession invented) {
    Session session = new Session();
    BoardTraits small = new BoardTraits(BoardTraits.USUAL.rate(), true, false);
    session.handle(new SessionInput.RigIs(SessionText.RIG, 7, small, SessionText.FIRMWARE));
    session.handle(new SessionInput.BeatAt(0, 0, OptionalInt.of(0)));
    SessionText.marks(invented).forEach(mark -> input(mark).ifPresent(session::handle));
    int channel = 1;
    for (Told told : invented.told()) {
      if (told instanceof Told.Beat beat) {
        int level = beat.levels() >> channel & 1;
        session.handle(input(invented, new Told.Beat(beat.ticks(), level, beat.sum16())));
      } else if (told instanceof Told.Edge edge) {
        if (edge.channel() == 0 && edge.light()) {
          channel = 1 - channel;
          session.handle(
              new SessionInput.LevelStands(
                  Optional.of(
                      channel == 0 ? AlternatingLevels.Level.LOW : AlternatingLevels.Level.HIGH)));
        }
        if (edge.channel() == channel) {
          session.handle(input(invented, new Told.Edge(0, edge.light(), edge.ticks())));
        }
      }
    }
    session.handle(new SessionInput.Ends());
    return said(session);
  }

  /** By the lines of a session file, in the form that is given back by a replay. */
  static Message byLines(Path file) {
    return said(SessionReducer.replay(SessionFile.read(file).events()).session());
  }

  /**
   * Where the public way says something else than the method itself: the lines are written to a
   * file, replayed, and exported by the command.
   *
   * @param folder for the files, which are gone afterwards
   * @return what differs, in words; empty where all is equal to the last digit
   */
  static List<String> differences(InventedSession invented, Message direct, Path folder)
      throws IOException {
    Path file = folder.resolve("invented.session");
    Files.writeString(file, SessionText.of(invented, "invented"), StandardCharsets.ISO_8859_1);
    Path firings = folder.resolve("firings.csv");
    Path speeds = folder.resolve("speeds.csv");
    try {
      List<String> found = new ArrayList<>();
      Message read = byLines(file);
      compare("replay", numbers(direct), numbers(read), found);
      execute(folder, "export", file, "--firings", firings, "--speeds", speeds);
      List<String> cells = new ArrayList<>();
      cells.addAll(column(CsvTable.read(firings), "effective_ms"));
      cells.addAll(column(CsvTable.read(speeds), "expanded_low_stops"));
      cells.addAll(column(CsvTable.read(speeds), "expanded_high_stops"));
      compare("export", printed(direct), cells, found);
      return found;
    } finally {
      for (Path each : List.of(file, firings, speeds)) {
        Files.deleteIfExists(each);
      }
    }
  }

  /** One firing before a rig without a fault, that nobody calibrated. */
  static FiringResult once(String speed, Light light) {
    return directly(
            InventedSession.of(
                speed, Rig.exact(), false, false, List.of(light), new Draws(Validation.SEED)))
        .firings()
        .get(0);
  }

  /**
   * Whether edges and curve of a firing are said to have seen unlike light, by any method's word.
   */
  static boolean seesUnlikeLight(FiringResult firing) {
    return has(firing, "widths-apart") || has(firing, "curve-disagrees");
  }

  /** Whether it is said that the blades may not have opened fully. */
  static boolean mayNotBeFullyOpen(FiringResult firing) {
    return has(firing, "may-not-open-fully");
  }

  /** The bound that is stated for the error of the rule of two levels, in seconds. */
  static double ruleBoundSeconds(FiringResult firing) {
    return ((Exposure.Timed) firing.exposure()).methodSeconds();
  }

  /** The verdict on a speed, as tables have it. */
  static String verdict(SpeedSummary speed) {
    return Verdict.WORDS.word(speed.verdict());
  }

  private static boolean has(FiringResult firing, String word) {
    return firing.exposure() instanceof Exposure.Timed timed
        && timed.flags().stream().map(Exposure.Flag.WORDS::word).anyMatch(word::equals);
  }

  static Message said(Session session) {
    List<FiringResult> firings = session.results();
    List<RunSummary> runs =
        RunSummary.of(
            firings,
            speed -> Tolerance.THIRD,
            DecisionBasis.of(session.setup().orElseThrow(), RigKnowledge.UNCALIBRATED));
    return new Message(
        List.copyOf(firings), runs.stream().flatMap(run -> run.speeds().stream()).findFirst());
  }

  /** Empty for a mark that an earlier version does not know. */
  static Optional<SessionInput> input(SessionText.Mark mark) {
    return Marks.input(new BenchEvent.Mark(0, mark.kind(), mark.values()));
  }

  private static SessionInput input(InventedSession invented, Told told) {
    if (told instanceof Told.LightAgain) {
      return input(SessionText.light(invented)).orElseThrow();
    }
    if (told instanceof Told.Edge edge) {
      return new SessionInput.EdgeAt(
          new Edge(
              edge.channel() == 0 ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
              edge.light(),
              edge.ticks()));
    }
    if (told instanceof Told.Beat beat) {
      return new SessionInput.BeatAt(beat.ticks(), beat.levels(), OptionalInt.of(beat.sum16()));
    }
    return new SessionInput.CurveAt(sampled((Told.Curve) told));
  }

  /** A curve as the program has it. */
  static SampledLight sampled(Told.Curve told) {
    return new SampledLight(
        told.parts().stream()
            .map(
                part ->
                    new SampledLight.Part(
                        kind(part.kind()),
                        part.firstTicks(),
                        part.periodTicks(),
                        part.values(),
                        false))
            .toList(),
        false);
  }

  /** By the number of a part on the wire. */
  private static SampledLight.Kind kind(int part) {
    return switch (part) {
      case 0 -> SampledLight.Kind.OPENING;
      case 1 -> SampledLight.Kind.PLATEAU;
      default -> SampledLight.Kind.CLOSING;
    };
  }

  private static List<Double> numbers(Message said) {
    List<Double> numbers = new ArrayList<>();
    said.firings().forEach(f -> numbers.add(f.effectiveSeconds().orElse(Double.NaN)));
    numbers.add(said.interval().map(Interval::low).orElse(Double.NaN));
    numbers.add(said.interval().map(Interval::high).orElse(Double.NaN));
    return numbers;
  }

  /** The same as the tables have it: milliseconds and stops, to six places. */
  private static List<String> printed(Message said) {
    List<Double> numbers = numbers(said);
    List<String> printed = new ArrayList<>();
    for (int i = 0; i < numbers.size(); i++) {
      double number = i < said.firings().size() ? numbers.get(i) * 1e3 : numbers.get(i);
      printed.add(Double.isNaN(number) ? "" : String.format(Locale.ROOT, "%.6f", number));
    }
    return printed;
  }

  private static <T> void compare(String way, List<T> one, List<T> other, List<String> found) {
    if (!one.equals(other)) {
      found.add(way + ": " + one + " against " + other);
    }
  }

  private static List<String> column(CsvTable table, String heading) {
    int place = table.headings().indexOf(heading);
    return table.rows().stream().map(row -> row.get(place)).toList();
  }

  /** Does a command as it is typed, and gives what it says. */
  static String execute(Path folder, Object... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    String[] typed = new String[words.length];
    for (int i = 0; i < words.length; i++) {
      typed[i] = words[i].toString();
    }
    int code =
        Halflight.execute(
            new Surroundings(
                new Terminal(
                    new PrintStream(out, true, StandardCharsets.UTF_8),
                    new ByteArrayInputStream(new byte[0])),
                (List<String> given) -> new SerialPorts(given),
                () -> 0L,
                () -> Instant.EPOCH,
                folder,
                "invented"),
            typed);
    String text = out.toString(StandardCharsets.UTF_8);
    if (code != 0) {
      throw new IllegalStateException(String.join(" ", typed) + ": " + text);
    }
    return text;
  }
}
