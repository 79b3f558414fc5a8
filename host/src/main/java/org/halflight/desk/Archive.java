package org.halflight.desk;

import static org.halflight.desk.view.Message.Kind.TROUBLE;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import org.halflight.bench.BenchEvent;
import org.halflight.desk.view.Message;
import org.halflight.files.FaultLog;
import org.halflight.files.SettingsFile;
import org.halflight.job.Id;
import org.halflight.job.Photo;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.photo.PhotoInbox;
import org.halflight.record.DataFolder;
import org.halflight.record.Edit;
import org.halflight.record.SessionFolder;
import org.halflight.record.SessionStart;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.AdjustedAt;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.PlungerAt;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.words.PhotoWords;
import org.halflight.words.Words;
import org.halflight.workflow.PhotoTaking;

/**
 * The record, on a thread of its own: neither the bench nor the window waits for the disk. What the
 * record misses because of trouble stands in the session file and is taken in at the next start.
 * Its methods may be called from any thread.
 */
final class Archive implements AutoCloseable {
  private static final long CLOSE_WAIT_SECONDS = 20;
  private static final int LOOK_MILLIS = 3000;

  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(work -> new Thread(work, "halflight-record"));
  private final DeskSurroundings surroundings;
  private final Consumer<Message> says;
  private final FaultLog faults;
  private volatile Consumer<Optional<Visit>> onVisit = here -> {};
  private volatile Consumer<String> onPhotos = question -> {};
  private final AtomicBoolean isToLook = new AtomicBoolean();
  private final Timer looks = new Timer(LOOK_MILLIS, event -> lookAtInbox());

  // All below on the thread of the record only.
  private Optional<WorkshopRecord> record = Optional.empty();
  private Optional<SessionStart> session = Optional.empty();
  private Optional<Path> sessionFile = Optional.empty();
  private Optional<Id<Visit>> visit = Optional.empty();
  private final Map<Source, Id<Visit>> left = new EnumMap<>(Source.class);
  private final Map<Integer, Id<Run>> runs = new HashMap<>();
  private final PhotoTaking photos;
  private String question = "";

  /** The runs of this session that were a visit's already when it came on the bench. */
  private final Map<Id<Visit>, List<Run>> before = new HashMap<>();

  /**
   * @param says takes what goes wrong, on any thread
   */
  Archive(DeskSurroundings surroundings, Consumer<Message> says) {
    this.surroundings = surroundings;
    this.says = says;
    this.faults = surroundings.faults();
    this.photos = new PhotoTaking(surroundings.clock().getZone());
    inbox(PhotoInbox.chosen(SettingsFile.read(surroundings.folder())));
    looks.start();
    thread.execute(
        () ->
            guarded(
                () -> {
                  WorkshopRecord opened =
                      WorkshopRecord.open(
                          surroundings.folder().resolve(DataFolder.RECORD_FILE),
                          surroundings.clock());
                  record = Optional.of(opened);
                  opened.onDamage(
                      sentence -> says.accept(new Message(Message.Kind.TROUBLE, sentence)));
                }));
  }

  /** A session begins with this event, in this file. */
  void sessionBegan(BenchEvent first, Path file) {
    thread.execute(
        () -> {
          importMissing(file);
          runs.clear();
          session = Optional.of(SessionStart.of(first, String.valueOf(file.getFileName())));
          sessionFile = Optional.of(file);
          onRecord(known -> known.begin(session.orElseThrow()));
        });
  }

  /** A session that was interrupted goes on: its runs are known, or are taken in now. */
  void sessionGoesOn(BenchEvent first, Path file) {
    thread.execute(
        () -> {
          importMissing(file);
          runs.clear();
          SessionStart start = SessionStart.of(first, String.valueOf(file.getFileName()));
          session = Optional.of(start);
          sessionFile = Optional.of(file);
          onRecord(
              known -> {
                known.importSession(file);
                for (int ordinal = 1; known.run(start.key(), ordinal).isPresent(); ordinal++) {
                  Run run = known.run(start.key(), ordinal).get();
                  runs.put(ordinal, run.id());
                  visit = run.visit().or(() -> visit);
                }
                visit.flatMap(known::visit).ifPresent(this::onBench);
              });
        });
  }

