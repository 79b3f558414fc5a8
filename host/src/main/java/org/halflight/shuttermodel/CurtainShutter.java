package org.halflight.shuttermodel;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.halflight.speeds.MarkedSpeed;

/**
 * A model of a curtain shutter: two curtains, each pulled by its spring through run-up, frame and
 * brake, the second let go by the first or by a timer at the fast speeds and by the escapement at
 * the slow ones. What it gives are model figures and no measurement of a camera.
 *
 * <p>Immutable; the same shutter gives the same light for the same {@link FiringTurn} on every
 * machine.
 */
public final class CurtainShutter implements ModelShutter {
  /** One turn of the eccentric of the latch. */
  private static final double SLIT_MILLIS_A_TURN = 1;

  private static final double BRAKE_A_TURN = 1;
  private static final double CONTACT_MILLIS_A_TURN = 4;
  private static final double ESCAPEMENT_STOPS_A_TURN = 0.5;

  /** From the trip to the second curtain's being free. */
  private static final double LATCH_SECONDS = 0.3e-3;

  /** After a rest gum and sticking fade from firing to firing, to 1/e in so many. */
  private static final double RUNS_IN_FIRINGS = 3;

  /** So much of a change of tension is taken back until the spring has settled. */
  private static final double UNSETTLED = 0.3;

  private static final int SETTLES_FIRINGS = 2;

  /** What is missing of the run-up after a wind that did not go home. */
  private static final double SHORT_WIND_MILLIMETRES = 1.5;

  private static final double HALF_SECOND = 0.4;
  private static final int TURNS_HALVINGS = 40;
  private static final double TURNS_MOST = 4;

  /**
   * A screw as far as it was turned.
   *
   * @param turns since the shutter was found
   * @param last the last change
   * @param since number of the firing before that change
   */
  private record Turned(double turns, double last, long since) {
    static final Turned NOT = new Turned(0, 0, 0);

    /** As the spring feels it that many firings later. */
    double settling(long firing) {
      double left = Math.max(0, 1 - (firing - since - 1) / (double) SETTLES_FIRINGS);
      return turns - UNSETTLED * last * left;
    }
  }

  /** What chance brings to one firing: normal deviates, and how rested it is. */
  private record Luck(
      double first,
      double second,
      double latch,
      double escapement,
      double rested,
      boolean isShort) {
    static final Luck NONE = new Luck(0, 0, 0, 0, 0, false);
  }

  /**
   * When the second curtain is let go at a speed.
   *
   * @param seconds after the first, when all is right
   * @param byEscapement what of it the escapement makes
   * @param place where the edge of the first curtain is when it trips what comes next
   */
  private record Trip(double seconds, double byEscapement, double place) {}

  private final String name;
  private final CurtainDesign design;
  private final CurtainDrive soundFirst;
  private final CurtainDrive soundSecond;
  private final Map<MarkedSpeed, Trip> trips;
  private final CurtainCondition condition;
  private final Map<CurtainScrew, Turned> turned;
  private final Optional<ModelContact> contact;
  private final long seed;

  /**
   * One as it is found.
   *
   * @param name what the program calls this shutter
   * @param dial its marked speeds, in the order of the dial
   * @param condition what is wrong with it
   * @param seed of all that is random
   */
  public static CurtainShutter of(
      String name,
      CurtainDesign design,
      List<MarkedSpeed> dial,
      CurtainCondition condition,
      long seed) {
    CurtainDrive first = design.first();
    CurtainDrive second = design.second();
    return new CurtainShutter(
        name,
        design,
        first,
        second,
        trips(design, dial, first.run(), second.run()),
        condition,
        Map.of(),
        Optional.empty(),
        seed);
  }

  private static Map<MarkedSpeed, Trip> trips(
      CurtainDesign design, List<MarkedSpeed> dial, CurtainMotion first, CurtainMotion second) {
    double middle = design.frameMillimetres() / 2;
    double ahead = first.reaches(middle).orElseThrow() - second.reaches(middle).orElseThrow();
    Map<MarkedSpeed, Trip> trips = new LinkedHashMap<>();
    for (MarkedSpeed speed : dial) {
      double seconds = speed.exactSeconds() + ahead;
      double bySlit = Math.min(seconds, design.slowestSlitSeconds() + ahead);
      trips.put(speed, new Trip(seconds, seconds - bySlit, first.at(bySlit - LATCH_SECONDS)));
    }
    return Collections.unmodifiableMap(trips);
  }

  private CurtainShutter(
      String name,
      CurtainDesign design,
      CurtainDrive soundFirst,
      CurtainDrive soundSecond,
      Map<MarkedSpeed, Trip> trips,
      CurtainCondition condition,
      Map<CurtainScrew, Turned> turned,
      Optional<ModelContact> contact,
      long seed) {
    this.name = name;
    this.design = design;
    this.soundFirst = soundFirst;
    this.soundSecond = soundSecond;
    this.trips = trips;
    this.condition = condition;
    this.turned = turned;
    this.contact = contact;
    this.seed = seed;
  }

