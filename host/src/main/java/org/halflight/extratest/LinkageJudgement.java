package org.halflight.extratest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.stored.StoredWords;

/**
 * The linkage between film advance and shutter, judged by the states in which presses left the
 * camera. No time goes into it: milliseconds between the two are the speed of the finger. What is
 * called wrong is our own rule; the fault that a customer meets is such a state (common practice,
 * no source).
 *
 * @param presses of one round, in order: from its rest check on
 */
public record LinkageJudgement(List<JudgedPress> presses) {
  /**
   * So many stopped presses of five may unlock the advance alone. The advance ought to be a shade
   * ahead, and a finger that is slow enough stops even within a tenth of a millimetre. Simulated
   * (docs/validation.md, as asked): with four of five as the fault, 98 % of linkages with the
   * advance 0.1 mm ahead are called right and 4 % of those with 0.4 mm; with two of five 82 % and 1
   * %.
   */
  static final int MOST_ADVANCE_ONLY = 3;

  /** How the linkage is. */
  public enum Verdict {
    /** Advance and shutter come with one click. */
    RIGHT,
    /** They do not, or the link has no play, or a second press does something. */
    WRONG,
    /** Presses are missing, and those so far are not wrong. */
    UNDECIDED;

    /** As tables and the record spell them. */
    public static final StoredWords<Verdict> WORDS =
        StoredWords.of(
            Verdict.class,
            verdict ->
                switch (verdict) {
                  case RIGHT -> "right";
                  case WRONG -> "wrong";
                  case UNDECIDED -> "undecided";
                });
  }

  /** What is wrong, the gravest first. */
  public enum Fault {
    /** A picture was taken and the wind stayed locked. */
    SHUTTER_FIRST,
    /** The wind turned and no picture was taken: at four stopped presses, or at a full one. */
    ADVANCE_FIRST,
    /** A tap at rest did something: the link has no play. */
    NO_PLAY,
    /** A press to the end did nothing. */
    NEITHER,
    /** A second press without winding tripped the shutter again. */
    AGAIN;

    /** As tables and the record spell them. */
    public static final StoredWords<Fault> WORDS =
        StoredWords.of(
            Fault.class,
            fault ->
                switch (fault) {
                  case SHUTTER_FIRST -> "shutter-first";
                  case ADVANCE_FIRST -> "advance-first";
                  case NO_PLAY -> "no-play";
                  case NEITHER -> "neither";
                  case AGAIN -> "again";
                });
  }

  public LinkageJudgement {
    presses = List.copyOf(presses);
  }

  /**
   * The judgement of the last round of a run: a rest check begins a new one. Presses that do not
   * count are passed over.
   *
   * @param all presses of one run, in order
   */
  public static LinkageJudgement ofLastRound(List<LinkagePress> all) {
    return new LinkageJudgement(
        LinkagePress.lastRound(all).stream()
            .flatMap(press -> JudgedPress.of(press).stream())
            .toList());
  }

  /** The presses of a step. */
  public List<JudgedPress> of(LinkageStep step) {
    return presses.stream().filter(press -> press.step() == step).toList();
  }

  /** How the linkage is. */
  public Verdict verdict() {
    if (!faults().isEmpty()) {
      return Verdict.WRONG;
    }
    return Arrays.stream(LinkageStep.values()).allMatch(step -> missing(step) == 0)
        ? Verdict.RIGHT
        : Verdict.UNDECIDED;
  }

  /** What is wrong, the gravest first. */
  public List<Fault> faults() {
    Set<Fault> faults = EnumSet.noneOf(Fault.class);
    int advanceOnly = 0;
    for (JudgedPress press : presses) {
      boolean full = press.step().isFullPress();
      if (press.step() == LinkageStep.REST && press.outcome() != PressOutcome.NEITHER) {
        faults.add(Fault.NO_PLAY);
        continue;
      }
      switch (press.outcome()) {
        case SHUTTER_ONLY -> faults.add(Fault.SHUTTER_FIRST);
        case ADVANCE_ONLY -> {
          advanceOnly++;
          if (full || advanceOnly > MOST_ADVANCE_ONLY) {
            faults.add(Fault.ADVANCE_FIRST);
          }
        }
        case NEITHER -> {
          if (full) {
            faults.add(Fault.NEITHER);
          }
        }
        case BOTH -> {}
      }
      if (press.step() == LinkageStep.TAP && press.again()) {
        faults.add(Fault.AGAIN);
      }
    }
    return new ArrayList<>(faults);
  }

  /** What is wrong before all else; empty where nothing is so far. */
  public Optional<Fault> fault() {
    return faults().stream().findFirst();
  }

  /** How many presses of a step are still wanted. */
  public int missing(LinkageStep step) {
    return Math.max(0, step.presses() - of(step).size());
  }

  /** The step that is due; empty where none is. */
  public Optional<LinkageStep> next() {
    return Arrays.stream(LinkageStep.values()).filter(step -> missing(step) > 0).findFirst();
  }
}
