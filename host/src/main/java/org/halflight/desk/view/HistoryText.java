package org.halflight.desk.view;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.chart.DataTable;
import org.halflight.chart.Example;
import org.halflight.chart.Picture;
import org.halflight.chart.RunPictures;
import org.halflight.chart.StagesPicture;
import org.halflight.extratest.ExtraTest;
import org.halflight.job.DryRun;
import org.halflight.job.Id;
import org.halflight.job.Visit;
import org.halflight.record.CameraHistory;
import org.halflight.record.CameraLine;
import org.halflight.record.RunHistory;
import org.halflight.record.SpeedDrift;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.RunSummary;
import org.halflight.words.DryRunWords;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.MovedWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.StageWords;
import org.halflight.words.Words;

/** The history of a camera as tables and a picture. */
public final class HistoryText {
  private static final int MOST_DUE = 3;

  private HistoryText() {}

  /** What a page is like, on one line. */
  public static String page(String workshop, String paper, boolean bench, boolean sale) {
    List<String> parts = new ArrayList<>();
    parts.add(Words.say(sale ? "desk.page.sale" : "desk.page.owner"));
    parts.add(Words.say(bench ? "desk.page.bench" : "desk.page.one"));
    parts.add(workshop.isBlank() ? Words.say("desk.page.noWorkshop") : workshop);
    parts.add(Words.say("desk.page.paper", paper));
    return String.join(", ", parts);
  }

  /** Each marked speed: its mean in every run, and how far it drifted between visits. */
  public static DataTable drifts(CameraHistory history, ZoneId zone) {
    List<String> headings = new ArrayList<>();
    headings.add(Words.say("desk.history.speed"));
    for (RunHistory run : history.runsOfSpeeds()) {
      headings.add(heading(run, zone));
    }
    boolean several =
        history.runsOfSpeeds().stream().map(run -> run.visit().id()).distinct().count() > 1;
    if (several) {
      headings.add(Words.say("desk.history.drift"));
    }
    List<List<String>> rows = new ArrayList<>();
    for (SpeedDrift drift : history.drifts()) {
      List<String> row = new ArrayList<>();
      row.add(drift.speed().label() + " s");
      for (RunHistory run : history.runsOfSpeeds()) {
        row.add(
            drift.points().stream()
                .filter(point -> point.run().id().equals(run.run().id()))
                .findFirst()
                .map(HistoryText::cell)
                .orElse(Words.say("table.nothing")));
      }
      if (several) {
        row.add(between(drift));
      }
      rows.add(row);
    }
    return new DataTable(
        Words.say("desk.history.caption", history.camera().label()), headings, rows, note(history));
  }

