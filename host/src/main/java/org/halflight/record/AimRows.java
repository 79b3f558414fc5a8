package org.halflight.record;

import java.sql.SQLException;
import java.util.Map;
import org.halflight.session.Aim;
import org.halflight.session.StoredAim;

/**
 * What the verdicts of a run are about, among what was noted of it: names that begin with {@code
 * aim-} are these. Only what is not usual is there.
 */
final class AimRows {
  private static final String BEFORE = "aim-";
  private static final String YES = "yes";

  private static final StoredAim AIM =
      new StoredAim(
          Map.of(
              StoredAim.Part.TOLERANCE, BEFORE + "tolerance",
              StoredAim.Part.MEASURAND, BEFORE + "measurand",
              StoredAim.Part.UNTIL_DECIDED, BEFORE + "until-decided",
              StoredAim.Part.STOPS, BEFORE + "stops",
              StoredAim.Part.STOP_TOLERANCE, BEFORE + "stop-tolerance",
              StoredAim.Part.LINKAGE, BEFORE + "linkage",
              StoredAim.Part.FLASH_CONTACT, BEFORE + "flash-contact"),
          YES,
          YES);

  private AimRows() {}

  static boolean isOne(String name) {
    return name.startsWith(BEFORE);
  }

  static Map<String, String> of(Aim aim) {
    return AIM.write(aim);
  }

  static Aim read(Map<String, String> rows) throws SQLException {
    try {
      return AIM.read(rows);
    } catch (StoredAim.Unreadable e) {
      throw new SQLException(e.getMessage(), e);
    }
  }
}
