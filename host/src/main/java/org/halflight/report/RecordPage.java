package org.halflight.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.exposure.StopTable;
import org.halflight.extratest.ExtraTest;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Finding;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.record.CameraHistory;
import org.halflight.record.RunHistory;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CalibrationStatus;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.RunsBehind;
import org.halflight.verdict.StopTables;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Numbers;
import org.halflight.words.OptionWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** Fills the page with the last visit of a camera, as the record has it. */
public final class RecordPage {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  private final Camera camera;
  private final Visit visit;
  private final Optional<RunHistory> found;
  private final Optional<RunHistory> left;
  private final List<RunHistory> here;

  private RecordPage(
      Camera camera,
      Visit visit,
      Optional<RunHistory> found,
      Optional<RunHistory> left,
      List<RunHistory> here) {
    this.camera = camera;
    this.here = here;
    this.visit = visit;
    this.found = found;
    this.left = left;
  }

  /** The page of a camera; empty when no run as found or as left has a speed that was fired. */
  public static Optional<RecordPage> of(CameraHistory history) {
    List<RunHistory> told =
        history.runs().stream()
            .filter(run -> !run.speeds().isEmpty() && phase(run) != Phase.ADJUSTING)
            .toList();
    Optional<Visit> last =
        told.stream().map(RunHistory::visit).max(Comparator.comparing(Visit::receivedAt));
    return last.map(
        visit -> {
          List<RunHistory> here =
              told.stream().filter(run -> run.visit().id().equals(visit.id())).toList();
          return new RecordPage(
              history.camera(),
              visit,
              here.stream().filter(run -> phase(run) == Phase.AS_FOUND).findFirst(),
              here.stream()
                  .filter(run -> phase(run) == Phase.AS_LEFT)
                  .reduce((earlier, later) -> later),
              history.runs().stream()
                  .filter(run -> run.visit().id().equals(visit.id()))
                  .filter(run -> phase(run) != Phase.ADJUSTING)
                  .toList());
        });
  }

  /** The visit that the page is of. */
  public Visit visit() {
    return visit;
  }

  /**
   * Everything that the page says.
   *
   * @param workLog of the visit
   * @param firingsOf the firings of a run
   */
  public PageInput input(
      List<WorkEntry> workLog,
      Function<Id<Run>, List<FiringResult>> firingsOf,
      Instant now,
      ZoneId zone,
      String version) {
    RunHistory last = left.or(() -> found).orElseThrow();
    List<FiringResult> firings = firingsOf.apply(last.run().id());
    Map<MarkedSpeed, StopTable> stopTables =
        camera.shutter().isCurtain(camera.dial().name(), last.run().asked().dial())
            ? Map.of()
            : StopTables.of(firings, phase(last));
    OptionalDouble stop = Conditions.fNumber(last.run().asked().conditions());
    List<FiringResult> told =
        Stream.of(found, left)
            .flatMap(Optional::stream)
            .flatMap(run -> firingsOf.apply(run.run().id()).stream())
            .toList();
    return new PageInput(
        camera.label(),
        camera.serialNumber(),
        visit.jobNumber(),
        Words.of("desk.shutter", camera.shutter()),
        camera.dial().speeds(),
        found.map(run -> part(run, zone)),
        left.map(run -> part(run, zone)),
        CheckLines.filled(lists(), tried()),
        tried().stream().map(ExtraTestWords::inShort).toList(),
        workLog.stream().map(RecordPage::work).toList(),
        List.of(),
        CalibrationStatus.of(told),
        Conditions.isWet(last.run().asked().conditions()),
        stopTables,
        stop,
        Source.of(firings),
        firings.stream()
            .map(firing -> Sentences.source(firing.key().rigSerial()))
            .distinct()
            .collect(Collectors.joining("; ")),
        now,
        day(now, zone),
        version);
  }

  private static Phase phase(RunHistory run) {
    return run.run().asked().phase();
  }

  private static RunPart part(RunHistory run, ZoneId zone) {
    List<String> when = new ArrayList<>();
    run.run().beganAt().ifPresent(at -> when.add(day(at, zone)));
    run.run()
        .asked()
        .conditions()
        .restSeconds()
        .ifPresent(seconds -> when.add(Words.say("page.rested", Numbers.rest(seconds))));
    return new RunPart(
        new RunSummary(phase(run), run.speeds(), RunsBehind.ofRigs(run.rigs())),
        String.join(", ", when),
        OptionWords.noted(run.run().asked().conditions()));
  }

  private List<ExtraTest> tried() {
    return here.stream().flatMap(run -> run.tried().stream()).toList();
  }

  private List<CheckLine> lists() {
    return Arrays.stream(CheckItem.values())
        .map(
            item -> {
              Finding intake = visit.intake().of(item);
              Finding handBack = visit.handBack().of(item);
              return new CheckLine(
                  Optional.of(item),
                  ExtraTestWords.item(item),
                  Optional.of(state(intake.state())),
                  Optional.of(state(handBack.state())),
                  handBack.note().isBlank() ? intake.note() : handBack.note());
            })
        .toList();
  }

  private static CheckLine.State state(CheckState state) {
    return switch (state) {
      case OK -> CheckLine.State.OK;
      case FAULT -> CheckLine.State.FAULT;
      case NOT_TESTED -> CheckLine.State.NOT_TESTED;
    };
  }

  private static String work(WorkEntry entry) {
    String text =
        entry
            .measured()
            .map(m -> Words.say("desk.log.withValue", entry.text(), m.value(), m.unit()))
            .orElse(entry.text());
    return Words.say("page.work", Words.of("desk.work", entry.kind()), text);
  }

  private static String day(Instant at, ZoneId zone) {
    return DATE.format(at.atZone(zone));
  }
}