  /** What was tried beside the marked speeds, visit by visit; empty where nothing was. */
  public static Optional<DataTable> tried(CameraHistory history, ZoneId zone) {
    List<List<String>> rows = new ArrayList<>();
    for (RunHistory run : history.runs()) {
      for (ExtraTest tried : run.tried()) {
        rows.add(
            List.of(
                day(run.visit().receivedAt(), zone),
                heading(run, zone),
                ExtraTestWords.name(tried),
                ExtraTestWords.state(tried),
                ExtraTestWords.lines(tried).get(0)));
      }
    }
    for (Visit visit : history.runs().stream().map(RunHistory::visit).distinct().toList()) {
      for (AssemblyStages assembly : history.assemblies(visit.id())) {
        rows.add(
            List.of(
                day(visit.receivedAt(), zone),
                Sentences.phase(Phase.ADJUSTING),
                Words.say("stage.picture.title"),
                StageWords.state(assembly),
                StageWords.inOneLine(assembly)));
      }
    }
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new DataTable(
                Words.say("desk.history.tried"),
                List.of(
                    Words.say("desk.history.visit"),
                    Words.say("desk.history.runColumn"),
                    Words.say("desk.history.what"),
                    Words.say("desk.history.state"),
                    Words.say("desk.history.found")),
                rows,
                note(history)));
  }

  /** The picture of what is chosen; an example of it where there is nothing to draw yet. */
  public static Picture picture(Optional<CameraHistory> history, boolean anyCamera, ZoneId zone) {
    return history
        .flatMap(its -> map(its, zone))
        .orElseGet(
            () ->
                Example.map(
                    Words.say(
                        history.isPresent()
                            ? "desk.history.noRun"
                            : anyCamera ? "desk.history.empty" : "desk.history.noCamera")));
  }

  /**
   * The speed map of the last visit, or the stages where these were fired last; empty where nothing
   * was fired at a speed.
   */
  public static Optional<Picture> map(CameraHistory history, ZoneId zone) {
    List<RunHistory> all = history.runs().stream().filter(run -> run.firings() > 0).toList();
    Optional<RunHistory> stage =
        all.isEmpty()
            ? Optional.empty()
            : Optional.of(all.get(all.size() - 1)).filter(run -> run.stage().isPresent());
    if (stage.isPresent()) {
      return history.assemblies(stage.get().visit().id()).stream()
          .reduce((earlier, later) -> later)
          .map(last -> new StagesPicture(last, note(history)));
    }
    List<RunHistory> withSpeeds =
        history.runsOfSpeeds().stream().filter(run -> !run.speeds().isEmpty()).toList();
    if (withSpeeds.isEmpty()) {
      return Optional.empty();
    }
    RunHistory last = withSpeeds.get(withSpeeds.size() - 1);
    Id<Visit> visit = last.visit().id();
    List<RunSummary> runs = new ArrayList<>();
    for (RunHistory run : withSpeeds) {
      if (run.visit().id().equals(visit)) {
        runs.removeIf(earlier -> earlier.phase() == run.run().asked().phase());
        runs.add(new RunSummary(run.run().asked().phase(), run.speeds()));
      }
    }
    String day = day(last.visit().receivedAt(), zone);
    return Optional.of(
        RunPictures.speedMap(
            Words.say("desk.history.map", history.camera().label(), day),
            history.camera().dial().speeds(),
            last.run().asked()::tolerance,
            RunPictures.compared(runs),
            note(history)));
  }

  /** Whether the shutter has moved since it went back; what that needs where it is not there. */
  public static String moved(Optional<CameraHistory.Moved> moved, ZoneId zone) {
    return moved
        .map(
            its ->
                Stream.concat(
                        Stream.of(
                            MovedWords.line(
                                its.since(),
                                Numbers.date(LocalDate.ofInstant(its.last().receivedAt(), zone)))),
                        MovedWords.curtains(its.since()).stream())
                    .collect(Collectors.joining(" ")))
        .orElseGet(() -> Words.say("moved.none"));
  }

  /** The same of the last visit; empty where there is nothing to compare. */
  public static Optional<String> moved(CameraHistory history, ZoneId zone) {
    return history.runs().stream()
        .map(run -> run.visit().id())
        .reduce((earlier, later) -> later)
        .flatMap(history::moved)
        .map(its -> moved(Optional.of(its), zone));
  }

  /** The cameras that are due for a dry run, those longest due first; empty where none is. */
  public static String due(List<CameraLine> cameras, Instant now, ZoneId zone) {
    List<DryRun> due =
        cameras.stream()
            .flatMap(line -> line.dryRun().stream())
            .sorted(Comparator.comparing(DryRun::firedWetAt))
            .toList();
    List<String> sentences = new ArrayList<>();
    due.stream().limit(MOST_DUE).forEach(each -> sentences.add(DryRunWords.line(each, now, zone)));
    if (due.size() > MOST_DUE) {
      sentences.add(Words.say("dryRun.more", due.size() - MOST_DUE));
    }
    return String.join("\n", sentences);
  }

  /** A day as a person writes it. */
  public static String day(Instant at, ZoneId zone) {
    return Numbers.shortDate(LocalDate.ofInstant(at, zone));
  }

  private static String heading(RunHistory run, ZoneId zone) {
    String day = day(run.run().beganAt().orElse(run.visit().receivedAt()), zone);
    return Words.say(
        run.run().asked().phase() == Phase.ADJUSTING
            ? "desk.history.sinceMark"
            : "desk.history.run",
        Sentences.phase(run.run().asked().phase()),
        day);
  }

  private static String cell(SpeedDrift.Point point) {
    OptionalDouble mean = point.summary().meanStops();
    return mean.isPresent()
        ? Words.say(
            "desk.history.cell",
            Numbers.signedStops(mean.getAsDouble()),
            Sentences.verdict(point.summary()))
        : Words.say("desk.history.noTime", point.summary().tries());
  }

  private static String between(SpeedDrift drift) {
    List<SpeedDrift.Between> all = drift.betweenVisits();
    if (all.isEmpty() || all.get(all.size() - 1).stops().isEmpty()) {
      return Words.say("table.nothing");
    }
    return Numbers.stopsInWords(all.get(all.size() - 1).stops().getAsDouble());
  }

  private static String note(CameraHistory history) {
    boolean practice =
        history.runs().stream().anyMatch(run -> run.sources().contains(Source.PRACTICE));
    boolean simulated =
        history.runs().stream().anyMatch(run -> run.sources().contains(Source.SIMULATOR));
    return practice
        ? Sentences.source(Source.PRACTICE_SERIAL)
        : simulated ? Sentences.source(Source.SIMULATOR_PREFIX) : "";
  }
}
