package org.halflight.exposure;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulses;
import org.halflight.time.TickRate;

/**
 * From the edges of three sensors to the travel of both curtains and the exposure at three places.
 *
 * <p><b>Exposure at a place</b> is the time from half light by the first curtain to half light by
 * the second. That is the integral of the light: a sensor covers some width, and its light is the
 * mean over that width of 'uncovered and not yet covered'. So the integral is the mean over the
 * width of the time from the one curtain to the other, and where that time changes evenly over the
 * width it is the time in the middle, whatever the shape of the shadow, as long as it is symmetric.
 * What is left is the curvature of the difference of both travels over half a millimetre. Blur, be
 * it of slit or lamp, makes light last longer and leaves the integral as it is: of the total time
 * the share {@code slit / (slit + blur)} is exposure (Ives, 1920, for film behind a slit). But
 * where blur is wider than the slit of the curtains the light never becomes full, half light may
 * not be crossed, and the firing is 'never fully open'.
 *
 * <p><b>Half light.</b> The centre crosses two levels with each curtain; half light is between
 * them, and the time between them tells how wide the shadow of an edge is. An outer sensor crosses
 * one level, at a fraction of its own full light, and its edges are carried to half light along
 * that shadow with the speed of the curtain there ({@link CurtainEdge}).
 *
 * <p><b>Travel.</b> An accelerating curve through the three half-light times: exact through three
 * points, and untested ({@link CurtainCurve}). Figures of the edges of the frame are extrapolated;
 * their interval allows for what no sensor sees there.
 *
 * <p>The centre is measured as blades are, by both levels, and so are a shutter that hangs, damage
 * and all else that is no travel.
 *
 * @param geometry where the sensors are
 * @param sensors what is known of them
 * @param clockShare bound of the rate of the board's clock, as a share
 */
