package org.halflight.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.halflight.wire.TrueFiring.Kind;

/** Firings of every kind one after the other, as a person at a bench would bring them about. */
final class Firings {
  private static final long MS = TrueFiring.MS;

  private static final List<Kind> KINDS = List.of(Kind.values());

  private Firings() {}

  static List<TrueFiring> some(SplittableRandom random, int count) {
    List<TrueFiring> firings = new ArrayList<>();
    long at = 3000 * MS;
    for (int i = 0; i < count; i++) {
      Kind kind = KINDS.get(random.nextInt(KINDS.size()));
      if (!firings.isEmpty()
          && firings.get(firings.size() - 1).outcome().equals("DID_NOT_OPEN")
          && kind != Kind.PRESS_WITHOUT_LIGHT) {
        // Light that no press of its own went before would belong to the press that is open.
        kind = Kind.PRESSED;
      }
      long width = kind == Kind.LONG ? 700 * MS : 40_000 + random.nextLong(600_000);
      TrueFiring firing = TrueFiring.of(kind, at, width);
      firings.add(firing);
      at = firing.lastTicks() + 230 * MS + random.nextLong(1500 * MS);
    }
    return firings;
  }
}
