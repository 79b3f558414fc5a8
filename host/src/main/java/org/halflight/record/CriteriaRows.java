package org.halflight.record;

import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.RunOption;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.speeds.ShutterKind;

/**
 * What a run was asked beside its columns, among what was noted of it: names that begin with {@code
 * aim-} are these. Only what is not usual is there.
 */
final class CriteriaRows {
  private static final String BEFORE = "aim-";
  private static final String MOST_TRIES = BEFORE + "most-tries";
  private static final String SHUTTER_KIND = BEFORE + "shutter-kind";

  private CriteriaRows() {}

  static boolean isOne(String name) {
    return name.startsWith(BEFORE);
  }

  static Map<String, String> of(RunSetup asked) {
    Map<String, String> rows = new LinkedHashMap<>(asked.criteria().written(RunOption.In.RECORD));
    if (asked.mostTries() != RunPlan.TRIES_OF_OLD) {
      rows.put(MOST_TRIES, String.valueOf(asked.mostTries()));
    }
    if (asked.shutter().kind() != ShutterKind.UNKNOWN) {
      rows.put(SHUTTER_KIND, ShutterKind.WORDS.word(asked.shutter().kind()));
    }
    return rows;
  }

  static int mostTries(Map<String, String> rows) throws SQLException {
    try {
      return rows.containsKey(MOST_TRIES)
          ? Integer.parseInt(rows.get(MOST_TRIES))
          : RunPlan.TRIES_OF_OLD;
    } catch (NumberFormatException e) {
      throw new SQLException("no number of tries: " + rows, e);
    }
  }

  static ShutterKind shutterKind(Map<String, String> rows) throws SQLException {
    String word = rows.getOrDefault(SHUTTER_KIND, ShutterKind.WORDS.word(ShutterKind.UNKNOWN));
    return ShutterKind.WORDS
        .find(word)
        .orElseThrow(() -> new SQLException("no kind of shutter: " + word));
  }

  static AcceptanceCriteria read(Map<String, String> rows) throws SQLException {
    try {
      return AcceptanceCriteria.read(rows, RunOption.In.RECORD);
    } catch (IllegalArgumentException e) {
      throw new SQLException(e.getMessage(), e);
    }
  }
}
