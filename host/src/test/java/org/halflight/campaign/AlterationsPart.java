package org.halflight.campaign;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/** Digits that were altered under a check that fits: what can be told is told. */
final class AlterationsPart implements Part {
  static final String UNNOTICED = "alterations that could be told and gave false results";

  @Override
  public String name() {
    return "crc";
  }

  @Override
  public String unit() {
    return "alterations";
  }

  @Override
  public long shortSize() {
    return 1_500;
  }

  @Override
  public long longSize() {
    return 1_000_000;
  }

  @Override
  public Tally run(long seed, long size) {
    Tally tally = tally();
    for (long i = 0; i < size; i++) {
      one(Seeds.of(seed, i), tally);
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) {
    Tally tally = tally();
    one(caseSeed, tally);
    return tally;
  }

  private Tally tally() {
    Tally tally = new Tally(name());
    tally.law(UNNOTICED);
    tally.law(WirePart.EXCEPTIONS);
    return tally;
  }

  private void one(long caseSeed, Tally tally) {
    Random random = new Random(caseSeed);
    InventedSession session = InventedSession.of(random, 2 + random.nextInt(5));
    Alteration altered = Alteration.of(random, session.lines());
    SessionLines file = new SessionLines().begins("2026-11-25T10:00:00Z", "crc-" + caseSeed);
    file.mark(0, SessionLines.LIGHT);
    for (int place = 0; place < session.lines().size(); place++) {
      InventedSession.Line line = session.lines().get(place);
      file.received(line.nanos(), place == altered.place() ? altered.text() : line.text());
    }
    String replay = Seeds.replay(name(), caseSeed);
    tally.add(unit(), 1);
    tally.add("altered " + altered.field(), 1);
    List<Seen> seen;
    try {
      seen = Folded.of(file.lines()).seen();
    } catch (RuntimeException | StackOverflowError e) {
      tally.breaks(WirePart.EXCEPTIONS, replay, altered + " " + Thrown.said(e));
      return;
    }
    List<String> wrong = wrong(session, seen);
    if (!isAllThere(session, seen, altered.place())) {
      tally.add("alterations beside which a firing was left out", 1);
    }
    if (wrong.isEmpty()) {
      tally.add("noticed, or nothing came of them", 1);
      return;
    }
    tally.add("false results after altered " + altered.field(), 1);
    if (altered.detectable()) {
      tally.breaks(UNNOTICED, replay, altered + " " + wrong);
    } else {
      tally.add("false results that nobody could tell", 1);
    }
  }

  private static List<String> wrong(InventedSession session, List<Seen> seen) {
    Map<Long, List<TrueFiring>> byFirst = WireLaw.byFirst(session.firings());
    return seen.stream()
        .filter(each -> WireLaw.isFalse(WireLaw.truthOf(byFirst, each), each))
        .map(each -> WireLaw.wrong(WireLaw.truthOf(byFirst, each), each))
        .toList();
  }

  /** Whether all edges that came as they were sent are in some result. */
  private static boolean isAllThere(InventedSession session, List<Seen> seen, int altered) {
    Set<TrueEdge> kept = WireLaw.edges(seen);
    int of = session.lines().get(altered).firing();
    for (int i = 0; i < session.firings().size(); i++) {
      if (i != of && !kept.containsAll(WireLaw.onTheWire(session.firings().get(i).edges()))) {
        return false;
      }
    }
    return true;
  }
}
