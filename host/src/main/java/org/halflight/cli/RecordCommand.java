package org.halflight.cli;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import org.halflight.record.DataFolder;
import org.halflight.record.Recomputed;
import org.halflight.record.TakenIn;
import org.halflight.record.WorkshopRecord;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ScopeType;

/** Looks after the record of cameras, visits, runs and firings that the window keeps. */
@Command(
    name = "record",
    description =
        "Looks after the record that the window keeps: backup, restore, recompute, take-in.",
    synopsisSubcommandLabel = "COMMAND")
final class RecordCommand {
  private final Surroundings surroundings;

  @Option(
      names = "--record",
      paramLabel = "FILE",
      scope = ScopeType.INHERIT,
      description = "The record. Default: the one of the window.")
  private Path file;

  RecordCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Command(
      name = "backup",
      description = "Copies the whole record into a new file, also while the window is open.")
  int backup(@Parameters(paramLabel = "FILE") Path to) {
    WorkshopRecord.backUp(record(), to);
    return said("record.backedUp", to);
  }

  @Command(
      name = "restore",
      description = "Puts a backup in the place of the record; what was there stays beside it.")
  int restore(@Parameters(paramLabel = "FILE") Path backup) {
    try (WorkshopRecord record = open()) {
      return said("record.restored", backup, record.restore(backup));
    }
  }

  @Command(
      name = "recompute",
      description = "Works all firings out again with today's method; raw edges never change.")
  int recompute() {
    try (WorkshopRecord record = open()) {
      Recomputed again = record.recompute();
      return said("record.recomputed", again.firings(), again.changed());
    }
  }

  @Command(
      name = "take-in",
      description = "Takes session files in; what is known already does not come twice.")
  int takeIn(@Parameters(paramLabel = "SESSION", arity = "1..*") List<Path> sessions) {
    try (WorkshopRecord record = open()) {
      for (Path session : sessions) {
        TakenIn in = record.takeIn(session);
        said("record.takenIn", session, in.added(), in.known());
      }
      return 0;
    }
  }

  private Path record() {
    return file == null ? surroundings.folder().resolve(DataFolder.RECORD_FILE) : file;
  }

  private WorkshopRecord open() {
    return WorkshopRecord.open(
        record(), Clock.fixed(surroundings.date().get(), ZoneId.systemDefault()));
  }

  private int said(String key, Object... parts) {
    surroundings.terminal().say(Words.say(key, parts));
    return 0;
  }
}
