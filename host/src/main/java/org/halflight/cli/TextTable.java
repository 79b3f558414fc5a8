package org.halflight.cli;

import java.util.ArrayList;
import java.util.List;

/** A table for the terminal: columns as wide as their widest cell, numbers to the right. */
final class TextTable {
  private static final String GAP = "   ";

  private final List<List<String>> rows = new ArrayList<>();

  TextTable(String... headings) {
    rows.add(List.of(headings));
  }

  void add(String... cells) {
    if (cells.length != rows.get(0).size()) {
      throw new IllegalArgumentException(
          cells.length + " cells under " + rows.get(0).size() + " headings");
    }
    rows.add(List.of(cells));
  }

  /** The lines, headings first; the first column to the left, all others to the right. */
  List<String> lines() {
    int columns = rows.get(0).size();
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int i = 0; i < columns; i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < columns; i++) {
        String padding = " ".repeat(widths[i] - row.get(i).length());
        line.append(i == 0 ? row.get(i) + padding : GAP + padding + row.get(i));
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }
}
