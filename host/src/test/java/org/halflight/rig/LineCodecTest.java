package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.halflight.rig.ParsedLine.Bad;
import org.halflight.rig.ParsedLine.Command;
import org.halflight.rig.ParsedLine.Message;
import org.halflight.rig.ParsedLine.Reason;
import org.halflight.rig.ParsedLine.UnknownKind;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LineCodecTest {
  static List<ProtocolVectors> vectors() throws IOException {
    return ProtocolVectors.all();
  }

  @ParameterizedTest
  @MethodSource("vectors")
  void agreesWithTheSharedVectors(ProtocolVectors vector) {
    ParsedLine parsed = LineCodec.parse(vector.line());

    assertThat(verdict(parsed)).isEqualTo(vector.verdict());
  }

  @ParameterizedTest
  @MethodSource("vectors")
  void writesEveryValidVectorAsItReadIt(ProtocolVectors vector) {
    ParsedLine parsed = LineCodec.parse(vector.line());

    if (parsed instanceof Message found) {
      assertThat(LineCodec.format(found.message())).isEqualTo(vector.line());
    } else if (parsed instanceof Command found) {
      assertThat(LineCodec.format(found.sequence(), found.command())).isEqualTo(vector.line());
    } else {
      assertThat(vector.verdict()).isNotEqualTo("valid");
    }
  }

  private static String verdict(ParsedLine parsed) {
    if (parsed instanceof Bad bad) {
      return switch (bad.reason()) {
        case FORM -> "form";
        case CRC -> "crc";
        case FIELDS -> "fields";
        case TOO_LONG -> "long";
      };
    }
    return parsed instanceof UnknownKind ? "unknown" : "valid";
  }

  @Test
  void hasFieldsForEveryMessageAndCommand() {
    assertThat(MessageFields.FORMS.types())
        .containsExactlyInAnyOrderElementsOf(recordsOf(RigMessage.class));
    assertThat(CommandFields.FORMS.types())
        .containsExactlyInAnyOrderElementsOf(recordsOf(RigCommand.class));
  }

  private static List<Class<?>> recordsOf(Class<?> sealed) {
    return Arrays.stream(sealed.getDeclaredClasses()).filter(Class::isRecord).toList();
  }

  @Test
  void readsTheFieldsOfAGreeting() {
    assertThat(
            LineCodec.parse(
                "H 0000 01 00F42400 full 7F R-0001 00000007 power 1.0.0 0000000012C0#3A3F"))
        .isEqualTo(
            new Message(
                new RigMessage.Greeting(
                    0, 1, 16_000_000, "full", 0x7F, "R-0001", 7, "power", "1.0.0", 0x12C0)));
  }

  @Test
  void readsTicksAboveTheSignBit() {
    assertThat(LineCodec.parse("E 0001 0 1 8F3C22A0#4623"))
        .isEqualTo(new Message(new RigMessage.EdgeSeen(1, Channel.CENTRE_LOW, true, 0x8F3C22A0)));
  }

  @Test
  void readsTheCountersInTheOrderOfTheProtocol() {
    String line = LineCodec.format(new RigMessage.Losses(3, 0x4C, 1, 2, 3, 4, 5, 6));

    assertThat(line).startsWith("L 0003 0000004C 0001 0002 0003 0004 0005 0006#");
    assertThat(LineCodec.parse(line))
        .isEqualTo(new Message(new RigMessage.Losses(3, 0x4C, 1, 2, 3, 4, 5, 6)));
  }

  @Test
  void takesLowerCaseDigits() {
    // CRC covers the bytes as sent: it is that of the lower-case body.
    String body = "E 0001 0 1 8f3c22a0";
    String line = body + "#" + String.format("%04x", Crc16.of(body));

    assertThat(LineCodec.parse(line))
        .isEqualTo(new Message(new RigMessage.EdgeSeen(1, Channel.CENTRE_LOW, true, 0x8F3C22A0)));
  }

  @Test
  void takesALineOfExactly96BytesAndRefusesOneMore() {
    String unknown = "Z 0009 " + "A".repeat(LineCodec.LINE_CHARACTERS_MOST - 12);
    String longer = unknown + "A";

    assertThat(LineCodec.parse(framed(unknown))).isEqualTo(new UnknownKind('Z', 9));
    assertThat(LineCodec.parse(framed(longer))).isEqualTo(new Bad(Reason.TOO_LONG));
  }

  @Test
  void refusesLightBeyondFullScale() {
    assertThat(LineCodec.parse(framed("B 0002 000000000000 00 3FF1")))
        .isEqualTo(new Bad(Reason.FIELDS));
    assertThat(LineCodec.parse(framed("V 0007 2B A1 2AF8 FFC1"))).isEqualTo(new Bad(Reason.FIELDS));
    assertThat(LineCodec.parse(framed("M 0008 0 007F 3210 325 324")))
        .isEqualTo(new Bad(Reason.FIELDS));
  }

  @Test
  void refusesATickRateOfZero() {
    assertThat(
            LineCodec.parse(
                framed("H 0000 01 00000000 full 7F R-0001 00000007 power 1.0.0 0000000012C0")))
        .isEqualTo(new Bad(Reason.FIELDS));
  }

  @Test
  void readsBackWhatItWrote(@Seed long seed) {
    RandomLines random = new RandomLines(seed);
    for (int i = 0; i < 20_000; i++) {
      RigMessage message = random.message();
      assertThat(LineCodec.parse(LineCodec.format(message)))
          .as("seed %d", seed)
          .isEqualTo(new Message(message));
      RigCommand command = random.command();
      int sequence = random.number(0xFFFF);
      assertThat(LineCodec.parse(LineCodec.format(sequence, command)))
          .as("seed %d", seed)
          .isEqualTo(new Command(sequence, command));
    }
  }

  @Test
  void neverTakesALineWithOneBitFlippedForAnother(@Seed long seed) {
    // A CRC of 16 bits with this polynomial finds every single flipped bit (any polynomial with
    // more than one term does).
    RandomLines random = new RandomLines(seed);
    for (int i = 0; i < 500; i++) {
      RigMessage message = random.message();
      String line = LineCodec.format(message);
      for (int bit = 0; bit < 8 * line.length(); bit++) {
        char[] flipped = line.toCharArray();
        flipped[bit / 8] ^= (char) (1 << bit % 8);
        ParsedLine parsed = LineCodec.parse(new String(flipped));
        // A flip that only changes the case of a digit of the CRC leaves the line as it was.
        if (!new String(flipped).toUpperCase(Locale.ROOT).equals(line.toUpperCase(Locale.ROOT))
            || bit / 8 < line.length() - 4) {
          assertThat(parsed).as("seed %d, %s, bit %d", seed, line, bit).isInstanceOf(Bad.class);
        }
      }
    }
  }

  @Test
  void neverThrowsOnNoise(@Seed long seed) {
    Random random = new Random(seed);
    String alphabet = "HEBLAQVMhsptvmi 0123456789ABCDEFabcdef#.-_\u0000\u001b\u00e4?";
    for (int i = 0; i < 50_000; i++) {
      StringBuilder noise = new StringBuilder();
      int length = random.nextInt(110);
      for (int c = 0; c < length; c++) {
        noise.append(alphabet.charAt(random.nextInt(alphabet.length())));
      }
      String text = noise.toString();
      assertThat(LineCodec.parse(text)).as("seed %d", seed).isNotNull();
      // With a right CRC behind it, noise reaches the reading of the fields.
      assertThat(LineCodec.parse("E 0001 " + framed(text))).as("seed %d", seed).isNotNull();
      assertThat(LineCodec.parse(framed("H 0001 " + text))).as("seed %d", seed).isNotNull();
    }
  }

  @Test
  void writesNoValueThatDoesNotFit() {
    assertThatThrownBy(() -> LineCodec.format(0x10000, new RigCommand.AskStatus()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LineCodec.format(new RigMessage.Beat(0, 1L << 48, 0, 0)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                LineCodec.format(
                    new RigMessage.Greeting(0, 1, 1, "two words", 0, "x", 0, "x", "x", 0)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static String framed(String body) {
    return body + "#" + String.format("%04X", Crc16.of(body));
  }
}
