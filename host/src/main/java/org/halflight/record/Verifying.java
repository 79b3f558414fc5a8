package org.halflight.record;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.record.DamagedRows.DamagedRow;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Looks through a whole record: every check sum, whether what points somewhere finds it, and
 * whether it holds what stands in session files. Mends what can be mended: firings, readings, runs
 * and what was noted of them from session files, results from raw edges. What nothing tells of any
 * more is set aside where it was measured, and used as it stands where a person wrote it.
 */
final class Verifying {
  private final WorkshopRecord record;
  private final Clock clock;
  private final List<String> lines = new ArrayList<>();
  private int firings;

  Verifying(WorkshopRecord record, Clock clock) {
    this.record = record;
    this.clock = clock;
  }

  Verified verify(List<Path> sessionFiles, boolean repair) {
    // What was said at opening, about indexes for one, is said here once more.
    lines.addAll(record.database.damaged().reported());
    int entries = look();
    List<DamagedRow> damaged = record.database.damaged().rows();
    damaged.forEach(row -> lines.add(Words.say("record.verify.damaged", row.words())));
    lines.addAll(record.integrityFaults());
    boolean wrong = !damaged.isEmpty() || !lines.isEmpty();
    for (Path file : sessionFiles) {
      boolean agrees = compare(file);
      wrong |= !agrees;
      if (repair && (!agrees || !damaged.isEmpty())) {
        importSession(file);
      }
    }
    if (!wrong || !repair) {
      return new Verified(entries, firings, lines, !wrong);
    }
    look();
    for (DamagedRow row : record.database.damaged().rows()) {
      lines.add(record.database.write(connection -> mend(connection, row)));
    }
    look();
    boolean inOrder = record.database.damaged().rows().isEmpty();
    for (Path file : sessionFiles) {
      inOrder &= agrees(file);
    }
    return new Verified(entries, firings, lines, inOrder);
  }

  /** Looks at all rows; gives how many there are. */
  private int look() {
    record.database.damaged().forget();
    return record.database.read(
        connection -> {
          int rows = 0;
          for (String table : RowCrc.KEYS.keySet()) {
            rows += Query.one(connection, "SELECT count(*) FROM " + table, row -> row.getInt(1));
            Query.list(connection, "SELECT * FROM " + table, row -> 0);
          }
          note(
              connection,
              "SELECT id FROM firing WHERE NOT EXISTS"
                  + " (SELECT 1 FROM firing_result WHERE firing_id = firing.id)");
          note(
              connection,
              "SELECT firing_id FROM firing_result WHERE NOT EXISTS"
                  + " (SELECT 1 FROM firing WHERE id = firing_id)");
          return rows;
        });
  }

  private static void note(Connection connection, String firings) throws SQLException {
    for (String id : Query.list(connection, firings, row -> row.getString(1))) {
      DamagedRows.note(connection, new DamagedRow("firing_result", List.of(id)));
    }
  }

  /** Whether the record agrees with a session file; says what does not. */
  private boolean compare(Path file) {
    int before = lines.size();
    try {
      List<BenchEvent> events = SessionFile.read(file).events();
      if (!events.isEmpty()) {
        ReducedSession folded = ReducedSession.of(events);
        firings += folded.firings().size();
        lines.addAll(record.database.read(connection -> differences(connection, file, folded)));
        SessionStart start = SessionStart.of(events.get(0), "");
        if (!record.database.read(connection -> PressRows.isKept(connection, start, folded))) {
          lines.add(Words.say("record.verify.presses", file));
        }
      }
    } catch (Trouble unreadable) {
      lines.add(unreadable.getMessage());
    }
    return lines.size() == before;
  }

  private boolean agrees(Path file) {
    Verifying again = new Verifying(record, clock);
    return again.compare(file);
  }

  /** What does not agree, in sentences. */
  private static List<String> differences(Connection connection, Path file, ReducedSession folded)
      throws SQLException {
    List<String> lines = new ArrayList<>();
    int missing = 0;
    int otherwise = 0;
    for (FiringResult firing : folded.firings()) {
      Optional<FiringRows.Numbered> kept = FiringRows.find(connection, firing.key());
      if (kept.isEmpty()) {
        missing++;
      } else if (!isSame(firing, folded.isCutOff(firing), kept.get().firing())) {
        lines.add(Words.say("record.verify.differs", file, firing.key().firstTicks()));
      } else if (!firing.rejection().equals(kept.get().firing().result().rejection())
          || !firing.setting().equals(kept.get().firing().result().setting())) {
        otherwise++;
      }
    }
    for (LightReading reading : folded.readings()) {
      missing += ReadingRows.isKnown(connection, reading) ? 0 : 1;
    }
    if (missing > 0) {
      lines.add(Words.say("record.verify.missing", file, missing));
    }
    if (otherwise > 0) {
      lines.add(Words.count("record.verify.otherwise", otherwise, file, otherwise));
    }
    return lines;
  }