  /** The same with other marked speeds; what was turned stays turned. */
  public CurtainShutter withDial(List<MarkedSpeed> dial) {
    return new CurtainShutter(
        name,
        design,
        soundFirst,
        soundSecond,
        trips(design, dial, soundFirst.run(), soundSecond.run()),
        condition,
        turned,
        contact,
        seed);
  }

  /** The same in another condition; what was turned stays turned. */
  public CurtainShutter in(CurtainCondition another) {
    return new CurtainShutter(
        name, design, soundFirst, soundSecond, trips, another, turned, contact, seed);
  }

  /** The same with another flash contact than that of its condition. */
  public CurtainShutter with(ModelContact another) {
    return new CurtainShutter(
        name,
        design,
        soundFirst,
        soundSecond,
        trips,
        condition,
        turned,
        Optional.of(another),
        seed);
  }

  /**
   * The same with a screw turned.
   *
   * @param turns inwards; below zero outwards
   * @param firings how often it was fired so far: the first ones after a change of tension are
   *     those in which the spring settles
   */
  public CurtainShutter turn(CurtainScrew screw, double turns, long firings) {
    Map<CurtainScrew, Turned> now = new EnumMap<>(CurtainScrew.class);
    now.putAll(turned);
    now.put(screw, new Turned(turns(screw) + turns, turns, firings));
    return new CurtainShutter(
        name,
        design,
        soundFirst,
        soundSecond,
        trips,
        condition,
        Collections.unmodifiableMap(now),
        contact,
        seed);
  }

  /** How far a screw was turned since the shutter was found. */
  public double turns(CurtainScrew screw) {
    return turned.getOrDefault(screw, Turned.NOT).turns();
  }

  /** How it is built. */
  public CurtainDesign design() {
    return design;
  }