  /**
   * Hears, on the window's own thread, of a visit that goes on, or that another bench comes on
   * which no camera is.
   */
  void onVisit(Consumer<Optional<Visit>> hearer) {
    onVisit = hearer;
  }

  private void onBench(Visit here) {
    SwingUtilities.invokeLater(() -> onVisit.accept(Optional.of(here)));
  }

  /**
   * The bench of a source is left, until it is taken again.
   *
   * @param keepsVisit whether the camera goes along to the other bench
   */
  void benchLeft(Source source, boolean keepsVisit) {
    thread.execute(
        () -> {
          left.remove(source);
          if (!keepsVisit) {
            visit.ifPresent(here -> left.put(source, here));
            visit = Optional.empty();
            SwingUtilities.invokeLater(() -> onVisit.accept(Optional.empty()));
          }
        });
  }

  /** The bench of a source is taken again: so is the visit it was for. */
  void benchTaken(Source source) {
    thread.execute(
        () -> {
          visit = visit.or(() -> Optional.ofNullable(left.get(source)));
          onRecord(known -> visit.flatMap(known::visit).ifPresent(this::onBench));
        });
  }

  /**
   * A run begins. The same run that goes on is known already; one whose beginning was undone may
   * begin otherwise.
   */
  void runBegan(int ordinal, RunSetup setup) {
    Instant now = surroundings.clock().instant();
    thread.execute(
        () ->
            onRecord(
                known -> {
                  Optional<Run> there = Optional.ofNullable(runs.get(ordinal)).flatMap(known::run);
                  if (there.filter(run -> isOtherwise(run, setup)).isPresent()) {
                    Run run = there.get();
                    known.keep(
                        new Run(
                            run.id(),
                            run.visit(),
                            run.sessionKey(),
                            ordinal,
                            setup,
                            run.beganAt()));
                  } else if (there.isEmpty()) {
                    Run run =
                        new Run(
                            Id.ofNew(),
                            visit,
                            session.orElseThrow().key(),
                            ordinal,
                            setup,
                            Optional.of(now));
                    runs.put(ordinal, known.keep(run).id());
                  }
                }));
  }

  /** Whether a run was set up for something else; what was noted of it may have been put right. */
  private static boolean isOtherwise(Run run, RunSetup setup) {
    return !run.asked().withConditions(setup.conditions()).equals(setup)
        || (setup.isStage() && !run.asked().assembly().equals(setup.assembly()));
  }

