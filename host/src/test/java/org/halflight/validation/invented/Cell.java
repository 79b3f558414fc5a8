package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One kind of session that is tried many times. All that is drawn for a session hangs on the cell
 * and the number of the session alone.
 *
 * @param blades of the shutter
 * @param speed that is fired
 * @param condition of the rig
 */
public record Cell(Blades blades, Speed speed, Condition condition) {
  /** The marked speeds that are fired, with the time that each stands for. */
  public enum Speed {
    ONE("1", 1),
    SIXTIETH("1/60", 1 / 64.0),
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

  /** The cells, fixed before any of them was run. */
  public static final List<Cell> ALL =
      Arrays.stream(Blades.values())
          .flatMap(
              blades ->
                  Arrays.stream(Speed.values())
                      .flatMap(
                          speed ->
                              Arrays.stream(Condition.values())
                                  .map(condition -> new Cell(blades, speed, condition))))
          .toList();

  /** Firings of a session. */
  public static final int FIRINGS = 5;

  /**
   * A published survey has 0.5 to 3 percent. Less is here too, because then the rig and not the
   * firings make the interval.
   */
  private static final double LEAST_SCATTER_STOPS = 0.003;

  private static final double GREATEST_SCATTER_STOPS = 0.03;

  private static final double OFF_STOPS = 0.2;
  private static final double MOST_OFF_STOPS = 0.35;

  /** The light at the edge of the pupil is less than in the middle by this part at most. */
  public static final double MOST_FALL = 0.2;

  /** A session with what it ought to come to: its usual exposure, in stops off the marking. */
  public record Tried(InventedSession session, double trueStops) {}

  /** The session of a number. */
  public Tried session(long number) {
    Draws draws = new Draws(seed(number));
    double off = Math.max(-MOST_OFF_STOPS, Math.min(MOST_OFF_STOPS, OFF_STOPS * draws.normal()));
    double sd = usualScatter(draws);
    Rig rig = Rig.drawn(draws);
    return session(off, sd, Scatter.NORMAL, FIRINGS, rig, anyFall(draws), draws);
  }

  /**
   * The session of a number before light that falls so much towards the edge of the pupil.
   *
   * @param fall from 0 for even light to {@link #MOST_FALL}
   */
  public Tried before(double fall, long number) {
    Draws draws = new Draws(seed(number));
    double sd = usualScatter(draws);
    return session(0, sd, Scatter.NORMAL, FIRINGS, Rig.drawn(draws), fall, draws);
  }

  /** A session whose firings scatter in some other way, by so many stops. */
  public Tried scattered(Scatter scatter, double scatterStops, int firings, long number) {
    Draws draws = new Draws(seed(number));
    Rig rig = Rig.drawn(draws);
    return session(0, scatterStops, scatter, firings, rig, anyFall(draws), draws);
  }

  private static double anyFall(Draws draws) {
    return draws.between(0, MOST_FALL);
  }

  /** Even in the logarithm: few are as uneven as the worst. */
  private static double usualScatter(Draws draws) {
    return LEAST_SCATTER_STOPS
        * Math.pow(GREATEST_SCATTER_STOPS / LEAST_SCATTER_STOPS, draws.between(0, 1));
  }

  private Tried session(
      double off, double sd, Scatter scatter, int firings, Rig rig, double fall, Draws draws) {
    double least = speed.seconds() * Math.pow(2, -MOST_OFF_STOPS - 4 * GREATEST_SCATTER_STOPS);
    Light ramps = blades.drawn(least, fall, draws);
    double inRamps = ramps.trueSeconds();
    List<Light> lights = new ArrayList<>();
    for (int i = 0; i < firings; i++) {
      double wanted = speed.seconds() * Math.pow(2, off + sd * scatter.draw(draws));
      lights.add(ramps.open(Math.max(0, wanted - inRamps)));
    }
    InventedSession told =
        InventedSession.of(
            speed.label(), rig, condition.isCalibrated(), condition.hasCurves(), lights, draws);
    return new Tried(condition.hasCurves() ? told.withPanelTested(rig, fall, draws) : told, off);
  }

  /** Of cell and number, mixed well enough that neighbours have nothing in common. */
  private long seed(long number) {
    // Places in the lists, which are fixed like the list of cells.
    long place = List.of(Blades.values()).indexOf(blades);
    place = place * 31 + List.of(Speed.values()).indexOf(speed);
    place = place * 31 + List.of(Condition.values()).indexOf(condition);
    long mixed = (place * 1_000_003 + number) * 0x9E3779B97F4A7C15L;
    mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
    return mixed ^ (mixed >>> 31);
  }

  @Override
  public String toString() {
    return blades.words() + ", " + speed.label() + ", " + condition.words();
  }
}
