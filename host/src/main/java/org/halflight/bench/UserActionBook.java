package org.halflight.bench;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Which of the person's acts count, as the marks that undo and redo them say. Acts and marks are
 * known by their numbers; nothing is ever taken out.
 */
final class UserActionBook {
  private final NavigableSet<Long> acts = new TreeSet<>();
  private final Set<Long> undone = new HashSet<>();
  private final Map<Long, Long> actOfUndo = new HashMap<>();

  /** Undo marks that hold, with the act that each undid. */
  private final NavigableMap<Long, Long> undos = new TreeMap<>();

  /** An act was done. */
  void act(long number) {
    acts.add(number);
  }

  /**
   * An act is undone.
   *
   * @return whether it counted until now; else nothing is changed
   */
  boolean undo(long number, long act) {
    if (!acts.contains(act) || !undone.add(act)) {
      return false;
    }
    actOfUndo.put(number, act);
    undos.put(number, act);
    return true;
  }

  /**
   * An act that was undone counts again.
   *
   * @param undo the mark that undid it
   * @return whether that held until now; else nothing is changed
   */
  boolean redo(long undo) {
    Long act = undos.remove(undo);
    return act != null && undone.remove(act);
  }

  /** The act that an undo mark undid, whether that holds or not. */
  OptionalLong actOf(long undo) {
    return actOfUndo.containsKey(undo)
        ? OptionalLong.of(actOfUndo.get(undo))
        : OptionalLong.empty();
  }

  /** Numbers of the acts that do not count. */
  Set<Long> undone() {
    return Set.copyOf(undone);
  }

  /** The last act that counts. */
  OptionalLong toUndo() {
    for (long act : acts.descendingSet()) {
      if (!undone.contains(act)) {
        return OptionalLong.of(act);
      }
    }
    return OptionalLong.empty();
  }

  /** The last undo mark that holds, as long as nothing was done since. */
  OptionalLong toRedo() {
    boolean any = !undos.isEmpty() && (acts.isEmpty() || acts.last() < undos.lastKey());
    return any ? OptionalLong.of(undos.lastKey()) : OptionalLong.empty();
  }
}
