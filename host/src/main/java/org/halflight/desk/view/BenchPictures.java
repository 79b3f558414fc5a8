package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.chart.Adjustment;
import org.halflight.chart.DataTable;
import org.halflight.chart.FiringRow;
import org.halflight.chart.Picture;
import org.halflight.chart.RunPictures;
import org.halflight.chart.SpeedMap;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** The pictures of a view: the speed map of its runs, the firing row of one speed. */
public final class BenchPictures {
  /**
   * All that is drawn of a view, and the same in words.
   *
   * @param map the speed map; while the linkage is tested the presses
   * @param mapTwin its table
   * @param row the firing row of the speed that is looked at
   * @param rowTwin its table
   * @param releases the firings of that row, in its order; none where it shows no single speed
   * @param word the verdict on that speed in a word or two; empty where it was not fired
   * @param verdict the same in sentences
   * @param hints what the whole run looks like, once it is done; may be empty
   * @param speeds places of the map, slow to fast
   */
  public record All(
      Optional<Picture> map,
      Optional<DataTable> mapTwin,
      Optional<Picture> row,
      Optional<DataTable> rowTwin,
      List<FiringResult> releases,
      String word,
      String verdict,
      String hints,
      List<MarkedSpeed> speeds) {
    /** Nothing. */
    public static final All NOTHING =
        new All(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            "",
            "",
            "",
            List.of());

    public All {
      releases = List.copyOf(releases);
      speeds = List.copyOf(speeds);
    }

    /** The release at a place of the row, from 0, if it is there and rejected. */
    public Optional<FiringResult> rejected(int place) {
      return place < 0 || place >= releases.size()
          ? Optional.empty()
          : Optional.of(releases.get(place)).filter(firing -> firing.rejection().isPresent());
    }
  }

  private BenchPictures() {}

  /** Everything at once; takes a while with many firings. */
  public static All all(BenchView view, Optional<MarkedSpeed> looked) {
    if (view.two().isPresent()) {
      return ofTwo(view, view.two().get());
    }
    if (view.linkage().isShown() && looked.isEmpty()) {
      return onlyMap(LinkageText.picture(view));
    }
    if (view.setup().filter(RunSetup::isStage).isPresent()) {
      return ofStages(view, looked);
    }
    Optional<Picture> map = speedMap(view).map(its -> its);
    Optional<Picture> row = looked.flatMap(speed -> firingRow(view, speed));
    return new All(
        map,
        map.map(Picture::table),
        row,
        row.map(Picture::table),
        looked.map(speed -> releases(view, speed)).orElseGet(List::of),
        looked.flatMap(speed -> ViewedRuns.at(view, speed)).map(BenchPictures::word).orElse(""),
        looked.map(speed -> String.join(" ", verdict(view, speed))).orElse(""),
        String.join(" ", RunHints.of(view)),
        speeds(view));
  }

  /** In a run in stages what counts is the latest stage against the one before. */
  private static All ofStages(BenchView view, Optional<MarkedSpeed> looked) {
    Optional<AssemblyStages> stages = StageText.underWay(view);
    Optional<Picture> map = stages.map(its -> StageText.picture(view, its));
    Optional<Picture> row = looked.flatMap(speed -> firingRow(view, speed));
    return new All(
        map,
        map.map(Picture::table),
        row,
        row.map(Picture::table),
        looked.map(speed -> releases(view, speed)).orElseGet(List::of),
        stages.map(StageText::heading).orElse(""),
        stages.map(its -> String.join(" ", StageText.latest(its))).orElse(""),
        "",
        List.of());
  }

  private static All onlyMap(Optional<Picture> picture) {
    return new All(
        picture,
        picture.map(Picture::table),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        "",
        "",
        "",
        List.of());
  }

  /** Both firing rows; there is no map to select a speed on. */
  private static All ofTwo(BenchView view, TwoAtOnce two) {
    MarkedSpeed right = two.second().speed();
    Optional<Picture> one = firingRow(view, two.first().speed()).map(its -> its);
    Optional<Picture> other = firingRow(view, right).map(its -> its);
    return new All(
        one,
        one.map(Picture::table),
        other,
        other.map(Picture::table),
        releases(view, right),
        Stream.of(two.first(), two.second())
            .flatMap(side -> ViewedRuns.at(view, side.speed()).stream())
            .map(BenchPictures::word)
            .collect(Collectors.joining(Words.say("desk.two.verdicts"))),
        "",
        "",
        List.of());
  }

