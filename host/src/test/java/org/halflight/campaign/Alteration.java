package org.halflight.campaign;

import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * One line whose digits were altered and whose check was worked out anew, and whether anybody could
 * tell.
 *
 * <p>The rule. Nobody can tell where a board could have sent the lines as they stand: each edge is
 * at most 20 ms out of order with the beats and the edges of other channels around it, at most 4 us
 * with those of its own channel, and, once {@link #BEATS_UNTIL_PACE} beats of its start have come,
 * not later than the host had it by more than {@link #ARRIVAL_SLACK_NANOS}; a beat keeps its order
 * with the edges around it and is off by no more than 20 ms; a rate is off 16 or 8 MHz by no more
 * than {@link #RATE_CLASS}, as oscillators are; the start number is that of the first greeting,
 * which nothing can be held against. All else can be told.
 *
 * @param field which field of which kind of line
 * @param place of the line
 * @param text the line now
 * @param detectable whether it can be told
 */
record Alteration(String field, int place, String text, boolean detectable) {
  /** How far the rate of a board's oscillator may be off the one that the protocol names. */
  static final double RATE_CLASS = 0.005;

  /** Later than its arrival by more than this no edge can be, whatever the clocks do. */
  static final long ARRIVAL_SLACK_NANOS = 50_000_000;

  /** Until then the host cannot know that the board goes at the pace of its own clock. */
  static final int BEATS_UNTIL_PACE = 8;

  private static final long DISORDER_TICKS = 320_000;

  /** Stamps of one channel may cross by this much: 4 us. */
  private static final long SAME_CHANNEL_TICKS = 64;

  private static final long RATE = 16_000_000;

  /** The fields of a line that hold digits, by its kind: name and place. */
  private record Field(char kind, int at, String name) {}

  private static final Field EDGE_TICKS = new Field('E', 4, "ticks of an edge");
  private static final Field RATE_FIELD = new Field('H', 3, "rate in a greeting");
  private static final List<Field> OTHERS =
      List.of(
          new Field('E', 1, "counter of an edge"),
          new Field('E', 2, "channel of an edge"),
          new Field('E', 3, "level of an edge"),
          new Field('B', 2, "ticks of a beat"),
          new Field('B', 3, "levels of a beat"),
          new Field('B', 1, "counter of a beat"),
          new Field('H', 5, "channels in a greeting"),
          new Field('H', 7, "start number in a greeting"),
          new Field('H', 10, "ticks of a greeting"),
          new Field('L', 3, "lost edges in the counters"));

  /** Alters one field of one line of a session. */
  static Alteration of(Random random, List<InventedSession.Line> lines) {
    while (true) {
      int which = random.nextInt(10);
      Field field =
          which < 5
              ? EDGE_TICKS
              : which < 7 ? RATE_FIELD : OTHERS.get(random.nextInt(OTHERS.size()));
      int place = random.nextInt(lines.size());
      for (int tries = 0; tries < lines.size(); tries++) {
        place = (place + 1) % lines.size();
        if (lines.get(place).text().charAt(0) == field.kind()) {
          break;
        }
      }
      String line = lines.get(place).text();
      String[] words = line.substring(0, line.indexOf('#')).split(" ", -1);
      if (words[0].charAt(0) != field.kind()) {
        continue;
      }
      String before = words[field.at()];
      words[field.at()] = altered(random, field, before);
      if (words[field.at()].equals(before)) {
        continue;
      }
      String text = Crc.sealed(String.join(" ", words));
      boolean detectable =
          !before.equalsIgnoreCase(words[field.at()])
              && isDetectable(field, lines, place, before, words[field.at()]);
      return new Alteration(field.name(), place, text, detectable);
    }
  }

  private static String altered(Random random, Field field, String before) {
    if (field.name().startsWith("channel of")) {
      return String.valueOf(random.nextInt(7));
    }
    if (field.name().startsWith("level of")) {
      return before.equals("1") ? "0" : "1";
    }
    char[] digits = before.toCharArray();
    int many = 1 + random.nextInt(2);
    for (int i = 0; i < many; i++) {
      int at = random.nextInt(digits.length);
      digits[at] = Hex.of(1, random.nextInt(16)).charAt(0);
    }
    return new String(digits);
  }

  private static boolean isDetectable(
      Field field, List<InventedSession.Line> lines, int place, String before, String after) {
    return switch (field.name()) {
      case "ticks of an edge" -> edgeIsImpossible(lines, place, before, after);
      case "rate in a greeting" -> rateIsImpossible(after);
      case "ticks of a beat", "ticks of a greeting" ->
          beatIsImpossible(lines, place, Long.parseLong(after, 16));
      case "start number in a greeting" -> place > 0;
      // A bit of no channel of a leaf shutter's firing changes nothing that is held against it.
      default -> true;
    };
  }

  static boolean rateIsImpossible(String rate) {
    long told = Long.parseLong(rate, 16);
    return Math.abs(told - RATE) > RATE_CLASS * RATE
        && Math.abs(told - RATE / 2) > RATE_CLASS * RATE / 2;
  }

  static boolean edgeIsImpossible(
      List<InventedSession.Line> lines, int place, String before, String after) {
    long true32 = Long.parseLong(before, 16);
    long moved = (int) (Long.parseLong(after, 16) - true32);
    InventedSession.Line line = lines.get(place);
    long ticks = line.ticks() + moved;
    // The host had the line at this time; what the clocks are apart is known to a millisecond.
    long lateNanos = Math.round((ticks - line.ticks()) * 62.5) - (line.nanos() - line.happened());
    if (lateNanos > ARRIVAL_SLACK_NANOS && beatsOfTheStartBefore(lines, place) > BEATS_UNTIL_PACE) {
      return true;
    }
    char channel = line.text().charAt(7);
    for (int i = 0; i < lines.size(); i++) {
      InventedSession.Line other = lines.get(i);
      char kind = other.text().charAt(0);
      if (i == place || (kind != 'E' && kind != 'B')) {
        continue;
      }
      boolean sameChannel = kind == 'E' && other.text().charAt(7) == channel;
      long slack = sameChannel ? SAME_CHANNEL_TICKS : DISORDER_TICKS;
      boolean impossible =
          i < place ? ticks < other.ticks() - slack : ticks > other.ticks() + slack;
      if (impossible) {
        return true;
      }
    }
    return false;
  }

  private static int beatsOfTheStartBefore(List<InventedSession.Line> lines, int place) {
    int beats = 0;
    for (int i = place - 1; i >= 0 && !lines.get(i).text().startsWith("H "); i--) {
      beats += lines.get(i).text().startsWith("B ") ? 1 : 0;
    }
    return beats;
  }

  private static boolean beatIsImpossible(List<InventedSession.Line> lines, int place, long after) {
    long ticks = lines.get(place).ticks();
    long moved = after - (ticks & (1L << 48) - 1);
    if (Math.abs(moved) > DISORDER_TICKS) {
      return true;
    }
    for (int i = 0; i < lines.size(); i++) {
      InventedSession.Line other = lines.get(i);
      if (i != place
          && other.text().charAt(0) == 'E'
          && (i < place ? ticks + moved < other.ticks() : ticks + moved > other.ticks())) {
        return true;
      }
    }
    return false;
  }

  @Override
  public String toString() {
    return field + ", line " + place + ": " + text + Arrays.toString(new boolean[] {detectable});
  }
}
