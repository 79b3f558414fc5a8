package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;

/**
 * The three light sensors of a full rig. A leaf shutter stands in the pupil, so all three see the
 * same light curve; the outer ones see less of it. Curtains pass them one after the other. They are
 * compared with the mean of the low and the high threshold.
 *
 * @param centre sensor in the middle of the frame
 * @param outerA outer sensor A
 * @param outerB outer sensor B
 * @param comparators what compares them with their thresholds
 */
public record SensorSet(
    FrontEnd centre, FrontEnd outerA, FrontEnd outerB, LevelComparators comparators) {
  /**
   * Invented: a well made front end under a good lamp with a trace of ripple at 100 Hz, and
   * ordinary comparators.
   */
  public static final SensorSet INVENTED =
      all(InventedLamp.GOOD.lamp(), 1, 1.5).with(LevelComparators.INVENTED);

  /**
   * Invented: a photodiode on a resistor of 47 k with 1 nF beside it, read by the converter and the
   * comparator of a chip.
   */
  public static final SensorSet STARTER = all(InventedLamp.GOOD.lamp(), 47, 2);

  /** Invented: the front end of {@link #INVENTED} behind slits, each with its own light. */
  public static final SensorSet BEHIND_SLITS =
      new SensorSet(
          new FrontEnd(40, 4000, 1, 1.5, InventedLamp.GOOD.lamp()),
          new FrontEnd(55, 3350, 1, 1.5, InventedLamp.GOOD.lamp()),
          new FrontEnd(35, 3700, 1, 1.5, InventedLamp.GOOD.lamp()),
          LevelComparators.INVENTED);

  /** No lag, no noise, a steady lamp, ideal comparators. */
  public static final SensorSet IDEAL = all(Lamp.STEADY, 0, 0);

  /** Sensors with ideal comparators. */
  public SensorSet(FrontEnd centre, FrontEnd outerA, FrontEnd outerB) {
    this(centre, outerA, outerB, LevelComparators.IDEAL);
  }

  /** The same sensors with other comparators. */
  public SensorSet with(LevelComparators others) {
    return new SensorSet(centre, outerA, outerB, others);
  }

  /** The same sensors under another lamp. */
  public SensorSet under(Lamp lamp) {
    return new SensorSet(centre.under(lamp), outerA.under(lamp), outerB.under(lamp), comparators);
  }

  /** The same with another share of the light at each sensor, above zero. */
  public SensorSet lit(double atCentre, double atA, double atB) {
    return new SensorSet(centre.lit(atCentre), outerA.lit(atA), outerB.lit(atB), comparators);
  }

  private static SensorSet all(Lamp lamp, double lagMicroseconds, double noiseMillivolts) {
    return new SensorSet(
        new FrontEnd(40, 4000, lagMicroseconds, noiseMillivolts, lamp),
        new FrontEnd(40, 3900, lagMicroseconds, noiseMillivolts, lamp),
        new FrontEnd(40, 3900, lagMicroseconds, noiseMillivolts, lamp));
  }

  /** The sensor behind a light channel. */
  public FrontEnd of(Channel channel) {
    return switch (channel) {
      case CENTRE_LOW, CENTRE_HIGH -> centre;
      case OUTER_A -> outerA;
      case OUTER_B -> outerB;
      case CONTACT, CLICK, RELEASE, KNOB ->
          throw new IllegalArgumentException("no light sensor on " + channel);
    };
  }

  /** The threshold of a light channel in millivolts, from those of the two centre levels. */
  public static double threshold(Channel channel, double lowMillivolts, double highMillivolts) {
    return switch (channel) {
      case CENTRE_LOW -> lowMillivolts;
      case CENTRE_HIGH -> highMillivolts;
      case OUTER_A, OUTER_B -> (lowMillivolts + highMillivolts) / 2;
      case CONTACT, CLICK, RELEASE, KNOB ->
          throw new IllegalArgumentException("no threshold on " + channel);
    };
  }

  /**
   * The edges that a light curve makes at threshold codes, all light channels, by ticks.
   *
   * @param curve the light
   * @param startTicks ticks at time 0 of the curve
   * @param lowCode threshold code of the low level
   * @param highCode threshold code of the high level
   * @param seed of noise and looks
   */
  public List<Edge> edges(LightCurve curve, long startTicks, int lowCode, int highCode, long seed) {
    return edges(
        LightPaths.same(LightPath.of(curve)),
        startTicks,
        FrontEnd.thresholdMillivolts(lowCode),
        FrontEnd.thresholdMillivolts(highCode),
        new SeededDraws(seed));
  }

  /** The same for the light at each sensor, voltages and draws. */
  public List<Edge> edges(
      LightPaths paths,
      long startTicks,
      double lowMillivolts,
      double highMillivolts,
      SeededDraws draws) {
    EdgeStamps stamps = new EdgeStamps(TickRate.BOARD_16_MHZ, draws);
    double lampSeconds = TickRate.BOARD_16_MHZ.seconds(startTicks);
    List<Edge> edges = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      if (channel.isLight()) {
        List<Crossing> crossings =
            of(channel)
                .noisySwitches(
                    paths.of(channel),
                    lampSeconds,
                    threshold(channel, lowMillivolts, highMillivolts),
                    comparators.of(channel),
                    draws);
        edges.addAll(stamps.edges(channel, crossings, startTicks));
      }
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return edges;
  }
}
