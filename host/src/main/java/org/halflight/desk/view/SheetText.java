package org.halflight.desk.view;

import java.time.ZoneId;
import java.util.List;
import org.halflight.job.SheetEntry;
import org.halflight.job.SheetItem;
import org.halflight.job.SheetState;
import org.halflight.job.StripSheet;
import org.halflight.words.SheetWords;
import org.halflight.words.Words;

/**
 * The strip sheet of a visit as the window shows it, line by line.
 *
 * @param sheet all that was noted
 * @param zone of the workshop
 */
public record SheetText(StripSheet sheet, ZoneId zone) {
  /** What is to be ticked, what was noted, and when. */
  public static final int COLUMNS = 3;

  /** How many lines there are. */
  public int lines() {
    return sheet.lines().size();
  }

  /** The line of a row, from 0: the newest is on top, as assembly goes back the way it came. */
  public StripSheet.Line line(int row) {
    return sheet.lines().get(lines() - 1 - row);
  }

  /** One cell: what holds of the line, what was noted, when. */
  public String cell(int row, int column) {
    SheetEntry now = line(row).now();
    return switch (column) {
      case 0 -> state(now);
      case 1 -> Words.say("sheet.of", SheetWords.name(now.item()), SheetWords.noted(now));
      default -> HistoryText.day(line(row).notedAt(), zone);
    };
  }

  private static String state(SheetEntry now) {
    return Words.of(
        now.item().isAskedBack() || now.state() == SheetState.STRUCK
            ? "desk.sheet.state"
            : "desk.sheet.hand",
        now.state());
  }

  /** All that a line says and said; what an empty sheet is for where no line is selected. */
  public String said(int row) {
    if (row >= 0 && row < lines()) {
      StripSheet.Line line = line(row);
      return line.now().item().isAskedBack()
          ? SheetWords.line(line, zone)
          : SheetWords.line(line, zone) + " " + SheetWords.byHand();
    }
    return Words.say(sheet.lines().isEmpty() ? "desk.sheet.empty" : "desk.sheet.select");
  }

  /** The items in the order of the form. */
  public static List<SheetItem> items() {
    return List.of(SheetItem.values());
  }
}
