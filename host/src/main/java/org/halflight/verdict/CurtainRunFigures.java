package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import org.halflight.exposure.CurtainCurve;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.session.FiringResult;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;

/**
 * What all firings of one run say of the curtains.
 *
 * @param speeds slow to fast
 * @param shots all of them, in the order in which they were fired
 */
public record CurtainRunFigures(List<CurtainSpeed> speeds, List<CurtainShot> shots) {
  /** A slit speed is no longer than this many travels: slower ones are timed by the escapement. */
  private static final double SLIT_SPEED_TRAVELS = 1.2;

  /** The most that a curtain is taken to have run before the start sensor, in travels. */
  private static final double MOST_RUN_UP = 2;

  public CurtainRunFigures {
    speeds = List.copyOf(speeds);
    shots = List.copyOf(shots);
  }

  /** Of the firings of a run; empty where none of them is of curtains. */
  public static Optional<CurtainRunFigures> of(List<FiringResult> firings) {
    return ofShots(firings.stream().flatMap(each -> CurtainShot.of(each).stream()).toList());
  }

  /** The same of shots. */
  public static Optional<CurtainRunFigures> ofShots(List<CurtainShot> shots) {
    Map<MarkedSpeed, List<CurtainShot>> bySpeed =
        new TreeMap<>(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed());
    shots.forEach(
        shot -> bySpeed.computeIfAbsent(shot.speed(), speed -> new ArrayList<>()).add(shot));
    return shots.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new CurtainRunFigures(bySpeed.values().stream().map(CurtainSpeed::of).toList(), shots));
  }

  /** The fastest speed, slit and slope are judged there. */
  public CurtainSpeed top() {
    return speeds.get(speeds.size() - 1);
  }

  /** Of one speed; empty where it was not fired. */
  public Optional<CurtainSpeed> at(MarkedSpeed speed) {
    return speeds.stream().filter(each -> each.speed().equals(speed)).findFirst();
  }

  /** The speeds at which a slit makes the exposure, slow to fast. */
  public List<CurtainSpeed> slitSpeeds() {
    OptionalDouble travel = mean(CurtainFigure.FIRST_TRAVEL);
    return speeds.stream()
        .filter(
            speed ->
                travel.isPresent()
                    && speed.wantedSeconds() <= SLIT_SPEED_TRAVELS * travel.getAsDouble())
        .toList();
  }

  /** A figure that no setting changes, over the firings of all speeds; empty where none has it. */
  public Optional<Sample> overAllSpeeds(CurtainFigure figure) {
    List<Sample> samples = speeds.stream().flatMap(speed -> speed.sample(figure).stream()).toList();
    return samples.isEmpty() ? Optional.empty() : Optional.of(Sample.joined(samples));
  }

  /** Its mean. */
  public OptionalDouble mean(CurtainFigure figure) {
    return overAllSpeeds(figure)
        .map(sample -> OptionalDouble.of(sample.mean().get()))
        .orElse(OptionalDouble.empty());
  }

  /** The line through the slit speeds; empty with fewer than two. */
  public Optional<CurtainOffset> offset() {
    return CurtainOffset.of(slitSpeeds());
  }

  /** Mean travel of a curtain over a way centred on the frame, in seconds; empty if unknown. */
  OptionalDouble travelOver(
      double spanMillimetres, Function<CurtainTravel, Optional<CurtainCurve>> curtain) {
    return settled().stream()
        .flatMap(shot -> curtain.apply(shot.travel()).stream())
        .mapToDouble(curve -> curve.secondsOver(spanMillimetres))
        .average();
  }

  /**
   * What a difference of the travels between the outer sensors amounts to at the centre, as a share
   * of it: both curtains begin at rest and part evenly in time.
   */
  OptionalDouble centreShare() {
    return settled().stream()
        .map(CurtainShot::travel)
        .filter(travel -> travel.firstCurve().isPresent())
        .mapToDouble(CurtainRunFigures::centreShare)
        .average();
  }

  private static double centreShare(CurtainTravel travel) {
    CurtainCurve curve = travel.firstCurve().orElseThrow();
    double outer = travel.at(Place.END).millimetres();
    double outerSeconds = curve.secondsOver(2 * outer);
    double start = curve.metresPerSecondAt(-outer);
    double gained = curve.metresPerSecondAt(outer) - start;
    // From rest at an even gain of speed, and no more than twice the way between the sensors.
    double sinceRest = gained <= 0 ? MOST_RUN_UP : Math.min(MOST_RUN_UP, start / gained);
    return sinceRest + (curve.secondsAt(0) - curve.secondsAt(-outer)) / outerSeconds;
  }

  /**
   * How much of the difference between start and end comes in the second half of the way, 1 for all
   * of it, bounce left out; empty where no firing saw both curtains at all three places.
   */
  OptionalDouble lateShare() {
    double first = 0;
    double whole = 0;
    for (CurtainShot shot : settled()) {
      OptionalDouble start = openSeconds(shot, Place.START);
      OptionalDouble centre = openSeconds(shot, Place.CENTRE);
      OptionalDouble end = openSeconds(shot, Place.END);
      if (start.isPresent() && centre.isPresent() && end.isPresent()) {
        first += centre.getAsDouble() - start.getAsDouble();
        whole += end.getAsDouble() - start.getAsDouble();
      }
    }
    return whole == 0 ? OptionalDouble.empty() : OptionalDouble.of(1 - first / whole);
  }

  /** From the first curtain to the second, without what bounces. */
  private static OptionalDouble openSeconds(CurtainShot shot, Place place) {
    PlacePassing passing = shot.travel().at(place);
    return passing.opensSeconds().isPresent() && passing.coversSeconds().isPresent()
        ? OptionalDouble.of(
            passing.coversSeconds().getAsDouble() - passing.opensSeconds().getAsDouble())
        : OptionalDouble.empty();
  }

  private List<CurtainShot> settled() {
    return shots.stream().filter(shot -> !shot.afterRest()).toList();
  }
}
