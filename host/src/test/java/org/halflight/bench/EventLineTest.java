package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EventLineTest {
  @Test
  void linesFromTheRigComeBackLetterForLetter() {
    for (String line :
        new String[] {
          "", "E 0001 0 1 8F3C22A0#4623", "\u0000\u0007%41 \u00ff=x", " two  spaces "
        }) {
      BenchEvent event = new BenchEvent.Received(12, line);
      assertThat(EventLine.parse(EventLine.format(event))).contains(event);
    }
  }

  @Test
  void marksKeepTheirValuesInOrder() {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("camera", "Aunt's folding camera = 6x6, 100 %");
    values.put("speeds", "1,1/2");
    values.put("empty", "");
    BenchEvent event = new BenchEvent.Mark(Long.MAX_VALUE, "run", values);
    assertThat(EventLine.parse(EventLine.format(event))).contains(event);
  }

  @Test
  void whateverIsWrittenIsReadBack(@Seed long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 2000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(20); n > 0; n--) {
        text.append((char) random.nextInt(0x250));
      }
      BenchEvent event =
          random.nextBoolean()
              ? new BenchEvent.Sent(random.nextLong(), text.toString())
              : new BenchEvent.Mark(
                  random.nextInt(), "note", Map.of("k" + random.nextInt(9), text.toString()));
      String line = EventLine.format(event);
      assertThat(line).doesNotContain("\n").doesNotContain("\r");
      assertThat(EventLine.parse(line)).as("seed %d, %s", seed, line).contains(event);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "R",
        "R 12",
        "X 12 text",
        "R twelve text",
        "M 12 Run a=b",
        "M 12 run a",
        "R 12 %4",
        "R 12 %zz",
        "R 12 a\u0001b",
        "M 12 run a=\u007f"
      })
  void whatIsNoEventIsNone(String line) {
    assertThat(EventLine.parse(line)).isEmpty();
  }
}
