package org.halflight.chart;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ShutterKind;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Interval;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.verdict.CurtainShot;
import org.halflight.verdict.CurtainSpeed;

/**
 * The pictures of a curtain shutter, from the figures of its runs.
 *
 * @param frame as its latest run saw it
 * @param runs the earliest first, at least one
 * @param note where the numbers come from; may be empty
 */
public record CurtainPictures(CurtainFrame frame, List<Run> runs, String note) {
  /** The figures of a run, or of a part of it. */
  public record Run(Phase phase, CurtainRunFigures figures) {}

  public CurtainPictures {
    runs = List.copyOf(runs);
  }

  /**
   * Of some runs; empty where there are none.
   *
   * @param kind whether its curtains run along the height of the frame
   * @param runs the earliest first
   */
  public static Optional<CurtainPictures> of(ShutterKind kind, List<Run> runs, String note) {
    if (runs.isEmpty()) {
      return Optional.empty();
    }
    List<CurtainShot> shots = runs.get(runs.size() - 1).figures().shots();
    CurtainTravel last = shots.get(shots.size() - 1).travel();
    CurtainFrame frame =
        new CurtainFrame(
            last.geometry().frameMillimetres(),
            kind == ShutterKind.CURTAIN_SHORT_SIDE,
            last.direction());
    return Optional.of(new CurtainPictures(frame, runs, note));
  }

  /** The gate at a speed; empty where no run has fired it. */
  public Optional<Picture> gate(MarkedSpeed speed, Tolerance tolerance) {
    List<CurtainTrack> tracks = tracks(speed);
    OptionalDouble slit =
        runs.get(runs.size() - 1)
            .figures()
            .at(speed)
            .map(its -> its.mean(CurtainFigure.SLIT))
            .orElse(OptionalDouble.empty());
    return tracks.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new GatePicture(
                frame,
                speed,
                tolerance,
                tracks,
                slit.orElse(0) < frame.millimetres() ? slit : OptionalDouble.empty(),
                note));
  }

  /** How long each place was open at a speed; empty where no run saw both curtains everywhere. */
  public Optional<Picture> wedge(MarkedSpeed speed) {
    return Optional.of(new WedgePicture(frame, speed, tracks(speed), note))
        .filter(WedgePicture::isThere)
        .map(Picture.class::cast);
  }

  /** Both curtains of the latest run at a speed, with the flash window. */
  public Optional<Picture> band(MarkedSpeed speed) {
    CurtainRunFigures last = runs.get(runs.size() - 1).figures();
    OptionalDouble contact =
        last.shots().stream()
            .filter(shot -> shot.speed().equals(speed) && !shot.afterRest())
            .flatMapToDouble(shot -> shot.contactSeconds().stream())
            .average();
    return tracks(speed).stream()
        .reduce((earlier, later) -> later)
        .map(track -> new CurtainBand(frame, speed, track, contact, note))
        .filter(CurtainBand::isThere)
        .map(Picture.class::cast);
  }

  /** Time at the centre less the marked time, at the slit speeds of the latest run. */
  public Optional<Picture> offsets() {
    CurtainRunFigures last = runs.get(runs.size() - 1).figures();
    List<CurtainOffsets.At> speeds =
        last.slitSpeeds().stream().flatMap(speed -> offset(speed).stream()).toList();
    return speeds.size() < 2
        ? Optional.empty()
        : Optional.of(
            new CurtainOffsets(
                speeds,
                last.offset()
                    .map(line -> OptionalDouble.of(line.offsetSeconds()))
                    .orElse(OptionalDouble.empty()),
                last.offset()
                    .map(line -> OptionalDouble.of(line.rateShare()))
                    .orElse(OptionalDouble.empty()),
                note));
  }

  private static Optional<CurtainOffsets.At> offset(CurtainSpeed speed) {
    OptionalDouble excess = speed.mean(CurtainFigure.EXCESS);
    double reach = speed.interval(CurtainFigure.EXCESS).map(CurtainPictures::half).orElse(0.0);
    return excess.isPresent()
        ? Optional.of(
            new CurtainOffsets.At(
                speed.speed(), speed.wantedSeconds(), excess.getAsDouble(), reach))
        : Optional.empty();
  }

  private static double half(Interval interval) {
    return (interval.high() - interval.low()) / 2;
  }

  private List<CurtainTrack> tracks(MarkedSpeed speed) {
    return runs.stream().flatMap(run -> track(run, speed).stream()).toList();
  }

  /** Of the firings that count; of the first after rest where there is no other yet. */
  private static Optional<CurtainTrack> track(Run run, MarkedSpeed speed) {
    List<CurtainShot> all =
        run.figures().shots().stream().filter(shot -> shot.speed().equals(speed)).toList();
    List<CurtainShot> settled = all.stream().filter(shot -> !shot.afterRest()).toList();
    List<CurtainShot> shown = settled.isEmpty() ? all : settled;
    return shown.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new CurtainTrack(
                run.phase(),
                Arrays.stream(Place.values()).map(place -> at(place, shown)).toList()));
  }

  private static CurtainTrack.At at(Place place, List<CurtainShot> shots) {
    CurtainFigure error =
        switch (place) {
          case START -> CurtainFigure.START;
          case CENTRE -> CurtainFigure.CENTRE;
          case END -> CurtainFigure.END;
        };
    List<CurtainTravel> travels = shots.stream().map(CurtainShot::travel).toList();
    DoubleSummaryStatistics stops =
        shots.stream().flatMapToDouble(shot -> error.of(shot).stream()).summaryStatistics();
    long dark = travels.stream().filter(travel -> travel.capped().contains(place)).count();
    boolean isThere = stops.getCount() > 0;
    return new CurtainTrack.At(
        place,
        travels.get(0).geometry().placeMillimetres(place),
        mean(travels, place, PlacePassing::opensSeconds),
        mean(travels, place, PlacePassing::coversSeconds),
        isThere ? OptionalDouble.of(stops.getAverage()) : OptionalDouble.empty(),
        isThere ? stops.getMin() : 0,
        isThere ? stops.getMax() : 0,
        dark > 0 && 2 * dark >= shots.size());
  }

  /** Of firings whose time zero is the passing of the start. */
  private static OptionalDouble mean(
      List<CurtainTravel> travels, Place place, Function<PlacePassing, OptionalDouble> time) {
    return travels.stream()
        .filter(travel -> travel.at(Place.START).opensSeconds().isPresent())
        .flatMapToDouble(travel -> time.apply(travel.at(place)).stream())
        .average();
  }
}
