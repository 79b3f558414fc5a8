package org.halflight.campaign;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * Random sessions in the course of which the program dies: its file ends anywhere in the line that
 * was being written, and the session goes on from there.
 */
final class DeathsPart implements Part {
  static final String DIFFER = "results of a replay that are not those of the live session";
  static final String UNDONE = "sessions that are not what they would be without what was undone";
  static final String LOST = "firings that had settled and are not in the file";

  @Override
  public String name() {
    return "deaths";
  }

  @Override
  public String unit() {
    return "random sessions";
  }

  @Override
  public long shortSize() {
    return 150;
  }

  @Override
  public long longSize() {
    return 100_000;
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
    tally.law(DIFFER);
    tally.law(LOST);
    tally.law(UNDONE);
    tally.law(WirePart.EXCEPTIONS);
    return tally;
  }

  private void one(long caseSeed, Tally tally) {
    tally.add(unit(), 1);
    long from = System.nanoTime();
    try {
      new Life(new Random(caseSeed), Seeds.replay(name(), caseSeed), tally).live();
    } catch (RuntimeException | StackOverflowError e) {
      tally.breaks(WirePart.EXCEPTIONS, Seeds.replay(name(), caseSeed), Thrown.said(e));
    }
    tally.took("session with its deaths and replays", from);
  }

  /** One session, with its deaths. */
  private static final class Life {
    private final Random random;
    private final String replay;
    private final Tally tally;
    private final boolean second;
    private SessionLines file;
    private Folded live;

    Life(Random random, String replay, Tally tally) {
      this.random = random;
      this.replay = replay;
      this.tally = tally;
      second = random.nextInt(6) > 0;
      String heading = second ? SessionLines.SECOND : SessionLines.FIRST;
      file = new SessionLines(List.of(heading));
      live = Folded.live(heading);
    }

    void live() {
      BenchDay day =
          new BenchDay(random, line -> live.handle(file.add(line)), () -> file.lastNumber());
      day.begins(true);
      int deaths = random.nextInt(4);
      for (int life = 0; life <= deaths; life++) {
        int things = 3 + random.nextInt(20);
        int dies = file.lines().size() + random.nextInt(8 * things);
        for (int i = 0; i < things && file.lines().size() < dies; i++) {
          day.goesOn();
        }
        if (life < deaths) {
          dies();
          day.remembers(file.lines());
          day.begins(false);
        }
      }
      live.breaksOff();
      compare(file.lines(), live, "at its end");
      if (second) {
        compareWithout();
      }
      tally.add("lines", file.lines().size());
      tally.add("firings", live.seen().size());
    }

    /** The session is what it would be without what was undone. */
    private void compareWithout() {
      UserActions acts = UserActions.of(file.lines());
      if (acts.isAnythingUndone()) {
        tally.add("sessions in which something was undone in the end", 1);
        String difference = live.difference(Folded.of(acts.without(file.lines())));
        if (!difference.isEmpty()) {
          tally.breaks(UNDONE, replay, difference);
        }
      }
    }

    /** The file ends in the middle of what was written last, or some lines before: a power cut. */
    private void dies() {
      tally.add("deaths", 1);
      List<String> lines = file.lines();
      int keep = lines.size() - (random.nextInt(4) == 0 ? random.nextInt(12) : random.nextInt(2));
      List<String> left = new ArrayList<>(lines.subList(0, Math.max(2, keep)));
      Folded until = Folded.live(left.get(0));
      left.subList(1, left.size()).forEach(until::handle);
      Set<TrueEdge> settled = new HashSet<>();
      until.seen().forEach(each -> settled.addAll(each.edges()));
      if (left.size() < lines.size()) {
        String cut = lines.get(left.size());
        // In the first form a mark that is cut may look whole; files of that form are as they are.
        if (second || cut.charAt(0) != 'M') {
          left.add(cut.substring(0, random.nextInt(cut.length())));
          // In the first form a line of the rig that is cut is one that came damaged.
          until.handle(left.get(left.size() - 1));
        }
      }
      until.breaksOff();
      compare(left, until, "after a death");
      Set<TrueEdge> kept = new HashSet<>();
      Folded.of(left).seen().forEach(each -> kept.addAll(each.edges()));
      if (!kept.containsAll(settled)) {
        tally.breaks(LOST, replay, "of " + settled.size() + " edges");
      }
      file = new SessionLines(left);
      live = Folded.resumed(left);
    }

    private void compare(List<String> lines, Folded lived, String when) {
      String difference = lived.difference(Folded.of(lines));
      if (!difference.isEmpty()) {
        tally.breaks(DIFFER, replay, when + ": " + difference);
      }
    }
  }
}
