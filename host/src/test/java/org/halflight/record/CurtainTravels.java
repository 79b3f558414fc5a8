package org.halflight.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.CurtainGeometry;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Direction;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.exposure.SensorLevel;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.MeasuredWith;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;

/** Invented travels of curtains, as the record keeps them. */
public final class CurtainTravels {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private CurtainTravels() {}

  /** Firings of one run at a speed that had these travels. */
  public static List<FiringResult> firings(Phase phase, String speed, CurtainTravel... travels) {
    Session session = new Session();
    session.handle(
        new SessionInput.RigIs("R-0001", phase == Phase.AS_LEFT ? 2 : 1, BoardTraits.USUAL, ""));
    session.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "mine",
                phase,
                "curtain",
                List.of(MarkedSpeed.parse(speed)),
                Reference.EXACT,
                travels.length)));
    List<FiringResult> curtains = new ArrayList<>();
    for (int i = 0; i < travels.length; i++) {
      double at = 10 * (i + 1);
      edge(session, Channel.CENTRE_LOW, true, at);
      edge(session, Channel.CENTRE_HIGH, true, at + 1e-4);
      edge(session, Channel.CENTRE_HIGH, false, at + 0.0020);
      edge(session, Channel.CENTRE_LOW, false, at + 0.0021);
      session.handle(new SessionInput.BeatAt((long) ((at + 5) * RATE.ticksPerSecond()), 0));
      curtains.add(timed(session.results().get(i), travels[i]));
    }
    return curtains;
  }

  private static void edge(Session session, Channel channel, boolean high, double seconds) {
    session.handle(
        new SessionInput.EdgeAt(new Edge(channel, high, (long) (seconds * RATE.ticksPerSecond()))));
  }

  /** One of which all figures are there, each another. */
  public static CurtainTravel whole() {
    return new CurtainTravel(
        1_234_567,
        new CurtainGeometry(36, 16.2, 0.5, 5, Double.POSITIVE_INFINITY, 10, false),
        Direction.B_TO_A,
        List.of(
            passing(Place.START, -16.2, 0, 0.0021, 0.00202),
            passing(Place.CENTRE, 0, 0.0065, 0.0085, 0.00199),
            new PlacePassing(
                Place.END,
                16.2,
                OptionalDouble.of(0.0129),
                OptionalDouble.of(0.0147),
                OptionalDouble.of(0.0018),
                1.1e-5,
                OptionalDouble.of(1.5e-4),
                OptionalDouble.of(0.003),
                OptionalDouble.of(2.5e-5))),
        Optional.of(new CurtainRun(0.0129, 0.0143, 7e-5, 2.4, 2.6)),
        Optional.of(new CurtainRun(0.0126, 0.0139, 8e-5, 2.5, 2.7)),
        2e-5,
        OptionalDouble.of(5.1),
        OptionalDouble.of(0.0136),
        OptionalDouble.of(0.0014),
        3e-4,
        new ByLaw(1e-4, 1.1e-4),
        new ByLaw(1.2e-4, 1.3e-4),
        Set.of(),
        Set.of(CurtainNote.DISTANCES_NOT_SAID, CurtainNote.OUTER_LEVEL_OFF));
  }

  /** One of these travels, in ms from edge to edge, and of this slope and slit. */
  public static CurtainTravel of(
      double firstMs, double secondMs, double slopeStops, double slitMm) {
    CurtainTravel whole = whole();
    double start = 0.002;
    return new CurtainTravel(
        whole.zeroTicks(),
        whole.geometry(),
        whole.direction(),
        List.of(
            passing(Place.START, -16.2, 0, 0.002, start),
            passing(Place.CENTRE, 0, 0.0065, 0.0085, 0.002),
            passing(Place.END, 16.2, 0.0129, 0.0149, start * Math.pow(2, slopeStops))),
        Optional.of(new CurtainRun(0.9 * firstMs / 1e3, firstMs / 1e3, 7e-5, 2.4, 2.6)),
        Optional.of(new CurtainRun(0.9 * secondMs / 1e3, secondMs / 1e3, 7e-5, 2.4, 2.6)),
        2e-5,
        OptionalDouble.of(slitMm),
        whole.windowOpensSeconds(),
        whole.windowShutsSeconds(),
        3e-4,
        whole.openingSeconds(),
        whole.closingSeconds(),
        Set.of(),
        Set.of());
  }

  /** One that was capped at the end, and of whose start nothing is known. */
  public static CurtainTravel capped() {
    CurtainTravel whole = whole();
    PlacePassing dark = new PlacePassing(Place.END, 16.2, NONE, NONE, NONE, 0, NONE, NONE, NONE);
    return new CurtainTravel(
        whole.zeroTicks(),
        whole.geometry(),
        Direction.A_TO_B,
        List.of(
            new PlacePassing(Place.START, -16.2, NONE, NONE, NONE, 0, NONE, NONE, NONE),
            whole.at(Place.CENTRE),
            dark),
        Optional.empty(),
        Optional.empty(),
        0,
        NONE,
        NONE,
        NONE,
        0,
        whole.openingSeconds(),
        whole.closingSeconds(),
        Set.of(Place.START),
        Set.of());
  }

  /** The same travel with the frame open as a whole for so long. */
  public static CurtainTravel open(CurtainTravel of, double windowSeconds) {
    return new CurtainTravel(
        of.zeroTicks(),
        of.geometry(),
        of.direction(),
        of.places(),
        of.first(),
        of.second(),
        of.differencePlusMinusSeconds(),
        of.slitMillimetres(),
        OptionalDouble.of(0.014),
        OptionalDouble.of(0.014 + windowSeconds),
        1e-4,
        of.openingSeconds(),
        of.closingSeconds(),
        of.unlit(),
        of.notes());
  }

  /** What was known of the sensors. */
  static OuterSensors sensors() {
    return new OuterSensors(
        OptionalDouble.of(700),
        Optional.of(new SensorLevel(0.55, 640)),
        Optional.empty(),
        Set.of(Channel.OUTER_A, Channel.OUTER_B),
        Optional.of(Direction.B_TO_A));
  }

  /** A timed firing as if curtains had made it. */
  public static FiringResult timed(FiringResult firing, CurtainTravel travel) {
    Exposure.Timed timed = (Exposure.Timed) firing.exposure();
    return with(
        firing,
        new Exposure.Timed(
            timed.effectiveSeconds(),
            timed.methodSeconds(),
            timed.widthLowSeconds(),
            timed.widthHighSeconds(),
            timed.earlyLightShare(),
            timed.lateLightShare(),
            timed.crossings(),
            timed.flags(),
            travel));
  }

  /** The same with a slit that was narrower than its blur. */
  static FiringResult neverFullyOpen(FiringResult firing, CurtainTravel travel) {
    return with(
        firing,
        new Exposure.NeverFullyOpen(
            false,
            1e-4,
            OptionalDouble.of(2e-4),
            1.5e-4,
            0,
            7,
            9,
            OptionalDouble.of(1.6e-4),
            Optional.of(travel)));
  }

  private static FiringResult with(FiringResult firing, Exposure exposure) {
    MeasuredWith before = firing.measuredWith();
    return new FiringResult(
        firing.number(),
        new FiringKey(
            firing.key().rigSerial(), firing.key().bootCount(), firing.key().firstTicks()),
        firing.firing(),
        firing.rate(),
        firing.place(),
        firing.outcomeWith(exposure),
        exposure,
        new MeasuredWith(before.levels(), before.oneLevel(), before.profileUse(), sensors()),
        firing.notes(),
        Optional.empty());
  }

  private static PlacePassing passing(
      Place place, double mm, double opens, double covers, double effective) {
    return new PlacePassing(
        place,
        mm,
        OptionalDouble.of(opens),
        OptionalDouble.of(covers),
        OptionalDouble.of(effective),
        1e-5,
        NONE,
        NONE,
        NONE);
  }
}
