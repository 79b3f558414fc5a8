package org.halflight.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.extratest.ExtraTest;
import org.halflight.session.FiringResult;
import org.halflight.session.Source;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.CalibrationStatus;
import org.halflight.verdict.StopTables;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Numbers;
import org.halflight.words.OptionWords;
import org.halflight.words.Sentences;
import org.halflight.words.StageWords;
import org.halflight.words.Words;

/**
 * Fills the page from runs, wherever they are kept: session files and the record come to the same.
 *
 * @param about camera and work
 * @param found the run before work
 * @param left the run after work; at least one of the two is there
 * @param tried what was tried beside the marked speeds, in order
 * @param assemblies in stages, in order
 */
public record PageFromRuns(
    PageAbout about,
    Optional<PageRun> found,
    Optional<PageRun> left,
    List<ExtraTest> tried,
    List<AssemblyStages> assemblies) {
  public PageFromRuns {
    tried = List.copyOf(tried);
    assemblies = List.copyOf(assemblies);
  }

  /** Everything that the page says. */
  public PageInput input(Instant now, ZoneId zone, String version) {
    PageRun last = left.or(() -> found).orElseThrow();
    List<FiringResult> firings =
        Stream.of(found, left)
            .flatMap(Optional::stream)
            .flatMap(run -> run.firings().stream())
            .toList();
    return new PageInput(
        about.camera().isBlank() ? last.setup().camera() : about.camera(),
        about.serial(),
        about.job(),
        about.details(),
        about.shutter().isBlank() && about.kind() != ShutterKind.UNKNOWN
            ? Words.of("desk.shutter", about.kind())
            : about.shutter(),
        about
            .dial()
            .or(() -> Dial.ofKey(last.setup().dial()))
            .map(Dial::speeds)
            .orElse(last.setup().order()),
        found.map(run -> part(run, zone)),
        left.map(run -> part(run, zone)),
        CheckLines.filled(about.lists(), tried).stream()
            .map(line -> about.isCurtain(last) ? line.ofCurtains() : line)
            .toList(),
        Stream.concat(
                tried.stream().map(ExtraTestWords::inShort),
                assemblies.stream().map(StageWords::onPage))
            .toList(),
        about.workDone(),
        about.moved(),
        about.notTested(),
        CalibrationStatus.of(firings),
        about.wet() || last.setup().conditions().isWet(),
        about.isCurtain(last) ? Map.of() : StopTables.of(last.firings(), last.setup().phase()),
        about.fNumber().isPresent()
            ? about.fNumber()
            : Conditions.fNumber(last.setup().conditions()),
        Source.of(firings),
        firings.stream()
            .map(firing -> Sentences.source(firing.key().rigSerial()))
            .distinct()
            .collect(Collectors.joining("; ")),
        now,
        day(now, zone),
        version);
  }

  private RunPart part(PageRun run, ZoneId zone) {
    List<String> when = new ArrayList<>();
    run.beganAt().ifPresent(at -> when.add(day(at, zone)));
    run.setup()
        .conditions()
        .restSeconds()
        .ifPresent(seconds -> when.add(Words.say("page.rested", Numbers.rest(seconds))));
    return new RunPart(
        run.summary(),
        String.join(", ", when),
        OptionWords.noted(run.setup().conditions()),
        OwnersGate.of(found, run));
  }

  private static String day(Instant at, ZoneId zone) {
    return Numbers.date(LocalDate.ofInstant(at, zone));
  }
}
