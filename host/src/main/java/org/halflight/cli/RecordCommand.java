package org.halflight.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.export.VisitTable;
import org.halflight.files.OutFile;
import org.halflight.job.Camera;
import org.halflight.job.SheetState;
import org.halflight.job.Visit;
import org.halflight.record.CameraHistory;
import org.halflight.record.CameraLine;
import org.halflight.record.DataFolder;
import org.halflight.record.ImportOutcome;
import org.halflight.record.Recomputed;
import org.halflight.record.SessionFolder;
import org.halflight.record.Verified;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;
import org.halflight.words.DryRunWords;
import org.halflight.words.MovedWords;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ScopeType;

/** Looks after the record of cameras, visits, runs and firings that the window keeps. */
@Command(name = "record", synopsisSubcommandLabel = "COMMAND")
final class RecordCommand {
  private final Surroundings surroundings;

  @Option(names = "--record", paramLabel = "FILE", scope = ScopeType.INHERIT)
  private @Nullable Path file;

  @Option(names = "--new-record", scope = ScopeType.INHERIT)
  private boolean begin;

  RecordCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Command(name = "backup")
  int backup(@Parameters(paramLabel = "FILE") Path to) {
    WorkshopRecord.backUp(record(), to);
    return said("record.backedUp", to);
  }

  @Command(name = "restore")
  int restore(@Parameters(paramLabel = "FILE") Path backup) {
    try (WorkshopRecord record = openOrBegin()) {
      return said("record.restored", backup, record.restore(backup));
    }
  }

  @Command(name = "recompute")
  int recompute() {
    try (WorkshopRecord record = openKnown()) {
      Recomputed again = record.recompute();
      return said("record.recomputed", again.firings(), again.changed());
    }
  }

  @Command(name = "import", aliases = "take-in")
  int importSessions(@Parameters(paramLabel = "SESSION", arity = "1..*") List<Path> sessions) {
    try (WorkshopRecord record = openOrBegin()) {
      for (Path session : sessions) {
        ImportOutcome in = record.importSession(session);
        said("record.takenIn", session, in.added(), in.known());
      }
      return 0;
    }
  }

  @Command(name = "verify")
  int verify(
      @Option(names = "--repair") boolean repair,
      @Option(names = "--sessions", paramLabel = "FOLDER") Path sessions) {
    try (WorkshopRecord record = openUnwatched()) {
      Path folder =
          sessions == null ? surroundings.folder().resolve(DataFolder.SESSIONS) : sessions;
      Verified found = record.verify(SessionFolder.files(folder), repair);
      surroundings.terminal().say(found.lines());
      if (found.inOrder()) {
        return said(
            found.lines().isEmpty() ? "record.verify.inOrder" : "record.verify.mended",
            record(),
            found.entries(),
            found.firings());
      }
      said("record.verify.notInOrder", record());
      if (!repair) {
        said("record.verify.hint");
      }
      return 1;
    }
  }

  @Command(name = "due")
  int due() {
    try (WorkshopRecord record = openKnown()) {
      List<String> lines =
          record.cameras().stream()
              .flatMap(line -> line.dryRun().stream())
              .map(due -> DryRunWords.line(due, surroundings.date().get(), ZoneId.systemDefault()))
              .toList();
      surroundings.terminal().say(lines.isEmpty() ? List.of(Words.say("dryRun.none")) : lines);
      return 0;
    }
  }

  @Command(name = "moved")
  int moved(@Parameters(paramLabel = "CAMERA") String camera) {
    try (WorkshopRecord record = openKnown()) {
      Camera known = SheetAtTheCommandLine.camera(record, camera);
      Optional<Visit> visit = SheetAtTheCommandLine.lastVisit(record, known);
      surroundings
          .terminal()
          .say(
              visit
                  .flatMap(its -> record.history(known.id()).flatMap(h -> h.moved(its.id())))
                  .map(RecordCommand::moved)
                  .orElseGet(() -> List.of(Words.say("moved.none"))));
      return 0;
    }
  }

  private static List<String> moved(CameraHistory.Moved its) {
    String day = Numbers.date(LocalDate.ofInstant(its.last().receivedAt(), ZoneId.systemDefault()));
    return Stream.concat(
            Stream.of(MovedWords.line(its.since(), day)), MovedWords.curtains(its.since()).stream())
        .toList();
  }

  @Command(name = "sheet")
  int sheet(
      @Parameters(paramLabel = "CAMERA") String camera,
      @Option(names = "--note", paramLabel = "ITEM=WORDS") @Nullable List<String> notes,
      @Option(names = "--correct", paramLabel = "LINE=WORDS") @Nullable List<String> corrections,
      @Option(names = "--where", paramLabel = "WORDS") @Nullable String where,
      @Option(names = "--back", paramLabel = "LINE") @Nullable List<Integer> back,
      @Option(names = "--strike", paramLabel = "LINE") @Nullable List<Integer> strike) {
    try (WorkshopRecord record = openKnown()) {
      SheetAtTheCommandLine sheet =
          new SheetAtTheCommandLine(record, camera, surroundings.date().get());
      listed(notes).forEach(typed -> sheet.note(typed, where));
      listed(corrections).forEach(typed -> sheet.correct(typed, where));
      listed(back).forEach(line -> sheet.turn(line, SheetState.BACK));
      listed(strike).forEach(line -> sheet.turn(line, SheetState.STRUCK));
      sheet.keep();
      surroundings.terminal().say(sheet.lines(ZoneId.systemDefault()));
      return 0;
    }
  }

