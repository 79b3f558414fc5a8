package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.session.AdjustedAt;
import org.halflight.session.FiringResult;
import org.halflight.session.SpringSettling;
import org.halflight.speeds.MarkedSpeed;

/**
 * A run in which curtains are adjusted, cut at each adjustment: what was turned, the firings that
 * only settle a spring, and those that count.
 *
 * @param trials in order, at least one; the first is before any adjustment
 */
public record CurtainTrials(List<Trial> trials) {
  /** So many firings of a speed count after an adjustment. Common practice, no source. */
  public static final int FIRINGS = 3;

  /**
   * What was fired from one adjustment to the next.
   *
   * @param marks what was done before it; several where nothing was fired between them
   * @param settling firings that settle a spring
   * @param counted those after them
   */
  public record Trial(
      List<AdjustedAt> marks, List<FiringResult> settling, List<FiringResult> counted) {
    public Trial {
      marks = List.copyOf(marks);
      settling = List.copyOf(settling);
      counted = List.copyOf(counted);
    }

    /** What those that count say; empty where there is none. */
    public Optional<CurtainRunFigures> figures() {
      return CurtainRunFigures.of(counted);
    }

    /** How many good firings of a speed count. */
    public int good(MarkedSpeed speed) {
      return (int)
          counted.stream()
              .filter(firing -> firing.isGood() && firing.shown().equals(Optional.of(speed)))
              .count();
    }
  }

  public CurtainTrials {
    trials = List.copyOf(trials);
  }

  /**
   * Of a run.
   *
   * @param run counts from 1
   * @param marks all adjustments of the session
   * @param results all firings of the session, in order
   */
  public static CurtainTrials of(int run, List<AdjustedAt> marks, List<FiringResult> results) {
    List<AdjustedAt> ofRun = marks.stream().filter(mark -> mark.run() == run).toList();
    List<FiringResult> fired =
        results.stream()
            .filter(firing -> firing.run() == run && firing.outcome().isOfTheShutter())
            .toList();
    List<Integer> cuts =
        Stream.concat(Stream.of(0), ofRun.stream().map(AdjustedAt::afterFiring))
            .distinct()
            .sorted()
            .toList();
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < cuts.size(); i++) {
      int from = cuts.get(i);
      int to = i + 1 < cuts.size() ? cuts.get(i + 1) : Integer.MAX_VALUE;
      List<AdjustedAt> done = ofRun.stream().filter(mark -> mark.afterFiring() == from).toList();
      List<FiringResult> all =
          fired.stream().filter(each -> each.number() > from && each.number() <= to).toList();
      int settled =
          done.stream()
              .mapToInt(mark -> SpringSettling.lastUncounted(mark, results))
              .max()
              .orElse(from);
      trials.add(
          new Trial(
              done,
              all.stream().filter(each -> each.number() <= settled).toList(),
              all.stream().filter(each -> each.number() > settled).toList()));
    }
    return new CurtainTrials(trials);
  }

  /** The one that goes on. */
  public Trial last() {
    return trials.get(trials.size() - 1);
  }

  /** Whether anything was adjusted. */
  public boolean isTurned() {
    return trials.stream().anyMatch(trial -> !trial.marks().isEmpty());
  }
}
