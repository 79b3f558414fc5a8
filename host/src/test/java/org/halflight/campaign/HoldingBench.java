package org.halflight.campaign;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import org.halflight.bench.EventLine;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;

/**
 * A program that has a session file and a record open, and does what it is told: {@code write} a
 * mark, {@code read} the file as the window's record does, {@code take-in} it, {@code end}.
 *
 * <p>Words: session file, record, name.
 */
public final class HoldingBench {
  private HoldingBench() {}

  public static void main(String[] words) throws IOException {
    BufferedReader asked =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    Path file = Path.of(words[0]);
    say("READY");
    asked.readLine();
    Workbench bench;
    try {
      bench = open(file);
    } catch (Trouble refused) {
      say("REFUSED " + refused.getMessage());
      return;
    }
    WorkshopRecord record = null;
    try {
      record = WorkshopRecord.open(Path.of(words[1]), RecordDump.CLOCK);
      say("HOLDS");
    } catch (Trouble refused) {
      say("HOLDS-SESSION");
    }
    int written = 0;
    for (String line = asked.readLine(); line != null; line = asked.readLine()) {
      switch (line) {
        case "write" ->
            bench.onEvent(
                EventLine.parse("M 1 reject because=" + words[2] + "-" + written++).orElseThrow());
        case "read" -> SessionFile.read(file);
        case "take-in" -> {
          if (record != null) {
            record.importSession(file);
          }
        }
        default -> {
          return;
        }
      }
      say("DONE");
    }
  }

  private static Workbench open(Path file) {
    if (Files.exists(file)) {
      SessionFile mine = SessionFile.resume(file);
      return Workbench.resume(
          mine,
          () -> 0,
          SessionFile.read(file).events(),
          Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.empty()));
    }
    return Workbench.begin(
        SessionFile.create(file),
        () -> 0,
        Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.of("two")));
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
