package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.halflight.session.StoredCriteria.Part;
import org.halflight.speeds.Tolerances;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StoredCriteriaTest {
  private static final AcceptanceCriteria ALL =
      new AcceptanceCriteria(
          Tolerances.find("0.25, 1/500=1/2").orElseThrow(),
          Measurand.ONE_EXPOSURE,
          true,
          new StopsAsked(List.of("3.5", "5.6", "8"), 0.25),
          new LinkageLimits(-0.0005, 0.002),
          true);

  private final StoredCriteria stored = new StoredCriteria(names(), "until", "wired");

  private static Map<Part, String> names() {
    Map<Part, String> names = new EnumMap<>(Part.class);
    for (Part part : Part.values()) {
      names.put(part, "its-" + part);
    }
    return names;
  }

  @Test
  void criteriaComeBackAndTheUsualOnesTakeNoRoom() {
    assertThat(stored.write(ALL)).hasSize(Part.values().length);
    assertThat(stored.read(stored.write(ALL))).isEqualTo(ALL);
    assertThat(stored.write(AcceptanceCriteria.USUAL)).isEmpty();
    assertThat(stored.read(Map.of("other", "1/3"))).isEqualTo(AcceptanceCriteria.USUAL);
  }

  @ParameterizedTest
  @CsvSource({
    "TOLERANCE, a bit",
    "MEASURAND, the-median",
    "UNTIL_DECIDED, sometimes",
    "STOPS, 4",
    "STOPS, ''",
    "STOP_TOLERANCE, NaN",
    "STOP_TOLERANCE, 1/0",
    "LINKAGE, 3..1",
    "FLASH_CONTACT, ''"
  })
  void whatCannotBeReadIsNeverTakenForTheUsual(Part part, String text) {
    Map<String, String> written = new HashMap<>(stored.write(ALL));
    written.put("its-" + part, text);
    assertThatThrownBy(() -> stored.read(written))
        .isInstanceOf(StoredCriteria.Unreadable.class)
        .hasMessage("its-" + part + " cannot be read: " + text);
  }
}
