package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.session.FiringResult;
import org.halflight.validation.StudiedCurtain.Told;
import org.halflight.validation.invented.CurtainFault;
import org.halflight.validation.invented.CurtainShot;

/** How right curtains are measured, at the sensors and over the frame. */
final class CurtainStudy {
  /** Shutters on the page. */
  static final int SHUTTERS = 2000;

  private CurtainStudy() {}

  /**
   * One quantity of one firing.
   *
   * @param truth as it was
   * @param stated as it is said
   * @param plusMinus within which it is said to be 19 times in 20
   */
  record Pair(double truth, double stated, double plusMinus) {
    double error() {
      return stated - truth;
    }

    double share() {
      return error() / truth;
    }

    boolean holds() {
      return Math.abs(error()) <= plusMinus;
    }
  }

  /**
   * What came of one firing.
   *
   * @param its the case
   * @param shot the firing
   * @param travel what is said; empty where there is no travel
   * @param places truth at each sensor
   * @param film what fell on 101 places of the frame
   */
  record Row(
      CurtainCase its,
      CurtainCase.Shot shot,
      Optional<CurtainTravel> travel,
      List<CurtainShot.Exposure> places,
      List<CurtainShot.Exposure> film) {
    CurtainCase.Speed speed() {
      return shot.speed();
    }

    CurtainFault fault() {
      return its.shutter().fault();
    }

    /** Exposures at the sensors that have one. */
    Stream<Pair> exposures() {
      return Arrays.stream(Place.values()).flatMap(place -> exposure(place).stream());
    }

    Optional<Pair> exposure(Place place) {
      if (travel.isEmpty()) {
        return Optional.empty();
      }
      PlacePassing said = travel.get().at(place);
      return said.effectiveSeconds().isEmpty()
          ? Optional.empty()
          : Optional.of(
              new Pair(
                  places.get(place.ordinal()).all(),
                  said.effectiveSeconds().getAsDouble(),
                  said.plusMinusSeconds()));
    }

    /** Travels from edge to edge. */
    Stream<Pair> travels() {
      return Stream.concat(
          run(CurtainTravel::first, CurtainShot::firstTravelSeconds).stream(),
          run(CurtainTravel::second, CurtainShot::secondTravelSeconds).stream());
    }

    Optional<Pair> run(
        Function<CurtainTravel, Optional<CurtainRun>> said, ToDoubleFunction<CurtainShot> truth) {
      return travel
          .flatMap(said)
          .map(
              run ->
                  new Pair(
                      truth.applyAsDouble(shot.truth()),
                      run.edgeSeconds(),
                      run.plusMinusSeconds()));
    }

    Optional<Pair> window() {
      OptionalDouble said = travel.map(CurtainTravel::windowSeconds).orElse(OptionalDouble.empty());
      return said.isEmpty()
          ? Optional.empty()
          : Optional.of(
              new Pair(
                  shot.truth().windowSeconds(),
                  said.getAsDouble(),
                  travel.get().windowPlusMinusSeconds()));
    }
  }

  /** Some cases, fired and measured. */
  static List<Row> rows(int from, int to, Told told, double least, double most) {
    return IntStream.range(from, to)
        .parallel()
        .mapToObj(i -> rows(CurtainCase.of(i, least, most), told))
        .flatMap(List::stream)
        .toList();
  }

  static List<Row> rows(CurtainCase its, Told told) {
    List<Optional<FiringResult>> said = StudiedCurtain.firings(its, told);
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < said.size(); i++) {
      CurtainCase.Shot shot = its.shots().get(i);
      rows.add(
          new Row(
              its,
              shot,
              StudiedCurtain.travel(said.get(i)),
              IntStream.range(0, 3).mapToObj(eye -> its.bar().truth(eye, shot.truth())).toList(),
              shot.truth().exposures()));
    }
    return rows;
  }

  /** The share of some. */
  static double share(List<Pair> all, Predicate<Pair> which) {
    return all.stream().filter(which).count() / (double) all.size();
  }

  /** What so many of a hundred are within. */
  static double within(List<Pair> all, ToDoubleFunction<Pair> error, double share) {
    double[] sorted =
        all.stream().mapToDouble(p -> Math.abs(error.applyAsDouble(p))).sorted().toArray();
    return sorted.length == 0
        ? Double.NaN
        : sorted[Math.min(sorted.length - 1, (int) Math.floor(share * sorted.length))];
  }

  private static String text(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }

  /** Prints the section alone, or what comes of so many shutters. */
  public static void main(String[] args) {
    int shutters = args.length > 0 ? Integer.parseInt(args[0]) : SHUTTERS;
    List<Row> rows = rows(0, shutters, Told.ALL, 0.7, 1.3);
    for (CurtainCase.Speed speed : CurtainCase.Speed.values()) {
      List<Row> its = rows.stream().filter(r -> r.speed() == speed).toList();
      List<Pair> e = its.stream().flatMap(Row::exposures).toList();
      List<Pair> t = its.stream().flatMap(Row::travels).toList();
      List<Pair> w = its.stream().flatMap(r -> r.window().stream()).toList();
      System.out.println(
          text(
              "%-7s n %d no travel %d | exposures %d: within 1%% %.1f, 95%% in %.2f %%, held %.1f, pm %.2f %% | travels %d: within 1%% %.1f, 95%% in %.2f %%, held %.1f | W 0.1ms %.1f or held %.1f, held %.1f, 95 in %.2f ms",
              speed.label(),
              its.size(),
              its.stream().filter(r -> r.travel().isEmpty()).count(),
              e.size(),
              100 * share(e, p -> Math.abs(p.share()) <= 0.01),
              100 * within(e, Pair::share, 0.95),
              100 * share(e, Pair::holds),
              100 * e.stream().mapToDouble(p -> p.plusMinus() / p.truth()).sum() / e.size(),
              t.size(),
              100 * share(t, p -> Math.abs(p.share()) <= 0.01),
              100 * within(t, Pair::share, 0.95),
              100 * share(t, Pair::holds),
              100 * share(w, p -> Math.abs(p.error()) <= 1e-4),
              100 * share(w, p -> p.holds() || Math.abs(p.error()) <= 1e-4),
              100 * share(w, Pair::holds),
              1e3 * within(w, Pair::error, 0.95)));
    }
  }
}
