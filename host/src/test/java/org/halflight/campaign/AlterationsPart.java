package org.halflight.campaign;

import java.util.BitSet;
import java.util.List;
import java.util.Random;

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
    tally.law(WireLaw.LOST);
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
      file.heard(line.nanos(), place == altered.place() ? altered.text() : line.text());
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
    BitSet touched = new BitSet();
    if (session.lines().get(altered.place()).firing() >= 0) {
      touched.set(session.lines().get(altered.place()).firing());
    }
    BitSet near = new BitSet();
    near.set(0, session.firings().size());
    Tally law = new Tally("one");
    WireLaw.judge(session.firings(), seen, touched, near, replay, law);
    if (law.broken(WireLaw.LOST) > 0) {
      tally.breaks(WireLaw.LOST, replay, altered.toString() + law.told());
    }
    if (law.broken(WireLaw.FALSE) == 0) {
      tally.add("noticed, or nothing came of them", 1);
      return;
    }
    tally.add("false results after altered " + altered.field(), 1);
    if (altered.detectable()) {
      tally.breaks(UNNOTICED, replay, altered.toString() + law.told());
    } else {
      tally.add("false results that nobody could tell", 1);
    }
  }
}
