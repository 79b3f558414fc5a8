package org.halflight.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The whole turns among slots that passed, each slot with its place in the turn. The time of a turn
 * is that from the widest slot to the same slot again; between, the disc is taken to turn as
 * smoothly as a cubic through four of these passings, so that a speed that creeps does no harm.
 *
 * @param places by turn and slot (narrow to wide); not a slot that was not whole
 * @param turnSeconds of each turn
 * @param forward whether slots came narrow to wide
 */
record DiscTurns(List<List<Optional<Place>>> places, List<Double> turnSeconds, boolean forward) {
  /** Faster than this no card is to be spun. */
  static final double TURNS_A_MINUTE_MOST = 1200;

  /** A turn may last so much longer or shorter than the one before, in the middle of all. */
  static final double WANDER_MOST = 0.02;

  /** And this from the first to the last. */
  static final double DRIFT_MOST = 0.05;

  private static final int SLOTS = PrintedDisc.SLOT_DEGREES.size();
  private static final int SLOTS_LOOKED_FOR = 12;
  private static final double ALIKE = 0.05;

  /** One slot in five may be too narrow for the light, not two. */
  private static final double WHOLE_LEAST = 0.3;

  private static final double GREATEST_RATIO = 1.35;

  /**
   * One slot in one turn.
   *
   * @param turns where its middle is, from the middle of the widest slot
   * @param share of the turn for which it was open
   * @param pass what passed
   */
  record Place(double turns, double share, SlotPass pass) {}

  /** Turns, or what is wrong. */
  record Outcome(Optional<DiscTurns> turns, Optional<DiscTrouble> trouble) {
    static Outcome of(DiscTrouble trouble) {
      return new Outcome(Optional.empty(), Optional.of(trouble));
    }
  }

  static Outcome of(List<SlotPass> passes, int leastTurns) {
    if (passes.isEmpty()) {
      return Outcome.of(new DiscTrouble.NoEdges());
    }
    if (passes.size() > 2 && passes.stream().noneMatch(pass -> pass.timed().isPresent())) {
      return Outcome.of(new DiscTrouble.NeverFullLight());
    }
    int period = period(passes);
    if (period == 0) {
      return passes.size() < SLOTS * leastTurns
          ? Outcome.of(new DiscTrouble.TooFewTurns(passes.size() / SLOTS))
          : Outcome.of(new DiscTrouble.OtherDisc());
    }
    if (period == 1) {
      double seconds = median(distances(passes, 1));
      return Outcome.of(new DiscTrouble.AllAlike(1 / seconds));
    }
    if (period != SLOTS) {
      return Outcome.of(new DiscTrouble.OtherNumber(period));
    }
    double turn = median(distances(passes, SLOTS));
    if (60 / turn > TURNS_A_MINUTE_MOST) {
      return Outcome.of(new DiscTrouble.TooFast(60 / turn));
    }
    if (passes.stream().filter(pass -> !pass.whole()).count() > WHOLE_LEAST * passes.size()) {
      return Outcome.of(new DiscTrouble.NeverFullLight());
    }
    int[] slots = passes.stream().mapToInt(pass -> slot(pass, turn)).toArray();
    if (Arrays.stream(slots).filter(slot -> slot < 0).count() > passes.size() / 4) {
      return Outcome.of(new DiscTrouble.OtherDisc());
    }
    int ups = 0;
    int downs = 0;
    for (int i = 1; i < slots.length; i++) {
      ups += slots[i] >= 0 && slots[i - 1] >= 0 && slots[i] == slots[i - 1] + 1 ? 1 : 0;
      downs += slots[i] >= 0 && slots[i - 1] >= 0 && slots[i] == slots[i - 1] - 1 ? 1 : 0;
    }
    if (Math.max(ups, downs) < passes.size() / 2) {
      return Outcome.of(new DiscTrouble.OtherDisc());
    }
    return turns(passes, slots, ups > downs, leastTurns);
  }

