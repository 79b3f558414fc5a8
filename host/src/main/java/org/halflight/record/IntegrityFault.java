package org.halflight.record;

import java.util.regex.Pattern;

/** What kind of fault a line of SQLite's integrity check tells of. */
enum IntegrityFault {
  /** An index does not agree with its table; it can be made anew from that. */
  INDEX,
  /** A value is none that its column may hold; the check sum of its row tells of it too. */
  ROW,
  /** The pages contradict each other: nothing in the file can be trusted. */
  PAGES;

  private static final Pattern OF_INDEX =
      Pattern.compile(
          "row \\S+ missing from index .*|wrong # of entries in index .*|non-unique entry in index"
              + " .*|rowid not at end-of-record for row .*|values of .* index .*");

  private static final Pattern OF_ROW =
      Pattern.compile("(NULL|NUMERIC|TEXT|non-\\w+) value in .*|CHECK constraint failed in .*");

  static IntegrityFault of(String line) {
    if (OF_INDEX.matcher(line).matches()) {
      return INDEX;
    }
    return OF_ROW.matcher(line).matches() ? ROW : PAGES;
  }
}
