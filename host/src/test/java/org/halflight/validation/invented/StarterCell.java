package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * One kind of session that is tried with starter rigs. What is drawn hangs on the cell and the
 * number of the session alone.
 *
 * @param speed that is fired
 * @param room that it is fired in
 * @param supplyShift how far the supply moves between setting the light and firing, as a part
 */
public record StarterCell(Speed speed, StarterRig.Room room, double supplyShift) {
  /** The marked speeds that are fired, with the time that each stands for. */
  public enum Speed {
    ONE("1", 1),
    EIGHTH("1/8", 1 / 8.0),
    SIXTIETH("1/60", 1 / 64.0),
    HUNDRED_TWENTY_FIFTH("1/125", 1 / 128.0),
    TWO_HUNDRED_FIFTIETH("1/250", 1 / 256.0),
    FIVE_HUNDREDTH("1/500", 1 / 512.0);

    private final String label;
    private final double seconds;

    Speed(String label, double seconds) {
      this.label = label;
      this.seconds = seconds;
    }

    public String label() {
      return label;
    }

    public double seconds() {
      return seconds;
    }
  }

  /** Firings of a session. */
  public static final int FIRINGS = 6;

  private static final double LEAST_RAMP_SECONDS = 0.3e-3;
  private static final double GREATEST_RAMP_SECONDS = 1.5e-3;
  private static final double OFF_STOPS = 0.3;
  private static final double LEAST_SCATTER_STOPS = 0.003;
  private static final double GREATEST_SCATTER_STOPS = 0.03;

  /** Open for a twentieth of the time at the least, so that the blades open fully. */
  private static final double LEAST_OPEN_PART = 0.05;

  /**
   * A session.
   *
   * @param lights of its firings
   * @param trueStops the usual exposure, off the marking
   * @param draws for the rigs that see it
   */
  public record Tried(StarterRig rig, List<Light> lights, double trueStops, Draws draws) {
    /** The same before light that is even over the pupil. */
    public Tried inEvenLight() {
      return with(
          light ->
              Light.plain(
                  light.hole(),
                  light.opening(),
                  light.closing(),
                  light.openingSeconds(),
                  light.openSeconds(),
                  light.closingSeconds(),
                  0));
    }

    /** The same with blades that spring open again a little, soon after they have shut. */
    public Tried withRebound() {
      double after = draws.between(0.2e-3, 0.6e-3);
      double length = draws.between(1e-3, 2e-3);
      double peak = draws.between(0.05, 0.2);
      return with(light -> light.with(new Light.Bump(light.shutSeconds() + after, length, peak)));
    }

    /** Its first firing alone. */
    public Tried firstOnly() {
      return new Tried(rig, lights.subList(0, 1), trueStops, draws);
    }

    private Tried with(UnaryOperator<Light> other) {
      return new Tried(rig, lights.stream().map(other).toList(), trueStops, draws);
    }
  }

  /** The session of a number. */
  public Tried session(long number) {
    Draws draws = new Draws(seed(number));
    double off = draws.either(OFF_STOPS);
    double sd =
        LEAST_SCATTER_STOPS
            * Math.pow(GREATEST_SCATTER_STOPS / LEAST_SCATTER_STOPS, draws.between(0, 1));
    Blades blades = List.of(Blades.values()).get(draws.upTo(Blades.values().length - 1));
    double fall = draws.between(0, Cell.MOST_FALL);
    Light ramps = ramps(blades, fall, draws);
    List<Light> lights = new ArrayList<>();
    for (int i = 0; i < FIRINGS; i++) {
      double wanted = speed.seconds() * Math.pow(2, off + sd * draws.normal());
      lights.add(ramps.open(Math.max(0, wanted - ramps.trueSeconds())));
    }
    return new Tried(StarterRig.drawn(room, supplyShift, draws), lights, off, draws);
  }

  private Light ramps(Blades blades, double fall, Draws draws) {
    double open = draws.between(LEAST_RAMP_SECONDS, GREATEST_RAMP_SECONDS);
    double shut = draws.between(LEAST_RAMP_SECONDS, GREATEST_RAMP_SECONDS);
    Light light = blades.drawn(open, shut, fall, draws);
    double least = speed.seconds() * Math.pow(2, -OFF_STOPS - 4 * GREATEST_SCATTER_STOPS);
    double shrunk = Math.min(1, (1 - LEAST_OPEN_PART) * least / light.trueSeconds());
    return Light.plain(
        light.hole(), light.opening(), light.closing(), shrunk * open, 0, shrunk * shut, fall);
  }

  private long seed(long number) {
    // The same shutters in every room and on every supply.
    long mixed = (((long) (1 / speed.seconds())) * 1_000_003 + number) * 0x9E3779B97F4A7C15L;
    mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
    return mixed ^ (mixed >>> 31);
  }
}
