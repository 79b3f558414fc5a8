package org.halflight.report;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * A table that goes on over pages with its headings repeated. Cells wrap; a row is never torn.
 *
 * @param headings one a column
 * @param groups a line above the headings: words and how many columns they stand over; may be empty
 * @param shares widths of the columns in parts of their sum
 * @param toTheRight whether a column stands to the right
 * @param size of the letters in points
 */
record Columns(
    List<String> headings,
    List<Group> groups,
    List<Float> shares,
    List<Boolean> toTheRight,
    float size) {
  private static final float PAD = 3;

  /**
   * Words over several columns.
   *
   * @param words may be empty
   * @param columns how many
   */
  record Group(String words, int columns) {}

  Columns {
    headings = List.copyOf(headings);
    groups = List.copyOf(groups);
    shares = List.copyOf(shares);
    toTheRight = List.copyOf(toTheRight);
  }

  void draw(Sheet sheet, List<List<String>> rows) throws IOException {
    head(sheet);
    for (int i = 0; i < rows.size(); i++) {
      List<List<String>> cells = wrapped(sheet, rows.get(i), sheet.letters().regular());
      float height = height(cells);
      if (sheet.room() < height) {
        sheet.newPage();
        head(sheet);
      }
      sheet.down(height);
      if (i % 2 == 1) {
        sheet.box(sheet.left(), sheet.y(), sheet.width(), height, Ink.BAND);
      }
      cells(sheet, cells, height, sheet.letters().regular(), Ink.BLACK);
    }
    sheet.line(sheet.left(), sheet.y(), sheet.width(), 0.5f, Ink.LINE);
    sheet.down(4);
  }

  /** Height of the headings and of so many rows of one line. */
  float heightOf(int rows) {
    return (rows + 1) * (Sheet.lineHeight(size) + PAD)
        + (groups.isEmpty() ? 0 : Sheet.lineHeight(size) + PAD);
  }

  private void head(Sheet sheet) throws IOException {
    if (!groups.isEmpty()) {
      sheet.down(Sheet.lineHeight(size) + PAD);
      int column = 0;
      for (Group group : groups) {
        float from = x(sheet, column);
        float to = x(sheet, column + group.columns());
        if (!group.words().isEmpty()) {
          sheet.text(
              sheet.letters().bold(), size, Ink.BLACK, from + PAD, sheet.y() + PAD, group.words());
          sheet.line(from + PAD, sheet.y(), to - from - 2 * PAD, 0.5f, Ink.LINE);
        }
        column += group.columns();
      }
    }
    List<List<String>> cells = wrapped(sheet, headings, sheet.letters().regular());
    float height = height(cells);
    sheet.down(height);
    cells(sheet, cells, height, sheet.letters().regular(), Ink.QUIET);
    sheet.line(sheet.left(), sheet.y(), sheet.width(), 0.8f, Ink.QUIET);
  }

  private List<List<String>> wrapped(Sheet sheet, List<String> row, PDFont font) {
    if (row.size() != headings.size()) {
      throw new IllegalArgumentException(
          row.size() + " cells under " + headings.size() + " headings");
    }
    List<List<String>> cells = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      float width = x(sheet, i + 1) - x(sheet, i) - indent(i) - PAD;
      cells.add(sheet.letters().lines(font, size, row.get(i), width));
    }
    return cells;
  }

  private float height(List<List<String>> cells) {
    int most = cells.stream().mapToInt(List::size).max().orElse(1);
    return most * Sheet.lineHeight(size) + PAD;
  }

  private void cells(Sheet sheet, List<List<String>> cells, float height, PDFont font, Color colour)
      throws IOException {
    for (int i = 0; i < cells.size(); i++) {
      float baseline = sheet.y() + height - PAD / 2 - 0.98f * size;
      for (String line : cells.get(i)) {
        float x =
            toTheRight.get(i)
                ? x(sheet, i + 1) - PAD - sheet.letters().width(font, size, line)
                : x(sheet, i) + indent(i);
        sheet.text(font, size, colour, x, baseline, line);
        baseline -= Sheet.lineHeight(size);
      }
    }
  }

  /** A column to the left keeps away from one to the right before it. */
  private float indent(int column) {
    return column > 0 && toTheRight.get(column - 1) && !toTheRight.get(column) ? 4 * PAD : PAD;
  }

  private float x(Sheet sheet, int column) {
    double all = shares.stream().mapToDouble(Float::doubleValue).sum();
    double before = IntStream.range(0, column).mapToDouble(i -> shares.get(i)).sum();
    return (float) (sheet.left() + sheet.width() * before / all);
  }
}
