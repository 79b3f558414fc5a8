package org.halflight.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.extratest.ExtraTest;
import org.halflight.job.Camera;
import org.halflight.job.Correction;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.Run;
import org.halflight.job.SheetEntry;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.profile.RigProfile;
import org.halflight.record.RecordTrouble.Reason;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.PlungerAt;

/**
 * What a workshop keeps for good, in one SQLite file: cameras, visits, work logs, runs, and every
 * firing with its raw edges. docs/record.md describes the file.
 *
 * <p>Raw lines reach the session file first; the record takes a firing when it has settled.
 * Whatever goes wrong with the record, {@link #importSession(Path)} brings in later what it misses.
 * Each write is kept and forced to the disk when its method returns, or not at all.
 *
 * <p>Safe for use by several threads. All methods throw {@link RecordTrouble} when the file or its
 * disk fail, and {@link IllegalArgumentException} for numbers that this record never gave.
 */
public final class WorkshopRecord implements AutoCloseable {
  final Database database;
  private final RecordLock lock;
  private final Clock clock;

  private WorkshopRecord(Database database, RecordLock lock, Clock clock) {
    this.database = database;
    this.lock = lock;
    this.clock = clock;
  }

  /**
   * Opens the record in a file that is there. An older one is brought up after a copy was made
   * beside it.
   *
   * @throws RecordTrouble when there is none, and as {@link #open(Path, Clock)}
   */
  public static WorkshopRecord openKnown(Path file, Clock clock) {
    if (!Files.exists(file)) {
      throw RecordTrouble.of(Reason.MISSING, "record.missing", file);
    }
    return open(file, clock);
  }

  /**
   * Opens the record in a file, or makes it. An older one is brought up after a copy was made
   * beside it.
   *
   * @param file the file; its folder is made when it is not there
   * @param clock says when something was kept
   * @throws RecordTrouble when another copy has it open, it is newer, damaged, of something else or
   *     may not be written to; the file is then as it was
   */
  public static WorkshopRecord open(Path file, Clock clock) {
    return open(file, clock, CommitListener.NONE);
  }

  /**
   * Opens the record like {@link #open(Path, Clock)}.
   *
   * @param listener is told of every write
   */
  public static WorkshopRecord open(Path file, Clock clock, CommitListener listener) {
    return open(file, clock, listener, Migrations.OWN);
  }

