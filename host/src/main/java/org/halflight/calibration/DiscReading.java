package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LevelCorrection;
import org.halflight.exposure.ProfileCorrection;
import org.halflight.profile.ClockRate;
import org.halflight.signal.Edge;
import org.halflight.stats.Sample;
import org.halflight.stats.Student;
import org.halflight.time.TickRate;

/**
 * What a rig says of the printed disc: the effective time of each slot, measured as a firing is, as
 * a part of the turn, against the slot's angle. Both times are of the same clock, so neither its
 * rate nor the speed of the disc matters. What the disc being off its centre does to the slots is
 * taken out.
 *
 * @param disc what turned
 * @param slots of the disc that could be used, narrow to wide
 * @param turnSeconds mean time of a turn by the rig's nominal clock
 * @param turnSd standard deviation of a turn
 * @param turns how many were whole
 * @param forward whether slots came narrow to wide
 * @param beamDegrees how wide the light is at most, where it passes the disc
 * @param swingDegrees how far edges swing once a turn: off centre, or the speed
 * @param edgeSdDegrees standard uncertainty of one edge: as it was stated, or as the edges scatter
 *     where that is more
 * @param edgeDegreesOfFreedom of that; infinite where it was stated
 * @param foundEdgeSdDegrees by what the edges really scatter around what they have in common
 * @param offsetSeconds by what every slot is too long, whatever its angle
 * @param offsetSd standard uncertainty of that
 * @param slopeError by what share of its time every slot is too long beyond that
 * @param slopeSd standard uncertainty of that
 */
