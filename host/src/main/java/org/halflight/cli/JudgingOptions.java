package org.halflight.cli;

import java.util.List;
import java.util.function.Function;
import org.halflight.session.FiringResult;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.trouble.Trouble;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.Judging;
import org.halflight.verdict.RunSummary;
import org.halflight.words.Words;
import picocli.CommandLine.Option;

/** What results are held against. */
final class JudgingOptions {
  @Option(
      names = "--tolerance",
      paramLabel = "STOPS",
      description =
          "Tolerance in stops: 0.33 for every speed, or 1/500=0.5,1/60=0.25 for some. Default: a"
              + " third of a stop, half a stop at the top speed (trade custom).")
  private String tolerance = "";

  @Option(
      names = "--until-decided",
      description =
          "Decide as for firing until it is decided: wider bounds, so that looking often does not"
              + " raise the risk.")
  private boolean untilDecided;

  private DecisionRule rule() {
    return untilDecided ? DecisionRule.UNTIL_DECIDED : DecisionRule.FIXED_NUMBER;
  }

  /** The firings summed up, each speed against its tolerance. */
  List<RunSummary> summaries(List<FiringResult> firings) {
    Function<MarkedSpeed, Tolerance> usual = Sessions.usualTolerances(firings);
    return RunSummary.of(
        firings,
        speed -> chosen(speed, usual.apply(speed)),
        new Judging(RigKnowledge.UNCALIBRATED, rule()));
  }

  /** What the verdicts rest on. */
  List<String> remarks() {
    return List.of(
        Words.say(tolerance.isEmpty() ? "tolerance.custom" : "tolerance.own"),
        Words.say("tolerance.rule." + CliWords.of(rule())));
  }

  private Tolerance chosen(MarkedSpeed speed, Tolerance usual) {
    Tolerance chosen = usual;
    for (String part : tolerance.isEmpty() ? new String[0] : tolerance.split(",", -1)) {
      String[] sides = part.strip().split("=", -1);
      if (sides.length == 1) {
        chosen = stops(sides[0]);
      } else if (sides.length != 2 || MarkedSpeed.find(sides[0]).isEmpty()) {
        throw new Trouble(Words.say("tolerance.bad", tolerance));
      } else if (MarkedSpeed.find(sides[0]).get().equals(speed)) {
        chosen = stops(sides[1]);
      }
    }
    return chosen;
  }

  private Tolerance stops(String text) {
    try {
      double stops = Double.parseDouble(text.strip());
      return new Tolerance(stops, stops);
    } catch (IllegalArgumentException notStops) {
      throw new Trouble(Words.say("tolerance.bad", tolerance));
    }
  }
}
