package org.halflight.firstlight;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.rig.RigMessage;

/**
 * First light of one rig: its steps, and what each has come to so far.
 *
 * @param rig what it said of itself
 * @param steps those of this rig, in order
 * @param findings of the steps that are over
 */
public record FirstLight(
    RigMessage.Greeting rig, List<FirstStep> steps, Map<FirstStep, Finding> findings) {
  public FirstLight {
    steps = List.copyOf(steps);
    findings = Map.copyOf(findings);
  }

  /** A rig that has just been found. */
  public static FirstLight of(RigMessage.Greeting rig) {
    return new FirstLight(rig, FirstStep.of(rig.board()), Map.of())
        .with(
            FirstStep.FOUND,
            Finding.passed(
                List.of(new Seen.Greeted(rig.kind(), rig.firmware(), rig.bootCount()))));
  }

  /** A step is over. */
  public FirstLight with(FirstStep step, Finding finding) {
    Map<FirstStep, Finding> more = new EnumMap<>(FirstStep.class);
    more.putAll(findings);
    more.put(step, finding);
    return new FirstLight(rig, steps, more);
  }

  /** What a step has come to. */
  public Finding of(FirstStep step) {
    return Optional.ofNullable(findings.get(step)).orElseGet(Finding::notTested);
  }

  /** The first step that is not over. */
  public Optional<FirstStep> next() {
    return steps.stream().filter(step -> !findings.containsKey(step)).findFirst();
  }

  /** How many steps have passed. */
  public int passed() {
    return (int) steps.stream().filter(step -> of(step).isPassed()).count();
  }

  /** The supply as it was measured. */
  public Optional<Seen.Supply> supply() {
    return of(FirstStep.SUPPLY).seen().stream()
        .filter(Seen.Supply.class::isInstance)
        .map(Seen.Supply.class::cast)
        .findFirst();
  }
}
