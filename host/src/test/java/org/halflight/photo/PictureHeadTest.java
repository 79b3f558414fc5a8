package org.halflight.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What the head of a picture says, whatever its name; damage costs at most what it says. */
class PictureHeadTest {
  private static final ZoneId ZONE = ZoneId.of("UTC-8");
  private static final Instant NOW = Instant.parse("2026-11-30T20:00:00Z");

  @Test
  void aPhonesPictureSaysHowItWasHeldAndWhen() throws IOException {
    PictureHead head =
        head(SamplePictures.jpeg(64, 48, 6, "2026:11:30 10:15:20", "+01:00")).orElseThrow();
    assertThat(head.kind()).isEqualTo(PictureHead.Kind.JPEG);
    assertThat(head.width()).isEqualTo(64);
    assertThat(head.height()).isEqualTo(48);
    assertThat(head.orientation()).isEqualTo(6);
    assertThat(head.isInWaves()).isFalse();
    assertThat(head.takenAt(ZONE, NOW)).contains(Instant.parse("2026-11-30T09:15:20Z"));
  }

  @Test
  void aClockWithoutAZoneIsReadInOurs() throws IOException {
    PictureHead head = head(SamplePictures.jpeg(8, 8, 1, "2026:11:29 21:31:00", "")).orElseThrow();
    assertThat(head.takenAt(ZONE, NOW)).contains(Instant.parse("2026-11-30T05:31:00Z"));
  }

  @Test
  void aTimeThatCannotBeIsNone() throws IOException {
    for (String time :
        new String[] {"2000:01:01 00:00:00", "2031:01:01 00:00:00", "0000:00:00 00:00:00", "?"}) {
      assertThat(head(SamplePictures.jpeg(8, 8, 1, time, "")).orElseThrow().takenAt(ZONE, NOW))
          .isEmpty();
    }
  }

  @Test
  void kindsAreKnownByTheirBytes() throws IOException {
    assertThat(head(SamplePictures.picture("png", 30, 20)))
        .map(PictureHead::kind)
        .contains(PictureHead.Kind.PNG);
    assertThat(head(SamplePictures.picture("gif", 30, 20)))
        .map(PictureHead::kind)
        .contains(PictureHead.Kind.OTHER);
    assertThat(head(ascii("\0\0\0\30ftypheic\0\0\0\0mif1heic")))
        .map(PictureHead::kind)
        .contains(PictureHead.Kind.OTHER);
    assertThat(head(ascii("\0\0\0\30ftypqt  \0\0\0\0qt  "))).isEmpty();
    assertThat(head(ascii("two shims, 0.10 and 0.05"))).isEmpty();
    assertThat(head(new byte[0])).isEmpty();
  }

  @Test
  void anyDamageToTheHeadIsNoFault() throws IOException {
    byte[] whole = SamplePictures.jpeg(64, 48, 6, "2026:11:30 10:15:20", "+01:00");
    Random random = new Random(20261130);
    for (int i = 0; i < 3000; i++) {
      byte[] damaged = Arrays.copyOf(whole, 1 + random.nextInt(600));
      for (int j = 0; j < 4; j++) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      }
      assertThatCode(() -> head(damaged).flatMap(h -> h.takenAt(ZONE, NOW)))
          .doesNotThrowAnyException();
    }
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static Optional<PictureHead> head(byte[] bytes) throws IOException {
    return PictureHead.read(new ByteArrayInputStream(bytes));
  }
}