public record CurtainMethod(CurtainGeometry geometry, OuterSensors sensors, double clockShare)
    implements ExposureMethod {
  /** A resonator that nobody measured. */
  public static final double CLOCK_SHARE = 0.005;

  /**
   * The rule of two levels on ramps alike on both sides of one half, as a share of the difference
   * of the widths: what speed changes within a shadow leave of it. Our allowance.
   */
  private static final double RULE_SHARE = 0.01;

  /** Shadows wider than this times what slit and lamp explain are something else's, too. */
  private static final double TOO_WIDE = 1.7;

  /** Likewise where nobody said the distances. */
  private static final double TOO_WIDE_UNSAID = 2.5;

  /**
   * A second curtain that takes less than this share of what the first took for the second half was
   * not the second. Our choice.
   */
  private static final double CAME_BACK_SHARE = 0.6;

  private static final double THOUSANDTH = 1e-3;

  /** Before anything is known of sensors and clock. */
  public CurtainMethod(CurtainGeometry geometry) {
    this(geometry, OuterSensors.UNKNOWN, CLOCK_SHARE);
  }

  @Override
  public ExposureMethod knowing(OuterSensors known, double clock) {
    return new CurtainMethod(geometry, known, clock);
  }

  /** Which outer sensor saw light first, where both did. */
  public static Optional<Direction> direction(Firing crossings) {
    OptionalLong a = firstRise(crossings, Channel.OUTER_A);
    OptionalLong b = firstRise(crossings, Channel.OUTER_B);
    return a.isPresent() && b.isPresent() && a.getAsLong() != b.getAsLong()
        ? Optional.of(a.getAsLong() < b.getAsLong() ? Direction.A_TO_B : Direction.B_TO_A)
        : Optional.empty();
  }

  /**
   * The direction of travel as this firing tells it beyond doubt: both outer sensors saw light, and
   * the centre between them.
   */
  public static Optional<Direction> learnt(Firing crossings) {
    OptionalLong centre = firstRise(crossings, Channel.CENTRE_LOW);
    return direction(crossings)
        .filter(
            found ->
                centre.isPresent()
                    && firstRise(crossings, found.start()).orElseThrow() < centre.getAsLong()
                    && centre.getAsLong() < firstRise(crossings, found.end()).orElseThrow());
  }

  private static OptionalLong firstRise(Firing firing, Channel channel) {
    return firing.of(channel).stream().filter(Edge::high).mapToLong(Edge::ticks).findFirst();
  }

  @Override
  public Exposure measure(Firing crossings, LevelPair levels, TickRate rate, long nowTicks) {
    Exposure centre = LeafExposureMethod.measure(crossings, levels, rate, nowTicks);
    boolean centreIsDark =
        centre instanceof Exposure.Unusable unusable
            && unusable.reason() == Exposure.Reason.NO_LIGHT;
    boolean outerSawLight =
        closedLight(crossings, Channel.OUTER_A) || closedLight(crossings, Channel.OUTER_B);
    if (!outerSawLight && (centreIsDark || sensors.seen().isEmpty())) {
      return centre;
    }
    if (centre instanceof Exposure.Timed timed) {
      Reading reading = new Reading(crossings, levels, rate, centre);
      return timed.with(reading.flags(timed), reading.travel(), RULE_SHARE * gapSeconds(timed));
    }
    if (centre instanceof Exposure.NeverFullyOpen never) {
      return never.with(new Reading(crossings, levels, rate, centre).travel());
    }
    return centreIsDark
        ? dark(crossings).with(new Reading(crossings, levels, rate, centre).travel())
        : centre;
  }

  private static boolean closedLight(Firing firing, Channel channel) {
    return !Pulses.of(firing, channel).pulses().isEmpty();
  }

  private static double gapSeconds(Exposure.Timed timed) {
    return Math.max(0, timed.widthLowSeconds() - timed.widthHighSeconds());
  }

  /** The centre saw nothing, where an outer sensor saw light. */
  private static Exposure.NeverFullyOpen dark(Firing crossings) {
    long from =
        crossings.edges().stream()
            .filter(each -> each.channel().isLight() && each.high())
            .mapToLong(Edge::ticks)
            .min()
            .orElseThrow();
    long to =
        crossings.edges().stream()
            .filter(each -> each.channel().isLight() && !each.high())
            .mapToLong(Edge::ticks)
            .max()
            .orElse(from);
    return new Exposure.NeverFullyOpen(
        false, 0, OptionalDouble.empty(), 0, 0, from, to, OptionalDouble.empty());
  }

  /** One firing as it is worked out. */
  private final class Reading {
    private final LevelPair levels;
    private final TickRate rate;
    private final Exposure centre;
    private final Direction direction;
    private final long zeroTicks;
    private final SensorPulses[] pulses = new SensorPulses[3];
    private final Set<CurtainNote> notes = EnumSet.noneOf(CurtainNote.class);
    private final Set<Place> unlit = EnumSet.noneOf(Place.class);
    private final CurtainEdge first;
    private final CurtainEdge second;
    private final int[] covering = new int[3];
    private double cameBackSeconds = Double.NaN;
    private final CurtainBudget budget = new CurtainBudget(geometry, sensors, clockShare);

    Reading(Firing crossings, LevelPair levels, TickRate rate, Exposure centre) {
      this.levels = levels;
      this.rate = rate;
      this.centre = centre;
      Optional<Direction> seen = CurtainMethod.direction(crossings);
      direction = sensors.direction().or(() -> seen).orElse(Direction.A_TO_B);
      zeroTicks =
          crossings.edges().stream()
              .filter(each -> each.channel().isLight() && each.high())
              .mapToLong(Edge::ticks)
              .min()
              .orElseThrow();
      for (Place place : Place.values()) {
        SensorPulses all = SensorPulses.of(crossings, channel(place), rate, zeroTicks);
        pulses[place.index()] = place == Place.CENTRE ? all : nearCentre(all);
      }
      noteSensors(seen, crossings);
      double[] opens = new double[3];
      double[] covers = new double[3];
      double[] lights = new double[3];
      cross(opens, covers, lights);
      first = new CurtainEdge(geometry, levels, opens, lights, ramp(true), true);
      second = new CurtainEdge(geometry, levels, covers, lights, ramp(false), false);
    }

    private Channel channel(Place place) {
      return switch (place) {
        case START -> direction.start();
        case CENTRE -> Channel.CENTRE_LOW;
        case END -> direction.end();
      };
    }

    private SensorPulses at(Place place) {
      return pulses[place.index()];
    }

    private SensorPulses nearCentre(SensorPulses all) {
      if (centre instanceof Exposure.Timed timed) {
        return all.near(
            rate.seconds(timed.crossings().lowRiseTicks() - zeroTicks),
            rate.seconds(timed.crossings().lowFallTicks() - zeroTicks));
      }
      return centre instanceof Exposure.NeverFullyOpen never
          ? all.near(
              rate.seconds(never.startTicks() - zeroTicks),
              rate.seconds(never.endTicks() - zeroTicks))
          : all;
    }

    private void noteSensors(Optional<Direction> seen, Firing crossings) {
      if (sensors.direction().isEmpty() && seen.isEmpty()) {
        notes.add(CurtainNote.DIRECTION_NOT_KNOWN);
      }
      if (seen.isPresent() && !seen.get().equals(direction)) {
        notes.add(CurtainNote.TRAVEL_REVERSED);
      }
      if (seen.isPresent()
          && !at(Place.CENTRE).isDark()
          && CurtainMethod.learnt(crossings).isEmpty()) {
        notes.add(CurtainNote.SENSORS_CROSSED);
      }
      if (!geometry.isDepthSaid()) {
        notes.add(CurtainNote.DISTANCES_NOT_SAID);
      }
      for (Place place : List.of(Place.START, Place.END)) {
        Optional<SensorLevel> level = sensors.level(channel(place));
        if (level.isEmpty()) {
          notes.add(CurtainNote.OUTER_LIGHT_NOT_READ);
        } else if (!level.get().isNearHalf()) {
          notes.add(CurtainNote.OUTER_LEVEL_OFF);
        }
        boolean works = sensors.seen().contains(channel(place)) || !at(place).isDark();
        if (!works) {
          notes.add(CurtainNote.SENSOR_DARK);
          unlit.add(place);
        }
      }
    }

    private void cross(double[] opens, double[] covers, double[] lights) {
      Optional<Crossings> both =
          centre instanceof Exposure.Timed timed
              ? Optional.of(timed.crossings())
              : Optional.empty();
      for (Place place : Place.values()) {
        int i = place.index();
        lights[i] =
            place == Place.CENTRE
                ? levels.low()
                : sensors.level(channel(place)).map(SensorLevel::level).orElse(0.5);
        opens[i] = at(place).opens().orElse(Double.NaN);
        covers[i] = Double.NaN;
      }
      int centreAt = Place.CENTRE.index();
      if (both.isPresent()) {
        lights[centreAt] = 0.5;
        opens[centreAt] = half(both.get().lowRiseTicks(), both.get().highRiseTicks());
        covers[centreAt] = half(both.get().lowFallTicks(), both.get().highFallTicks());
        covering[centreAt] =
            at(Place.CENTRE)
                .covers(OptionalDouble.of(rate.seconds(both.get().lowFallTicks() - zeroTicks)));
      } else {
        cover(Place.CENTRE, covers, OptionalDouble.empty());
      }
      double exposure = covers[centreAt] - opens[centreAt];
      cover(Place.START, covers, after(opens, Place.START, exposure));
      double before = covers[0] - opens[0];
      // What changes from the start to the centre goes on to the end.
      double expected = Double.isFinite(before) ? 2 * exposure - before : exposure;
      OptionalDouble expectedEnd = after(opens, Place.END, Math.max(0, expected));
      cover(Place.END, covers, expectedEnd);
      double firstTakes = opens[2] - opens[1];
      if (covers[2] - covers[1] < CAME_BACK_SHARE * firstTakes && expectedEnd.isPresent()) {
        // The first curtain came back before the second was there, and covered the place itself.
        cameBackSeconds = Math.max(0, expectedEnd.getAsDouble() - covers[2]);
        covers[2] = Double.NaN;
      }
    }

    private OptionalDouble after(double[] opens, Place place, double seconds) {
      double at = opens[place.index()] + seconds;
      return Double.isFinite(at) ? OptionalDouble.of(at) : OptionalDouble.empty();
    }

    private void cover(Place place, double[] covers, OptionalDouble expected) {
      if (!at(place).parts().isEmpty() && at(place).opensOnly().isEmpty()) {
        int part = at(place).covers(expected);
        covering[place.index()] = part;
        covers[place.index()] = at(place).parts().get(part).to();
      }
    }

    /** Half light between the crossings of both levels, in seconds from time zero. */
    private double half(long lowTicks, long highTicks) {
      double part = (0.5 - levels.low()) / (levels.high() - levels.low());
      return rate.seconds(lowTicks - zeroTicks) + part * rate.seconds(highTicks - lowTicks);
    }

    private double ramp(boolean opening) {
      if (!(centre instanceof Exposure.Timed timed)) {
        return Double.NaN;
      }
      Crossings its = timed.crossings();
      long ticks =
          opening
              ? its.highRiseTicks() - its.lowRiseTicks()
              : its.lowFallTicks() - its.highFallTicks();
      return Math.max(0, rate.seconds(ticks)) / (levels.high() - levels.low());
    }

    /** The flags of the centre less those that only blades have. */
    Set<Exposure.Flag> flags(Exposure.Timed timed) {
      Set<Exposure.Flag> its = EnumSet.noneOf(Exposure.Flag.class);
      its.addAll(timed.flags());
      boolean isFull =
          timed.blades().filter(each -> each.fullyOpenSeconds().areaLinear() > 0).isPresent();
      if (isFull) {
        its.remove(Exposure.Flag.MAY_NOT_OPEN_FULLY);
      }
      return its;
    }

    CurtainTravel travel() {
      double zero = zeroSeconds();
      List<PlacePassing> places = new ArrayList<>();
      for (Place place : Place.values()) {
        places.add(passing(place, zero));
      }
      Optional<CurtainCurve> opens = first.curve();
      Optional<CurtainCurve> covers = second.curve();
      double edge = geometry.edgeMillimetres();
      Optional<CurtainRun> firstRun = opens.map(this::run);
      Optional<CurtainRun> secondRun = covers.map(this::run);
      OptionalDouble windowOpens = at(opens, edge, zero);
      OptionalDouble windowShuts = at(covers, -edge, zero);
      double start = places.get(0).plusMinusSeconds();
      double end = places.get(2).plusMinusSeconds();
      boolean bothRan = firstRun.isPresent() && secondRun.isPresent();
      noteShadows(places);
      return new CurtainTravel(
          zeroTicks + rate.ticks(zero),
          geometry,
          direction,
          places,
          firstRun,
          secondRun,
          bothRan ? budget.difference(firstRun.get(), secondRun.get(), start, end) : 0,
          slitMillimetres(),
          windowOpens,
          windowShuts,
          bothRan
              ? budget.window(
                  opens.get(),
                  covers.get(),
                  windowShuts.getAsDouble() - windowOpens.getAsDouble(),
                  Math.max(start, end))
              : 0,
          ramps(first, ramp(true)),
          ramps(second, ramp(false)),
          unlit,
          notes);
    }

    private double zeroSeconds() {
      for (Place place : Place.values()) {
        if (first.has(place)) {
          return first.halfLight(place);
        }
      }
      return 0;
    }

    private PlacePassing passing(Place place, double zero) {
      double millimetres = geometry.placeMillimetres(place);
      if (at(place).isDark()) {
        return PlacePassing.dark(place, millimetres);
      }
      OptionalDouble none = OptionalDouble.empty();
      OptionalDouble opens =
          first.has(place) ? OptionalDouble.of(first.halfLight(place) - zero) : none;
      if (place == Place.END && cameBackSeconds >= 0) {
        return cameBack(millimetres, opens);
      }
      if (!second.has(place)) {
        notes.add(CurtainNote.ONE_CURTAIN);
        return new PlacePassing(place, millimetres, opens, none, none, 0, none, none, none);
      }
      double covers = second.halfLight(place) - zero;
      SensorPulses its = at(place);
      int covered = covering[place.index()];
      double main = its.parts().get(covered).to() - its.parts().get(0).from();
      double dip = Math.max(0, main - its.light(0, covered));
      double bounce = its.light(covered + 1, its.parts().size() - 1);
      double effective = covers - opens.getAsDouble() - dip + bounce;
      double plusMinus;
      double opening = first.rampSeconds(place, levels);
      double closing = second.rampSeconds(place, levels);
      double narrow = isNarrow() || effective < Math.max(opening, closing) ? opening + closing : 0;
      if (place != Place.CENTRE) {
        double level = sensors.level(channel(place)).map(SensorLevel::level).orElse(0.5);
        double width =
            first.rampSeconds(place, levels) * first.metresPerSecondAt(millimetres) / THOUSANDTH;
        plusMinus =
            budget.outer(
                channel(place),
                millimetres,
                level,
                second.metresPerSecondAt(millimetres),
                effective,
                opening,
                closing,
                width,
                dip + bounce,
                narrow);
      } else {
        if (centre instanceof Exposure.Timed timed) {
          effective = timed.effectiveSeconds();
          bounce = timed.reboundSeconds();
          dip = 0;
        }
        plusMinus =
            budget.centre(
                second.metresPerSecondAt(0), effective, opening + closing, bounce, narrow);
      }
      return new PlacePassing(
          place,
          millimetres,
          opens,
          OptionalDouble.of(covers),
          OptionalDouble.of(Math.max(0, effective)),
          plusMinus,
          bounce > 0 ? OptionalDouble.of(bounce) : none,
          bounce > 0 && covered + 1 < its.parts().size()
              ? OptionalDouble.of(its.parts().get(covered + 1).from() - zero - covers)
              : none,
          dip > 0 ? OptionalDouble.of(dip) : none);
    }

    /** The end, which the first curtain covered again; the second was not seen there. */
    private PlacePassing cameBack(double millimetres, OptionalDouble opens) {
      SensorPulses its = at(Place.END);
      double level = sensors.level(channel(Place.END)).map(SensorLevel::level).orElse(0.5);
      double ramp = first.rampSeconds(Place.END, levels);
      double light = its.light(0, its.parts().size() - 1) + (level - 0.5) * 2 * ramp;
      double doubt =
          budget.outer(
              channel(Place.END),
              millimetres,
              level,
              first.metresPerSecondAt(millimetres),
              light,
              ramp,
              ramp,
              ramp * first.metresPerSecondAt(millimetres) / THOUSANDTH,
              light,
              0);
      return new PlacePassing(
          Place.END,
          millimetres,
          opens,
          OptionalDouble.empty(),
          OptionalDouble.of(Math.max(0, light)),
          doubt,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.of(cameBackSeconds));
    }

    private CurtainRun run(CurtainCurve curve) {
      double span = geometry.placeMillimetres(Place.END);
      return new CurtainRun(
          curve.secondsOver(2 * span),
          curve.secondsOver(geometry.frameMillimetres()),
          budget.edges(curve),
          curve.firstHalfMetresPerSecond(),
          curve.lastHalfMetresPerSecond());
    }

    private OptionalDouble at(Optional<CurtainCurve> curve, double millimetres, double zero) {
      return curve.isPresent()
          ? OptionalDouble.of(curve.get().secondsAt(millimetres) - zero)
          : OptionalDouble.empty();
    }

    private OptionalDouble slitMillimetres() {
      return first.has(Place.CENTRE) && second.has(Place.CENTRE)
          ? OptionalDouble.of(
              (second.halfLight(Place.CENTRE) - first.halfLight(Place.CENTRE))
                  * second.metresPerSecondAt(0)
                  / THOUSANDTH)
          : OptionalDouble.empty();
    }

    /** Slit and blur let light come and go as wide as this, at the most. */
    private void noteShadows(List<PlacePassing> places) {
      double most = geometry.isDepthSaid() ? TOO_WIDE : TOO_WIDE_UNSAID;
      boolean measured = ramp(true) >= 0 && first.curve().isPresent();
      if (measured && first.widthRatio() > most) {
        notes.add(CurtainNote.RAMPS_TOO_LONG);
      }
      if (isNarrow()) {
        notes.add(CurtainNote.BLUR_WIDER_THAN_SLIT);
      }
      for (PlacePassing each : places) {
        if (each.isDark() && (isNarrow() || mayBeNarrow(each.place(), places))) {
          // Half light may not be reached, so dark says nothing of a place.
          notes.add(CurtainNote.BLUR_WIDER_THAN_SLIT);
          unlit.add(each.place());
        }
      }
    }

    /** Whether the light at the centre never became full. */
    private boolean isNarrow() {
      return centre instanceof Exposure.NeverFullyOpen && !at(Place.CENTRE).isDark();
    }

    /**
     * Whether a dark outer place, by what changes from the other end to the centre, got the light
     * of a slit too narrow for half light, and not none.
     */
    private boolean mayBeNarrow(Place place, List<PlacePassing> places) {
      OptionalDouble centreSeconds = places.get(Place.CENTRE.index()).effectiveSeconds();
      OptionalDouble farSeconds = places.get(place == Place.START ? 2 : 0).effectiveSeconds();
      return place != Place.CENTRE
          && centreSeconds.isPresent()
          && farSeconds.isPresent()
          && 2 * centreSeconds.getAsDouble() - farSeconds.getAsDouble() > 0;
    }

    private ByLaw ramps(CurtainEdge edge, double seen) {
      double seconds = seen >= 0 ? seen : edge.rampSeconds(Place.CENTRE, levels);
      return new ByLaw(seconds, seconds);
    }
  }
}
