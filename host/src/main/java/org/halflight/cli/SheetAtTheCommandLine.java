package org.halflight.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.job.Camera;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.job.Visit;
import org.halflight.record.CameraLine;
import org.halflight.record.WorkshopRecord;
import org.halflight.trouble.Trouble;
import org.halflight.words.Numbers;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/** The strip sheet of a camera's last visit, as it is typed. Nothing is kept before all is read. */
final class SheetAtTheCommandLine {
  private final WorkshopRecord record;
  private final Instant now;
  private final Camera camera;
  private final Visit visit;
  private final List<SheetEntry> added = new ArrayList<>();
  private StripSheet sheet;

  SheetAtTheCommandLine(WorkshopRecord record, String typed, Instant now) {
    this.record = record;
    this.now = now;
    camera = camera(record, typed);
    visit =
        lastVisit(record, camera)
            .orElseThrow(() -> new Trouble(Words.say("record.noVisit", camera.label())));
    sheet = record.stripSheet(visit.id());
  }

  /**
   * The one camera whose label, serial number or job number holds a text; one that has it as its
   * label is meant before others.
   */
  static Camera camera(WorkshopRecord record, String typed) {
    List<Camera> found = record.search(typed).stream().map(CameraLine::camera).toList();
    List<Camera> named = found.stream().filter(each -> each.label().equals(typed)).toList();
    List<Camera> meant = named.size() == 1 ? named : found;
    if (meant.size() != 1) {
      throw new Trouble(
          Words.say(
              meant.isEmpty() ? "record.noCamera" : "record.manyCameras",
              typed,
              meant.stream().limit(5).map(Camera::label).collect(Collectors.joining(", "))));
    }
    return meant.get(0);
  }

  static Optional<Visit> lastVisit(WorkshopRecord record, Camera camera) {
    return record.visits(camera.id()).stream().reduce((earlier, later) -> later);
  }

  void note(String typed, @Nullable String where) {
    String[] parts = parts(typed, "--note");
    SheetItem item = CliWords.constant(SheetItem.WORDS, parts[0].strip(), "--note");
    String place =
        where == null
            ? sheet
                .of(item)
                .filter(line -> !item.isAskedBack())
                .map(line -> line.now().place())
                .orElse("")
            : where;
    add(sheet.noted(visit.id(), item, place.strip(), read(item, parts[1]), now));
  }

  void correct(String typed, @Nullable String where) {
    String[] parts = parts(typed, "--correct");
    SheetEntry before = line(parts[0].strip(), true);
    add(
        before.corrected(
            where == null ? before.place() : where.strip(), read(before.item(), parts[1]), now));
  }

  void turn(int line, SheetState to) {
    add(line(String.valueOf(line), to != SheetState.BACK).turned(to, now));
  }

  /** Keeps all that was typed. */
  void keep() {
    added.forEach(record::add);
  }

  /** The sheet with what is not ticked. */
  List<String> lines(ZoneId zone) {
    List<String> lines = new ArrayList<>();
    lines.add(
        Words.say(
            "sheet.heading",
            camera.label(),
            Numbers.date(LocalDate.ofInstant(visit.receivedAt(), zone))));
    sheet.lines().forEach(line -> lines.add(SheetWords.line(line, zone)));
    lines.add(
        sheet.lines().isEmpty()
            ? Words.say("sheet.empty")
            : SheetWords.open(sheet).orElse(Words.say("sheet.allTicked")));
    if (sheet.lines().stream().anyMatch(line -> !line.now().item().isAskedBack())) {
      lines.add(SheetWords.byHand());
    }
    return lines;
  }

  private void add(SheetEntry entry) {
    added.add(entry);
    sheet =
        StripSheet.of(
            Stream.concat(
                    sheet.lines().stream().flatMap(line -> line.entries().stream()),
                    Stream.of(entry))
                .toList());
  }

  /** The line of a number: one that is not struck out, and that is asked back where it must be. */
  private SheetEntry line(String number, boolean any) {
    List<StripSheet.Line> may =
        sheet.lines().stream()
            .filter(line -> any ? line.now().state() != SheetState.STRUCK : line.isOpen())
            .toList();
    return may.stream()
        .filter(line -> String.valueOf(line.number()).equals(number))
        .findFirst()
        .map(StripSheet.Line::now)
        .orElseThrow(
            () ->
                new Trouble(
                    may.isEmpty()
                        ? Words.say("sheet.bad.noLine", number)
                        : Words.say(
                            "sheet.bad.line",
                            number,
                            may.stream()
                                .map(line -> String.valueOf(line.number()))
                                .collect(Collectors.joining(", ")))));
  }

  private static String read(SheetItem item, String typed) {
    return item.read(typed).orElseThrow(() -> new Trouble(SheetWords.bad(item, typed)));
  }

  private static String[] parts(String typed, String option) {
    String[] parts = typed.split("=", 2);
    if (parts.length < 2) {
      throw new Trouble(Words.say("sheet.bad.parts", option, typed));
    }
    return parts;
  }
}
