package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.halflight.calibration.PrintedDisc;

/**
 * A slotted disc on a motor before a round light, with what is wrong with every such disc: edges
 * that were cut a little beside their place, a hole that is not in the middle, a speed that is not
 * the same in every turn. All of it is invented.
 *
 * <p>A disc whose middle lies {@code e} beside its axis shows an edge of angle {@code phi} at the
 * radius {@code r} by {@code e / r sin(phi - where)} late; terms of {@code (e / r)^2} are left out.
 *
 * @param openDegrees the edges that open slots, rising, from 0 to 360; they come in this order
 * @param closeDegrees the edges that close them, one for each, before the next opens
 * @param turnsASecond mean speed
 * @param creepShare by what share of itself the speed grows with each turn
 * @param wanderShare standard deviation of the speed of a turn, as a share
 * @param offCentreMillimetres from the axis to the middle of the slots
 * @param offCentreDegrees in which direction of the disc
 * @param radiusMillimetres from the middle to the light
 * @param lightMillimetres diameter of the light
 * @param seed of the wander
 */
public record TurningDisc(
    List<Double> openDegrees,
    List<Double> closeDegrees,
    double turnsASecond,
    double creepShare,
    double wanderShare,
    double offCentreMillimetres,
    double offCentreDegrees,
    double radiusMillimetres,
    double lightMillimetres,
    long seed) {
  /**
   * Points of a ramp, so close that straight lines between them are off by 0.02 % of full light.
   */
  private static final int RAMP_POINTS = 48;

  public TurningDisc {
    openDegrees = List.copyOf(openDegrees);
    closeDegrees = List.copyOf(closeDegrees);
    if (openDegrees.isEmpty() || openDegrees.size() != closeDegrees.size()) {
      throw new IllegalArgumentException("each slot has an edge that opens and one that closes");
    }
    for (int i = 0; i < openDegrees.size(); i++) {
      double next = i + 1 < openDegrees.size() ? openDegrees.get(i + 1) : 360;
      if (!(openDegrees.get(i) >= 0
          && openDegrees.get(i) < closeDegrees.get(i)
          && closeDegrees.get(i) < next)) {
        throw new IllegalArgumentException("slots come one after the other: " + openDegrees);
      }
    }
    if (!(turnsASecond > 0 && lightMillimetres > 0 && radiusMillimetres > lightMillimetres)) {
      throw new IllegalArgumentException("no disc turns before a light like that");
    }
  }

  /**
   * A disc with slots of these angles, the same dark between them, right in all but its seed.
   *
   * @param slotDegrees in the order in which they come
   */
  public static TurningDisc of(List<Double> slotDegrees, double turnsASecond, long seed) {
    double gap =
        (360 - slotDegrees.stream().mapToDouble(Double::doubleValue).sum()) / slotDegrees.size();
    List<Double> opens = new ArrayList<>();
    List<Double> closes = new ArrayList<>();
    double at = gap / 2;
    for (double slot : slotDegrees) {
      opens.add(at);
      closes.add(at + slot);
      at += slot + gap;
    }
    return new TurningDisc(opens, closes, turnsASecond, 0, 0, 0, 0, 63, 2.8, seed);
  }

  /**
   * An invented disc as somebody may make it: the printed slots, cut to a twentieth of a
   * millimetre, its hole a third of a millimetre beside the middle, on a motor of 600 turns a
   * minute that creeps and wanders a little.
   */
  public static TurningDisc invented(long seed) {
    TurningDisc disc = of(PrintedDisc.SLOT_DEGREES, 10, seed).offCentre(0.33, 40);
    SeededDraws draws = new SeededDraws(SeededDraws.seedOf(seed, -1));
    for (int slot = 0; slot < PrintedDisc.SLOT_DEGREES.size(); slot++) {
      double millimetres = 0.05 * (2 * draws.uniform() - 1);
      disc = disc.cut(slot, PrintedDisc.AS_PRINTED.degrees(millimetres));
    }
    return disc.uneven(2e-5, 5e-4);
  }

  /** The same off its centre. */
  public TurningDisc offCentre(double millimetres, double degrees) {
    return with(closeDegrees, creepShare, wanderShare, millimetres, degrees, lightMillimetres);
  }

  /** The same at a speed that is not even. */
  public TurningDisc uneven(double creep, double wander) {
    return with(
        closeDegrees, creep, wander, offCentreMillimetres, offCentreDegrees, lightMillimetres);
  }

  /** The same before a light of another width. */
  public TurningDisc light(double millimetres) {
    return with(
        closeDegrees, creepShare, wanderShare, offCentreMillimetres, offCentreDegrees, millimetres);
  }

  /** The same with the closing edge of a slot beside its place. */
  public TurningDisc cut(int slot, double degrees) {
    List<Double> closes = new ArrayList<>(closeDegrees);
    closes.set(slot, closes.get(slot) + degrees);
    return with(
        closes, creepShare, wanderShare, offCentreMillimetres, offCentreDegrees, lightMillimetres);
  }

  private TurningDisc with(
      List<Double> closes,
      double creep,
      double wander,
      double offMillimetres,
      double offDegrees,
      double light) {
    return new TurningDisc(
        openDegrees,
        closes,
        turnsASecond,
        creep,
        wander,
        offMillimetres,
        offDegrees,
        radiusMillimetres,
        light,
        seed);
  }

  /** How long a turn takes, in seconds. */
  public double turnSeconds(int turn) {
    double wander = wanderShare * new SeededDraws(SeededDraws.seedOf(seed, turn)).normal();
    return 1 / (turnsASecond * Math.pow(1 + creepShare, turn) * Math.max(0.1, 1 + wander));
  }

  /** The angle for which the light sees a slot open, what is wrong with the disc included. */
  public double degreesSeen(int slot) {
    return seen(closeDegrees.get(slot)) - seen(openDegrees.get(slot));
  }

  private double seen(double degrees) {
    double off = Math.toDegrees(offCentreMillimetres / radiusMillimetres);
    return degrees + off * StrictMath.sin(Math.toRadians(degrees - offCentreDegrees));
  }

  /**
   * The light of one turn; it begins and ends in the dark.
   *
   * @param fullOpen what a slot that frees the whole light lets through
   */
  public LightPath turn(int turn, double fullOpen) {
    double turnSeconds = turnSeconds(turn);
    double half = Math.toDegrees(lightMillimetres / radiusMillimetres) / 2;
    List<double[]> corners = new ArrayList<>();
    for (int slot = 0; slot < openDegrees.size(); slot++) {
      double opens = seen(openDegrees.get(slot));
      double closes = seen(closeDegrees.get(slot));
      for (double at : places(opens, closes, half)) {
        double open = freed((at - opens) / half) - freed((at - closes) / half);
        corners.add(new double[] {at / 360 * turnSeconds, fullOpen * Math.max(0, open)});
      }
    }
    int n = corners.size() + 2;
    double[] seconds = new double[n];
    double[] open = new double[n];
    for (int i = 0; i < corners.size(); i++) {
      seconds[i + 1] = corners.get(i)[0];
      open[i + 1] = corners.get(i)[1];
    }
    seconds[n - 1] = turnSeconds;
    return new LightPath(seconds, open);
  }

  /** Where light is to be worked out: along both ramps, which may run into each other. */
  private static double[] places(double opens, double closes, double half) {
    double[] places = new double[2 * RAMP_POINTS + 2];
    for (int i = 0; i <= RAMP_POINTS; i++) {
      // Close together at the ends of a ramp, where the light bends.
      double at = -half * StrictMath.cos(Math.PI * i / RAMP_POINTS);
      places[i] = opens + at;
      places[RAMP_POINTS + 1 + i] = closes + at;
    }
    Arrays.sort(places);
    return places;
  }

  /** The part of a round light on one side of a straight edge, -1 to 1 being its width. */
  private static double freed(double edge) {
    double x = Math.max(-1, Math.min(1, edge));
    return 0.5 + (x * Math.sqrt(1 - x * x) + StrictMath.asin(x)) / Math.PI;
  }
}
