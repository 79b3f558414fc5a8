package org.halflight.desk.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.chart.StagesPicture;
import org.halflight.session.Assembly;
import org.halflight.session.RunSetup;
import org.halflight.session.StageSwitch;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.StageRuns;
import org.halflight.words.Sentences;
import org.halflight.words.StageWords;
import org.halflight.words.Words;

/** A run in stages at the bench. */
final class StageText {
  private static final Map<UserAction, Assembly.Switch> SWITCHES =
      Map.of(
          UserAction.SWITCH_COVER, Assembly.Switch.COVER,
          UserAction.SWITCH_CELLS, Assembly.Switch.CELLS,
          UserAction.SWITCH_PLACE, Assembly.Switch.PLACE);

  private StageText() {}

  /** The three switches, each with what its key says; none outside of a stage. */
  static List<KeyHints.Hint> keys(BenchView view) {
    Optional<RunSetup> stage = view.setup().filter(RunSetup::isStage);
    return stage.isEmpty()
        ? List.of()
        : SWITCHES.entrySet().stream()
            .filter(entry -> stage.get().assembly().switches().contains(entry.getValue()))
            .sorted(Map.Entry.comparingByKey())
            .map(
                entry ->
                    new KeyHints.Hint(
                        entry.getKey(),
                        KeyHints.keyName(entry.getKey()),
                        Words.say(
                            "desk.stage.now",
                            StageWords.of(
                                entry.getValue(),
                                entry.getValue().flipped(stage.get().assembly()))),
                        view.runDone()))
            .toList();
  }

  /** What to do next in a stage. */
  static NextText next(BenchView view, RunSetup stage) {
    String heading =
        Words.say(
            "desk.next.stage", StageSwitch.number(view.runs()), StageWords.of(stage.assembly()));
    if (view.runDone() || view.shown().isEmpty()) {
      return new NextText(
          Words.say("desk.next.label.stage"),
          heading,
          Words.say("desk.next.done"),
          Words.say("desk.next.stageDone"),
          0,
          0,
          "",
          false);
    }
    return new NextText(
        NextText.set(),
        heading,
        Sentences.dial(view.shown().get()),
        doing(view, stage),
        view.good(),
        view.wanted(),
        Words.say("desk.next.count", view.good(), view.wanted()),
        false);
  }

  private static String doing(BenchView view, RunSetup stage) {
    boolean first = view.results().stream().noneMatch(firing -> firing.run() == view.run());
    if (first && !stage.assembly().cover() && !stage.assembly().curtains()) {
      return Words.say("desk.next.holdPlate");
    }
    if (view.light().set().isEmpty()) {
      return Words.say("desk.next.stageLight");
    }
    return view.shown().flatMap(its -> its.untimedTest()).isPresent()
        ? Words.say(view.good() == 0 ? "desk.next.tap" : "desk.next.hold")
        : Words.say("desk.next.setAndFire");
  }

  /** The stages so far; empty outside of them, and before anything was fired. */
  static Optional<AssemblyStages> underWay(BenchView view) {
    return view.setup().filter(RunSetup::isStage).isEmpty()
        ? Optional.empty()
        : StageRuns.of(view.results(), view.runs()).stream().reduce((earlier, later) -> later);
  }

  /** Their picture. */
  static StagesPicture picture(BenchView view, AssemblyStages stages) {
    return new StagesPicture(stages, BenchPictures.note(view));
  }

  /** What the latest stage shows, in sentences. */
  static List<String> latest(AssemblyStages stages) {
    return stages
        .change(stages.stages().size())
        .map(change -> StageWords.sentences(change).stream().distinct().toList())
        .orElseGet(List::of);
  }
}
