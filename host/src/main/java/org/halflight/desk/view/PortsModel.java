package org.halflight.desk.view;

import java.util.List;
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

  /** The likeliest reason for no rig, and where the others are; empty where there is a rig. */
  Optional<String> forTheBench() {
    return cause().map(first -> Words.say("desk.ports.more", first));
  }

  private Optional<String> cause() {
    return report.causes().stream()
        .findFirst()
        .map(
            cause ->
                cause.reason() == NoRig.Reason.WHICH_RIG
                    ? cause.sentence()
                    : Words.say("rig.search.none") + " " + cause.sentence());
  }

  private PortsView made() {
    List<String> causes = report.causes().stream().map(NoRig.Cause::sentence).toList();
    boolean practises = source == Source.PRACTICE && report.rigs().isEmpty();
    return new PortsView(
        report.survey().ports().stream().map(this::line).toList(),
        practises ? Words.say("desk.ports.practising") : cause().orElse(""),
        practises
            ? causes
            : causes.stream().skip(1).map(each -> Words.say("desk.ports.also", each)).toList(),
        source == Source.PRACTICE ? !report.rigs().isEmpty() : !causes.isEmpty());
  }

  private PortsView.Line line(PortSurvey.Seen seen) {
    String path = seen.port().path();
    String found =
        seen.holder()
            .map(holder -> Words.say("desk.ports.held", holder))
            .or(() -> report.on(path).map(PortsModel::found))
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
    return outcome.name().orElseGet(() -> Words.of("rig.finding", outcome.finding()));
  }
}
