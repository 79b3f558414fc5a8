package org.halflight.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.halflight.fixtures.Seed;
import org.halflight.wire.ModelBoard.Sent;
import org.junit.jupiter.api.Test;

/**
 * A line that was altered and whose CRC fits all the same: what a board cannot have meant leads to
 * no false time without a word. What it can have meant nobody can tell from the truth; {@link
 * Meaning} says which that is, from docs/protocol.md alone, and such alterations are counted apart.
 *
 * <p>Seeds are printed; {@code -Dhalflight.seed} runs one again, {@code -Dhalflight.rounds} more.
 */
class AlteredLinesTest {
  private static final long MS = TrueFiring.MS;
  private static final int ROUNDS = 1000;

  @Test
  void ticks(@Seed long seed) {
    int rounds = Integer.getInteger("halflight.rounds", ROUNDS);
    System.out.println("AlteredLinesTest ticks, seed " + seed + ", rounds " + rounds);
    Map<String, Integer> counts = new TreeMap<>();
    double leastForward = 0;
    double leastBack = 0;
    for (int round = 0; round < rounds; round++) {
      SplittableRandom random = new SplittableRandom(seed + round);
      List<TrueFiring> firings = Firings.some(random, 4);
      long end = firings.get(firings.size() - 1).lastTicks() + 2000 * MS;
      List<Sent> lines =
          new ArrayList<>(ModelBoard.lines(firings, random.nextLong(ModelBoard.BEAT_TICKS), end));
      int at = anyOf(lines, random.nextInt(4) == 0 ? 'B' : 'E', random);
      Sent real = lines.get(at);
      String body = WireText.body(real.line());
      String[] fields = body.split(" ", -1);
      int field = real.kind() == 'E' ? 4 : 2;
      String ticks = fields[field];
      fields[field] = otherDigit(ticks, random.nextInt(ticks.length()), random);
      lines.set(at, new Sent(WireText.line(String.join(" ", fields)), real.ticks(), real.nanos()));
      boolean possible = Meaning.isPossible(lines);
      Optional<String> falsehood = Reports.of(lines, firings).falsehood();
      counts.merge(possible ? "possible" : "impossible", 1, Integer::sum);
      if (falsehood.isPresent()) {
        if (!possible) {
          StringBuilder text =
              new StringBuilder("-Dhalflight.rounds=1 -Dhalflight.seed=" + (seed + round) + ": ");
          text.append(falsehood.get()).append("\n").append(real).append(" became ").append(at);
          lines.forEach(sent -> text.append('\n').append(sent.line()));
          throw new AssertionError(text);
        }
        counts.merge("possible, and false", 1, Integer::sum);
        double millis =
            (Long.parseLong(fields[field], 16) - Long.parseLong(ticks, 16)) / (double) MS;
        leastForward = Math.max(leastForward, millis);
        leastBack = Math.max(leastBack, -millis);
      }
    }
    System.out.printf(
        Locale.ROOT,
        "AlteredLinesTest ticks: %s; furthest that nobody can tell: %.1f ms later, %.1f ms"
            + " earlier%n",
        counts,
        leastForward,
        leastBack);
    assertThat(counts.get("impossible")).isGreaterThan(rounds / 4);
  }

  @Test
  void rateOfTheBoard(@Seed long seed) {
    System.out.println("AlteredLinesTest rate, seed " + seed);
    int within = 0;
    for (int round = 0; round < ROUNDS; round++) {
      SplittableRandom random = new SplittableRandom(seed + round);
      List<TrueFiring> firings = Firings.some(random, 2);
      long end = firings.get(firings.size() - 1).lastTicks() + 1000 * MS;
      List<Sent> lines = new ArrayList<>(ModelBoard.lines(firings, 100 * MS, end));
      Sent real = lines.get(0);
      String[] fields = WireText.body(real.line()).split(" ", -1);
      do {
        fields[3] = otherDigit(fields[3], random.nextInt(8), random);
      } while (random.nextInt(3) == 0);
      long rate = Long.parseLong(fields[3], 16);
      boolean fits = Math.abs(rate - 16e6) <= 80e3 || Math.abs(rate - 8e6) <= 40e3;
      lines.set(0, new Sent(WireText.line(String.join(" ", fields)), real.ticks(), real.nanos()));
      Optional<String> falsehood = Reports.of(lines, firings).falsehood();
      within += fits && falsehood.isPresent() ? 1 : 0;
      assertThat(fits ? Optional.empty() : falsehood)
          .as("seed %d, rate %d", seed + round, rate)
          .isEmpty();
    }
    System.out.println("AlteredLinesTest rate: " + within + " within the class, told by nobody");
  }

  private static int anyOf(List<Sent> lines, char kind, SplittableRandom random) {
    while (true) {
      int at = 10 + random.nextInt(lines.size() - 14);
      if (lines.get(at).kind() == kind) {
        return at;
      }
    }
  }

  private static String otherDigit(String digits, int at, SplittableRandom random) {
    int now = Character.digit(digits.charAt(at), 16);
    int other = (now + 1 + random.nextInt(15)) % 16;
    return digits.substring(0, at)
        + Character.toUpperCase(Character.forDigit(other, 16))
        + digits.substring(at + 1);
  }
}
