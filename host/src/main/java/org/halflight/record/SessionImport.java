package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.bench.BenchEvent;
import org.halflight.job.Camera;
import org.halflight.job.CurtainCamera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.speeds.Dial;

/** Takes the events of a session into the record, all or nothing; twice is the same as once. */
final class SessionImport {
  /** A camera is often named only after it was fired: a visit may be a day younger than its run. */
  private static final Duration NAMED_LATER = Duration.ofDays(1);

  private final Connection connection;
  private final SessionStart start;
  private final long sessionId;
  private final Instant now;
  private final Set<Integer> runs = new HashSet<>();

  private SessionImport(Connection connection, SessionStart start, Instant now)
      throws SQLException {
    this.connection = connection;
    this.start = start;
    this.sessionId = SessionRows.idOf(connection, start);
    this.now = now;
  }

  /**
   * Takes events in.
   *
   * @param events of one session from its first on, at least one
   * @param bytes length of the file, 0 where there is none
   * @param damagedLines lines of the file that were no events, for the answer
   */
  static ImportOutcome store(
      Connection connection,
      List<BenchEvent> events,
      String fileName,
      long bytes,
      int damagedLines,
      Instant now)
      throws SQLException {
    return new SessionImport(connection, SessionStart.of(events.get(0), fileName), now)
        .store(events, bytes, damagedLines);
  }

  private ImportOutcome store(List<BenchEvent> events, long bytes, int damagedLines)
      throws SQLException {
    ReducedSession folded = ReducedSession.of(events);
    for (Greeting greeting : folded.greetings()) {
      SessionRows.keep(connection, greeting);
    }
    // A file that is shorter than one taken in before knows less about the firings of both.
    SessionRows.Imported before =
        SessionRows.imported(connection, sessionId).orElse(new SessionRows.Imported(0, 0));
    boolean isLatest = events.size() >= before.events();
    Map<SaveOutcome, Integer> counts = new EnumMap<>(SaveOutcome.class);
    for (FiringResult firing : folded.firings()) {
      needRun(folded, firing.run());
      SaveOutcome came =
          FiringRows.keep(connection, sessionId, firing, folded.isCutOff(firing), isLatest, now);
      counts.merge(came, 1, Integer::sum);
    }
    for (LightReading reading : folded.readings()) {
      needRun(folded, reading.run());
      ReadingRows.keep(connection, sessionId, reading, now);
    }
    List<Id<Run>> known = new ArrayList<>();
    for (int ordinal = 1; ordinal <= folded.runs().size(); ordinal++) {
      Optional<Run> run = RunRows.find(connection, start.key(), ordinal);
      if (run.isPresent()) {
        known.add(run.get().id());
        RunRows.mendNoted(connection, run.get(), folded.runs().get(ordinal - 1).asked(), now);
        if (isLatest) {
          LinkRows.keep(connection, run.get().id(), folded.runs().get(ordinal - 1).link());
        }
      }
    }
    if (isLatest) {
      for (LinkagePress press : folded.presses()) {
        needRun(folded, press.run());
      }
      PressRows.keep(connection, sessionId, folded.presses(), folded.plungers(), now);
      SessionRows.noteTaken(
          connection,
          sessionId,
          new SessionRows.Imported(events.size(), Math.max(bytes, before.bytes())));
    }
    return new ImportOutcome(
        counts.getOrDefault(SaveOutcome.ADDED, 0),
        counts.getOrDefault(SaveOutcome.COMPLETED, 0) + counts.getOrDefault(SaveOutcome.MENDED, 0),
        counts.getOrDefault(SaveOutcome.CHANGED, 0),
        counts.getOrDefault(SaveOutcome.KNOWN, 0),
        counts.getOrDefault(SaveOutcome.DIFFERS, 0),
        damagedLines,
        known);
  }

  /** Makes the run of a firing or a reading when this is the first of it in the record. */
  private void needRun(ReducedSession folded, int ordinal) throws SQLException {
    if (ordinal == 0 || !runs.add(ordinal)) {
      return;
    }
    if (RunRows.find(connection, start.key(), ordinal).isEmpty()) {
      keepNew(folded.runs().get(ordinal - 1), ordinal);
    }
  }

  private void keepNew(ReducedSession.FoldedRun run, int ordinal) throws SQLException {
    RunRows.keep(
        connection,
        new Run(
            Id.ofNew(),
            visit(run.asked(), run.beganAt()),
            start.key(),
            ordinal,
            run.asked(),
            run.beganAt()));
  }

  /** The visit of a run: the camera goes by its label, as long as only one bears that. */
  private Optional<Id<Visit>> visit(RunSetup asked, Optional<Instant> beganAt) throws SQLException {
    if (asked.camera().isBlank()) {
      return Optional.empty();
    }
    List<Camera> named = CameraRows.ofLabel(connection, asked.camera());
    if (named.size() > 1) {
      return Optional.empty();
    }
    Optional<Camera> camera = named.stream().findFirst();
    if (camera.isEmpty()) {
      Optional<Dial> dial = dial(asked);
      if (dial.isEmpty()) {
        // B and T alone, of a dial that nobody has listed: no camera can be made of that.
        return Optional.empty();
      }
      camera = Optional.of(CameraRows.keep(connection, camera(asked, dial.get()), now));
    }
    Id<Camera> id = camera.get().id();
    Instant at = beganAt.orElse(now);
    Optional<Visit> here =
        VisitRows.of(connection, id).stream()
            .filter(visit -> !visit.receivedAt().minus(NAMED_LATER).isAfter(at))
            .filter(visit -> visit.handedBackAt().filter(at::isAfter).isEmpty())
            .max(Comparator.comparing(Visit::receivedAt));
    Visit visit =
        here.isPresent() ? here.get() : VisitRows.keep(connection, Visit.begins(id, "", at), now);
    return Optional.of(visit.id());
  }

  /** A camera of which no more is known than its run says. */
  private static Camera camera(RunSetup asked, Dial dial) {
    return new Camera(
            Id.ofNew(),
            asked.camera(),
            "",
            asked.shutter().kind(),
            dial,
            OptionalDouble.empty(),
            asked.conditions().get(RunOption.FRAME),
            "")
        .withCurtains(
            new CurtainCamera(
                asked.criteria().get(RunOption.OWN_TRAVEL),
                asked.criteria().get(RunOption.X_SPEED),
                asked.criteria().get(RunOption.ADJUSTERS)));
  }

  private static Optional<Dial> dial(RunSetup asked) {
    return Dial.find(asked.dial())
        .or(
            () ->
                Dial.ofKey(asked.dial())
                    .or(() -> Dial.custom(CameraRows.speeds(asked.order())))
                    .map(list -> new Dial(Dial.CUSTOM, list.speeds(), asked.reference())));
  }
}
