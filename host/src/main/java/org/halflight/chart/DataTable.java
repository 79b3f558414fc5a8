package org.halflight.chart;

import java.util.List;

/**
 * A picture in words and numbers.
 *
 * @param caption what it shows
 * @param headings one a column
 * @param rows cells in the order of the headings, with units
 * @param note where the numbers come from, empty when there is nothing to say
 */
public record DataTable(
    String caption, List<String> headings, List<List<String>> rows, String note) {
  public DataTable {
    headings = List.copyOf(headings);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != headings.size()) {
        throw new IllegalArgumentException(
            "a row of " + row.size() + " cells under " + headings.size() + " headings");
      }
    }
  }

  /** The cell of a row, from 0, under a heading. */
  public String cell(int row, String heading) {
    int column = headings.indexOf(heading);
    if (column < 0) {
      throw new IllegalArgumentException("no column '" + heading + "'");
    }
    return rows.get(row).get(column);
  }
}
