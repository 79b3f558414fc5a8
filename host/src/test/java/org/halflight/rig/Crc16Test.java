package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class Crc16Test {
  @Test
  void givesTheCheckValueOfTheCatalogue() throws IOException {
    // The check values are those of the CRC catalogue; where they were read stands in the file.
    String published =
        Files.readAllLines(Path.of("fixtures/published/crc_check_values.csv")).stream()
            .filter(line -> line.startsWith("CRC-16/IBM-3740"))
            .map(line -> line.split(",", -1)[7])
            .findFirst()
            .orElseThrow();

    assertThat(Crc16.of("123456789")).isEqualTo(Integer.decode(published));
  }

  @Test
  void isItsStartValueOverNothing() {
    assertThat(Crc16.of("")).isEqualTo(0xFFFF);
  }

  @Test
  void takesACharacterAsOneByte() {
    assertThat(Crc16.of("\u00ff")).isNotEqualTo(Crc16.of("\u007f"));
  }
}
