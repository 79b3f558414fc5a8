package org.halflight.record;

import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.RunSetup;
import org.halflight.session.StoredCriteria;

/**
 * What the verdicts of a run are about, among what was noted of it: names that begin with {@code
 * criteria-} are these. Only what is not usual is there.
 */
final class CriteriaRows {
  private static final String BEFORE = "aim-";
  private static final String YES = "yes";

  private static final StoredCriteria CRITERIA =
      new StoredCriteria(
          Map.of(
              StoredCriteria.Part.TOLERANCE, BEFORE + "tolerance",
              StoredCriteria.Part.MEASURAND, BEFORE + "measurand",
              StoredCriteria.Part.UNTIL_DECIDED, BEFORE + "until-decided",
              StoredCriteria.Part.STOPS, BEFORE + "stops",
              StoredCriteria.Part.STOP_TOLERANCE, BEFORE + "stop-tolerance",
              StoredCriteria.Part.LINKAGE, BEFORE + "linkage",
              StoredCriteria.Part.FLASH_CONTACT, BEFORE + "flash-contact"),
          YES,
          YES);

  private static final String MOST_TRIES = BEFORE + "most-tries";

  private CriteriaRows() {}

  static boolean isOne(String name) {
    return name.startsWith(BEFORE);
  }

  static Map<String, String> of(RunSetup asked) {
    Map<String, String> rows = new LinkedHashMap<>(CRITERIA.write(asked.criteria()));
    if (asked.mostTries() != RunSetup.TRIES_OF_OLD) {
      rows.put(MOST_TRIES, String.valueOf(asked.mostTries()));
    }
    return rows;
  }

  static int mostTries(Map<String, String> rows) throws SQLException {
    try {
      return rows.containsKey(MOST_TRIES)
          ? Integer.parseInt(rows.get(MOST_TRIES))
          : RunSetup.TRIES_OF_OLD;
    } catch (NumberFormatException e) {
      throw new SQLException("no number of tries: " + rows, e);
    }
  }

  static AcceptanceCriteria read(Map<String, String> rows) throws SQLException {
    try {
      return CRITERIA.read(rows);
    } catch (StoredCriteria.Unreadable e) {
      throw new SQLException(e.getMessage(), e);
    }
  }
}
