package org.halflight.shuttermodel;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.MarkedSpeed;

/**
 * A model of a leaf shutter: blades that open by a law, stay open, and close by a law, so long that
 * the integral of the light is the effective time that the parameters ask for. A firing too short
 * for a full opening turns back before: the blades then follow the same laws up to a smaller hole.
 *
 * <p>Immutable; the same shutter gives the same light for the same {@link FiringTurn} on every
 * machine. What it gives are model figures and no measurement of a camera.
 */
public final class LeafShutter implements ModelShutter {
  private static final int BOUNCE_LINES = 64;

  private final String name;
  private final BladeStroke stroke;
  private final Map<MarkedSpeed, SpeedBehaviour> speeds;
  private final Bounce bounce;
  private final ReleaseTiming timing;
  private final ModelContact contact;
  private final ModelSelfTimer selfTimer;
  private final long seed;
  private final LightPath bouncePulse;

  /**
   * With a prompt flash contact and an even self-timer.
   *
   * @param name what the program calls this shutter
   * @param stroke opening and closing
   * @param speeds the dial, at least one marked speed, in the order of the dial
   * @param bounce light after closing
   * @param timing release and click
   * @param seed of all that is random
   */
  public LeafShutter(
      String name,
      BladeStroke stroke,
      Map<MarkedSpeed, SpeedBehaviour> speeds,
      Bounce bounce,
      ReleaseTiming timing,
      long seed) {
    this(
        name,
        stroke,
        speeds,
        bounce,
        timing,
        InventedContact.PROMPT.model(),
        ModelSelfTimer.EVEN,
        seed);
  }

  private LeafShutter(
      String name,
      BladeStroke stroke,
      Map<MarkedSpeed, SpeedBehaviour> speeds,
      Bounce bounce,
      ReleaseTiming timing,
      ModelContact contact,
      ModelSelfTimer selfTimer,
      long seed) {
    this.name = name;
    this.stroke = stroke;
    this.speeds = Collections.unmodifiableMap(new LinkedHashMap<>(speeds));
    this.bounce = bounce;
    this.timing = timing;
    this.contact = contact;
    this.selfTimer = selfTimer;
    this.seed = seed;
    if (this.speeds.isEmpty()) {
      throw new IllegalArgumentException("a shutter has at least one marked speed");
    }
    this.bouncePulse = bouncePulse();
  }

  /** The same, slower by some stops at each speed. */
  LeafShutter slowedBy(ToDoubleFunction<MarkedSpeed> stops) {
    Map<MarkedSpeed, SpeedBehaviour> slowed = new LinkedHashMap<>();
    speeds.forEach(
        (speed, behaviour) -> slowed.put(speed, behaviour.slowedBy(stops.applyAsDouble(speed))));
    return new LeafShutter(name, stroke, slowed, bounce, timing, contact, selfTimer, seed);
  }

  /** The same with another flash contact. */
  public LeafShutter with(ModelContact another) {
    return new LeafShutter(name, stroke, speeds, bounce, timing, another, selfTimer, seed);
  }

  /** The same with another self-timer. */
  public LeafShutter with(ModelSelfTimer another) {
    return new LeafShutter(name, stroke, speeds, bounce, timing, contact, another, seed);
  }

  @Override
  public String name() {
    return name;
  }

  /** How the blades open and close. */
  public BladeStroke stroke() {
    return stroke;
  }

  @Override
  public Set<MarkedSpeed> dial() {
    return speeds.keySet();
  }

  /** What it does at a marked speed of its dial. */
  public SpeedBehaviour at(MarkedSpeed speed) {
    SpeedBehaviour behaviour = speeds.get(speed);
    if (behaviour == null) {
      throw new IllegalArgumentException(name + " has no marked speed " + speed);
    }
    return behaviour;
  }

  @Override
  public ReleaseTiming timing() {
    return timing;
  }

  @Override
  public ModelContact contact() {
    return contact;
  }

  @Override
  public ModelSelfTimer selfTimer() {
    return selfTimer;
  }

  /** Of all that is random about this shutter. */
  public long seed() {
    return seed;
  }

  /** Firing {@code number} of one sample that began after a rest; see {@link FiringTurn}. */
  public ModelFiring firing(MarkedSpeed speed, int number) {
    return firing(speed, new FiringTurn(number, number, number));
  }