  /** Whether the raw data are the same, or the record has more where the file breaks off. */
  private static boolean isSame(FiringResult firing, boolean cutOff, KeptFiring kept) {
    FiringResult known = kept.result();
    boolean edges =
        firing.firing().edges().equals(known.firing().edges())
            || cutOff
            || kept.cutOff()
            || known.firing().edges().containsAll(firing.firing().edges());
    boolean damage =
        cutOff || kept.cutOff() || known.firing().damage().containsAll(firing.firing().damage());
    return edges
        && damage
        && firing.rate().equals(known.rate())
        && (firing.curve().isEmpty()
            || known.curve().isEmpty()
            || firing.curve().get().sampled().equals(known.curve().get().sampled()));
  }

  private void importSession(Path file) {
    try {
      ImportOutcome taken = record.importSession(file);
      if (taken.added() + taken.completed() + taken.changed() > 0) {
        lines.add(
            Words.say(
                "record.repair.fromFile", file, taken.added(), taken.completed(), taken.changed()));
      }
    } catch (Trouble unreadable) {
      // Said when it was compared.
      return;
    }
  }

  /** Mends a row that no session file told of; gives what was done. */
  private String mend(Connection connection, DamagedRow row) throws SQLException {
    Object[] key = row.key().toArray();
    switch (row.table()) {
      case "firing_result" -> {
        long id = Long.parseLong(String.valueOf(key[0]));
        if (Recomputing.anew(connection, id)) {
          return Words.say("record.repair.recomputed", row.words());
        }
        return setAside(connection, row, key);
      }
      case "firing" -> {
        try (Quarantine aside = Quarantine.begin(connection, clock.instant())) {
          aside.move("firing_result", key);
        }
        return setAside(connection, row, key);
      }
      case "light_reading", "linkage_press", "plunger_reading", "link_statistics", "rig_start" -> {
        return setAside(connection, row, key);
      }
      default -> {
        return asItStands(connection, row, key);
      }
    }
  }

  private String setAside(Connection connection, DamagedRow row, Object[] key) throws SQLException {
    String content = Quarantine.content(connection, row.table(), key);
    try (Quarantine aside = Quarantine.begin(connection, clock.instant())) {
      aside.move(row.table(), key);
    }
    return Words.say("record.repair.setAside", row.words(), content);
  }

  private static String asItStands(Connection connection, DamagedRow row, Object[] key)
      throws SQLException {
    String content = Quarantine.content(connection, row.table(), key);
    if (isReadable(connection, row)) {
      RowCrc.seal(connection, row.table(), key);
      return Words.say("record.repair.asItStands", row.words(), content);
    }
    return Words.say("record.repair.unreadable", row.words(), content);
  }

  private static boolean isReadable(Connection connection, DamagedRow row) throws SQLException {
    try {
      switch (row.table()) {
        case "camera" -> read(connection, row, CameraRows::read);
        case "visit" -> read(connection, row, VisitRows::readBare);
        case "visit_check" ->
            read(connection, row, each -> List.of(VisitRows.item(each), VisitRows.finding(each)));
        case "work_entry" -> read(connection, row, WorkRows::read);
        case "sheet_entry" -> read(connection, row, SheetRows::read);
        case "photo" -> read(connection, row, PhotoRows::read);
        case "run" ->
            Query.asTheyStand(
                connection,
                RunRows.SELECT + "WHERE run.id = ?",
                each -> RunRows.read(connection, each),
                row.key().toArray());
        default -> {
          // Words and numbers that nothing can be wrong with.
          return true;
        }
      }
      return true;
    } catch (Word.Unknown | IllegalArgumentException | java.util.NoSuchElementException none) {
      return false;
    }
  }

  private static void read(Connection connection, DamagedRow row, Query.Mapper<?> mapper)
      throws SQLException {
    Query.asTheyStand(
        connection,
        "SELECT * FROM " + row.table() + RowCrc.where(row.table()),
        mapper,
        row.key().toArray());
  }
}