  static WorkshopRecord open(
      Path file, Clock clock, CommitListener listener, Migrations migrations) {
    RecordLock lock = RecordLock.acquire(file);
    try {
      return new WorkshopRecord(Database.open(file, migrations, listener), lock, clock);
    } catch (RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  /**
   * Hears of whatever in the record is not what was written: a sentence each, first for all that is
   * known, then for what reading comes upon, on the thread that reads. Such an entry is left out.
   */
  public void onDamage(Consumer<String> hearer) {
    database.damaged().onDamage(hearer);
  }

  /** A sentence for each entry that was found damaged and left out since the record was opened. */
  public List<String> damage() {
    return database.damaged().sentences();
  }

  /** Where the record is. */
  public Path file() {
    return database.file();
  }

  /**
   * Keeps a camera: a new one gets its number, a known one is changed. What a change takes the
   * place of is kept too, see {@link #corrections(Camera)}.
   *
   * @return the camera with its number
   */
  public Camera keep(Camera camera) {
    return database.write(connection -> CameraRows.keep(connection, camera, clock.instant()));
  }

  /** Keeps a visit with its lists, like {@link #keep(Camera)}. */
  public Visit keep(Visit visit) {
    return database.write(connection -> VisitRows.keep(connection, visit, clock.instant()));
  }

  /** A visit that was begun by mistake no longer counts, or does again; nothing of it is lost. */
  public void strike(Id<Visit> visit, boolean off) {
    database.change(connection -> VisitRows.strike(connection, visit, off, clock.instant()));
  }

  /** Keeps an entry of a work log, like {@link #keep(Camera)}. */
  public WorkEntry keep(WorkEntry entry) {
    return database.write(connection -> WorkRows.keep(connection, entry, clock.instant()));
  }

  /** Keeps what is noted of a picture, like {@link #keep(Camera)}. Its file is another matter. */
  public Photo keep(Photo photo) {
    return database.write(connection -> PhotoRows.keep(connection, photo, clock.instant()));
  }

  /** Adds an entry to a strip sheet; entries are never changed. */
  public SheetEntry add(SheetEntry entry) {
    return database.write(connection -> SheetRows.add(connection, entry));
  }

  /**
   * Keeps a run, like {@link #keep(Camera)}. Its session must have begun; see {@link #begin}. A run
   * whose camera is named later is kept again with its visit.
   */
  public Run keep(Run run) {
    return database.write(connection -> RunRows.keep(connection, run));
  }

  /** What was corrected in what is noted of a camera, the oldest first. */
  public List<Correction> corrections(Camera camera) {
    return database.read(connection -> Corrections.of(connection, "camera", camera.id().value()));
  }

  /** What was corrected in what is noted of a visit, the oldest first, then in its lists. */
  public List<Correction> corrections(Visit visit) {
    return database.read(
        connection -> {
          long id = visit.id().value();
          List<Correction> all = new ArrayList<>(Corrections.of(connection, "visit", id));
          all.addAll(Corrections.of(connection, VisitRows.CHECKS, id));
          return all;
        });
  }

  /** What was corrected in an entry of a work log, the oldest first. */
  public List<Correction> corrections(WorkEntry entry) {
    return database.read(
        connection -> Corrections.of(connection, "work_entry", entry.id().value()));
  }

  /** All that was corrected at a visit: camera, visit with its lists, work log, pictures. */
  public List<Correction> allCorrections(Visit visit) {
    List<Correction> all = new ArrayList<>();
    camera(visit.camera()).map(this::corrections).ifPresent(all::addAll);
    all.addAll(corrections(visit));
    workLogWithStruck(visit.id()).forEach(entry -> all.addAll(corrections(entry)));
    photosWithOff(visit.id()).forEach(photo -> all.addAll(corrections(photo)));
    return all;
  }

  /** What was corrected in what is noted of a picture, the oldest first. */
  public List<Correction> corrections(Photo photo) {
    return database.read(
        connection -> Corrections.of(connection, PhotoRows.TABLE, photo.id().value()));
  }

  /** The camera of a number. */
  public Optional<Camera> camera(Id<Camera> id) {
    return database.read(connection -> CameraRows.find(connection, id));
  }

  /** All cameras, the one that came in last first. */
  public List<CameraLine> cameras() {
    return database.read(CameraList::of);
  }

  /**
   * The cameras whose label, serial number or job number holds a text, in capitals or not, the one
   * that came in last first. A blank text finds all.
   */
  public List<CameraLine> search(String text) {
    return cameras().stream().filter(line -> line.holds(text)).toList();
  }

  /** The visit of a number. */
  public Optional<Visit> visit(Id<Visit> id) {
    return database.read(connection -> VisitRows.find(connection, id));
  }

  /** The visits of a camera, the first one first. */
  public List<Visit> visits(Id<Camera> camera) {
    return database.read(connection -> VisitRows.of(connection, camera));
  }

  /** The work log of a visit, in order of time, without what was taken back. */
  public List<WorkEntry> workLog(Id<Visit> visit) {
    return workLogWithStruck(visit).stream().filter(entry -> !entry.isStruck()).toList();
  }

  /** The work log of a visit, in order of time, with what was taken back. */
  public List<WorkEntry> workLogWithStruck(Id<Visit> visit) {
    return database.read(connection -> WorkRows.of(connection, visit));
  }

  /** The entry of a work log of a number. */
  public Optional<WorkEntry> workEntry(Id<WorkEntry> id) {
    return database.read(connection -> WorkRows.find(connection, id));
  }

  /** The pictures of a visit in order of time, without those taken off. */
  public List<Photo> photos(Id<Visit> visit) {
    return photosWithOff(visit).stream().filter(photo -> !photo.isOff()).toList();
  }

  /** The pictures of a visit in order of time, with those taken off. */
  public List<Photo> photosWithOff(Id<Visit> visit) {
    return database.read(connection -> PhotoRows.of(connection, visit));
  }

  /** The picture of a number. */
  public Optional<Photo> photo(Id<Photo> id) {
    return database.read(connection -> PhotoRows.find(connection, id));
  }

  /** What is noted of one picture, at whatever visits. */
  public List<Photo> photosOf(String sha256) {
    return database.read(connection -> PhotoRows.ofSum(connection, sha256));
  }

  /** The visits during which a camera was here at a moment, the one that came in first first. */
  public List<Visit> visitsOpenAt(Instant at) {
    return database.read(connection -> VisitRows.openAt(connection, at));
  }

  /** The strip sheet of a visit. */
  public StripSheet stripSheet(Id<Visit> visit) {
    return database.read(connection -> SheetRows.of(connection, visit));
  }

  /** The run of a number. */
  public Optional<Run> run(Id<Run> id) {
    return database.read(connection -> RunRows.find(connection, id));
  }

  /** The run of a session, counted from 1. */
  public Optional<Run> run(String sessionKey, int ordinal) {
    return database.read(connection -> RunRows.find(connection, sessionKey, ordinal));
  }

  /** The runs of a visit, in order of time. */
  public List<Run> runs(Id<Visit> visit) {
    return database.read(connection -> RunRows.of(connection, visit));
  }

  /** The runs whose camera nobody has named yet. */
  public List<Run> runsWithoutCamera() {
    return database.read(RunRows::withoutCamera);
  }

  /** Notes a session; one that is known already stays as it is. */
  public void begin(SessionStart start) {
    database.write(connection -> SessionRows.idOf(connection, start));
  }

  /** Keeps what a rig said of itself at a start of its board. */
  public void keep(Greeting greeting) {
    database.change(connection -> SessionRows.keep(connection, greeting));
  }

  /** What the rig of a firing said of itself at that start. */
  public Optional<RigStart> rigStart(String rigSerial, long bootCount) {
    return database.read(connection -> SessionRows.rigStart(connection, rigSerial, bootCount));
  }

  /**
   * Keeps what came over the link during a run, in the place of what was kept of it before.
   *
   * @param before statistics of the link when the run began
   * @param after statistics of the same link now
   */
  public void keepLink(Id<Run> run, LinkStatistics before, LinkStatistics after) {
    LinkStatistics during = LinkRows.between(before, after);
    database.change(connection -> LinkRows.keep(connection, run, during));
  }

  /** What came over the link during a run; counters of the rig itself as they stood at its end. */
  public Optional<LinkStatistics> link(Id<Run> run) {
    return database.read(connection -> LinkRows.of(connection, run));
  }

  /**
   * Keeps a firing that has settled, or what was said since about one that is known: not counted,
   * counted after all, another speed. The last word holds.
   *
   * <p>It belongs to the run of its session that it names. A press of the release that was kept
   * without light may get the light that came later.
   *
   * @param sessionKey its session, which must have begun
   */
  public SaveOutcome settle(String sessionKey, FiringResult firing) {
    return settle(sessionKey, List.of(firing)).get(0);
  }

  /**
   * Keeps firings of one session like {@link #settle(String, FiringResult)}, all or none.
   *
   * @return what each came to, in order
   */
  public List<SaveOutcome> settle(String sessionKey, List<FiringResult> firings) {
    return database.write(
        connection -> {
          long sessionId = SessionRows.need(connection, sessionKey);
          List<SaveOutcome> came = new ArrayList<>();
          for (FiringResult firing : firings) {
            came.add(FiringRows.keep(connection, sessionId, firing, false, true, clock.instant()));
          }
          return came;
        });
  }

  /**
   * Keeps readings of the light with the shutter at rest; what is known stays as it is.
   *
   * @param sessionKey their session, which must have begun
   */
  public void keep(String sessionKey, List<LightReading> readings) {
    database.change(
        connection -> {
          long sessionId = SessionRows.need(connection, sessionKey);
          for (LightReading reading : readings) {
            ReadingRows.keep(connection, sessionId, reading, clock.instant());
          }
        });
  }

  /**
   * Keeps the presses of the linkage test and the plunger readings of a session, in place of those
   * kept before: some may have been undone.
   *
   * @param sessionKey their session, which must have begun
   */
  public void keepLinkage(String sessionKey, List<LinkagePress> presses, List<PlungerAt> plungers) {
    database.change(
        connection ->
            PressRows.keep(
                connection,
                SessionRows.need(connection, sessionKey),
                presses,
                plungers,
                clock.instant()));
  }

  /** The readings of the light of a run, in the order in which they were taken. */
  public List<LightReading> readings(Id<Run> run) {
    return database.read(connection -> ReadingRows.of(connection, run));
  }

  /** The firing of a key. */
  public Optional<KeptFiring> firing(FiringKey key) {
    return database.read(
        connection -> FiringRows.find(connection, key).map(FiringRows.Numbered::firing));
  }

  /** The firings of a run, in order of firing. */
  public List<KeptFiring> firings(Id<Run> run) {
    return database.read(connection -> FiringRows.of(connection, run));
  }

  /** All firings of a session, those before its first run too, in order of firing. */
  public List<KeptFiring> firings(String sessionKey) {
    return database.read(connection -> FiringRows.of(connection, sessionKey));
  }

  /**
   * Takes in a session file: whatever of it the record does not know yet. Twice is the same as
   * once.
   *
   * <p>Runs go to the camera that bears their label, which is made when there is none; where
   * several cameras bear it, they wait to be named.
   *
   * @throws org.halflight.trouble.Trouble when the file cannot be read
   */
  public ImportOutcome importSession(Path sessionFile) {
    // Before it is read: what is written meanwhile is taken in the next time.
    long bytes = bytes(sessionFile);
    SessionFile.Contents contents = SessionFile.read(sessionFile);
    Path name = sessionFile.getFileName();
    return importSession(
        contents.events(), name == null ? "" : name.toString(), bytes, contents.damagedLines());
  }

  /**
   * The session files of a folder of which the record does not hold all, by name. Of each only the
   * first event is read, and its length.
   *
   * @throws RecordTrouble when the record cannot be read; files that cannot be read are among those
   *     that are given
   */
  public List<Path> notTakenIn(Path folder) {
    Map<String, Long> taken = database.read(SessionRows::bytesTaken);
    return SessionFolder.files(folder).stream()
        .filter(file -> !SessionFolder.isHeld(file, taken))
        .toList();
  }

  /**
   * Takes in the events of a session like {@link #importSession(Path)}.
   *
   * @param events from the first one of the session on
   * @param fileName name of their file, for people; may be empty
   */
  public ImportOutcome importSession(List<BenchEvent> events, String fileName) {
    return importSession(events, fileName, 0, 0);
  }

  private static long bytes(Path sessionFile) {
    try {
      return Files.size(sessionFile);
    } catch (IOException unknown) {
      // Reading it tells why.
      return 0;
    }
  }

  private ImportOutcome importSession(
      List<BenchEvent> events, String fileName, long bytes, int damagedLines) {
    if (events.isEmpty()) {
      return new ImportOutcome(0, 0, 0, 0, 0, damagedLines, List.of());
    }
    return database.write(
        connection ->
            SessionImport.store(
                connection, events, fileName, bytes, damagedLines, clock.instant()));
  }

  /**
   * What was tried beside the marked speeds in the runs of a visit, in their order; adjusting says
   * nothing of how the camera came or goes back.
   */
  public List<ExtraTest> tried(Id<Visit> visit) {
    return database.read(connection -> Histories.tried(connection, visit));
  }

  /**
   * All that was fired on a camera, each run judged by what it was set up for; see {@link
   * org.halflight.session.RunSetup#tolerance}.
   */
  public Optional<CameraHistory> history(Id<Camera> camera) {
    return database.read(connection -> Histories.of(connection, camera));
  }

  /** The profiles that firings of this record were measured with, the newest of a rig first. */
  public List<RigProfile> profiles() {
    return database.read(ProfileRows::all);
  }

  /** Works out all results again from the raw edges, with today's method. */
  public Recomputed recompute() {
    return new Recomputing(database, Optional.empty()).all();
  }

  /** Works out the results of one camera again from the raw edges, with today's method. */
  public Recomputed recompute(Id<Camera> camera) {
    return new Recomputing(database, Optional.of(camera)).all();
  }

  /**
   * Copies the whole record as it stands into a new file, while work goes on.
   *
   * @throws RecordTrouble when there is a file of that name, or it cannot be written
   */
  public void backUp(Path to) {
    database.beside(connection -> Backup.write(connection, to));
  }

  /**
   * Copies a record as it stands into a new file, whether another program has it open or not.
   *
   * @throws RecordTrouble when the record is not there or none of ours, there is a file of that
   *     name, or it cannot be written
   */
  public static void backUp(Path record, Path to) {
    if (!Files.isRegularFile(record)) {
      throw RecordTrouble.of(Reason.BACKUP, "record.backup.noRecord", record);
    }
    examine(record);
    try (Connection connection = Database.connection(record)) {
      Backup.write(connection, to);
    } catch (SQLException e) {
      throw SqlTrouble.of(record, e);
    }
  }

  /**
   * Puts a backup in the place of this record and goes on with it. The backup stays where it is.
   *
   * @return where the file is that was replaced
   * @throws RecordTrouble when the backup is not there, damaged, newer or of something else; the
   *     record is then as it was
   */
  public Path restore(Path backup) {
    if (!Files.isRegularFile(backup)) {
      throw RecordTrouble.of(Reason.BACKUP, "record.restore.missing", backup);
    }
    examine(backup);
    Path[] aside = new Path[1];
    database.whileClosed(() -> aside[0] = Backup.restore(backup, database.file()));
    return aside[0];
  }

  /**
   * Looks through the whole file.
   *
   * @return what is wrong with it; empty when nothing is
   */
  public List<String> integrityFaults() {
    return database.integrityFaults();
  }

  /**
   * Looks at every entry, and holds firings and readings against session files.
   *
   * @param repair whether to mend what can be mended: from the session files, from raw edges, or as
   *     it stands
   */
  public Verified verify(List<Path> sessionFiles, boolean repair) {
    return new Verifying(this, clock).verify(sessionFiles, repair);
  }

  /** Lets go of the file. May be called twice. */
  @Override
  public void close() {
    database.close();
    lock.close();
  }

  private static void examine(Path backup) {
    try (Connection connection = Database.connection(backup)) {
      if (Database.examine(connection, backup, Migrations.OWN.newest()).version() == 0) {
        throw RecordTrouble.of(Reason.NOT_OURS, "record.notOurs", backup);
      }
    } catch (SQLException e) {
      throw SqlTrouble.of(backup, e);
    }
  }
}