  @Override
  public ModelFiring firing(MarkedSpeed speed, FiringTurn turn) {
    SpeedBehaviour behaviour = at(speed);
    SeededDraws draws =
        new SeededDraws(
            SeededDraws.seedOf(
                SeededDraws.seedOf(seed, Double.doubleToLongBits(speed.exactSeconds())),
                turn.number()));
    double lot = draws.uniform();
    if (lot < behaviour.hangChance()) {
      return new ModelFiring.StuckOpen();
    }
    if (lot < behaviour.hangChance() + behaviour.shutChance()) {
      return new ModelFiring.DidNotOpen();
    }
    double stops =
        behaviour.offsetStops()
            + behaviour.scatterStops() * draws.normal()
            + behaviour.creepStops()
                * (Math.min(turn.atThisSpeed(), SpeedBehaviour.CREEP_FIRINGS) - 1)
            + (turn.sinceRest() == 1 ? behaviour.afterRestStops() : 0);
    return timed(speed.exactSeconds() * StrictMath.pow(2, stops), behaviour.peak());
  }

  @Override
  public LightPaths opening(SensorBar bar) {
    return LightPaths.same(stroke.openingTo(1));
  }

  @Override
  public LightPaths closing(SensorBar bar) {
    return LightPaths.same(stroke.closingFrom(1));
  }

  private ModelFiring.Timed timed(double effectiveSeconds, double greatest) {
    double way = stroke.openingWayTo(greatest);
    double plateauSeconds = 0;
    double strokes = strokesSeconds(way);
    if (strokes > effectiveSeconds) {
      way = wayForStrokes(effectiveSeconds, way);
    } else {
      plateauSeconds = (effectiveSeconds - strokes) / stroke.opening().openFraction(way);
    }
    LightPath up = stroke.openingTo(way);
    LightPath down = stroke.closingFrom(up.endOpen());
    double closing = up.endSeconds() + plateauSeconds;
    double dark = closing + down.endSeconds();
    Points points = new Points();
    points.add(up, 0);
    points.add(down, closing);
    if (bounce.share() > 0) {
      points.add(bouncePulse, dark + bounce.delayMillis() * 1e-3);
    }
    return new ModelFiring.Timed(
        points.curve(),
        effectiveSeconds,
        integral(bouncePulse) / effectiveSeconds,
        up.endSeconds(),
        closing,
        dark,
        up.endOpen());
  }

  /** The integral of an opening up to a way and the closing from there. */
  private double strokesSeconds(double way) {
    LightPath up = stroke.openingTo(way);
    return integral(up) + integral(stroke.closingFrom(up.endOpen()));
  }

  private double wayForStrokes(double wantedSeconds, double greatestWay) {
    double below = 0;
    double above = greatestWay;
    // Sixty halvings take any way down to the last bits of a double.
    for (int i = 0; i < 60; i++) {
      double middle = (below + above) / 2;
      if (strokesSeconds(middle) < wantedSeconds) {
        below = middle;
      } else {
        above = middle;
      }
    }
    return above;
  }

  private LightPath bouncePulse() {
    double[] seconds = new double[BOUNCE_LINES + 1];
    double[] shape = new double[BOUNCE_LINES + 1];
    for (int i = 0; i <= BOUNCE_LINES; i++) {
      seconds[i] = bounce.widthMillis() * 1e-3 * i / BOUNCE_LINES;
      shape[i] =
          i == 0 || i == BOUNCE_LINES ? 0 : StrictMath.sin(Math.PI * i / (double) BOUNCE_LINES);
    }
    double fastest =
        speeds.keySet().stream().mapToDouble(MarkedSpeed::exactSeconds).min().getAsDouble();
    double height = bounce.share() * fastest / integral(new LightPath(seconds, shape));
    if (height > 1) {
      throw new IllegalArgumentException("a bounce cannot let in more than full light");
    }
    return new LightPath(seconds, Arrays.stream(shape).map(light -> light * height).toArray());
  }

  private static double integral(LightPath path) {
    double[] seconds = path.seconds();
    double[] open = path.open();
    double sum = 0;
    for (int i = 1; i < seconds.length; i++) {
      sum += (open[i] + open[i - 1]) / 2 * (seconds[i] - seconds[i - 1]);
    }
    return sum;
  }

  /** Points of a curve that is put together from paths. */
  private static final class Points {
    private double[] seconds = {};
    private double[] open = {};

    void add(LightPath path, double fromSeconds) {
      int had = seconds.length;
      double[] more = path.seconds();
      seconds = Arrays.copyOf(seconds, had + more.length);
      for (int i = 0; i < more.length; i++) {
        seconds[had + i] = fromSeconds + more[i];
      }
      open = Arrays.copyOf(open, had + more.length);
      System.arraycopy(path.open(), 0, open, had, more.length);
    }

    LightCurve curve() {
      return new LightCurve(seconds, open);
    }
  }
}
