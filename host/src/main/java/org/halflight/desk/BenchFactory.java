package org.halflight.desk;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
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
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.record.DataFolder;
import org.halflight.record.ProfileStore;
import org.halflight.rig.RigSelector;
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

  BenchFactory(DeskSurroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** Whether a port looks like a board; none is opened for that. */
  boolean isBoardThere() {
    try {
      return surroundings.ports().get().candidates().stream().anyMatch(PortCandidate::likelyBoard);
    } catch (LinkRefusedException noPorts) {
      return false;
    }
  }

  /** Begins a session on the practice rig, or goes on with one that was interrupted. */
  BenchLoop practice(Consumer<BenchView> window, Consumer<Cue> sounds, Archive archive) {
    PracticeOperator camera =
        PracticeOperator.paced(
            surroundings.seed(), surroundings.nanos(), surroundings.clock().instant());
    return begin(camera.ports(), Source.PRACTICE, Optional.of(camera), window, sounds, archive);
  }

  /** Begins a session on a rig, or goes on with one, and looks for the rig. */
  BenchLoop rig(Consumer<BenchView> window, Consumer<Cue> sounds, Archive archive) {
    return begin(surroundings.ports().get(), Source.RIG, Optional.empty(), window, sounds, archive);
  }

  private BenchLoop begin(
      Ports ports,
      Source source,
      Optional<PracticeOperator> camera,
      Consumer<BenchView> window,
      Consumer<Cue> sounds,
      Archive archive) {
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
      model.say(interrupted.get().said());
    } else {
      archive.sessionBegan(begins, workbench.path());
    }
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
    BenchActions hands = new BenchActions(driver, model, camera, archive, rig, light, run);
    return new BenchLoop(
        feed, driver, model, hands, window, sounds, archive, surroundings.faults());
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
