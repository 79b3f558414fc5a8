package org.halflight.rig;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortSurvey;
import org.halflight.link.Ports;
import org.halflight.words.Words;

/**
 * What is known of the ports after a search.
 *
 * @param survey what the system says of them
 * @param outcomes what was found on those that were asked
 * @param causes why there is no rig, the likeliest first; empty where one was found
 */
public record PortReport(PortSurvey survey, List<PortOutcome> outcomes, List<NoRig.Cause> causes) {
  /** Before anything was looked at. */
  public static final PortReport NOTHING =
      new PortReport(PortSurvey.bare(List.of()), List.of(), List.of());

  public PortReport {
    outcomes = List.copyOf(outcomes);
    causes = List.copyOf(causes);
  }

  /** The report of a search. */
  public static PortReport of(Ports ports, RigSearch search) {
    PortSurvey survey;
    try {
      survey = ports.survey();
    } catch (LinkRefusedException cannotList) {
      return new PortReport(
          PortSurvey.bare(List.of()),
          search.outcomes(),
          List.of(new NoRig.Cause(NoRig.Reason.UNUSABLE, cannotList.getMessage())));
    }
    List<NoRig.Cause> causes = List.of();
    if (search.rig().isEmpty()) {
      causes =
          search.rigs().isEmpty()
              ? NoRig.causes(survey, search.outcomes())
              : List.of(new NoRig.Cause(NoRig.Reason.WHICH_RIG, search.sentence()));
    }
    return new PortReport(survey, search.outcomes(), causes);
  }

  /** The rigs that answered. */
  public List<PortOutcome> rigs() {
    return outcomes.stream().filter(each -> each.finding() == PortOutcome.Finding.RIG).toList();
  }

  /** What was found on a port. */
  public Optional<PortOutcome> on(String path) {
    return outcomes.stream().filter(each -> each.candidate().path().equals(path)).findFirst();
  }

  /** Why there is no rig, in one go; empty where one was found. */
  public String sentence() {
    return sentence(causes);
  }

  static String sentence(List<NoRig.Cause> causes) {
    if (causes.isEmpty()) {
      return "";
    }
    String all = causes.stream().map(NoRig.Cause::sentence).collect(Collectors.joining(" "));
    return causes.get(0).reason() == NoRig.Reason.WHICH_RIG
        ? all
        : Words.say("rig.search.none") + " " + all;
  }
}
