package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.chart.BudgetBars;
import org.halflight.chart.DataTable;
import org.halflight.chart.Picture;
import org.halflight.chart.RunPictures;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.verdict.SpeedStatistics;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.BudgetWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.StatisticWords;
import org.halflight.words.Words;

/**
 * Everything that is known of one speed in its latest run: what its mean is uncertain by, what is
 * decided by that, and its statistics. Here alone stands a probability of conformity.
 *
 * @param title what it is of
 * @param picture the bars of the uncertainty budget, none below two timed firings; the times of
 *     firings without a run where no speed is looked at
 * @param budget the same as a table
 * @param figures that the verdict rests on, and the statistics
 * @param advice the verdict in sentences, and what would make it surer; may be empty
 */
public record DetailsText(
    String title,
    Optional<? extends Picture> picture,
    Optional<DataTable> budget,
    Optional<DataTable> figures,
    String advice) {
  /** Nothing to show. */
  static DetailsText nothing() {
    return new DetailsText(
        Words.say("desk.details.none"), Optional.empty(), Optional.empty(), Optional.empty(), "");
  }

  /** The details of the speed that is looked at. Takes a while with many firings. */
  public static DetailsText of(BenchView view, Optional<MarkedSpeed> looked) {
    return looked
        .flatMap(speed -> ViewedRuns.at(view, speed))
        .map(summary -> of(view, summary))
        .or(() -> ofTimes(view))
        .orElseGet(DetailsText::nothing);
  }

  /** Firings that were made before a run was begun. */
  private static Optional<DetailsText> ofTimes(BenchView view) {
    return RunPictures.times(view.results(), BenchPictures.note(view))
        .map(
            times ->
                new DetailsText(
                    Words.say("desk.details.times"),
                    Optional.of(times),
                    Optional.of(times.table()),
                    LastCurve.of(view).twin(),
                    ""));
  }

  private static DetailsText of(BenchView view, SpeedSummary summary) {
    String note = BenchPictures.note(view);
    Optional<BudgetBars> bars = BudgetBars.of(summary, note);
    Optional<CurtainFindings> curtains = CurtainFindings.of(view);
    List<List<String>> rows =
        new ArrayList<>(curtains.map(its -> its.rows(summary.speed())).orElseGet(List::of));
    rows.addAll(BudgetWords.figures(summary));
    StatisticWords.lines(SpeedStatistics.of(summary))
        .forEach(line -> rows.add(List.of(line.name(), line.number())));
    summary
        .releases()
        .rejected()
        .forEach(
            firing ->
                rows.add(
                    List.of(
                        Words.say("details.rejected", firing.number()),
                        Sentences.rejected(firing))));
    RunPictures.withoutRun(view.results())
        .forEach(
            firing ->
                rows.add(
                    List.of(
                        Words.say("details.noRun", firing.number()), Sentences.firing(firing))));
    return new DetailsText(
        Words.say("desk.details.title", Numbers.speed(summary.speed())),
        bars,
        bars.map(BudgetBars::table).map(DetailsText::shown),
        Optional.of(
            new DataTable(
                Words.say("desk.details.name"),
                List.of(Words.say("details.figure"), Words.say("details.value")),
                rows,
                note)),
        Stream.of(
                curtains.map(CurtainFindings::details).stream(),
                BenchPictures.verdict(view, summary.speed()).stream(),
                summary.budget().map(DetailsText::advice).stream())
            .flatMap(each -> each)
            .collect(Collectors.joining(" ")));
  }

  /** Distribution and sensitivity are left to the command line: the table must fit the screen. */
  private static DataTable shown(DataTable whole) {
    List<Integer> columns = List.of(0, 3, 4, 5, 6, 7);
    return new DataTable(
        Words.say("desk.details.table"),
        columns.stream().map(whole.headings()::get).toList(),
        whole.rows().stream().map(row -> columns.stream().map(row::get).toList()).toList(),
        whole.note());
  }

  private static String advice(UncertaintyBudget budget) {
    return BudgetWords.improve(budget) + " " + Words.say("budget.optics");
  }
}
