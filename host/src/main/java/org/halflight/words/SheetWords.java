package org.halflight.words;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.Shims;
import org.halflight.job.StripSheet;

/** The strip sheet in words. */
public final class SheetWords {
  private SheetWords() {}

  /** What an item is called. */
  public static String name(SheetItem item) {
    return Words.of("sheet.item", item);
  }

  /** How what is asked for is written. */
  public static String hint(SheetItem item) {
    return Words.say(
        item == SheetItem.SHIMS
            ? "sheet.hint.shims"
            : item.isFlange()
                ? "sheet.hint.flange"
                : item.isAskedBack() ? "sheet.hint.words" : "sheet.hint.hand");
  }

  /** What is wrong with what was written. */
  public static String bad(SheetItem item, String typed) {
    return typed.isBlank()
        ? Words.say("sheet.bad.nothing", name(item))
        : Words.say(item == SheetItem.SHIMS ? "sheet.bad.shims" : "sheet.bad.flange", typed);
  }

  /** What was noted: {@code 2 shims, 0.10, 0.05 mm, under the flange}. */
  public static String noted(SheetEntry entry) {
    String words =
        entry.item() == SheetItem.SHIMS
            ? shims(entry.words())
            : entry.item().isFlange()
                ? Words.say("sheet.millimetres", entry.words())
                : entry.words();
    return entry.place().isBlank() ? words : Words.say("sheet.placed", words, entry.place());
  }

  private static String shims(String words) {
    Optional<Shims> shims = Shims.read(words);
    return shims
        .map(its -> Words.count("sheet.shims", its.count(), its.count(), its.words()))
        .orElse(words);
  }

  /** The question at assembly: {@code Two shims noted, 0.10, 0.05 mm: are both in?} */
  public static String question(SheetEntry entry) {
    int count =
        entry.item() == SheetItem.SHIMS ? Shims.read(entry.words()).map(Shims::count).orElse(0) : 0;
    return entry.item() == SheetItem.SHIMS
        ? Words.say(
            count == 1 ? "sheet.ask.shim" : count == 2 ? "sheet.ask.both" : "sheet.ask.all",
            noted(entry))
        : Words.of("sheet.ask", entry.item(), noted(entry));
  }

  /** What is not ticked, before the camera goes back; empty where all is. */
  public static Optional<String> open(StripSheet sheet) {
    List<StripSheet.Line> open = sheet.open();
    return open.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Words.say(
                "sheet.open",
                open.stream()
                    .map(line -> Words.say("sheet.of", name(line.now().item()), noted(line.now())))
                    .collect(Collectors.joining("; "))));
  }

  /** The same at handing back, and what is not noted where the shutter was out. */
  public static Optional<String> atHandBack(StripSheet sheet) {
    boolean wasOut =
        sheet.lines().stream()
            .anyMatch(
                line -> line.now().item().isAskedBack() && line.now().state() != SheetState.STRUCK);
    return wasOut && sheet.of(SheetItem.INFINITY_FOCUS).isEmpty()
        ? Optional.of((open(sheet).orElse("") + " " + Words.say("sheet.noFocus")).strip())
        : open(sheet);
  }

  /** What was measured by hand, in sentences for the owner. */
  public static List<String> byHand(StripSheet sheet) {
    List<String> said = new ArrayList<>();
    sheet
        .of(SheetItem.INFINITY_FOCUS)
        .map(StripSheet.Line::now)
        .ifPresent(
            now ->
                said.add(
                    now.place().isBlank()
                        ? Words.say("sheet.page.focus", now.words())
                        : Words.say("sheet.page.focusWith", now.place(), now.words())));
    List<BigDecimal> flange =
        Arrays.stream(SheetItem.values())
            .filter(SheetItem::isFlange)
            .flatMap(item -> sheet.of(item).stream())
            .map(line -> new BigDecimal(line.now().words()))
            .sorted()
            .toList();
    if (!flange.isEmpty()) {
      BigDecimal least = flange.get(0);
      BigDecimal most = flange.get(flange.size() - 1);
      said.add(
          Words.count(
              "sheet.page.flange",
              flange.size(),
              flange.size(),
              least.toPlainString(),
              most.toPlainString(),
              most.subtract(least).toPlainString()));
    }
    String ranges =
        SheetItem.byHand().stream()
            .filter(item -> item.compareTo(SheetItem.RANGEFINDER_INFINITY) >= 0)
            .flatMap(item -> sheet.of(item).stream())
            .map(line -> Words.of("sheet.page", line.now().item(), line.now().words()))
            .collect(Collectors.joining(", "));
    if (!ranges.isEmpty()) {
      said.add(Words.say("sheet.page.rangefinder", ranges));
    }
    return said;
  }

  /** One line of the sheet with its number, when it was noted, and what it said before. */
  public static String line(StripSheet.Line line, ZoneId zone) {
    SheetEntry now = line.now();
    List<String> parts = new ArrayList<>();
    parts.add(
        Words.say(
            "sheet.line",
            line.number(),
            line.isOpen() ? question(now) : Words.say("sheet.of", name(now.item()), noted(now)),
            moment(line.entries().get(0), zone)));
    if (now.state() != SheetState.NOTED) {
      parts.add(Words.of("sheet.state", now.state(), moment(now, zone)));
    }
    for (SheetEntry earlier : line.earlier()) {
      parts.add(Words.say("sheet.earlier", noted(earlier), moment(earlier, zone)));
    }
    return String.join(" ", parts);
  }

  /** Said wherever what is measured by hand is shown. */
  public static String byHand() {
    return Words.say("sheet.byHand");
  }

  private static String moment(SheetEntry entry, ZoneId zone) {
    ZonedDateTime at = entry.at().atZone(zone);
    return Words.say(
        "sheet.moment",
        Numbers.shortDate(at.toLocalDate()),
        String.format(Locale.ROOT, "%02d:%02d", at.getHour(), at.getMinute()));
  }
}