  /** There are news of the bench. */
  void happened(List<SessionEvent> news) {
    List<FiringResult> firings =
        news.stream()
            .flatMap(
                each ->
                    each instanceof SessionEvent.OfFiring of
                        ? Stream.of(of.result())
                        : Stream.empty())
            .toList();
    List<LightReading> readings =
        news.stream()
            .flatMap(
                each ->
                    each instanceof SessionEvent.LightWasRead read
                        ? Stream.of(read.reading())
                        : Stream.empty())
            .toList();
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.Undone undone
          && undone.act() instanceof SessionInput.Adjusted adjusted) {
        thread.execute(() -> turnedBack(adjusted.words(), true));
      } else if (each instanceof SessionEvent.Redone redone
          && redone.act() instanceof SessionInput.Adjusted adjusted) {
        thread.execute(() -> turnedBack(adjusted.words(), false));
      }
    }
    if (!readings.isEmpty()) {
      thread.execute(() -> onRecord(known -> known.keep(session.orElseThrow().key(), readings)));
    }
    if (!firings.isEmpty()) {
      thread.execute(() -> onRecord(known -> known.settle(session.orElseThrow().key(), firings)));
    }
  }

  /** These are the presses of the linkage test and the plunger readings of the session now. */
  void linkage(List<LinkagePress> presses, List<PlungerAt> plungers) {
    thread.execute(
        () -> onRecord(known -> known.keepLinkage(session.orElseThrow().key(), presses, plungers)));
  }

  /** An adjustment was marked. */
  void adjusted(AdjustedAt mark) {
    Instant now = surroundings.clock().instant();
    thread.execute(
        () ->
            onRecord(
                known ->
                    visit.ifPresent(
                        here ->
                            known.keep(
                                new WorkEntry(
                                        Id.ofNew(),
                                        here,
                                        now,
                                        mark.isFound() ? WorkKind.FOUND : WorkKind.ADJUSTED,
                                        mark.words(),
                                        Optional.empty(),
                                        Optional.ofNullable(runs.get(mark.run())),
                                        mark.isFound()
                                            ? OptionalInt.empty()
                                            : OptionalInt.of(mark.afterFiring()))
                                    .counted()))));
  }

  /** Of an adjustment that is undone the line in the work log is struck, and comes back with it. */
  private void turnedBack(String words, boolean off) {
    onRecord(
        known ->
            visit.stream()
                .flatMap(here -> known.workLogWithStruck(here).stream())
                .filter(
                    entry -> entry.kind() == WorkKind.ADJUSTED || entry.kind() == WorkKind.FOUND)
                .filter(entry -> entry.isStruck() != off)
                .filter(entry -> entry.text().equals(words))
                .filter(entry -> entry.run().filter(runs::containsValue).isPresent())
                // The last one done is undone first, and the last one undone comes back first.
                .reduce((first, second) -> off ? second : first)
                .ifPresent(entry -> known.keep(entry.struck(off))));
  }

  /** Pictures arrive in another folder from now on; empty for none. */
  void inbox(String folder) {
    thread.execute(() -> guarded(() -> photos.inbox(folder)));
  }

  /**
   * Hears, on the window's own thread, that pictures have joined a visit or wait for an answer.
   *
   * @param hearer takes the question of those that wait; empty for none
   */
  void onPhotos(Consumer<String> hearer) {
    onPhotos = hearer;
  }

  /** Looks for pictures that have arrived; a look that has not ended is not begun again. */
  void lookAtInbox() {
    if (!isToLook.compareAndSet(false, true)) {
      return;
    }
    Instant now = surroundings.clock().instant();
    thread.execute(
        () -> {
          isToLook.set(false);
          onRecord(
              known -> {
                PhotoTaking.Look look = photos.look(known, now);
                look.troubles().forEach(each -> says.accept(new Message(TROUBLE, each)));
                sayJoined(known, look.joined());
                tellPhotos(!look.joined().isEmpty());
              });
        });
  }

  private void sayJoined(WorkshopRecord known, List<Photo> joined) {
    Map<Id<Visit>, List<String>> names = new LinkedHashMap<>();
    joined.forEach(
        each -> names.computeIfAbsent(each.visit(), its -> new ArrayList<>()).add(each.name()));
    names.forEach(
        (its, all) ->
            known
                .visit(its)
                .flatMap(of -> known.camera(of.camera()))
                .ifPresent(
                    camera ->
                        says.accept(
                            new Message(
                                Message.Kind.NEWS, PhotoWords.joined(all, camera.label())))));
  }

  private void tellPhotos(boolean isNew) {
    String now = photos.question().orElse("");
    if (isNew || !now.equals(question)) {
      question = now;
      SwingUtilities.invokeLater(() -> onPhotos.accept(now));
    }
  }

  /** Pictures that a person chose join a visit, and are left where they are. */
  Edit adding(Id<Visit> here, List<Path> files) {
    Instant now = surroundings.clock().instant();
    return known ->
        added(
            files.stream().map(file -> () -> photos.add(known, here, photos.candidate(file, now))));
  }

  /** Those that wait join a visit. */
  Edit addingWaiting(Id<Visit> here) {
    return known ->
        added(photos.waiting().stream().map(each -> () -> photos.add(known, here, each)));
  }

  /** One that cannot be added keeps no other out; gives what takes the others off again. */
  private Edit added(Stream<Supplier<Optional<Photo>>> each) {
    List<Edit> off = new ArrayList<>();
    each.forEach(
        one -> guarded(() -> one.get().ifPresent(photo -> off.add(Edit.of(photo.off(true))))));
    tellPhotos(true);
    return off.stream().reduce(Edit.NONE, Edit::then);
  }

  /** Those that wait join no visit. */
  void leaveWaiting() {
    thread.execute(
        () -> {
          photos.leaveWaiting();
          tellPhotos(false);
        });
  }

  /** The runs of this session, those before too, and those to come belong to a visit. */
  void isFor(Visit now) {
    Instant at = surroundings.clock().instant();
    thread.execute(
        () -> {
          visit = Optional.of(now.id());
          onRecord(known -> before.putIfAbsent(now.id(), runsOf(known, now.id())));
          photos.onBench(visit, at);
          onRecord(
              known ->
                  runs.values().stream()
                      .flatMap(id -> known.run(id).stream())
                      .filter(run -> run.visit().isEmpty())
                      .forEach(run -> known.keep(run.withVisit(now.id()))));
        });
  }

  /**
   * It was a mistake: the runs that came to a visit since it is on the bench are nobody's again.
   */
  void letsGo(Id<Visit> gone) {
    thread.execute(
        () ->
            onRecord(
                known -> {
                  List<Run> its = new ArrayList<>(runsOf(known, gone));
                  its.removeAll(before.getOrDefault(gone, List.of()));
                  its.forEach(run -> known.keep(run.withoutVisit()));
                  before.remove(gone);
                }));
  }

  /** The runs of this session that belong to a visit. */
  private List<Run> runsOf(WorkshopRecord known, Id<Visit> which) {
    return runs.values().stream()
        .flatMap(id -> known.run(id).stream())
        .filter(run -> run.visit().equals(Optional.of(which)))
        .toList();
  }

  /** Another camera comes on the bench: runs to come are of nobody until it is named. */
  void isForNobody() {
    Instant at = surroundings.clock().instant();
    thread.execute(
        () -> {
          visit = Optional.empty();
          photos.onBench(visit, at);
        });
  }

  /**
   * Reads or keeps something.
   *
   * @param answer takes what came of it, on the window's own thread; not called after trouble
   */
  <T> void ask(Function<WorkshopRecord, T> question, Consumer<T> answer) {
    thread.execute(
        () ->
            onRecord(
                known -> {
                  T found = question.apply(known);
                  SwingUtilities.invokeLater(() -> answer.accept(found));
                }));
  }

  /**
   * Changes what is noted.
   *
   * @param back takes what takes it back, on the window's own thread; not called after trouble
   */
  void change(Edit edit, Consumer<Edit> back) {
    ask(edit::on, back);
  }

  /** Ends when everything is kept. */
  @Override
  public void close() {
    looks.stop();
    thread.execute(
        () -> {
          // Whatever was undone or missed on the way: in the end the record says what the file
          // says.
          sessionFile.ifPresent(file -> onRecord(known -> known.importSession(file)));
          record.ifPresent(known -> guarded(known::close));
        });
    thread.shutdown();
    try {
      if (!thread.awaitTermination(CLOSE_WAIT_SECONDS, TimeUnit.SECONDS)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** Sessions that ended before the record had all of them, or that a lost record held. */
  private void importMissing(Path current) {
    Path folder = Objects.requireNonNull(current.toAbsolutePath().getParent());
    SessionFolder.removeOldMarks(folder);
    onRecord(
        known -> {
          for (Path file : known.notTakenIn(folder)) {
            if (!file.equals(current.toAbsolutePath())) {
              guarded(() -> importSession(known, file));
            }
          }
        });
  }

  /** Whatever is in an old file: it keeps no other out. */
  private static void importSession(WorkshopRecord known, Path file) {
    try {
      known.importSession(file);
    } catch (Trouble trouble) {
      throw trouble;
    } catch (RuntimeException unforeseen) {
      throw new Trouble(Words.say("record.notTakenIn", file, unforeseen), unforeseen);
    }
  }

  private void onRecord(Consumer<WorkshopRecord> doing) {
    record.ifPresent(known -> guarded(() -> doing.accept(known)));
  }

  private void guarded(Runnable doing) {
    try {
      doing.run();
    } catch (Trouble trouble) {
      says.accept(new Message(Message.Kind.TROUBLE, trouble.getMessage()));
    } catch (RuntimeException | Error fault) {
      says.accept(
          new Message(Message.Kind.TROUBLE, faults.goesOn(fault, Words.say("fault.at.record"))));
    }
  }
}
