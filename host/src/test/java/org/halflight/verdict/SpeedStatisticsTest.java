package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.speeds.Reference;
import org.halflight.words.StatisticLine;
import org.halflight.words.StatisticWords;
import org.junit.jupiter.api.Test;

class SpeedStatisticsTest {
  private static SpeedStatistics of(double... errors) {
    return SpeedStatistics.of(Fired.asFound().at("1/8", errors).run().speeds().get(0));
  }

  private static String sentence(SpeedStatistics speed, String name) {
    return line(speed, name).sentence();
  }

  private static StatisticLine line(SpeedStatistics speed, String name) {
    return StatisticWords.lines(speed).stream()
        .filter(line -> line.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void eachStatisticSaysHowManyFiringsItWants() {
    SpeedStatistics one = of(0.1);
    assertThat(line(one, "mean error").number()).isEqualTo("+0.10 stop");
    assertThat(line(one, "scatter").number()).isEqualTo("-");
    assertThat(sentence(one, "scatter")).isEqualTo("Needs 2 firings; there are 1.");
    assertThat(sentence(one, "robust scatter")).isEqualTo("Needs 3 firings; there are 1.");
    assertThat(sentence(one, "creep")).isEqualTo("Needs 5 firings; there are 1.");
    assertThat(sentence(one, "outliers")).isEqualTo("Needs 15 firings; there are 1.");
    assertThat(line(one, "creep").firings()).isEqualTo("1 (needs 5)");
    assertThat(StatisticWords.lines(of())).allMatch(line -> line.number().equals("-"));
  }

  @Test
  void creepIsFoundFromFiveFirings() {
    // Of five firings in rising order, S = 10 has the chance 2 / 120 (Kendall 1948).
    SpeedStatistics rising = of(0.1, 0.2, 0.3, 0.4, 0.5);
    assertThat(rising.creeps()).isTrue();
    assertThat(sentence(rising, "creep"))
        .isEqualTo("Firing after firing it becomes slower, by 0.10 stop each (p 0.017).");
    assertThat(of(0.3, 0.1, 0.5, 0.2, 0.4).creeps()).isFalse();
  }

  @Test
  void outliersArePointedAtAndKept() {
    double[] errors = Fired.errors(4, 20, 0.1, 0.02);
    errors[7] = 1.5;
    SpeedStatistics speed = of(errors);
    assertThat(speed.outlierCount()).isEqualTo(1);
    assertThat(speed.summary().errors().n()).isEqualTo(20);
    assertThat(sentence(speed, "outliers")).contains("it is kept in all figures");
  }

  @Test
  void theFirstFiringAfterRestHasItsOwnLine() {
    SpeedSummary summary =
        Fired.asFound()
            .at("1", Reference.EXACT, Map.of(), OptionalDouble.of(1.25), 0.1, 0.2, 0.3)
            .run()
            .speeds()
            .get(0);
    List<StatisticLine> lines = StatisticWords.lines(SpeedStatistics.of(summary));
    StatisticLine last = lines.get(lines.size() - 1);
    assertThat(last.name()).isEqualTo("first firing after rest");
    assertThat(last.number()).isEqualTo("+1.25 stop");
    assertThat(lines.get(0).number()).isEqualTo("+0.20 stop");
  }
}
