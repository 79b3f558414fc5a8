package org.halflight.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.rig.RigMessage.CurvePart;
import org.halflight.rig.RigMessage.CurveValues;
import org.halflight.signal.SampledLight;

/**
 * Puts the lines of light curves together. What cannot be placed without a guess is left out: a
 * lost value stays lost, a lost part leaves a gap, and a curve whose beginning is lost is dropped.
 * For one thread.
 */
final class CurveAssembler {
  private static final int DIGITS_MOST = 64;

  /**
   * A curve of more values or parts is no opening: a rig has 828 bytes for one, and parts only at
   * its ends and where the plateau changes its period. Our choice, with room to spare.
   */
  private static final int VALUES_MOST = 1 << 13;

  private static final int PARTS_MOST = 64;

  /** Beats without a line of a curve after which the rest of it will not come any more. */
  private static final int PATIENCE_BEATS = 3;

  /** A part as it grows. */
  private static final class Growing {
    private final CurvePart head;
    private final boolean gapBefore;
    private final List<Integer> values = new ArrayList<>();

    Growing(CurvePart head, boolean gapBefore) {
      this.head = head;
      this.gapBefore = gapBefore;
    }

    int digitsEach() {
      return head.part().isOfMeans() ? 4 : 2;
    }

    boolean isFull() {
      return values.size() >= head.count();
    }

    /** How many lines the values up to an index take when each is as full as it may be. */
    int linesUpTo(int index) {
      int valuesEach = DIGITS_MOST / digitsEach();
      return (index - values.size() + valuesEach - 1) / valuesEach;
    }

    void fillUpTo(int index) {
      while (values.size() < index) {
        values.add(-1);
      }
    }
  }

  /** A curve whose ticks still have only their low half. */
  record Assembled(List<CurvePart> heads, List<List<Integer>> values, boolean cutOff) {
    Assembled {
      heads = List.copyOf(heads);
      values = values.stream().map(List::copyOf).toList();
    }

    /** How much there is of it. */
    int weight() {
      return heads.size() + values.stream().mapToInt(List::size).sum();
    }
  }

  private final List<Growing> parts = new ArrayList<>();
  private int valuesToCome;
  private long linesMissing;

  /** Behind a gap that may hide the head of another part, values belong to nobody knows what. */
  private boolean lostItsPlace;

  private int quietBeats;
  private long dropped;

  /** Curves that were left out because their beginning or their order was lost. */
  long dropped() {
    return dropped;
  }

  /** So many lines of the rig are missing before the next. */
  void missing(int lines) {
    linesMissing += lines;
  }

  /** A head came. Gives the curve before, if that one had not come to its end. */
  Optional<Assembled> head(CurvePart head) {
    quietBeats = 0;
    Optional<Assembled> before = Optional.empty();
    if (!parts.isEmpty() && (current().head.curve() != head.curve() || current().head.last())) {
      before = Optional.of(finish());
    }
    if (parts.isEmpty()) {
      begin(head);
    } else {
      goOn(head);
    }
    return before;
  }

  /** Values came. Gives the curve that they complete, if any. */
  Optional<Assembled> values(CurveValues line) {
    quietBeats = 0;
    if (parts.isEmpty() || current().head.curve() != line.curve()) {
      // The head that these belong to never came, or its curve was dropped already.
      return Optional.empty();
    }
    Growing part = current();
    int digits = part.digitsEach();
    int count = line.digits().length() / digits;
    boolean behindGap = linesMissing > 0 && linesMissing != part.linesUpTo(line.index());
    linesMissing = 0;
    lostItsPlace |= behindGap;
    if (lostItsPlace) {
      return Optional.empty();
    }
    boolean fits =
        line.digits().length() % digits == 0
            && line.index() >= part.values.size()
            && line.index() + count <= part.head.count();
    if (!fits) {
      drop();
      return Optional.empty();
    }
    part.fillUpTo(line.index());
    for (int i = 0; i < count; i++) {
      part.values.add(Integer.parseInt(line.digits().substring(i * digits, (i + 1) * digits), 16));
    }
    return isComplete() ? Optional.of(finish()) : Optional.empty();
  }

  /** A head without values may be the end of its curve. */
  Optional<Assembled> endedByHead() {
    return isComplete() ? Optional.of(finish()) : Optional.empty();
  }

  /** A beat came. Gives a curve whose end has waited too long. */
  Optional<Assembled> beat() {
    if (parts.isEmpty() || ++quietBeats < PATIENCE_BEATS) {
      return Optional.empty();
    }
    return Optional.of(finish());
  }

  /** The rig started anew, or the link was lost: what is under way is left out. */
  void breakOff() {
    if (!parts.isEmpty()) {
      drop();
    }
  }

  private void begin(CurvePart head) {
    linesMissing = 0;
    lostItsPlace = false;
    valuesToCome = 0;
    if (head.part() == SampledLight.Kind.OPENING && hasRoomFor(head)) {
      parts.add(new Growing(head, false));
    } else {
      dropped++;
    }
  }

  private void goOn(CurvePart head) {
    Growing before = current();
    // Between two heads lie at most 2^31 ticks, so the difference of the low halves has a sign.
    boolean inOrder = head.first32() - before.head.first32() > 0;
    boolean same = head.sensor() == before.head.sensor();
    if (!same || !inOrder || head.part().compareTo(before.head.part()) < 0 || !hasRoomFor(head)) {
      drop();
      return;
    }
    boolean mayMissAPart = lostItsPlace || linesMissing > before.linesUpTo(before.head.count());
    parts.add(new Growing(head, head.gapBefore() || mayMissAPart));
    linesMissing = 0;
    lostItsPlace = false;
  }

  private boolean hasRoomFor(CurvePart head) {
    valuesToCome += head.count();
    return valuesToCome <= VALUES_MOST && parts.size() < PARTS_MOST;
  }

  private boolean isComplete() {
    return !parts.isEmpty() && current().head.last() && current().isFull();
  }

  private Growing current() {
    return parts.get(parts.size() - 1);
  }

  private Assembled finish() {
    List<CurvePart> heads = new ArrayList<>();
    List<List<Integer>> values = new ArrayList<>();
    boolean cutOff = !current().head.last();
    for (Growing part : parts) {
      CurvePart head = part.head;
      part.fillUpTo(head.count());
      cutOff |= head.cutOff();
      heads.add(
          new CurvePart(
              head.sequence(),
              head.sensor(),
              head.curve(),
              head.part(),
              head.first32(),
              head.periodTicks(),
              head.count(),
              head.last(),
              part.gapBefore,
              head.cutOff()));
      values.add(part.values);
    }
    parts.clear();
    return new Assembled(heads, values, cutOff);
  }

  private void drop() {
    parts.clear();
    dropped++;
  }
}
