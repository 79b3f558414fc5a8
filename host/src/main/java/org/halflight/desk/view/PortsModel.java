package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.link.PortSurvey;
import org.halflight.rig.NoRig;
import org.halflight.rig.PortOutcome;
import org.halflight.rig.PortReport;
import org.halflight.session.Source;
import org.halflight.words.Words;

/** Turns what is known of the ports into what the window shows. For the bench thread only. */
public final class PortsModel {
  private final Source source;
  private PortReport report = PortReport.NOTHING;
  private Optional<String> chosen = Optional.empty();
  private PortsView view = PortsView.NOTHING;

  /**
   * @param source whose bench this is
   */
  PortsModel(Source source) {
    this.source = source;
  }

  /** A search found this. */
  public void report(PortReport found) {
    report = found;
    view = made();
  }

  /** The system says this of its ports now. */
  public void surveyed(PortSurvey survey) {
    report(new PortReport(survey, report.outcomes(), report.causes()));
  }

  /** This port was chosen, or none is. */
  public void chosen(Optional<String> path) {
    chosen = path;
    view = made();
  }

  /** What is known of the ports. */
  public PortReport report() {
    return report;
  }

  /** What the window shows. */
  PortsView view() {
    return view;
  }

  /** The likeliest reason for no rig in a sentence or two; empty where there is a rig. */
  Optional<String> mainCause() {
    return report.causes().stream()
        .findFirst()
        .map(
            cause ->
                cause.reason() == NoRig.Reason.WHICH_RIG
                    ? Words.say("desk.ports.which", cause.sentence())
                    : Words.say("desk.ports.noRig", cause.sentence()));
  }

  private PortsView made() {
    boolean offer =
        source == Source.PRACTICE ? !report.rigs().isEmpty() : !report.causes().isEmpty();
    return new PortsView(
        report.survey().ports().stream().map(this::line).toList(),
        report.causes().stream().map(NoRig.Cause::sentence).toList(),
        offer);
  }

  private PortsView.Line line(PortSurvey.Seen seen) {
    String path = seen.port().path();
    String found =
        report
            .on(path)
            .map(PortsModel::found)
            .or(() -> seen.holder().map(holder -> Words.say("desk.ports.held", holder)))
            .orElse(Words.say("desk.ports.notOpened"));
    boolean isChosen = chosen.filter(path::equals).isPresent();
    String words =
        Words.say(
            "desk.ports.line",
            path,
            seen.port().description(),
            Words.say(seen.port().likelyBoard() ? "desk.ports.likely" : "desk.ports.unlikely"),
            found);
    return new PortsView.Line(
        path, isChosen ? Words.say("desk.ports.chosen", words) : words, isChosen);
  }

  private static String found(PortOutcome outcome) {
    return outcome.finding() == PortOutcome.Finding.RIG
        ? outcome.sentence()
        : Words.of("rig.finding", outcome.finding());
  }
}
