package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.Stage;
import org.halflight.verdict.Stage.Fired;
import org.halflight.words.Numbers;
import org.halflight.words.StageWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/**
 * The stages of an assembly in order, with what changed below and what was found above; the slow
 * and the top speed upwards in stops.
 *
 * @param assembly at least one stage
 * @param note where the figures come from
 */
public record StagesPicture(AssemblyStages assembly, String note) implements Picture {
  /** The two speeds of a stage stand side by side. */
  private static final double APART = 0.09;

  private static final double LEAST_STOPS = 0.5;

  @Override
  public JFreeChart chart(Theme theme) {
    List<Stage> stages = assembly.stages();
    DotPlot plot =
        new DotPlot(
            Frame.names(
                Words.say("stage.picture.axis"),
                IntStream.rangeClosed(1, stages.size())
                    .mapToObj(stage -> StageWords.inShort(assembly, stage))
                    .toList(),
                IntStream.rangeClosed(1, stages.size()).mapToObj(String::valueOf).toList()),
            Words.say("chart.stops"),
            theme);
    List<double[]> slow = points(Stage::slow, assembly::slowPlusMinus, -APART);
    List<double[]> top = points(Stage::top, assembly::topPlusMinus, APART);
    whiskers(plot, slow, theme.asFound());
    whiskers(plot, top, theme.asLeft());
    Stage first = stages.get(0);
    plot.joined(Words.say("stage.picture.slow", first.slow().speed()), slow, theme.asFound(), true);
    plot.joined(Words.say("stage.picture.top", first.top().speed()), top, theme.asLeft(), false);
    plot.level(0, theme.quietInk(), false);
    double low = Math.min(-LEAST_STOPS, end(slow, top, -1));
    double high = Math.max(LEAST_STOPS, end(slow, top, 1));
    double spare = 0.15 * (high - low);
    for (int stage = 2; stage <= stages.size(); stage++) {
      int at = stage - 1;
      assembly
          .change(stage)
          .flatMap(StageWords::mark)
          .ifPresent(found -> plot.words(found, at, high + spare / 4, theme.rest()));
    }
    plot.signed();
    plot.range(low - spare / 2, high + spare);
    return plot.chart(title(), note);
  }

  private interface Speed {
    Fired of(Stage stage);
  }

  /** Place, error and half its interval of each stage that has a time. */
  private List<double[]> points(Speed speed, ToDoubleFunction<Stage> plusMinus, double beside) {
    List<double[]> points = new ArrayList<>();
    for (int i = 0; i < assembly.stages().size(); i++) {
      Stage stage = assembly.stages().get(i);
      Fired fired = speed.of(stage);
      if (fired.errors().n() > 0) {
        points.add(
            new double[] {i + beside, fired.errors().mean().get(), plusMinus.applyAsDouble(stage)});
      }
    }
    return points;
  }

  private static void whiskers(DotPlot plot, List<double[]> points, java.awt.Color colour) {
    plot.whiskers(
        points.stream().mapToDouble(p -> p[0]).toArray(),
        points.stream().mapToDouble(p -> p[1] - p[2]).toArray(),
        points.stream().mapToDouble(p -> p[1] + p[2]).toArray(),
        colour,
        APART / 3);
  }

  /** The lowest or highest end of the bars. */
  private static double end(List<double[]> slow, List<double[]> top, int way) {
    return way
        * IntStream.range(0, 2)
            .mapToObj(i -> i == 0 ? slow : top)
            .flatMap(List::stream)
            .mapToDouble(p -> way * p[1] + p[2])
            .max()
            .orElse(0);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (int stage = 1; stage <= assembly.stages().size(); stage++) {
      Stage its = assembly.stages().get(stage - 1);
      rows.add(
          List.of(
              StageWords.inShort(assembly, stage),
              StageWords.of(its.assembly()),
              error(its.slow(), its, assembly::slowPlusMinus),
              error(its.top(), its, assembly::topPlusMinus),
              its.bulb().map(StageWords::bulb).orElse(""),
              assembly
                  .change(stage)
                  .map(change -> String.join(" ", StageWords.sentences(change)))
                  .orElse("")));
    }
    Stage first = assembly.stages().get(0);
    return new DataTable(
        title(),
        List.of(
            Words.say("stage.table.stage"),
            Words.say("stage.table.assembly"),
            Words.say("stage.table.speed", first.slow().speed()),
            Words.say("stage.table.speed", first.top().speed()),
            Words.say("stage.table.b"),
            Words.say("stage.table.finding")),
        rows,
        note);
  }

  private static String error(Fired fired, Stage stage, ToDoubleFunction<Stage> plusMinus) {
    return fired.errors().n() == 0
        ? Words.say("stage.no-time")
        : Words.say(
            "stage.table.error",
            Numbers.bareStops(fired.errors().mean().get()),
            Numbers.bareSize(plusMinus.applyAsDouble(stage)));
  }

  private static String title() {
    return Words.say("stage.picture.title");
  }
}
