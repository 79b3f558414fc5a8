package org.halflight.campaign;

import java.util.BitSet;
import java.util.List;
import java.util.Random;

/** Damage on the wire: nothing that came whole is lost, and nothing false is said. */
final class WirePart implements Part {
  static final String EXCEPTIONS = "exceptions";
  static final String STEPS = "lines that brought more than 10,000 events";
  static final String MEMORY = "sessions that took more than 40 kB a line";

  private static final double[] SHARES = {0.002, 0.01, 0.03, 0.05};
  private static final long STEPS_MOST = 10_000;
  private static final long BYTES_MOST = 40_000;

  /** So many beats before and behind a firing decide whether something near it was touched. */
  private static final int NEAR_BEATS = 3;

  @Override
  public String name() {
    return "wire";
  }

  @Override
  public String unit() {
    return "damaged lines";
  }

  @Override
  public long shortSize() {
    return 3_000;
  }

  @Override
  public long longSize() {
    return 10_000_000;
  }

  @Override
  public Tally run(long seed, long size) {
    Tally tally = tally();
    for (long i = 0; tally.count(unit()) < size; i++) {
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
    for (String law :
        List.of(WireLaw.LOST, WireLaw.FALSE, WireLaw.NEEDLESS, EXCEPTIONS, STEPS, MEMORY)) {
      tally.law(law);
    }
    return tally;
  }

  private void one(long caseSeed, Tally tally) {
    Random random = new Random(caseSeed);
    InventedSession session = InventedSession.withStarts(random, 20 + random.nextInt(100));
    WireDamage.Arrived arrived =
        WireDamage.of(random, session, SHARES[random.nextInt(SHARES.length)]);
    SessionLines file = new SessionLines().begins("2026-11-25T10:00:00Z", "wire-" + caseSeed);
    file.mark(0, SessionLines.LIGHT);
    arrived.lines().forEach(line -> file.received(line.nanos(), line.text()));
    String replay = Seeds.replay(name(), caseSeed);
    tally.add("sessions", 1);
    tally.add("lines", session.lines().size());
    tally.add(unit(), arrived.touched().cardinality());
    tally.add("damaged lines whose check fitted by chance, drawn again", arrived.drawnAgain());
    long before = Allocated.bytes();
    long began = System.nanoTime();
    Folded folded;
    try {
      folded = Folded.live(SessionLines.SECOND);
      file.lines().forEach(folded::handle);
      folded.breaksOff();
    } catch (RuntimeException | StackOverflowError e) {
      tally.breaks(EXCEPTIONS, replay, Thrown.said(e));
      return;
    }
    tally.took("session", began);
    long bytesEach = (Allocated.bytes() - before) / file.lines().size();
    tally.most("bytes taken a line, in the worst session", bytesEach);
    tally.most("events that one line brought, at most", folded.mostNews());
    if (bytesEach > BYTES_MOST) {
      tally.breaks(MEMORY, replay, bytesEach + " bytes a line");
    }
    if (folded.mostNews() > STEPS_MOST) {
      tally.breaks(STEPS, replay, folded.mostNews() + " events");
    }
    BitSet touched = new BitSet();
    BitSet near = new BitSet();
    List<InventedSession.Line> lines = session.lines();
    for (int place = 0; place < lines.size(); place++) {
      int firing = lines.get(place).firing();
      if (firing >= 0) {
        // After a gap edges wait for a beat to be placed by; without one a firing never settled.
        boolean isTouched =
            arrived.touched().get(place) || arrived.touched().get(beatsFrom(lines, place, 1, 1));
        touched.set(firing, touched.get(firing) || isTouched);
        int from = beatsFrom(lines, place, -1, NEAR_BEATS);
        int to = beatsFrom(lines, place, 1, NEAR_BEATS) + 1;
        // A start breaks off what has not been quiet for long enough.
        boolean isNear =
            !arrived.touched().get(from, to).isEmpty() || !session.starts().get(from, to).isEmpty();
        near.set(firing, near.get(firing) || isNear);
      }
    }
    WireLaw.judge(session.firings(), folded.seen(), touched, near, replay, tally);
  }

  /** The place of a beat before or behind a line. */
  private static int beatsFrom(List<InventedSession.Line> lines, int place, int step, int most) {
    int at = place;
    for (int beats = 0; beats < most && at + step >= 0 && at + step < lines.size(); ) {
      at += step;
      beats += lines.get(at).text().charAt(0) == 'B' ? 1 : 0;
    }
    return at;
  }
}
