package org.halflight.verdict;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.speeds.Stops;
import org.halflight.stored.StoredWords;

/** A figure of one firing of curtains, of which a mean and a scatter are shown. */
public enum CurtainFigure {
  /** First curtain over the frame, edge to edge. */
  FIRST_TRAVEL(Unit.SECONDS, shot -> run(shot.travel().first().map(CurtainRun::edgeSeconds))),
  /** Second curtain over the frame, edge to edge. */
  SECOND_TRAVEL(Unit.SECONDS, shot -> run(shot.travel().second().map(CurtainRun::edgeSeconds))),
  /** Second less first travel between the outer sensors; below 0 the second is the quicker. */
  TRAVEL_DIFFERENCE(Unit.SECONDS, shot -> shot.travel().travelDifferenceSeconds()),
  /** Exposure at the end against the start; above 0 the end is brighter. */
  SLOPE(Unit.STOPS, shot -> shot.travel().slopeStops()),
  /** The most exposed place against the least. */
  RANGE(Unit.STOPS, shot -> shot.travel().rangeStops()),
  /** Error at the start. */
  START(Unit.STOPS, shot -> error(shot, Place.START)),
  /** Error at the centre. */
  CENTRE(Unit.STOPS, shot -> error(shot, Place.CENTRE)),
  /** Error at the end. */
  END(Unit.STOPS, shot -> error(shot, Place.END)),
  /** Time at the centre less the wanted time. */
  EXCESS(Unit.SECONDS, CurtainFigure::excess),
  /** Width of the slit at the centre. */
  SLIT(Unit.MILLIMETRES, shot -> shot.travel().slitMillimetres()),
  /** How long the whole frame is open; below 0 it never is. */
  WINDOW(Unit.SECONDS, shot -> shot.travel().windowSeconds()),
  /** Light at the end after the second curtain came home, in stops of the exposure there. */
  END_BOUNCE(Unit.STOPS, shot -> bounce(shot.travel())),
  /** Darkness at the end after the first curtain came home, in seconds. */
  END_DIP(Unit.SECONDS, shot -> shot.travel().at(Place.END).dipSeconds()),
  /** Speed of the first curtain in its last half against its first. */
  FIRST_GAIN(Unit.RATIO, shot -> gain(shot.travel().first())),
  /** The same of the second. */
  SECOND_GAIN(Unit.RATIO, shot -> gain(shot.travel().second())),
  /** Flash contact closes, from when the first curtain has cleared the end. */
  CONTACT(Unit.SECONDS, CurtainFigure::contact);

  /** What a figure counts. */
  public enum Unit {
    SECONDS,
    STOPS,
    MILLIMETRES,
    /** A share of one. */
    RATIO
  }

  /** As tables name them. */
  public static final StoredWords<CurtainFigure> WORDS =
      StoredWords.of(
          CurtainFigure.class,
          figure ->
              switch (figure) {
                case FIRST_TRAVEL -> "first-travel";
                case SECOND_TRAVEL -> "second-travel";
                case TRAVEL_DIFFERENCE -> "travel-difference";
                case SLOPE -> "slope";
                case RANGE -> "range";
                case START -> "start";
                case CENTRE -> "centre";
                case END -> "end";
                case EXCESS -> "excess";
                case SLIT -> "slit";
                case WINDOW -> "window";
                case END_BOUNCE -> "end-bounce";
                case END_DIP -> "end-dip";
                case FIRST_GAIN -> "first-gain";
                case SECOND_GAIN -> "second-gain";
                case CONTACT -> "contact";
              });

  private final Unit unit;

  @SuppressWarnings("ImmutableEnumChecker") // A function without a state.
  private final Function<CurtainShot, OptionalDouble> value;

  CurtainFigure(Unit unit, Function<CurtainShot, OptionalDouble> value) {
    this.unit = unit;
    this.value = value;
  }

  /** What it counts. */
  public Unit unit() {
    return unit;
  }

  /** The figure of a firing; empty where it has none. */
  public OptionalDouble of(CurtainShot shot) {
    return value.apply(shot);
  }

  private static OptionalDouble run(Optional<Double> seconds) {
    return seconds.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  private static OptionalDouble error(CurtainShot shot, Place place) {
    OptionalDouble seconds = shot.travel().at(place).effectiveSeconds();
    // An exposure of nothing has no stops.
    return seconds.orElse(0) > 0
        ? OptionalDouble.of(Stops.between(seconds.getAsDouble(), shot.wantedSeconds()))
        : OptionalDouble.empty();
  }

  private static OptionalDouble excess(CurtainShot shot) {
    OptionalDouble seconds = shot.travel().at(Place.CENTRE).effectiveSeconds();
    return seconds.isPresent()
        ? OptionalDouble.of(seconds.getAsDouble() - shot.wantedSeconds())
        : seconds;
  }

  /** A place that no bounce was seen at has none. */
  private static OptionalDouble bounce(CurtainTravel travel) {
    PlacePassing end = travel.at(Place.END);
    return end.effectiveSeconds().isPresent()
        ? OptionalDouble.of(end.bounceStops())
        : OptionalDouble.empty();
  }

  private static OptionalDouble gain(Optional<CurtainRun> run) {
    return run(run.map(of -> of.lastHalfMetresPerSecond() / of.firstHalfMetresPerSecond()));
  }

  private static OptionalDouble contact(CurtainShot shot) {
    OptionalDouble closes = shot.contactSeconds();
    OptionalDouble opens = shot.travel().windowOpensSeconds();
    return closes.isPresent() && opens.isPresent()
        ? OptionalDouble.of(closes.getAsDouble() - opens.getAsDouble())
        : OptionalDouble.empty();
  }
}