  private static Outcome turns(
      List<SlotPass> passes, int[] slots, boolean forward, int leastTurns) {
    int[] widest = IntStream.range(0, slots.length).filter(i -> slots[i] == SLOTS - 1).toArray();
    List<List<Optional<Place>>> places = new ArrayList<>();
    List<Double> seconds = new ArrayList<>();
    List<Double> steps = new ArrayList<>();
    for (int k = 1; k + 2 < widest.length; k++) {
      if (!isWhole(slots, widest, k - 1, forward)
          || !isWhole(slots, widest, k, forward)
          || !isWhole(slots, widest, k + 1, forward)) {
        continue;
      }
      double[] at = new double[4];
      for (int i = 0; i < at.length; i++) {
        at[i] = passes.get(widest[k - 1 + i]).middleSeconds();
      }
      List<Optional<Place>> turn = new ArrayList<>();
      for (int slot = 0; slot < SLOTS; slot++) {
        int from = widest[k];
        int index = slot == SLOTS - 1 ? from : from + (forward ? slot + 1 : SLOTS - 1 - slot);
        turn.add(place(passes.get(index), at));
      }
      places.add(turn);
      seconds.add(at[2] - at[1]);
      steps.add(Math.abs((at[2] - at[1]) / (at[1] - at[0]) - 1));
    }
    if (places.size() < leastTurns) {
      return Outcome.of(new DiscTrouble.TooFewTurns(places.size()));
    }
    double wander = median(steps.stream().mapToDouble(Double::doubleValue).toArray());
    double drift = Collections.max(seconds) / Collections.min(seconds) - 1;
    if (wander > WANDER_MOST || drift > DRIFT_MOST) {
      return Outcome.of(new DiscTrouble.Wanders(Math.max(wander, drift)));
    }
    return new Outcome(Optional.of(new DiscTurns(places, seconds, forward)), Optional.empty());
  }

  /** Whether all slots came in their order from one passing of the widest to the next. */
  private static boolean isWhole(int[] slots, int[] widest, int k, boolean forward) {
    if (widest[k + 1] - widest[k] != SLOTS) {
      return false;
    }
    for (int i = 1; i < SLOTS; i++) {
      if (slots[widest[k] + i] != (forward ? i - 1 : SLOTS - 1 - i)) {
        return false;
      }
    }
    return true;
  }

  private static Optional<Place> place(SlotPass pass, double[] at) {
    if (!pass.whole()) {
      return Optional.empty();
    }
    double opens = turnsAt(pass.middleSeconds() - pass.effectiveSeconds() / 2, at);
    double closes = turnsAt(pass.middleSeconds() + pass.effectiveSeconds() / 2, at);
    return Optional.of(new Place((opens + closes) / 2, closes - opens, pass));
  }

  /** Turns since the second of four passings, by the cubic through all four. */
  private static double turnsAt(double seconds, double[] at) {
    double turns = 0;
    for (int i = 0; i < at.length; i++) {
      double weight = 1;
      for (int j = 0; j < at.length; j++) {
        weight *= j == i ? 1 : (seconds - at[j]) / (at[i] - at[j]);
      }
      turns += weight * (i - 1);
    }
    return turns;
  }

  /** After how many slots their lengths come again; 0 where they never do. */
  private static int period(List<SlotPass> passes) {
    for (int m = 1; m <= SLOTS_LOOKED_FOR && 2 * m < passes.size(); m++) {
      double[] off = new double[passes.size() - m];
      for (int i = 0; i < off.length; i++) {
        off[i] =
            Math.abs(
                Math.log(passes.get(i + m).effectiveSeconds() / passes.get(i).effectiveSeconds()));
      }
      if (quantile(off, 0.7) < ALIKE) {
        return m;
      }
    }
    return 0;
  }

  private static int slot(SlotPass pass, double turnSeconds) {
    double degrees = 360 * pass.effectiveSeconds() / turnSeconds;
    if (!pass.whole() && degrees < PrintedDisc.SLOT_DEGREES.get(1) * GREATEST_RATIO) {
      // Only the narrowest may be too narrow for the light, and then it comes out anyhow.
      return 0;
    }
    for (int i = 0; i < SLOTS; i++) {
      if (Math.abs(Math.log(degrees / PrintedDisc.SLOT_DEGREES.get(i)))
          <= Math.log(GREATEST_RATIO)) {
        return i;
      }
    }
    return -1;
  }

  private static double[] distances(List<SlotPass> passes, int apart) {
    return IntStream.range(0, passes.size() - apart)
        .mapToDouble(i -> passes.get(i + apart).middleSeconds() - passes.get(i).middleSeconds())
        .toArray();
  }

  private static double median(double[] values) {
    return quantile(values, 0.5);
  }

  private static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[(int) (share * (sorted.length - 1))];
  }
}
