package org.halflight.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.Finding;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.record.CameraHistory;
import org.halflight.record.RunHistory;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.RunsBehind;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.MovedWords;
import org.halflight.words.Numbers;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;

/** Fills the page with the last visit of a camera, as the record has it. */
public final class RecordPage {
  private final Camera camera;
  private final Visit visit;
  private final Optional<RunHistory> found;
  private final Optional<RunHistory> left;
  private final List<RunHistory> here;
  private final List<AssemblyStages> assemblies;
  private final Optional<CameraHistory.Moved> moved;

  private RecordPage(
      Camera camera,
      Visit visit,
      Optional<RunHistory> found,
      Optional<RunHistory> left,
      List<RunHistory> here,
      List<AssemblyStages> assemblies,
      Optional<CameraHistory.Moved> moved) {
    this.camera = camera;
    this.assemblies = assemblies;
    this.moved = moved;
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
                  .toList(),
              history.assemblies(visit.id()),
              history.moved(visit.id()));
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
   * @param sheet its strip sheet, of which what was measured by hand is said
   * @param firingsOf the firings of a run
   */
  public PageInput input(
      List<WorkEntry> workLog,
      StripSheet sheet,
      Function<Id<Run>, List<FiringResult>> firingsOf,
      Instant now,
      ZoneId zone,
      String version) {
    PageAbout about =
        new PageAbout(
            camera.label(),
            camera.serialNumber(),
            visit.jobNumber(),
            camera.details().and(visit.details()),
            "",
            camera.shutter(),
            Optional.of(camera.dial()),
            lists(),
            Stream.concat(work(workLog), SheetWords.byHand(sheet).stream()).toList(),
            moved.map(its -> moved(its, zone)).orElse(""),
            List.of(),
            false,
            OptionalDouble.empty());
    return new PageFromRuns(
            about,
            found.map(run -> run(run, firingsOf)),
            left.map(run -> run(run, firingsOf)),
            here.stream().flatMap(run -> run.tried().stream()).toList(),
            assemblies)
        .input(now, zone, version)
        .with(
            workLog.stream()
                .filter(entry -> entry.turn().isPresent())
                .map(RecordPage::work)
                .toList());
  }

  /** What the owner reads: what was turned by how much is for the bench. */
  private static Stream<String> work(List<WorkEntry> workLog) {
    boolean turned =
        workLog.stream()
            .flatMap(entry -> entry.turn().stream())
            .anyMatch(turn -> !turn.isAsFound());
    return Stream.concat(
        workLog.stream().filter(entry -> entry.turn().isEmpty()).map(RecordPage::work),
        turned ? Stream.of(Words.say("page.owner.curtainsSet")) : Stream.empty());
  }

  private static String moved(CameraHistory.Moved moved, ZoneId zone) {
    return MovedWords.line(
        moved.since(), Numbers.date(LocalDate.ofInstant(moved.last().receivedAt(), zone)));
  }

  private static Phase phase(RunHistory run) {
    return run.run().asked().phase();
  }

  private static PageRun run(RunHistory run, Function<Id<Run>, List<FiringResult>> firingsOf) {
    return new PageRun(
        run.run().asked(),
        run.run().beganAt(),
        new RunSummary(phase(run), run.speeds(), RunsBehind.ofRigs(run.rigs())),
        firingsOf.apply(run.run().id()));
  }

  private List<CheckLine> lists() {
    boolean curtains = camera.shutter().isCurtain(camera.dial().name());
    return Arrays.stream(CheckItem.values())
        .filter(item -> !curtains || item.isOfCurtains())
        .map(
            item -> {
              Finding intake = visit.intake().of(item);
              Finding handBack = visit.handBack().of(item);
              return new CheckLine(
                  Optional.of(item),
                  ExtraTestWords.item(item),
                  Optional.of(intake.state()),
                  Optional.of(handBack.state()),
                  handBack.note().isBlank() ? intake.note() : handBack.note());
            })
        .toList();
  }

  private static String work(WorkEntry entry) {
    return Words.say("page.work", Words.of("desk.work", entry.kind()), WorkWords.text(entry));
  }
}
