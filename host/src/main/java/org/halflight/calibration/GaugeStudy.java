package org.halflight.calibration;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * How much of the scatter of readings is the gauge: crossed study of parts and operators by
 * analysis of variance (AIAG, Measurement Systems Analysis, 4th edition). An interaction that does
 * not show (p above 0.25, as customary there) is pooled with the repeatability.
 *
 * @param partSquares sum of squares between parts
 * @param operatorSquares between operators
 * @param interactionSquares of their interaction
 * @param repeatabilitySquares within
 * @param interactionP chance of such an interaction where there is none
 * @param interactionPooled whether it was pooled
 * @param repeatabilityVariance of one reading of one part by one operator
 * @param reproducibilityVariance between operators, interaction included
 * @param partVariance between parts
 */
public record GaugeStudy(
    double partSquares,
    double operatorSquares,
    double interactionSquares,
    double repeatabilitySquares,
    double interactionP,
    boolean interactionPooled,
    double repeatabilityVariance,
    double reproducibilityVariance,
    double partVariance) {
  private static final double POOL_ABOVE = 0.25;

  /** What readings come to. */
  public sealed interface Outcome {}

  /** A study. */
  public record Studied(GaugeStudy study) implements Outcome {}

  /** Two parts, two operators and two readings of each are the least. */
  public record TooFew(int parts, int operators, int trials) implements Outcome {}

  /** Not every operator measured every part equally often. */
  public record Unbalanced(String part, String operator) implements Outcome {}

  /** Studies readings in any order. */
  public static Outcome of(List<GaugeReading> readings) {
    Set<String> parts = new LinkedHashSet<>();
    Set<String> operators = new LinkedHashSet<>();
    Map<List<String>, Integer> counts = new LinkedHashMap<>();
    for (GaugeReading reading : readings) {
      parts.add(reading.part());
      operators.add(reading.operator());
      counts.merge(List.of(reading.part(), reading.operator()), 1, Integer::sum);
    }
    int trials = counts.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    if (parts.size() < 2 || operators.size() < 2 || trials < 2) {
      return new TooFew(parts.size(), operators.size(), trials);
    }
    for (String part : parts) {
      for (String operator : operators) {
        if (counts.getOrDefault(List.of(part, operator), 0) != trials) {
          return new Unbalanced(part, operator);
        }
      }
    }
    return new Studied(balanced(readings, parts.size(), operators.size(), trials));
  }

  private static GaugeStudy balanced(List<GaugeReading> readings, int p, int o, int r) {
    double grand = readings.stream().mapToDouble(GaugeReading::value).average().orElseThrow();
    ToDoubleFunction<GaugeReading> byPart = means(readings, GaugeReading::part);
    ToDoubleFunction<GaugeReading> byOperator = means(readings, GaugeReading::operator);
    ToDoubleFunction<GaugeReading> byBoth =
        means(readings, reading -> List.of(reading.part(), reading.operator()));
    double part = 0;
    double operator = 0;
    double interaction = 0;
    double within = 0;
    for (GaugeReading reading : readings) {
      double partMean = byPart.applyAsDouble(reading);
      double operatorMean = byOperator.applyAsDouble(reading);
      double cell = byBoth.applyAsDouble(reading);
      part += square(partMean - grand);
      operator += square(operatorMean - grand);
      interaction += square(cell - partMean - operatorMean + grand);
      within += square(reading.value() - cell);
    }
    int interactionDegrees = (p - 1) * (o - 1);
    int withinDegrees = p * o * (r - 1);
    double interactionMean = interaction / interactionDegrees;
    double withinMean = within / withinDegrees;
    double chance =
        withinMean > 0
            ? 1
                - new FDistribution(null, interactionDegrees, withinDegrees)
                    .cumulativeProbability(interactionMean / withinMean)
            : interactionMean > 0 ? 0 : 1;
    boolean pooled = chance > POOL_ABOVE;
    double repeatability =
        pooled ? (interaction + within) / (interactionDegrees + withinDegrees) : withinMean;
    double against = pooled ? repeatability : interactionMean;
    double operators = Math.max(0, (operator / (o - 1) - against) / (p * r));
    double both = pooled ? 0 : Math.max(0, (interactionMean - withinMean) / r);
    double parts = Math.max(0, (part / (p - 1) - against) / (o * r));
    return new GaugeStudy(
        part,
        operator,
        interaction,
        within,
        chance,
        pooled,
        repeatability,
        operators + both,
        parts);
  }

  /** The mean of all readings that have the key of a reading. */
  private static ToDoubleFunction<GaugeReading> means(
      List<GaugeReading> readings, Function<GaugeReading, ?> key) {
    Map<Object, Double> means =
        readings.stream()
            .collect(Collectors.groupingBy(key, Collectors.averagingDouble(GaugeReading::value)));
    return reading -> Objects.requireNonNull(means.get(key.apply(reading)));
  }

  private static double square(double value) {
    return value * value;
  }

  /** Variance of the gauge: repeatability and reproducibility. */
  public double gaugeVariance() {
    return repeatabilityVariance + reproducibilityVariance;
  }

  /** Variance of a reading of any part by any operator. */
  public double totalVariance() {
    return gaugeVariance() + partVariance;
  }

  /** The gauge's share of the variance, 0 to 1. */
  public double contribution() {
    return gaugeVariance() / totalVariance();
  }

  /** The gauge's standard deviation over that of all; up to 0.1 is good, from 0.3 on too much. */
  public double studyVariation() {
    return Math.sqrt(contribution());
  }

  /** How many kinds of part the gauge tells apart: 1.41 times the ratio, cut; 5 are wanted. */
  public int distinctCategories() {
    double ratio = Math.sqrt(partVariance / gaugeVariance());
    return (int) Math.max(1, Math.min(Integer.MAX_VALUE, Math.floor(1.41 * ratio)));
  }
}
