package org.halflight.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The strip sheet of a visit: what was noted before the work, to be asked back at assembly, and
 * what was measured by hand.
 *
 * @param lines in the order in which they were noted first
 */
public record StripSheet(List<Line> lines) {
  /** A sheet on which nothing is noted. */
  public static final StripSheet EMPTY = new StripSheet(List.of());

  /**
   * One line with its past.
   *
   * @param entries in order of time, at least one
   */
  public record Line(List<SheetEntry> entries) {
    public Line {
      entries = List.copyOf(entries);
    }

    /** What holds now. */
    public SheetEntry now() {
      return entries.get(entries.size() - 1);
    }

    /** Its number on the sheet, from 1. */
    public int number() {
      return now().line();
    }

    /** When it was noted first. */
    public Instant notedAt() {
      return entries.get(0).at();
    }

    /** Whether it is asked back and nobody has ticked it. */
    public boolean isOpen() {
      return now().item().isAskedBack() && now().state() == SheetState.NOTED;
    }

    /** What it said before it was corrected, in order of time. */
    public List<SheetEntry> earlier() {
      List<SheetEntry> earlier = new ArrayList<>();
      for (int i = 1; i < entries.size(); i++) {
        if (!entries.get(i).saysTheSameAs(entries.get(i - 1))) {
          earlier.add(entries.get(i - 1));
        }
      }
      return earlier;
    }
  }

  public StripSheet {
    lines = List.copyOf(lines);
  }

  /** From all that was ever written on it, in order of time. */
  public static StripSheet of(List<SheetEntry> entries) {
    TreeMap<Integer, List<SheetEntry>> byLine = new TreeMap<>();
    entries.forEach(e -> byLine.computeIfAbsent(e.line(), line -> new ArrayList<>()).add(e));
    return new StripSheet(byLine.values().stream().map(Line::new).toList());
  }

  /** The line of a number. */
  public Optional<Line> line(int number) {
    return lines.stream().filter(line -> line.number() == number).findFirst();
  }

  /** The line of something that is on a sheet once at most, where it is noted. */
  public Optional<Line> of(SheetItem item) {
    return lines.stream()
        .filter(line -> line.now().item() == item && line.now().state() != SheetState.STRUCK)
        .findFirst();
  }

  /** What is to be ticked before the camera goes back. */
  public List<Line> open() {
    return lines.stream().filter(Line::isOpen).toList();
  }

  /**
   * The entry that notes something: a new line, or a correction where the item is noted already and
   * is on a sheet once at most.
   *
   * @param words as {@link SheetItem#read} gives them
   */
  public SheetEntry noted(
      Id<Visit> visit, SheetItem item, String place, String words, Instant now) {
    Optional<Line> there = item.isAskedBack() ? Optional.empty() : of(item);
    int next = lines.stream().mapToInt(Line::number).max().orElse(0) + 1;
    return there
        .map(line -> line.now().corrected(place, words, now))
        .orElseGet(
            () ->
                new SheetEntry(Id.ofNew(), visit, next, now, item, place, words, SheetState.NOTED));
  }
}