  @Command(name = "visit")
  int visit(
      @Parameters(paramLabel = "CAMERA") String camera,
      @Option(names = "--set", paramLabel = "FIELD=WORDS") @Nullable List<String> fields,
      @Option(names = "--new") boolean begins,
      @Option(names = "--handed-back") boolean gone,
      @Option(names = "--here-again") boolean again,
      @Option(names = "--earlier") boolean earlier) {
    try (WorkshopRecord record = begins ? openOrBegin() : openKnown()) {
      Instant now = surroundings.date().get();
      VisitAtTheCommandLine visit =
          begins
              ? VisitAtTheCommandLine.begins(record, camera, now)
              : VisitAtTheCommandLine.last(record, camera, now);
      listed(fields).forEach(visit::set);
      if (gone) {
        visit.handBack();
      }
      if (again) {
        visit.hereAgain();
      }
      if (begins || gone || again || fields != null) {
        visit.keep();
      }
      ZoneId zone = ZoneId.systemDefault();
      surroundings.terminal().say(earlier ? visit.earlier(zone) : visit.lines(zone));
      return 0;
    }
  }

  @Command(name = "log")
  int log(
      @Parameters(paramLabel = "CAMERA") String camera,
      @Option(names = "--add", paramLabel = "KIND=WORDS") @Nullable List<String> entries,
      @Option(names = "--correct", paramLabel = "NUMBER=WORDS") @Nullable List<String> corrections,
      @Option(names = "--measured", paramLabel = "VALUE") @Nullable String measured,
      @Option(names = "--strike", paramLabel = "NUMBER") @Nullable List<String> strike) {
    try (WorkshopRecord record = openKnown()) {
      LogAtTheCommandLine log = new LogAtTheCommandLine(record, camera, surroundings.date().get());
      listed(entries).forEach(typed -> log.add(typed, measured));
      listed(corrections).forEach(typed -> log.correct(typed, measured));
      listed(strike).forEach(log::strike);
      log.keep();
      surroundings.terminal().say(log.lines(ZoneId.systemDefault()));
      return 0;
    }
  }

  @Command(name = "photos")
  int photos(
      @Parameters(paramLabel = "CAMERA") String camera,
      @Option(names = "--add", paramLabel = "FILE") @Nullable List<Path> files,
      @Option(names = "--caption", paramLabel = "NUMBER=WORDS") @Nullable List<String> captions,
      @Option(names = "--off", paramLabel = "NUMBER") @Nullable List<String> off,
      @Option(names = "--on", paramLabel = "NUMBER") @Nullable List<String> on) {
    try (WorkshopRecord record = openKnown()) {
      PhotosAtTheCommandLine photos =
          new PhotosAtTheCommandLine(record, camera, ZoneId.systemDefault());
      listed(files).forEach(each -> photos.add(each, surroundings.date().get()));
      listed(captions).forEach(photos::caption);
      listed(off).forEach(number -> photos.off(number, true));
      listed(on).forEach(number -> photos.off(number, false));
      surroundings.terminal().say(photos.lines());
      return 0;
    }
  }

  @Command(name = "visits")
  int visits(
      @Parameters(paramLabel = "FILE") Path out,
      @Mixin OutputOptions output,
      @Mixin TableOptions tables) {
    try (WorkshopRecord record = openKnown()) {
      OutFile file = output.files(List.of(record())).table(out, VisitTable.headings());
      List<Camera> cameras = record.cameras().stream().map(CameraLine::camera).toList();
      tables.write(VisitTable.of(record, cameras), file, surroundings.terminal());
      return 0;
    }
  }

  private static <T> List<T> listed(@Nullable List<T> given) {
    return given == null ? List.of() : given;
  }

  private Path record() {
    return file == null ? surroundings.folder().resolve(DataFolder.RECORD_FILE) : file;
  }

  /** The record that is there; the window's own is begun where there is none. */
  private WorkshopRecord openOrBegin() {
    if (begin && Files.exists(record())) {
      throw new Trouble(Words.say("record.notNew", record()));
    }
    boolean mayBegin = begin || file == null;
    return watched(
        mayBegin
            ? WorkshopRecord.open(record(), clock())
            : WorkshopRecord.openKnown(record(), clock()));
  }

  /** The record that is there. */
  private WorkshopRecord openKnown() {
    return watched(openUnwatched());
  }

  private WorkshopRecord openUnwatched() {
    if (file == null && !Files.exists(record())) {
      throw new Trouble(Words.say("record.missing.own", record()));
    }
    return WorkshopRecord.openKnown(record(), clock());
  }

  private WorkshopRecord watched(WorkshopRecord opened) {
    opened.onDamage(surroundings.terminal()::say);
    return opened;
  }

  private Clock clock() {
    return Clock.fixed(surroundings.date().get(), ZoneId.systemDefault());
  }

  private int said(String key, Object... parts) {
    surroundings.terminal().say(Words.say(key, parts));
    return 0;
  }
}
