package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;

class LineReaderTest {
  private final LineReader reader = new LineReader();

  @Test
  void keepsAHalfLineUntilItsEndComes() {
    assertThat(reader.accept("E 0001 0 1 8F")).isEmpty();
    assertThat(reader.accept("3C22A0#4623\nB 00")).containsExactly("E 0001 0 1 8F3C22A0#4623");
    assertThat(reader.accept("\n")).containsExactly("B 00");
  }

  @Test
  void ignoresACarriageReturnBeforeTheLineEndOnly() {
    assertThat(reader.accept("h 0001#9E55\r")).isEmpty();
    assertThat(reader.accept("\nh 00\r01\n\r\n")).containsExactly("h 0001#9E55", "h 00?01", "");
    assertThat(reader.accept("a\r\r\n")).containsExactly("a?");
  }

  @Test
  void marksBytesThatAreNotPrintable() {
    byte[] noise = {0, 9, (byte) 0xFF, 'H', ' ', 0x7F, '~', '\n'};

    assertThat(reader.accept(noise, noise.length)).containsExactly("???H ?~");
  }

  @Test
  void takesOnlyTheBytesThatCount() {
    byte[] buffer = "abc\ndef\n".getBytes(java.nio.charset.StandardCharsets.US_ASCII);

    assertThat(reader.accept(buffer, 4)).containsExactly("abc");
    assertThat(reader.accept(buffer, 0)).isEmpty();
  }

  @Test
  void givesEnoughOfATooLongLineToBeFoundTooLong() {
    String longest = "x".repeat(95);

    assertThat(reader.accept(longest + "\n")).containsExactly(longest);
    List<String> lines = reader.accept("x".repeat(1_000_000) + "\nh 0001#9E55\n");
    assertThat(lines).hasSize(2);
    assertThat(lines.get(0)).hasSize(96);
    assertThat(LineCodec.parse(lines.get(0)))
        .isEqualTo(new ParsedLine.Bad(ParsedLine.Reason.TOO_LONG));
    assertThat(lines.get(1)).isEqualTo("h 0001#9E55");
  }

  @Test
  void givesTheSameLinesHoweverTheBytesAreCut(@Seed long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 200; round++) {
      ByteArrayOutputStream all = new ByteArrayOutputStream();
      byte[] alphabet = {'A', '0', ' ', '#', '\r', '\n', 0, (byte) 0x80};
      for (int i = 0; i < 400; i++) {
        all.write(alphabet[random.nextInt(alphabet.length)]);
      }
      byte[] bytes = all.toByteArray();
      List<String> whole = new LineReader().accept(bytes, bytes.length);

      LineReader cut = new LineReader();
      List<String> pieces = new ArrayList<>();
      for (int at = 0; at < bytes.length; ) {
        int length = Math.min(bytes.length - at, random.nextInt(9));
        byte[] piece = java.util.Arrays.copyOfRange(bytes, at, at + length);
        pieces.addAll(cut.accept(piece, length));
        at += length;
      }
      assertThat(pieces).as("seed %d", seed).isEqualTo(whole);
    }
  }
}
