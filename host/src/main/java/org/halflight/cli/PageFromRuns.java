package org.halflight.cli;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.StopTable;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.report.CheckLine;
import org.halflight.report.CheckLines;
import org.halflight.report.Conditions;
import org.halflight.report.PageInput;
import org.halflight.report.RunPart;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.Source;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.halflight.verdict.CalibrationStatus;
import org.halflight.verdict.StopTables;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** Fills the page from session files and from what was typed. */
final class PageFromRuns {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  private final Surroundings surroundings;
  private final Optional<RunChoice> found;
  private final Optional<RunChoice> left;

  /** What a person types beside the sessions; an empty text leaves its place out. */
  record Typed(
      String camera,
      String serial,
      String job,
      String shutter,
      ShutterKind kind,
      List<CheckLine> lists,
      List<String> work,
      List<String> notTested,
      boolean wet,
      OptionalDouble fNumber) {}

  PageFromRuns(Surroundings surroundings, Optional<RunChoice> found, Optional<RunChoice> left) {
    this.surroundings = surroundings;
    this.found = found;
    this.left = left;
  }

  PageInput with(Typed typed) {
    RunChoice last = left.or(() -> found).orElseThrow();
    List<FiringResult> firings = last.firings();
    Instant now = surroundings.date().get();
    return new PageInput(
        typed.camera.isBlank() ? camera(last) : typed.camera,
        typed.serial,
        typed.job,
        typed.shutter.isBlank() && typed.kind != ShutterKind.UNKNOWN
            ? Words.say("desk.shutter." + ShutterKind.WORDS.word(typed.kind))
            : typed.shutter,
        dial(last),
        found.map(this::part),
        left.map(this::part),
        CheckLines.filled(typed.lists, tried()),
        tried().stream().map(ExtraTestWords::inShort).toList(),
        typed.work,
        typed.notTested,
        CalibrationStatus.of(
            firings.stream().filter(f -> !f.phase().equals(Optional.of(Phase.ADJUSTING))).toList()),
        typed.wet || Conditions.isWet(conditions(last)),
        stopTables(last, typed.kind),
        typed.fNumber.isPresent() ? typed.fNumber : Conditions.fNumber(conditions(last)),
        Source.of(firings),
        sourceWords(firings),
        now,
        date(now),
        surroundings.version());
  }

  private List<ExtraTest> tried() {
    RunChoice any = left.or(() -> found).orElseThrow();
    return ExtraTests.of(any.firings(), any.readings(), any.runs()).stream()
        .filter(tried -> !tried.phase().equals(Optional.of(Phase.ADJUSTING)))
        .toList();
  }

  private static String camera(RunChoice run) {
    return run.notes().map(notes -> notes.setup().camera()).orElse("");
  }

  private static List<MarkedSpeed> dial(RunChoice run) {
    return run.notes()
        .map(
            notes ->
                Dial.ofKey(notes.setup().dial()).map(Dial::speeds).orElse(notes.setup().order()))
        .orElse(List.of());
  }

  private RunPart part(RunChoice run) {
    List<String> when = new ArrayList<>();
    run.notes().flatMap(RunNotes::begunAt).ifPresent(at -> when.add(date(at)));
    OptionalDouble rest =
        run.notes()
            .map(notes -> notes.setup().conditions().restSeconds())
            .orElse(OptionalDouble.empty());
    rest.ifPresent(seconds -> when.add(Words.say("page.rested", Numbers.rest(seconds))));
    return new RunPart(run.run(), String.join(", ", when), run.conditions());
  }

  private static RunConditions conditions(RunChoice run) {
    return run.notes().map(notes -> notes.setup().conditions()).orElse(RunConditions.NONE);
  }

  private static Map<MarkedSpeed, StopTable> stopTables(RunChoice run, ShutterKind kind) {
    boolean isCurtain =
        kind == ShutterKind.UNKNOWN
            ? run.notes().filter(notes -> notes.setup().shutter().isCurtain()).isPresent()
            : kind.isCurtain();
    return isCurtain ? Map.of() : StopTables.of(run.firings(), run.run().phase());
  }

  private static String sourceWords(List<FiringResult> firings) {
    Set<String> words = new LinkedHashSet<>();
    firings.forEach(firing -> words.add(Sentences.source(firing.key().rigSerial())));
    return String.join("; ", words);
  }

  private static String date(Instant at) {
    return DATE.format(at.atZone(ZoneId.systemDefault()));
  }
}
