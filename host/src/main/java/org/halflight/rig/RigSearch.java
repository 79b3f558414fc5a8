package org.halflight.rig;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.link.PortCandidate;
import org.halflight.words.Words;

/**
 * What came of looking for a rig.
 *
 * @param rig the rig that was meant, its link open; empty when there is none or more than one
 * @param candidates the ports that were there
 * @param outcomes what was found on each port that was asked, now or before
 * @param sentence how it went, for the person, with what to do
 */
public record RigSearch(
    Optional<OpenRig> rig,
    List<PortCandidate> candidates,
    List<PortOutcome> outcomes,
    String sentence) {
  public RigSearch {
    candidates = List.copyOf(candidates);
    outcomes = List.copyOf(outcomes);
  }

  /** The rigs that answered. */
  public List<PortOutcome> rigs() {
    return outcomes.stream().filter(each -> each.finding() == PortOutcome.Finding.RIG).toList();
  }

  /** Which ports were passed over on the way to the rig, and why, in one line. */
  public Optional<String> skipped() {
    String each =
        outcomes.stream()
            .filter(outcome -> outcome.finding() != PortOutcome.Finding.RIG)
            .map(
                outcome ->
                    Words.say(
                        "rig.skipped.one",
                        outcome.candidate().path(),
                        Words.of("rig.finding", outcome.finding())))
            .collect(Collectors.joining(", "));
    return each.isEmpty() ? Optional.empty() : Optional.of(Words.say("rig.skipped", each));
  }
}
