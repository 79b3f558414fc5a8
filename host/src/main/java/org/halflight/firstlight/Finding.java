package org.halflight.firstlight;

import java.util.List;
import java.util.Optional;
import org.halflight.signal.Channel;

/**
 * What a step has come to.
 *
 * @param outcome only what was seen is passed
 * @param fault what is wrong, where something is
 * @param input the input that the fault is about, or that answered in place of the right one
 * @param seen the figures
 */
public record Finding(
    Outcome outcome, Optional<Fault> fault, Optional<Channel> input, List<Seen> seen) {
  /** How a step stands. */
  public enum Outcome {
    /** It has not seen enough yet. */
    WAITING,
    /** What it wants to see was seen. */
    PASSED,
    /** Something is to be checked. */
    CHECK,
    /** It was skipped, or never reached. */
    NOT_TESTED
  }

  public Finding {
    seen = List.copyOf(seen);
  }

  /** What a step wants to see was seen. */
  public static Finding passed(List<Seen> seen) {
    return new Finding(Outcome.PASSED, Optional.empty(), Optional.empty(), seen);
  }

  /** Nothing speaks against the step yet, and nothing for it. */
  public static Finding waiting(List<Seen> seen) {
    return new Finding(Outcome.WAITING, Optional.empty(), Optional.empty(), seen);
  }

  /** Nobody knows. */
  public static Finding notTested() {
    return new Finding(Outcome.NOT_TESTED, Optional.empty(), Optional.empty(), List.of());
  }

  static Finding check(Fault fault, List<Seen> seen) {
    return new Finding(Outcome.CHECK, Optional.of(fault), Optional.empty(), seen);
  }

  static Finding check(Fault fault, Channel input, List<Seen> seen) {
    return new Finding(Outcome.CHECK, Optional.of(fault), Optional.of(input), seen);
  }

  /** Something was refused, or did not come. */
  public static Finding failed(Fault fault) {
    return check(fault, List.of());
  }

  /** Whether what it wants to see was seen. */
  public boolean isPassed() {
    return outcome == Outcome.PASSED;
  }
}
