package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Figure;
import org.halflight.stats.Holm;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Sample;
import org.halflight.stats.SharedScatter;

/**
 * A figure of the curtains in two runs: travels over all speeds that both runs have, slope and slit
 * at the fastest of them, the window at the fastest at which the whole frame was open.
 *
 * @param figure which
 * @param speed at which it is compared; empty for all
 * @param before its mean in the earlier run, in the unit of the figure
 * @param after its mean in the later run
 * @param shift after less before, with what firings that depend on one another are allowed
 * @param adjustedP the chance of such a shift where there is none, after Holm over all figures
 */
public record CurtainChange(
    CurtainFigure figure,
    Optional<MarkedSpeed> speed,
    double before,
    double after,
    Figure<MeanShift> shift,
    OptionalDouble adjustedP) {
  /** Chance of calling any figure of the curtains changed where none is. */
  public static final double ALPHA = 0.05;

  /** All that are compared, in the order in which they are said. */
  public static final List<CurtainFigure> COMPARED =
      List.of(
          CurtainFigure.FIRST_TRAVEL,
          CurtainFigure.SECOND_TRAVEL,
          CurtainFigure.TRAVEL_DIFFERENCE,
          CurtainFigure.SLOPE,
          CurtainFigure.SLIT,
          CurtainFigure.WINDOW);

  private static final List<CurtainFigure> OF_ALL_SPEEDS = COMPARED.subList(0, 3);

  private static final List<CurtainFigure> OF_TOP = COMPARED.subList(3, 5);

  /** One speed in both runs. */
  private record Both(CurtainSpeed before, CurtainSpeed after) {
    boolean isOpen() {
      return Stream.of(before, after)
          .anyMatch(speed -> speed.mean(CurtainFigure.WINDOW).orElse(-1) >= 0);
    }
  }

  /** What both runs say of the curtains; empty where one of them has none. */
  public static List<CurtainChange> between(RunSummary before, RunSummary after) {
    List<Both> both = new ArrayList<>();
    for (SpeedSummary first : before.speeds()) {
      after.speeds().stream()
          .filter(second -> second.speed().equals(first.speed()))
          .filter(second -> first.curtains().isPresent() && second.curtains().isPresent())
          .findFirst()
          .ifPresent(
              second ->
                  both.add(
                      new Both(first.curtains().orElseThrow(), second.curtains().orElseThrow())));
    }
    if (both.isEmpty()) {
      return List.of();
    }
    List<CurtainChange> changes = new ArrayList<>();
    OF_ALL_SPEEDS.forEach(figure -> of(figure, Optional.empty(), both).ifPresent(changes::add));
    Both top =
        both.stream()
            .min(Comparator.comparingDouble(speed -> speed.before().wantedSeconds()))
            .orElseThrow();
    OF_TOP.forEach(figure -> of(figure, top).ifPresent(changes::add));
    both.stream()
        .filter(Both::isOpen)
        .min(Comparator.comparingDouble(speed -> speed.before().wantedSeconds()))
        .flatMap(speed -> of(CurtainFigure.WINDOW, speed))
        .ifPresent(changes::add);
    return adjusted(changes);
  }

  private static Optional<CurtainChange> of(CurtainFigure figure, Both speed) {
    return of(figure, Optional.of(speed.before().speed()), List.of(speed));
  }

  private static Optional<CurtainChange> of(
      CurtainFigure figure, Optional<MarkedSpeed> at, List<Both> speeds) {
    List<Sample> before = samples(speeds.stream().map(Both::before), figure);
    List<Sample> after = samples(speeds.stream().map(Both::after), figure);
    if (before.isEmpty() || after.isEmpty()) {
      return Optional.empty();
    }
    Sample first = Sample.joined(before);
    Sample second = Sample.joined(after);
    return Optional.of(
        new CurtainChange(
            figure,
            at,
            first.mean().get(),
            second.mean().get(),
            shift(first, second, Stream.concat(before.stream(), after.stream()).toList()),
            OptionalDouble.empty()));
  }

  private static List<Sample> samples(Stream<CurtainSpeed> speeds, CurtainFigure figure) {
    return speeds.flatMap(speed -> speed.sample(figure).stream()).toList();
  }

  /** By the scatter within the speeds: the speeds themselves may differ a little. */
  private static Figure<MeanShift> shift(Sample before, Sample after, List<Sample> within) {
    int fewest = Math.min(before.n(), after.n());
    if (fewest < MeanShift.LEAST || within.stream().allMatch(sample -> sample.n() < 2)) {
      return new Figure.NotEnoughFirings<>(Math.min(fewest, 1), MeanShift.LEAST);
    }
    SharedScatter scatter = SharedScatter.within(within);
    if (!(scatter.variance() > 0)) {
      return new Figure.NoScatter<>();
    }
    MeanAllowance allowed = MeanAllowance.USUAL;
    double variance = scatter.variance() * (allowed.ofMean(before.n()) + allowed.ofMean(after.n()));
    return new Figure.Known<>(
        MeanShift.of(
            after.mean().get() - before.mean().get(),
            Math.sqrt(variance),
            scatter.degrees(),
            SpeedSummary.LEVEL));
  }

  private static List<CurtainChange> adjusted(List<CurtainChange> changes) {
    double[] p =
        Holm.adjusted(
            changes.stream()
                .flatMap(change -> change.shift.known().stream())
                .mapToDouble(MeanShift::p)
                .toArray());
    List<CurtainChange> all = new ArrayList<>();
    int at = 0;
    for (CurtainChange each : changes) {
      OptionalDouble adjusted =
          each.shift.known().isPresent() ? OptionalDouble.of(p[at++]) : OptionalDouble.empty();
      all.add(
          new CurtainChange(
              each.figure, each.speed, each.before, each.after, each.shift, adjusted));
    }
    return all;
  }

  /** Whether a change is shown. */
  public boolean isChanged() {
    return adjustedP.isPresent() && adjustedP.getAsDouble() <= ALPHA;
  }
}