  /** The speed map of the latest run of each phase; empty before a run was begun. */
  public static Optional<SpeedMap> speedMap(BenchView view) {
    if (view.setup().isEmpty()) {
      return Optional.empty();
    }
    List<RunSummary> runs = ViewedRuns.latest(view);
    return Optional.of(
        RunPictures.speedMap(
            title(runs), speeds(view), ViewedRuns.tolerances(view, view.run()), runs, note(view)));
  }

  /** Adjusting is not on the map, so one run alone is named. */
  private static String title(List<RunSummary> runs) {
    List<Phase> shown =
        runs.stream().map(RunSummary::phase).filter(phase -> phase != Phase.ADJUSTING).toList();
    return shown.size() == 1
        ? Words.say("desk.map.titleOf", Sentences.phaseWithin(shown.get(0)))
        : Words.say("desk.map.title");
  }

  /** The marked speeds of the map, slow to fast: those of the run and those that were fired. */
  public static List<MarkedSpeed> speeds(BenchView view) {
    List<MarkedSpeed> speeds =
        new ArrayList<>(
            view.setup().map(setup -> ViewedRuns.dial(view, setup).speeds()).orElseGet(List::of));
    ViewedRuns.latestFirings(view).stream()
        .flatMap(firing -> firing.shown().stream())
        .filter(speed -> !speeds.contains(speed))
        .distinct()
        .forEach(speeds::add);
    return speeds.stream()
        .distinct()
        .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
        .toList();
  }

  /**
   * The firing row of a speed in the latest run that fired it; empty where none did. Where its
   * figures come from is said by the picture beside it.
   */
  public static Optional<FiringRow> firingRow(BenchView view, MarkedSpeed speed) {
    List<FiringResult> firings = ViewedRuns.latestAt(view, speed);
    return ViewedRuns.at(view, speed)
        .filter(summary -> !RunPictures.releases(firings, summary).isEmpty())
        .map(
            summary ->
                RunPictures.firingRow(
                    firings,
                    summary,
                    when(view, firings, summary),
                    adjustments(view, firings, summary),
                    ""));
  }

  private static String when(BenchView view, List<FiringResult> firings, SpeedSummary summary) {
    if (ViewedRuns.lastMark(view, firings) > 0) {
      return Words.say("desk.row.sinceAdjustment");
    }
    return ViewedRuns.setup(view, firings.get(0).run()).isStage()
        ? Words.say("desk.row.stage")
        : Sentences.phaseWithin(summary.phase());
  }

  private static List<FiringResult> releases(BenchView view, MarkedSpeed speed) {
    return ViewedRuns.at(view, speed)
        .map(summary -> RunPictures.releases(ViewedRuns.latestAt(view, speed), summary))
        .orElseGet(List::of);
  }

  private static String word(SpeedSummary summary) {
    return Words.say(
        "desk.verdict.word", Numbers.speed(summary.speed()), Sentences.verdict(summary));
  }

  /** What the firings of a speed come to, in sentences; empty where there are none. */
  public static List<String> verdict(BenchView view, MarkedSpeed speed) {
    return ViewedRuns.at(view, speed)
        .map(
            summary ->
                Stream.concat(
                        Sentences.speed(summary).stream(), Sentences.allLight(summary).stream())
                    .toList())
        .orElseGet(List::of);
  }

  private static List<Adjustment> adjustments(
      BenchView view, List<FiringResult> firings, SpeedSummary summary) {
    List<FiringResult> shown = RunPictures.releases(firings, summary);
    int run = firings.get(0).run();
    return view.marks().stream()
        .filter(mark -> mark.run() == run)
        .map(
            mark ->
                new Adjustment(
                    1 + (int) shown.stream().filter(f -> f.number() <= mark.afterFiring()).count(),
                    mark.words()))
        .toList();
  }

  static String note(BenchView view) {
    return view.link().isPractice() || !view.link().serial().isEmpty()
        ? Sentences.source(
            view.link().serial().isEmpty()
                ? org.halflight.session.Source.PRACTICE_SERIAL
                : view.link().serial())
        : "";
  }
}
