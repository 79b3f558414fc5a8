package org.halflight.cli;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.halflight.session.Check;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Checks as they are typed. */
final class CheckNames {
  private static final Map<String, Check> CHECKS = checks();

  private CheckNames() {}

  /**
   * The check of a name.
   *
   * @throws Trouble when there is none of that name
   */
  static Check check(String typed) {
    Check check = CHECKS.get(typed.strip().toLowerCase(Locale.ROOT));
    if (check == null) {
      throw new Trouble(
          Words.say("run.unknownCheck", typed, "B, T, self-timer, wind, alone, leak, stops"));
    }
    return check;
  }

  private static Map<String, Check> checks() {
    Map<String, Check> checks = new LinkedHashMap<>();
    checks.put("b", Check.B);
    checks.put("t", Check.T);
    checks.put("self-timer", Check.SELF_TIMER);
    checks.put("wind", Check.WIND_AND_RELEASE);
    checks.put("alone", Check.RELEASE_ALONE);
    checks.put("leak", Check.LEAK);
    checks.put("stops", Check.STOPS);
    return checks;
  }
}