  /** What is wrong with it. */
  public CurtainCondition condition() {
    return condition;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Set<MarkedSpeed> dial() {
    return trips.keySet();
  }

  @Override
  public ReleaseTiming timing() {
    ReleaseTiming usual = ReleaseTiming.INVENTED;
    return new ReleaseTiming(
        usual.pressToLightMillis() + condition.releaseMillis(), condition.releaseScatterMillis());
  }

  @Override
  public ModelContact contact() {
    ModelContact its =
        contact.orElse(
            new ModelContact(ModelContact.What.CLOSES, condition.contactMillis(), 0.02, 2, 0.04));
    return its.later(CONTACT_MILLIS_A_TURN * turns(CurtainScrew.CONTACT));
  }

  @Override
  public ModelSelfTimer selfTimer() {
    return ModelSelfTimer.EVEN;
  }

  @Override
  public ModelFiring firing(MarkedSpeed speed, FiringTurn turn) {
    SeededDraws draws =
        new SeededDraws(
            SeededDraws.seedOf(
                SeededDraws.seedOf(seed, Double.doubleToLongBits(speed.exactSeconds())),
                turn.number()));
    double lot = draws.uniform();
    boolean isShort = draws.uniform() < condition.shortWinds();
    Luck luck =
        new Luck(
            draws.normal(),
            draws.normal(),
            draws.normal(),
            draws.normal(),
            StrictMath.exp(-(turn.sinceRest() - 1) / RUNS_IN_FIRINGS),
            isShort);
    CurtainPass pass = pass(speed, luck, turn.number());
    if (pass.opensSeconds(0).isEmpty()) {
      return new ModelFiring.DidNotOpen();
    }
    double hangs = speed.exactSeconds() > HALF_SECOND ? condition.escapement().hangs() : 0;
    return new ModelFiring.Curtains(lot < condition.holds() + hangs ? pass.withoutSecond() : pass);
  }

  /** What it does at a marked speed when chance has no part in it and all springs are settled. */
  public CurtainPass usualPass(MarkedSpeed speed) {
    return pass(speed, Luck.NONE, Long.MAX_VALUE / 2);
  }

  private CurtainPass pass(MarkedSpeed speed, Luck luck, long number) {
    Trip trip = trips.get(speed);
    if (trip == null) {
      throw new IllegalArgumentException(name + " has no marked speed " + speed);
    }
    CurtainState short1 =
        luck.isShort()
            ? condition
                .first()
                .withShift(condition.first().shiftMillimetres() - SHORT_WIND_MILLIMETRES)
            : condition.first();
    CurtainMotion first =
        short1
            .drive(
                design,
                soundFirst,
                turnedTension(CurtainScrew.FIRST_TENSION, number),
                BRAKE_A_TURN * turns(CurtainScrew.FIRST_BRAKE),
                luck.rested(),
                luck.first())
            .run();
    CurtainMotion second =
        condition
            .second()
            .drive(
                design,
                soundSecond,
                turnedTension(CurtainScrew.SECOND_TENSION, number),
                BRAKE_A_TURN * turns(CurtainScrew.SECOND_BRAKE),
                luck.rested(),
                luck.second())
            .run();
    return new CurtainPass(
        design.frameMillimetres(), first, second, released(trip, speed, first, luck));
  }

  private double turnedTension(CurtainScrew screw, long number) {
    return turned.getOrDefault(screw, Turned.NOT).settling(number) / design.tensionTurns();
  }

  private double released(Trip trip, MarkedSpeed speed, CurtainMotion first, Luck luck) {
    CurtainCondition.Latch latch = condition.latch();
    double late =
        latch.lateMillis()
            + latch.scatterMillis() * luck.latch()
            + latch.restMillis() * luck.rested()
            + SLIT_MILLIS_A_TURN * turns(CurtainScrew.SLIT);
    CurtainCondition.Escapement escapement = condition.escapement();
    boolean isSlow = trip.byEscapement() > 0;
    if (isSlow && !escapement.changesOver() && trip.byEscapement() == leastByEscapement()) {
      return Double.POSITIVE_INFINITY;
    }
    double stops =
        escapement.stops()
            + escapement.scatterStops() * luck.escapement()
            + (luck.rested() > 0.99 ? escapement.restStops() : 0)
            + (isStepOff(speed) ? escapement.oneSpeedStops() : 0)
            + ESCAPEMENT_STOPS_A_TURN * turns(CurtainScrew.ESCAPEMENT);
    double delay =
        isSlow && escapement.engages() ? trip.byEscapement() * StrictMath.pow(2, stops) : 0;
    OptionalDouble trips =
        design.tripsByPosition()
            ? first.comesTo(trip.place())
            : OptionalDouble.of(trip.seconds() - trip.byEscapement() - LATCH_SECONDS);
    return trips.isEmpty()
        ? Double.POSITIVE_INFINITY
        : Math.max(0, trips.getAsDouble() + LATCH_SECONDS + late * 1e-3 + delay);
  }

  private double leastByEscapement() {
    return trips.values().stream()
        .mapToDouble(Trip::byEscapement)
        .filter(seconds -> seconds > 0)
        .min()
        .orElse(0);
  }

  private boolean isStepOff(MarkedSpeed speed) {
    return List.copyOf(trips.keySet()).indexOf(speed) == 2;
  }

  @Override
  public LightPaths opening(SensorBar bar) {
    return bar.light(usualPass(fastest()).withoutSecond());
  }

  @Override
  public LightPaths closing(SensorBar bar) {
    CurtainPass pass = usualPass(fastest());
    return bar.light(
        new CurtainPass(
            design.frameMillimetres(),
            CurtainMotion.gone(design.frameMillimetres()),
            pass.second(),
            0));
  }

  private MarkedSpeed fastest() {
    return trips.keySet().stream().reduce((slower, faster) -> faster).orElseThrow();
  }

  /**
   * How much further a screw has to be turned until what it sets is right, as a repairer who knows
   * everything would turn it: the travel of the first curtain, the second as quick as the first,
   * the exposure at the centre at the fastest speed, the brakes as they should be, the contact a
   * little after the frame is open, the escapement at 1/8.
   */
  public double turnsToSetRight(CurtainScrew screw) {
    return switch (screw) {
      case FIRST_TENSION ->
          turnsUntil(screw, shutter -> design.travelMillis() * 1e-3 - shutter.firstTravelSeconds());
      case SECOND_TENSION ->
          turnsUntil(
              screw, shutter -> shutter.firstTravelSeconds() - shutter.secondTravelSeconds());
      case SLIT -> turnsUntil(screw, shutter -> shutter.longAtCentre(fastest()));
      case FIRST_BRAKE -> 1 - condition.first().brake() - turns(screw);
      case SECOND_BRAKE -> 1 - condition.second().brake() - turns(screw);
      case CONTACT ->
          (CurtainCondition.CONTACT_MILLIS - condition.contactMillis()) / CONTACT_MILLIS_A_TURN
              - turns(screw);
      case ESCAPEMENT -> -condition.escapement().stops() / ESCAPEMENT_STOPS_A_TURN - turns(screw);
    };
  }

  private double firstTravelSeconds() {
    return usualPass(fastest()).firstTravelSeconds();
  }

  private double secondTravelSeconds() {
    return usualPass(fastest()).secondTravelSeconds();
  }

  /** How much longer than marked full light falls on the middle of the frame. */
  private double longAtCentre(MarkedSpeed speed) {
    return usualPass(speed).exposureSeconds(design.frameMillimetres() / 2) - speed.exactSeconds();
  }

  /** Where what rises with the turns passes zero. */
  private double turnsUntil(CurtainScrew screw, ToDoubleFunction<CurtainShutter> rises) {
    double below = -TURNS_MOST;
    double above = TURNS_MOST;
    for (int i = 0; i < TURNS_HALVINGS; i++) {
      double middle = (below + above) / 2;
      if (rises.applyAsDouble(turn(screw, middle, 0)) < 0) {
        below = middle;
      } else {
        above = middle;
      }
    }
    return (below + above) / 2;
  }
}
