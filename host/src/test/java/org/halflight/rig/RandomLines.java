package org.halflight.rig;

import java.util.Random;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.Channel;

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
    return switch (random.nextInt(8)) {
      case 0 ->
          new RigMessage.Greeting(
              sequence,
              number(0xFF),
              1 + (random.nextLong() >>> 33),
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
    return switch (random.nextInt(7)) {
      case 0 -> new RigCommand.AskGreeting();
      case 1 -> new RigCommand.AskStatus();
      case 2 -> new RigCommand.Ping(number(0xFFFF));
      case 3 -> {
        int low = number(0xFE);
        yield new RigCommand.SetThresholds(low, low + 1 + number(0xFE - low));
      }
      case 4 -> new RigCommand.AskThresholds();
      case 5 -> new RigCommand.MeasureLight(oneOf(LIGHT), number(0xFFFF));
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

  private String word(int charactersMost) {
    StringBuilder word = new StringBuilder();
    int length = 1 + random.nextInt(charactersMost);
    for (int i = 0; i < length; i++) {
      word.append(WORD.charAt(random.nextInt(WORD.length())));
    }
    return word.toString();
  }
}
