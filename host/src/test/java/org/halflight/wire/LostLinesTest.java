package org.halflight.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.halflight.fixtures.Seed;
import org.halflight.wire.ModelBoard.Sent;
import org.halflight.wire.TrueFiring.Kind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * No loss makes a firing false without a word: every pattern of lost lines around a firing of every
 * kind, with beats in every position, and bursts of all sorts in long streams.
 *
 * <p>The seed of the random part is printed; {@code -Dhalflight.seed} runs one again and {@code
 * -Dhalflight.rounds} more of them.
 */
@Tag("long")
class LostLinesTest {
  private static final long MS = TrueFiring.MS;
  private static final long WIDTH = 250_000;

  /** Lines around the firing, every subset of which is lost. */
  private static final int WINDOW = 11;

  private static final int POSITIONS = 4;

  @Test
  void nothingIsMarkedWhereNothingIsLost() {
    for (Kind kind : Kind.values()) {
      for (int position = 0; position < 40; position++) {
        Scene scene = new Scene(kind, position * ModelBoard.BEAT_TICKS / 40);
        Reports reports = Reports.of(scene.lines, scene.firings);
        assertThat(reports.falsehood()).as("%s at %d", kind, position).isEmpty();
        assertThat(reports.undamaged()).as("%s at %d", kind, position).isEqualTo(3);
        assertThat(reports.all()).as("%s at %d", kind, position).isEqualTo(3);
      }
    }
  }

  @Test
  void everyPatternOfLostLinesAroundAFiring() {
    for (Kind kind : Kind.values()) {
      for (int position = 0; position < POSITIONS; position++) {
        Scene scene = new Scene(kind, position * ModelBoard.BEAT_TICKS / POSITIONS + 1234);
        int from = scene.windowFrom();
        for (int lost = 0; lost < 1 << WINDOW; lost++) {
          List<Sent> came = new ArrayList<>(scene.lines.subList(0, from));
          for (int i = 0; i < WINDOW; i++) {
            if ((lost >> i & 1) == 0) {
              came.add(scene.lines.get(from + i));
            }
          }
          came.addAll(scene.lines.subList(from + WINDOW, scene.lines.size()));
          assertTrue(came, scene.firings, kind + " at " + position + ", lost " + lost);
        }
      }
    }
  }

  @Test
  void theFirstLinesOfAStart() {
    for (Kind kind : Kind.values()) {
      for (int position = 0; position < 2 * POSITIONS; position++) {
        Scene before = new Scene(Kind.PRESSED, 7 * MS);
        Scene behind = new Scene(kind, position * ModelBoard.BEAT_TICKS / (2 * POSITIONS) + 99);
        List<TrueFiring> firings = new ArrayList<>(before.firings);
        firings.addAll(behind.firings);
        for (int lost = 1; lost < behind.lines.size() - 10; lost++) {
          List<Sent> came = new ArrayList<>(before.lines);
          came.addAll(behind.lines.subList(lost, behind.lines.size()));
          assertTrue(came, firings, kind + " at " + position + ", lost the first " + lost);
        }
      }
    }
  }

  @Test
  void burstsInLongStreams(@Seed long seed) {
    int rounds = Integer.getInteger("halflight.rounds", 400);
    System.out.println("LostLinesTest seed " + seed + ", rounds " + rounds);
    int undamaged = 0;
    int all = 0;
    for (int round = 0; round < rounds; round++) {
      SplittableRandom random = new SplittableRandom(seed + round);
      List<TrueFiring> firings = Firings.some(random, 12);
      long end = firings.get(firings.size() - 1).lastTicks() + 5000 * MS;
      List<Sent> lines = ModelBoard.lines(firings, random.nextLong(ModelBoard.BEAT_TICKS), end);
      List<Sent> came = damaged(lines, random);
      assertTrue(came, firings, "-Dhalflight.rounds=1 -Dhalflight.seed=" + (seed + round));
      undamaged += Reports.of(came, firings).undamaged();
      all += firings.size();
    }
    System.out.println("LostLinesTest: " + undamaged + " of " + all + " firings whole");
    // Or it would be a program that trusts nothing.
    assertThat(undamaged).isGreaterThan(all / 4);
  }

  private static void assertTrue(List<Sent> came, List<TrueFiring> firings, String where) {
    Optional<String> falsehood = Reports.of(came, firings).falsehood();
    if (falsehood.isPresent()) {
      StringBuilder text = new StringBuilder(where + ": " + falsehood.get());
      came.forEach(sent -> text.append('\n').append(sent.line()));
      throw new AssertionError(text);
    }
  }

  /** Three firings, the one in the middle of a kind, the beats where they are wanted. */
  private static final class Scene {
    private final List<TrueFiring> firings;
    private final List<Sent> lines;

    Scene(Kind kind, long position) {
      TrueFiring before = TrueFiring.of(Kind.PRESSED, 4000 * MS, WIDTH);
      long at = before.lastTicks() + 700 * MS;
      TrueFiring middle = TrueFiring.of(kind, at, kind == Kind.LONG ? 900 * MS : WIDTH);
      TrueFiring after = TrueFiring.of(Kind.PRESSED, middle.lastTicks() + 650 * MS, WIDTH);
      firings = List.of(before, middle, after);
      lines = ModelBoard.lines(firings, 100 * MS + position, after.lastTicks() + 3000 * MS);
    }

    /** Two lines before the first edge of the firing in the middle. */
    int windowFrom() {
      long first = firings.get(1).edges().get(0).ticks();
      for (int i = 0; i < lines.size(); i++) {
        if (lines.get(i).kind() == 'E' && lines.get(i).ticks() == first) {
          return i - 2;
        }
      }
      throw new IllegalStateException();
    }
  }

  /** Lines lost, doubled, cut and bent, singly and in bursts; the last beats come whole. */
  private static List<Sent> damaged(List<Sent> lines, SplittableRandom random) {
    double share = 0.05 * random.nextDouble();
    double length = 1 + random.nextInt(8);
    List<Sent> came = new ArrayList<>();
    int left = 0;
    for (int i = 0; i < lines.size(); i++) {
      Sent sent = lines.get(i);
      if (i > lines.size() - 10) {
        came.add(sent);
        continue;
      }
      if (left == 0 && random.nextDouble() < share / length) {
        left = 1 + random.nextInt((int) (2 * length));
      }
      if (left == 0) {
        came.add(sent);
        continue;
      }
      left--;
      switch (random.nextInt(5)) {
        case 0 -> {
          came.add(sent);
          came.add(sent);
        }
        case 1 -> came.add(with(sent, sent.line().substring(0, random.nextInt(20))));
        case 2 -> came.add(with(sent, bent(sent.line(), random)));
        default -> {}
      }
    }
    return came;
  }

  private static Sent with(Sent sent, String line) {
    return new Sent(line, sent.ticks(), sent.nanos());
  }

  private static String bent(String line, SplittableRandom random) {
    char[] all = line.toCharArray();
    int at = random.nextInt(all.length);
    all[at] = (char) (all[at] ^ 1 << random.nextInt(6));
    return new String(all);
  }
}
