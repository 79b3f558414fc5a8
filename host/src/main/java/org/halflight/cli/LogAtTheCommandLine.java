package org.halflight.cli;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.job.Camera;
import org.halflight.job.MeasuredValue;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.job.WorkKind;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.halflight.words.WorkWords;
import org.jspecify.annotations.Nullable;

/** The work log of a camera's last visit, as it is typed. Nothing is kept before all is read. */
final class LogAtTheCommandLine {
  private final WorkshopRecord record;
  private final Camera camera;
  private final Visit visit;
  private final Instant now;
  private final List<WorkEntry> changed = new ArrayList<>();

  LogAtTheCommandLine(WorkshopRecord record, String typed, Instant now) {
    this.record = record;
    this.now = now;
    camera = SheetAtTheCommandLine.camera(record, typed);
    visit =
        SheetAtTheCommandLine.lastVisit(record, camera)
            .orElseThrow(() -> new Trouble(Words.say("record.noVisit", camera.label())));
  }

  /** Reads {@code KIND=WORDS}. */
  void add(String typed, @Nullable String measured) {
    String[] parts = parts(typed, "--add");
    changed.add(
        with(
            WorkEntry.of(
                visit.id(), now, CliWords.constant(WorkKind.WORDS, parts[0].strip(), "--add"), ""),
            parts[1],
            measured));
  }

  /** Reads {@code NUMBER=WORDS}; without words that are measured the value stays. */
  void correct(String typed, @Nullable String measured) {
    String[] parts = parts(typed, "--correct");
    changed.add(with(entry(parts[0].strip()), parts[1], measured));
  }

  void strike(String number) {
    changed.add(entry(number).struck(true));
  }

  private static WorkEntry with(WorkEntry entry, String words, @Nullable String measured) {
    return entry
        .with(entry.kind(), words.strip(), measured == null ? entry.measured() : measured(measured))
        .counted();
  }

  private static Optional<MeasuredValue> measured(String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    String[] parts = typed.strip().split("\\s+", 2);
    Optional<BigDecimal> value = WorkWords.number(parts[0]);
    if (value.isEmpty() || parts.length < 2) {
      throw new Trouble(Words.say("record.log.value", typed));
    }
    return Optional.of(new MeasuredValue(value.get(), parts[1]));
  }

  private WorkEntry entry(String number) {
    List<WorkEntry> all = record.workLog(visit.id());
    if (!number.matches("\\d{1,6}")
        || Integer.parseInt(number) < 1
        || Integer.parseInt(number) > all.size()) {
      throw new Trouble(Words.say("record.log.noEntry", number, all.size()));
    }
    return all.get(Integer.parseInt(number) - 1);
  }

  private static String[] parts(String typed, String option) {
    String[] parts = typed.split("=", 2);
    if (parts.length < 2 || parts[1].isBlank()) {
      throw new Trouble(Words.say("record.log.parts", option, typed));
    }
    return parts;
  }

  /** Keeps all that was typed. */
  void keep() {
    changed.forEach(record::keep);
  }

  List<String> lines(ZoneId zone) {
    List<String> lines = new ArrayList<>();
    lines.add(Words.say("record.log.heading", camera.label()));
    List<WorkEntry> all = record.workLog(visit.id());
    for (int i = 0; i < all.size(); i++) {
      lines.add(Words.say("record.log.line", i + 1, WorkWords.line(all.get(i), zone)));
    }
    if (all.isEmpty()) {
      lines.add(Words.say("record.log.empty"));
    }
    lines.addAll(WorkWords.counts(all));
    return lines;
  }
}
