package org.halflight.record;

import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.halflight.session.Aim;
import org.halflight.session.LinkageLimits;
import org.halflight.session.Measurand;
import org.halflight.session.RunSetup;
import org.halflight.session.StopsAsked;
import org.halflight.speeds.Tolerances;

/**
 * What the verdicts of a run are about, among what was noted of it: names that begin with {@code
 * aim-} are these. Only what is not usual is there.
 */
final class AimRows {
  private static final String BEFORE = "aim-";
  private static final String TOLERANCE = BEFORE + "tolerance";
  private static final String MEASURAND = BEFORE + "measurand";
  private static final String UNTIL_DECIDED = BEFORE + "until-decided";

  private static final String STOPS = BEFORE + "stops";
  private static final String STOP_TOLERANCE = BEFORE + "stop-tolerance";
  private static final String FLASH_CONTACT = BEFORE + "flash-contact";
  private static final String LINKAGE = BEFORE + "linkage";
  private static final String MOST_TRIES = BEFORE + "most-tries";

  private AimRows() {}

  static boolean isOne(String name) {
    return name.startsWith(BEFORE);
  }

  static Map<String, String> of(RunSetup asked) {
    Aim aim = asked.aim();
    Map<String, String> rows = new LinkedHashMap<>();
    if (!aim.tolerances().areUsual()) {
      rows.put(TOLERANCE, aim.tolerances().text());
    }
    if (aim.measurand() != Measurand.MEAN_OF_SETTING) {
      rows.put(MEASURAND, Measurand.WORDS.word(aim.measurand()));
    }
    if (aim.untilDecided()) {
      rows.put(UNTIL_DECIDED, "yes");
    }
    if (!aim.stops().markings().equals(StopsAsked.USUAL.markings())) {
      rows.put(STOPS, String.join(",", aim.stops().markings()));
    }
    if (aim.stops().toleranceStops() != StopsAsked.USUAL_TOLERANCE_STOPS) {
      rows.put(STOP_TOLERANCE, Double.toString(aim.stops().toleranceStops()));
    }
    if (!aim.linkage().equals(LinkageLimits.USUAL)) {
      rows.put(LINKAGE, aim.linkage().text());
    }
    if (aim.flashContact()) {
      rows.put(FLASH_CONTACT, "yes");
    }
    if (asked.mostTries() != RunSetup.TRIES_OF_OLD) {
      rows.put(MOST_TRIES, String.valueOf(asked.mostTries()));
    }
    return rows;
  }

  static Aim read(Map<String, String> rows) throws SQLException {
    return new Aim(
        Tolerances.find(rows.getOrDefault(TOLERANCE, "")).orElse(Tolerances.USUAL),
        rows.containsKey(MEASURAND)
            ? Word.read(Measurand.WORDS, rows.get(MEASURAND))
            : Measurand.MEAN_OF_SETTING,
        rows.containsKey(UNTIL_DECIDED),
        stops(rows),
        LinkageLimits.find(rows.getOrDefault(LINKAGE, ""))
            .orElseThrow(() -> new SQLException("no limits of a linkage: " + rows)),
        rows.containsKey(FLASH_CONTACT));
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

  private static StopsAsked stops(Map<String, String> rows) throws SQLException {
    try {
      return new StopsAsked(
          rows.containsKey(STOPS)
              ? List.of(rows.get(STOPS).split(",", -1))
              : StopsAsked.USUAL.markings(),
          rows.containsKey(STOP_TOLERANCE)
              ? Double.parseDouble(rows.get(STOP_TOLERANCE))
              : StopsAsked.USUAL_TOLERANCE_STOPS);
    } catch (IllegalArgumentException e) {
      throw new SQLException("no stops of a stop check: " + rows, e);
    }
  }
}
