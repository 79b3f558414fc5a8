package org.halflight.upload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FirmwareImagesTest {
  private static final String HEX = ":0400000001020304F2\n:00000001FF\n";

  /** By another program: {@code printf ... | sha256sum}. */
  private static final String SHA =
      "e01b381491bcc4f1714fa44786f72da1a4948d7af1e3be28507fc42843adbc76";

  private static FirmwareImages read(String list, String hex) {
    return FirmwareImages.read(
        list,
        name ->
            name.equals("a.hex")
                ? Optional.of(hex.getBytes(StandardCharsets.US_ASCII))
                : Optional.empty());
  }

  @Test
  void readsWhatIsAsTheListSays() {
    FirmwareImages images = read("# a comment\nfull\t1.2.0\t4\ta.hex\t" + SHA + "\n", HEX);

    assertThat(images.rigs()).containsExactly("full");
    FirmwareImage image = images.of("full").orElseThrow();
    assertThat(image.version()).isEqualTo("1.2.0");
    assertThat(image.size()).isEqualTo(4);
    assertThat(image.page(0, 6)).containsExactly(1, 2, 3, 4, 0xFF, 0xFF);
    assertThat(images.of("small")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "full\t1.2.0\t4\ta.hex\n",
        "full\t1.2.0\t4\tb.hex\t@",
        "full\t1.2.0\t5\ta.hex\t@",
        "full\t1.2.0\t4\ta.hex\t0000"
      })
  void refusesWhatIsNot(String list) {
    assertThatThrownBy(() -> read(list.replace("@", SHA), HEX))
        .isInstanceOfSatisfying(
            UploadTrouble.class,
            trouble -> assertThat(trouble.reason()).isEqualTo(UploadTrouble.Reason.DAMAGED_IMAGE))
        .hasMessageContaining("nothing was written");
  }

  @Test
  void refusesAFileInWhichOneDigitChanged() {
    String list = "full\t1.2.0\t4\ta.hex\t" + SHA + "\n";

    // Its own sums are right, the checksum of the list is not.
    assertThatThrownBy(() -> read(list, ":0400000001020305F1\n:00000001FF\n"))
        .isInstanceOf(UploadTrouble.class)
        .hasMessageContaining("a.hex");
  }

  @ParameterizedTest
  @CsvSource({
    "1.2.0, 1.2.0, SAME",
    "1.1.9, 1.2.0, OLDER",
    "1.10.0, 1.9.0, NEWER",
    "2.0.0, 1.9.9, NEWER",
    "0.9, 1.0.0, NOT_KNOWN",
    "mine, 1.0.0, NOT_KNOWN"
  })
  void comparesVersionsByTheirNumbers(String onRig, String brought, FirmwareAge age) {
    assertThat(FirmwareAge.of(onRig, brought)).isEqualTo(age);
  }
}
