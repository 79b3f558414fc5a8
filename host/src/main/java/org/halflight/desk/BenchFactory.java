package org.halflight.desk;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.desk.view.BenchModel;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.Cue;
import org.halflight.link.ChosenPort;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.record.DataFolder;
import org.halflight.record.ProfileStore;
import org.halflight.rig.RigSelector;
import org.halflight.rig.RigWatch;
import org.halflight.session.Source;
import org.halflight.workflow.BenchLight;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.RigUpkeep;
import org.halflight.workflow.RunActions;

/** Begins sessions at the bench, on a rig or on the practice rig. */
final class BenchFactory {
  private static final DateTimeFormatter FILE_NAME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss-SSS").withZone(ZoneOffset.UTC);

  private final DeskSurroundings surroundings;
  private final Consumer<BenchChange> changes;

  /** One invented camera: what happened to it stays while the rig is on the bench. */
  private Optional<PracticeOperator> camera = Optional.empty();

  /** Benches that are not changed for each other. */
  BenchFactory(DeskSurroundings surroundings) {
    this(surroundings, change -> {});
  }

  /**
   * @param changes takes, on any thread, the wish for the other bench
   */
  BenchFactory(DeskSurroundings surroundings, Consumer<BenchChange> changes) {
    this.surroundings = surroundings;
    this.changes = changes;
  }

  /** Whether a port looks like a board, or was chosen; none is opened for that. */
  boolean isBoardThere() {
    try {
      return ports().candidates().stream().anyMatch(PortCandidate::likelyBoard);
    } catch (LinkRefusedException noPorts) {
      return false;
    }
  }

  private ChosenPort ports() {
    ChosenPort ports = new ChosenPort(surroundings.ports().get());
    ports.choose(remembered().path());
    return ports;
  }

  private RememberedPort remembered() {
    return new RememberedPort(surroundings.folder());
  }

  /** Begins a session on the practice rig, or goes on with one that was interrupted. */
  BenchLoop practice(Consumer<BenchView> window, Consumer<Cue> sounds, Archive archive) {
    return begin(first(Source.PRACTICE), window, sounds, archive);
  }

  /** Begins a session on a rig, or goes on with one, and looks for the rig. */
  BenchLoop rig(Consumer<BenchView> window, Consumer<Cue> sounds, Archive archive) {
    return begin(first(Source.RIG), window, sounds, archive);
  }

  private static BenchChange first(Source source) {
    return new BenchChange(source, false, false, Optional.empty());
  }

  private PracticeOperator camera() {
    if (camera.isEmpty()) {
      camera =
          Optional.of(
              PracticeOperator.paced(
                  surroundings.seed(), surroundings.nanos(), surroundings.clock().instant()));
    }
    return camera.get();
  }

  /**
   * Begins a session on a bench, or goes on with one that was interrupted.
   *
   * @param change which bench, why, and what is said of it
   */
  BenchLoop begin(
      BenchChange change, Consumer<BenchView> window, Consumer<Cue> sounds, Archive archive) {
    Source source = change.to();
    boolean practice = source == Source.PRACTICE;
    Optional<PracticeOperator> camera = practice ? Optional.of(camera()) : Optional.empty();
    ChosenPort real = ports();
    Ports ports = practice ? camera().ports() : real;
    Optional<InterruptedRun> interrupted =
        InterruptedRun.find(surroundings.folder().resolve(DataFolder.SESSIONS), source);
    BenchEvent.Mark begins =
        Marks.begins(
            surroundings.version(),
            OffsetDateTime.now(surroundings.clock()),
            interrupted.isPresent() ? Optional.empty() : Optional.of(UUID.randomUUID().toString()));
    Workbench workbench =
        interrupted.isPresent()
            ? resume(interrupted.get().file(), begins)
            : Workbench.begin(SessionFile.create(file(source)), surroundings.nanos(), begins);
    LiveFeed feed = new LiveFeed(ports, RigSelector.any(), workbench::now);
    ProfileStore shelf = new ProfileStore(surroundings.folder());
    OptionalInt days = OptionalInt.of(DeskSettings.of(surroundings.folder()).profileDays());
    BenchDriver driver =
        new BenchDriver(
                workbench,
                feed,
                (serial, on) -> shelf.inUse(serial, on, days),
                LocalDate.ofInstant(surroundings.clock().instant(), ZoneOffset.UTC))
            .watchesClock(surroundings.hostClock());
    CameraOperator operator = camera.isPresent() ? camera.get() : CameraOperator.PERSON;
    BenchLight light = new BenchLight(driver, operator);
    RunActions run = new RunActions(driver, operator, light);
    BenchModel model = new BenchModel(driver, light, run.linkage(), source);
    if (interrupted.isPresent()) {
      archive.sessionGoesOn(interrupted.get().first(), workbench.path());
    } else {
      archive.sessionBegan(begins, workbench.path());
    }
    interrupted.map(InterruptedRun::said).or(change::said).ifPresent(model::say);
    RigActions rig =
        new RigActions(
            driver,
            model.rig(),
            new RigUpkeep(surroundings.folder()),
            days,
            () -> LocalDate.ofInstant(surroundings.clock().instant(), ZoneOffset.UTC),
            operator,
            camera.isPresent()
                ? Optional.empty()
                : Optional.of(new BoardUpload(model.rig(), feed, ports, surroundings.nanos())));
    ExecutorService elsewhere =
        Executors.newSingleThreadExecutor(
            work -> {
              Thread thread = new Thread(work, "halflight-ports");
              thread.setDaemon(true);
              return thread;
            });
    PortActions portActions =
        new PortActions(
            source,
            driver,
            model,
            feed,
            real,
            remembered(),
            elsewhere,
            practice
                ? Optional.of(new RigWatch(real, surroundings.nanos(), elsewhere))
                : Optional.empty(),
            change.byPerson(),
            changes);
    BenchActions hands =
        new BenchActions(driver, model, camera, archive, rig, light, run, portActions);
    BenchLoop loop =
        new BenchLoop(
            source, feed, driver, model, hands, window, sounds, archive, surroundings.faults());
    real.onGone(portActions::gone);
    return loop;
  }

  private Workbench resume(Path path, BenchEvent.Mark begins) {
    SessionFile file = SessionFile.resume(path);
    return Workbench.resume(file, surroundings.nanos(), file.before(), begins);
  }

  private Path file(Source source) {
    String name = FILE_NAME.format(surroundings.clock().instant());
    return surroundings
        .folder()
        .resolve(DataFolder.SESSIONS)
        .resolve(name + InterruptedRun.ending(source));
  }
}
