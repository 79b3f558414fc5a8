package org.halflight.campaign;

import java.util.HashSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which acts of the person count, by the words of docs/file-formats.md on undo and redo. */
final class UserActions {
  private static final Set<String> KINDS =
      Set.of(
          "run",
          "speed",
          "check",
          "next",
          "previous",
          "reject",
          "reason",
          "accept",
          "move",
          "cocking",
          "lens-cap",
          "closed-by-hand");

  private static final Pattern MARK = Pattern.compile("M (\\d+) -?\\d+ (\\S+)(.*)");
  private static final Pattern OF = Pattern.compile(" of=(\\d+)\\b.*");

  private final NavigableSet<Long> counting = new TreeSet<>();
  private final Set<Long> undone = new HashSet<>();

  /** Undo marks that hold, with the act of each. */
  private final NavigableMap<Long, Long> undos = new TreeMap<>();

  private long lastAct;

  /** The acts of a file of the second form. */
  static UserActions of(List<String> lines) {
    UserActions acts = new UserActions();
    for (String line : lines) {
      Matcher mark = MARK.matcher(line);
      if (mark.matches() && SessionLines.isWhole(line)) {
        acts.note(Long.parseLong(mark.group(1)), mark.group(2) + mark.group(3));
      }
    }
    return acts;
  }

  /** Takes down a mark. */
  void note(long number, String words) {
    String kind = words.split(" ", 2)[0];
    Matcher named = OF.matcher(words.substring(kind.length()));
    if (KINDS.contains(kind)) {
      counting.add(number);
      lastAct = number;
    } else if (named.matches()) {
      long of = Long.parseLong(named.group(1));
      if (kind.equals("undo") && counting.remove(of)) {
        undone.add(of);
        undos.put(number, of);
      } else if (kind.equals("redo") && undos.containsKey(of)) {
        long act = undos.remove(of);
        undone.remove(act);
        counting.add(act);
      }
    }
  }

  /** The acts that count, by their numbers. */
  NavigableSet<Long> counting() {
    return counting;
  }

  /** The last undo, as long as nothing was done since; 0 where there is none. */
  long redoable() {
    return undos.isEmpty() || undos.lastKey() < lastAct ? 0 : undos.lastKey();
  }

  /** The file without what was undone, and without the marks that say so. */
  List<String> without(List<String> lines) {
    return lines.stream()
        .filter(
            line -> {
              Matcher mark = MARK.matcher(line);
              return !mark.matches()
                  || !SessionLines.isWhole(line)
                  || !(undone.contains(Long.parseLong(mark.group(1)))
                      || mark.group(2).matches("undo|redo"));
            })
        .toList();
  }

  boolean isAnythingUndone() {
    return !undone.isEmpty();
  }
}
