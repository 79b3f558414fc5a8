package org.halflight.wire;

import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Lines with a CRC that fits and with any values in their fields, by the table of docs/protocol.md:
 * the ends of each range, values near those before, and values from anywhere.
 */
final class AnyLines {
  private static final String[][] FIELDS = {
    {"H", "2", "rate", "kind", "2", "word", "boot", "word", "word", "whole"},
    {"E", "channel", "bit", "low"},
    {"E", "channel", "bit", "low"},
    {"E", "channel", "bit", "low"},
    {"E", "channel", "bit", "low"},
    {"B", "whole", "levels", "light"},
    {"B", "whole", "levels", "light"},
    {"L", "8", "4", "4", "4", "4", "4", "4"},
    {"A", "4", "result"},
    {"Q", "4", "whole", "whole"},
    {"V", "2", "2", "4", "4"},
    {"M", "sensor", "4", "light", "3", "3"},
    {"C", "curve", "part", "low", "period", "count", "flags"},
    {"C", "curve", "part", "low", "period", "count", "flags"},
    {"D", "curve", "index", "values"},
    {"D", "curve", "index", "values"},
    {"R", "4", "drive", "low", "low"},
    {"W", "bit", "bit", "4", "4", "light"},
    {"Z", "8"},
  };

  private final SplittableRandom random;
  private long now = 100_000;
  private int sequence;
  private int levels;
  private long nanos;
  private String last = "";

  AnyLines(SplittableRandom random) {
    this.random = random;
  }

  long nanos() {
    return nanos;
  }

  String next() {
    nanos += random.nextInt(4) == 0 ? random.nextLong(1L << random.nextInt(1, 40)) : 1_000_000;
    if (random.nextInt(12) == 0 && !last.isEmpty()) {
      return last;
    }
    now += random.nextLong(1L << random.nextInt(1, 23));
    String[] kind = FIELDS[random.nextInt(FIELDS.length)];
    StringBuilder body = new StringBuilder(kind[0]).append(' ').append(hex(4, sequence));
    sequence =
        switch (random.nextInt(30)) {
          case 0 -> random.nextInt(0x10000);
          case 1 -> (sequence + 1 + random.nextInt(700)) & 0xFFFF;
          default -> (sequence + 1) & 0xFFFF;
        };
    for (int i = 1; i < kind.length; i++) {
      body.append(' ').append(field(kind[i]));
    }
    String line = WireText.line(body.toString());
    if (random.nextInt(25) == 0) {
      line = line.substring(0, random.nextInt(line.length()));
    }
    last = line;
    return line;
  }

  private String field(String kind) {
    return switch (kind) {
      case "rate" ->
          random.nextInt(4) == 0 ? hex(8, any(32)) : hex(8, 16_000_000 + random.nextInt(5));
      case "kind" -> random.nextBoolean() ? "full" : "small";
      case "word" -> random.nextBoolean() ? "R-0001" : "x" + any(20);
      case "boot" -> hex(8, random.nextInt(3));
      case "channel" -> hex(1, random.nextInt(8));
      case "sensor" -> hex(1, random.nextInt(4));
      case "bit" -> hex(1, random.nextInt(2));
      case "levels" -> hex(2, random.nextInt(3) == 0 ? random.nextInt(256) : levels++ & 0x7F);
      case "light" -> hex(4, random.nextInt(0x3FF1));
      case "result" -> hex(2, random.nextInt(6));
      case "part" -> hex(1, random.nextInt(3));
      case "curve" -> hex(2, random.nextInt(3));
      case "period" -> hex(8, random.nextInt(8) == 0 ? any(32) : 256L << random.nextInt(24));
      case "count" -> hex(4, random.nextInt(3) == 0 ? any(16) : random.nextInt(40));
      case "index" -> hex(4, random.nextInt(3) == 0 ? any(16) : 0);
      case "flags" -> hex(2, random.nextInt(8));
      case "drive" -> hex(1, 1 + random.nextInt(2));
      case "values" -> values();
      case "low" -> hex(8, ticks() & 0xFFFFFFFFL);
      case "whole" -> hex(12, ticks() & 0xFFFFFFFFFFFFL);
      default -> {
        int digits = Integer.parseInt(kind);
        yield hex(digits, any(4 * digits));
      }
    };
  }

  private long ticks() {
    return switch (random.nextInt(12)) {
      case 0 -> any(48);
      case 1 -> now - random.nextLong(1L << random.nextInt(1, 30));
      case 2 -> now + random.nextLong(1L << random.nextInt(1, 30));
      default -> now;
    };
  }

  private long any(int bits) {
    long most = bits == 64 ? -1L : (1L << bits) - 1;
    return switch (random.nextInt(4)) {
      case 0 -> 0;
      case 1 -> most;
      case 2 -> 1;
      default -> random.nextLong() & most;
    };
  }

  private String values() {
    StringBuilder digits = new StringBuilder();
    int count = 2 * (1 + random.nextInt(16));
    for (int i = 0; i < count; i++) {
      digits.append(hex(2, random.nextInt(256)));
    }
    return digits.toString();
  }

  private static String hex(int digits, long value) {
    return String.format(Locale.ROOT, "%0" + digits + "X", value);
  }
}
