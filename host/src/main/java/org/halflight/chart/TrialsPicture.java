package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.words.CurtainWords;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/**
 * Where each adjustment took the figure that is watched: a column a trial, the means joined, so
 * that one sees what the last turn did.
 *
 * @param figure what is watched
 * @param speed at which
 * @param band where the figure is to be; empty where nobody knows
 * @param trials in order, at least one
 * @param note where the numbers come from; may be empty
 */
public record TrialsPicture(
    CurtainFigure figure, MarkedSpeed speed, Optional<Band> band, List<Trial> trials, String note)
    implements Picture {
  private static final double AIR = 0.25;

  /** From where to where a figure is to be, in its own unit. */
  public record Band(double low, double high) {}

  /**
   * One trial.
   *
   * @param name what was done before it
   * @param figures what its counted firings say; empty where there are none yet
   */
  public record Trial(String name, Optional<CurtainRunFigures> figures) {
    private Optional<Sample> at(MarkedSpeed speed, CurtainFigure figure) {
      return figures.flatMap(run -> run.at(speed)).flatMap(its -> its.sample(figure));
    }
  }

  public TrialsPicture {
    trials = List.copyOf(trials);
  }

  private double shown(double value) {
    return switch (figure.unit()) {
      case SECONDS -> 1e3 * value;
      case RATIO -> 100 * value;
      case STOPS, MILLIMETRES -> value;
    };
  }

  private String unit() {
    return Words.of("chart.curtain.unit", figure.unit());
  }

  @Override
  public JFreeChart chart(Theme theme) {
    List<String> names = trials.stream().map(Trial::name).toList();
    List<String> numbers = new ArrayList<>();
    List<double[]> firings = new ArrayList<>();
    List<double[]> means = new ArrayList<>();
    double low = band.map(its -> shown(its.low())).orElse(Double.POSITIVE_INFINITY);
    double high = band.map(its -> shown(its.high())).orElse(Double.NEGATIVE_INFINITY);
    for (int i = 0; i < trials.size(); i++) {
      numbers.add(String.valueOf(i));
      Optional<Sample> sample = trials.get(i).at(speed, figure);
      if (sample.isPresent()) {
        for (double value : sample.get().values()) {
          firings.add(new double[] {i - 0.12, shown(value)});
          low = Math.min(low, shown(value));
          high = Math.max(high, shown(value));
        }
        means.add(new double[] {i, shown(sample.get().mean().get())});
      }
    }
    DotPlot plot =
        new DotPlot(
            Frame.names(Words.say("chart.curtain.trials.axis"), names, numbers), unit(), theme);
    band.ifPresent(its -> plot.band(shown(its.low()), shown(its.high())));
    plot.dots(Words.say("chart.curtain.firing"), firings, theme.quietInk());
    plot.joined(Words.say("chart.mean"), means, theme.asLeft(), true);
    for (double[] mean : means) {
      plot.words(written(mean[1]), mean[0] + 0.1, mean[1], theme.ink());
    }
    if (low <= high) {
      double air = Math.max(AIR * (high - low), 1e-3);
      plot.range(low - air, high + air);
    }
    return plot.chart(title(), note);
  }

  private String written(double value) {
    return switch (figure.unit()) {
      case SECONDS, STOPS -> String.format(Locale.ROOT, "%.2f", value).replace('-', '\u2212');
      case MILLIMETRES, RATIO -> String.format(Locale.ROOT, "%.1f", value).replace('-', '\u2212');
    };
  }

  private String title() {
    return Words.say(
        "chart.curtain.trials",
        CurtainWords.name(figure),
        Words.say("chart.seconds", speed.label()));
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (Trial trial : trials) {
      rows.add(
          List.of(
              trial.name(),
              String.valueOf(trial.at(speed, figure).map(Sample::n).orElse(0)),
              cell(trial, figure),
              cell(trial, CurtainFigure.FIRST_TRAVEL),
              cell(trial, CurtainFigure.SECOND_TRAVEL),
              cell(trial, CurtainFigure.SLOPE)));
    }
    return new DataTable(
        title(),
        List.of(
            Words.say("chart.curtain.trials.axis"),
            Words.say("table.firings"),
            Words.say("chart.curtain.watched"),
            CurtainWords.name(CurtainFigure.FIRST_TRAVEL),
            CurtainWords.name(CurtainFigure.SECOND_TRAVEL),
            CurtainWords.name(CurtainFigure.SLOPE)),
        rows,
        note);
  }

  private String cell(Trial trial, CurtainFigure of) {
    OptionalDouble mean =
        trial
            .at(speed, of)
            .map(sample -> OptionalDouble.of(sample.mean().get()))
            .orElse(OptionalDouble.empty());
    return mean.isPresent()
        ? CurtainWords.value(of, mean.getAsDouble())
        : Words.say("table.nothing");
  }
}