public record DiscReading(
    PrintedDisc disc,
    List<Slot> slots,
    double turnSeconds,
    double turnSd,
    int turns,
    boolean forward,
    double beamDegrees,
    double swingDegrees,
    double edgeSdDegrees,
    double edgeDegreesOfFreedom,
    OptionalDouble foundEdgeSdDegrees,
    double offsetSeconds,
    double offsetSd,
    double slopeError,
    double slopeSd) {
  /** Least whole turns. */
  public static final int LEAST_TURNS = 5;

  /** Confidence of what is stated. */
  public static final double LEVEL = 0.95;

  /** The disc may swing by so much where the light passes: beyond, a sine is not all of it. */
  public static final double SWING_MILLIMETRES_MOST = 2;

  /**
   * The way of a round light's edge between the Gauss levels as a part of its width: 21.1 and 78.9
   * % of a circle lie behind chords 0.472 of its width apart. Of light with straight sides it is
   * 0.577, so the width comes out too wide, never too narrow.
   */
  static final double ROUND_LIGHT_PART = 0.472;

  /** Edges scatter more than was stated by this factor or more: that is no chance (5 edges). */
  private static final double WORSE_THAN_STATED = 2;

  private static final int SLOTS = PrintedDisc.SLOT_DEGREES.size();
  private static final int SLOTS_LEAST = 4;

  /**
   * One slot.
   *
   * @param degrees its angle
   * @param expectedSeconds its angle's part of the turn, the swing taken into account
   * @param effectiveSeconds mean effective time
   * @param errorSd standard uncertainty of {@link #error}: the cut, and the turns
   * @param timed how the method measured it in each turn
   */
  public record Slot(
      double degrees,
      double expectedSeconds,
      double effectiveSeconds,
      double errorSd,
      List<Exposure.Timed> timed) {
    public Slot {
      timed = List.copyOf(timed);
    }

    /** Measured over expected, less 1. */
    public double error() {
      return effectiveSeconds / expectedSeconds - 1;
    }
  }

  /** What edges come to. */
  public sealed interface Outcome {}

  /** A reading. */
  public record Found(DiscReading reading) implements Outcome {}

  /** None, and why. */
  public record Failed(DiscTrouble trouble) implements Outcome {}

  public DiscReading {
    slots = List.copyOf(slots);
  }

  /**
   * @param edges while the disc turned, in order of time
   * @param rate nominal rate of the rig's clock
   * @param levels where rising and falling light is seen
   * @param profile of the rig, to correct the edges by as in a session
   */
  public static Outcome of(
      PrintedDisc disc,
      List<Edge> edges,
      TickRate rate,
      LevelCorrection levels,
      Optional<ProfileCorrection> profile) {
    if (!levels.isAllowed()) {
      return new Failed(new DiscTrouble.LevelsOff());
    }
    DiscTurns.Outcome outcome =
        DiscTurns.of(SlotPass.of(edges, rate, levels, profile), LEAST_TURNS);
    if (outcome.trouble().isPresent()) {
      return new Failed(outcome.trouble().get());
    }
    return of(disc, outcome.turns().orElseThrow());
  }

  private static Outcome of(PrintedDisc disc, DiscTurns turns) {
    double turnSeconds = Sample.of(turns.turnSeconds()).mean().get();
    double beam = beamDegrees(turns, turnSeconds);
    List<DiscFit.Seen> seen = new ArrayList<>();
    List<Integer> which = new ArrayList<>();
    double noise = 0;
    for (int slot = 0; slot < SLOTS; slot++) {
      List<DiscTurns.Place> places = places(turns, slot);
      if (places.size() < LEAST_TURNS
          || places.size() < turns.places().size() / 2
          || disc.slotDegrees().get(slot) < beam) {
        continue;
      }
      double[] middle = places.stream().mapToDouble(place -> 360 * place.turns()).toArray();
      double[] angle = places.stream().mapToDouble(place -> 360 * place.share()).toArray();
      seen.add(
          new DiscFit.Seen(
              nominal(slot, turns.forward()),
              disc.slotDegrees().get(slot),
              Sample.of(middle).mean().get(),
              Sample.of(angle).mean().get()));
      which.add(slot);
      noise = Math.max(noise, Sample.of(angle).sd().get() / Math.sqrt(2.0 * places.size()));
    }
    if (seen.size() < SLOTS_LEAST) {
      return new Failed(new DiscTrouble.NeverFullLight());
    }
    DiscFit fit = DiscFit.of(seen);
    double swing = fit.swing();
    if (disc.millimetres(swing) > SWING_MILLIMETRES_MOST) {
      return new Failed(new DiscTrouble.OffCentre(disc.millimetres(swing)));
    }
    double stated = Math.hypot(disc.edgeStandardUncertaintyDegrees(), noise);
    OptionalDouble found = fit.edgeSd();
    boolean worse = found.isPresent() && found.getAsDouble() > stated;
    double edge = worse ? found.getAsDouble() : stated;
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      DiscFit.Seen slot = seen.get(i);
      List<DiscTurns.Place> places = places(turns, which.get(i));
      slots.add(
          new Slot(
              slot.nominalAngle(),
              turnSeconds * (slot.nominalAngle() + fit.swingOf(slot)) / 360,
              turnSeconds * slot.angle() / 360,
              fit.angleSd(slot, edge) / slot.nominalAngle(),
              places.stream().flatMap(place -> place.pass().timed().stream()).toList()));
    }
    return new Found(
        new DiscReading(
            disc,
            slots,
            turnSeconds,
            Sample.of(turns.turnSeconds()).sd().get(),
            turns.places().size(),
            turns.forward(),
            beam,
            swing,
            edge,
            worse ? fit.degreesOfFreedom() : Double.POSITIVE_INFINITY,
            found,
            turnSeconds * fit.widening() / 360,
            turnSeconds * fit.wideningSd(edge) / 360,
            fit.share(),
            fit.shareSd(edge)));
  }

  private static List<DiscTurns.Place> places(DiscTurns turns, int slot) {
    return turns.places().stream().flatMap(turn -> turn.get(slot).stream()).toList();
  }

  /** From the middle of the widest slot, in the direction of time. */
  private static double nominal(int slot, boolean forward) {
    double on = PrintedDisc.middleDegrees(slot) - PrintedDisc.middleDegrees(SLOTS - 1);
    double turned = forward ? on : -on;
    return slot == SLOTS - 1 ? 0 : (turned + 360) % 360;
  }

  /** By the two widest slots, which free any light that is of use. */
  private static double beamDegrees(DiscTurns turns, double turnSeconds) {
    List<Double> ramps = new ArrayList<>();
    for (int slot = SLOTS - 2; slot < SLOTS; slot++) {
      places(turns, slot).forEach(place -> ramps.add(place.pass().rampSeconds()));
    }
    return ramps.isEmpty()
        ? 0
        : 360 * Sample.of(ramps).median().get() / turnSeconds / ROUND_LIGHT_PART;
  }

  /** The factor from a standard uncertainty of the cut to a stated one. */
  public double coverageFactor() {
    return Student.quantile((1 + LEVEL) / 2, edgeDegreesOfFreedom);
  }

  /** Whether the edges scatter by far more than was stated of them. */
  public boolean isCutWorse() {
    return foundEdgeSdDegrees.isPresent()
        && foundEdgeSdDegrees.getAsDouble()
            > WORSE_THAN_STATED * disc.edgeStandardUncertaintyDegrees();
  }

  /** Slots that are too narrow for the light, or were seen too seldom. */
  public List<Double> leftOut() {
    return disc.slotDegrees().stream()
        .filter(degrees -> slots.stream().noneMatch(slot -> slot.degrees() == degrees))
        .toList();
  }

  /** Whether slots come out as long as they are, within what the disc itself is uncertain by. */
  public boolean agrees() {
    // Two questions at once: half the risk each (Bonferroni).
    double k = Student.quantile(1 - (1 - LEVEL) / 4, edgeDegreesOfFreedom);
    return Math.abs(offsetSeconds) <= k * offsetSd && Math.abs(slopeError) <= k * slopeSd;
  }

  /**
   * The rate of the rig's clock, where the speed of the disc is known from elsewhere.
   *
   * @param turnsAMinute true mean speed
   * @param standardUncertaintyPpm of that
   * @return empty where no clock of a board can be so far off, so that the speed must be wrong
   */
  public Optional<ClockRate> clock(double turnsAMinute, double standardUncertaintyPpm) {
    if (!(turnsAMinute > 0 && standardUncertaintyPpm >= 0)) {
      throw new IllegalArgumentException("not a speed: " + turnsAMinute);
    }
    double own = 1e6 * turnSd / turnSeconds / Math.sqrt(turns);
    double all = Math.hypot(own, standardUncertaintyPpm);
    double degrees = own > 0 ? (turns - 1) * Math.pow(all / own, 4) : Double.POSITIVE_INFINITY;
    double fast = 1e6 * (turnSeconds * turnsAMinute / 60 - 1);
    return Math.abs(fast) > ClockRate.PPM_MOST
        ? Optional.empty()
        : Optional.of(new ClockRate(fast, all, degrees, ClockRate.Source.DISC));
  }
}
