package org.halflight.chart;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;

/**
 * What will be in an empty place, in grey and with invented figures, under the words that say what
 * brings it. The table twin has the words alone.
 *
 * @param of what it looks like
 * @param words what to do
 */
public record Example(Picture of, String words) implements Picture {
  private static final double[] SPREAD = {-0.06, 0.02, 0.05, -0.03, 0.01};

  /** A speed map before and after the work. */
  public static Example map(String words) {
    List<String> dial = List.of("1", "1/2", "1/4", "1/8", "1/15", "1/30", "1/60", "1/125", "1/250");
    return new Example(
        new SpeedMap(
            words,
            IntStream.range(0, dial.size()).mapToObj(i -> column(dial.get(i), i)).toList(),
            Words.say("chart.example")),
        words);
  }

  /** The times of firings without a run. */
  public static Example times(String words) {
    double[] seconds = {1 / 61.0, 1 / 62.5, 1 / 60.2, 1 / 118.0, 1 / 121.0};
    return new Example(
        new FiringTimes(
            IntStream.range(0, seconds.length)
                .mapToObj(
                    i ->
                        new FiringTimes.Firing(
                            i + 1, Outcome.TIMED, OptionalDouble.of(seconds[i]), Optional.empty()))
                .toList(),
            Words.say("chart.example")),
        words);
  }

  private static SpeedColumn column(String label, int place) {
    MarkedSpeed speed = MarkedSpeed.parse(label);
    Map<Phase, SpeedSummary> runs = new EnumMap<>(Phase.class);
    runs.put(Phase.AS_FOUND, fired(speed, Phase.AS_FOUND, 0.6 - 0.08 * place));
    runs.put(Phase.AS_LEFT, fired(speed, Phase.AS_LEFT, 0.05 - 0.02 * (place % 3)));
    return new SpeedColumn(speed, Tolerance.THIRD, runs);
  }

  private static SpeedSummary fired(MarkedSpeed speed, Phase phase, double mean) {
    double[] errors = IntStream.range(0, 5).mapToDouble(i -> mean + SPREAD[i]).toArray();
    return new SpeedSummary(
        speed,
        Reference.EXACT,
        phase,
        new ReleaseCounts(errors.length, Map.of(Outcome.TIMED, errors.length)),
        Sample.of(errors),
        OptionalDouble.empty(),
        Tolerance.THIRD,
        HowMeasured.BY_A_MODEL);
  }

  @Override
  public JFreeChart chart(Theme theme) {
    JFreeChart chart = of.chart(theme.faded());
    chart.getTitle().setText(words);
    chart.getTitle().setPaint(theme.ink());
    return chart;
  }

  @Override
  public DataTable table() {
    return new DataTable(words, List.of(words), List.of(), Words.say("chart.example"));
  }
}
