package org.halflight.rig;

import java.util.Random;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;

/** Messages and commands drawn with a seed, over the whole range of each field. */
final class RandomLines {
  private static final String WORD =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789._-";
  private static final Channel[] LIGHT = {Channel.CENTRE_LOW, Channel.OUTER_A, Channel.OUTER_B};

  private final Random random;

  RandomLines(long seed) {
    random = new Random(seed);
  }

  RigMessage message() {
    int sequence = number(0xFFFF);
    return switch (random.nextInt(12)) {
      case 0 ->
          new RigMessage.Greeting(
              sequence,
              number(0xFF),
              (random.nextBoolean() ? 16_000_000 : 8_000_000) + random.nextInt(-40_000, 40_001),
              random.nextBoolean() ? "full" : "small",
              number(0x7F),
              word(12),
              random.nextLong() >>> 32,
              word(9),
              word(8),
              ticks());
      case 1 ->
          new RigMessage.EdgeSeen(
              sequence, oneOf(Channel.values()), random.nextBoolean(), random.nextInt());
      case 2 -> new RigMessage.Beat(sequence, ticks(), number(0x7F), number(0x3FF0));
      case 3 ->
          new RigMessage.Losses(
              sequence,
              random.nextLong() >>> 32,
              number(0xFFFF),
              number(0xFFFF),
              number(0xFFFF),
              number(0xFFFF),
              number(0xFFFF),
              number(0xFFFF));
      case 4 -> new RigMessage.Answer(sequence, number(0xFFFF), oneOf(Result.values()));
      case 5 -> new RigMessage.Echo(sequence, number(0xFFFF), ticks(), ticks());
      case 6 ->
          new RigMessage.Thresholds(
              sequence, number(0xFF), number(0xFF), number(0xFFC0), number(0xFFC0));
      case 7 -> {
        SampledLight.Kind part = oneOf(SampledLight.Kind.values());
        yield new RigMessage.CurvePart(
            sequence,
            oneOf(new Channel[] {Channel.CENTRE_LOW, Channel.OUTER_A, Channel.OUTER_B}),
            number(0xFF),
            part,
            random.nextInt(),
            part == SampledLight.Kind.PLATEAU ? 256L << random.nextInt(20) : 256,
            number(0xFFFF),
            random.nextBoolean(),
            random.nextBoolean(),
            random.nextBoolean());
      }
      case 8 -> new RigMessage.CurveValues(sequence, number(0xFF), number(0xFFFF), values());
      case 9 ->
          new RigMessage.PulseMade(
              sequence,
              number(0xFFFF),
              random.nextBoolean() ? ReferenceDrive.SQUARE : ReferenceDrive.RAMPED,
              random.nextInt(),
              random.nextInt());
      case 10 ->
          new RigMessage.TripPoint(
              sequence,
              random.nextBoolean() ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
              random.nextBoolean(),
              random.nextBoolean() ? 0 : 0x10 + number(0xFEF),
              number(0xFFC0),
              number(0x3FF0));
      default -> {
        int least = number(1023);
        yield new RigMessage.LightBlock(
            sequence,
            oneOf(LIGHT),
            number(0xFFFF),
            number(0x3FF0),
            least,
            least + number(1023 - least));
      }
    };
  }

  RigCommand command() {
    return switch (random.nextInt(10)) {
      case 0 -> new RigCommand.AskGreeting();
      case 1 -> new RigCommand.AskStatus();
      case 2 -> new RigCommand.Ping(number(0xFFFF));
      case 3 -> {
        int low = number(0xFE);
        yield new RigCommand.SetThresholds(low, low + 1 + number(0xFE - low));
      }
      case 4 -> new RigCommand.AskThresholds();
      case 5 -> new RigCommand.MeasureLight(oneOf(LIGHT), number(0xFFFF));
      case 6 -> new RigCommand.TakeCurves(oneOf(RigCommand.CurveMode.values()));
      case 7 ->
          switch (random.nextInt(4)) {
            case 0 -> RigCommand.DriveReference.steady();
            case 1 -> RigCommand.DriveReference.off();
            default ->
                new RigCommand.DriveReference(
                    random.nextBoolean() ? ReferenceDrive.SQUARE : ReferenceDrive.RAMPED,
                    0x640 + number(0x1E84800 - 0x640),
                    1 + number(0xFFFE));
          };
      case 8 -> {
        int from = 0x10 + number(0xFEE);
        yield new RigCommand.SweepThreshold(
            random.nextBoolean() ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
            from,
            Math.min(0xFFF, from + 1 + number(0x1FF)));
      }
      default -> new RigCommand.SetSerial(word(12));
    };
  }

  /** A number of 0 to {@code most}, the ends often. */
  int number(int most) {
    return switch (random.nextInt(8)) {
      case 0 -> 0;
      case 1 -> most;
      default -> random.nextInt(most + 1);
    };
  }

  private <T> T oneOf(T[] all) {
    return all[random.nextInt(all.length)];
  }

  private long ticks() {
    return random.nextLong() >>> 16;
  }

  /** One to 32 bytes as digits. */
  private String values() {
    StringBuilder digits = new StringBuilder();
    int bytes = 1 + number(31);
    for (int i = 0; i < bytes; i++) {
      digits.append(String.format("%02X", random.nextInt(256)));
    }
    return digits.toString();
  }

  private String word(int charactersMost) {
    StringBuilder word = new StringBuilder();
    int length = 1 + random.nextInt(charactersMost);
    for (int i = 0; i < length; i++) {
      word.append(WORD.charAt(random.nextInt(WORD.length())));
    }
    return word.toString();
  }
}
