package org.halflight.validation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.halflight.calibration.TripEstimate;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveMethod;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelCorrection;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.Ramp;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ComparatorTrips;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.shuttermodel.CurveSampler;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.LightCurve;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * What a front end with faults that are known costs before and after its trip points were measured.
 * Simulated: the lamp has faded between the setting of the light and the firings.
 */
final class CorrectedLevels {
  static final double OFFSET_MILLIVOLTS = 40;
  static final double HYSTERESIS_MILLIVOLTS = 30;
  static final double LAG_MICROSECONDS = 1;
  static final double LAMP_FADE = 0.005;
  private static final double DARK = 40;
  private static final double FULL = 4000;
  private static final double RAMP_SECONDS = 1e-3;
  private static final int LINES = 500;
  private static final long START = 16_000_000;
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private static final FrontEnd FADED =
      new FrontEnd(
          DARK, DARK + (1 - LAMP_FADE) * (FULL - DARK), LAG_MICROSECONDS, 1.5, Lamp.STEADY);

  /**
   * Errors of the effective time as parts of it.
   *
   * @param before two levels with the thresholds where the codes say
   * @param swept the same with the trip points of a sweep
   * @param sweptAndFull and with full light as the plateau of the 1 s firing measured it again
   * @param curve the integral of the light curve, by the full light that was set
   * @param curveAndFull the same by full light measured again
   */
  record Errors(
      double before, double swept, double sweptAndFull, double curve, double curveAndFull) {
    String row(String speed) {
      return String.format(
          Locale.ROOT,
          "| %s | %s | %s | %s | %s | %s |",
          speed,
          percent(before),
          percent(swept),
          percent(sweptAndFull),
          percent(curve),
          percent(curveAndFull));
    }

    private static String percent(double part) {
      String text = String.format(Locale.ROOT, "%+.2f %%", 100 * part);
      return text.substring(1).equals("0.00 %") ? "0.00 %" : text;
    }
  }

  private CorrectedLevels() {}

  /** The lines of the page, with the table. */
  static List<String> page() {
    List<String> lines = new ArrayList<>();
    lines.add("## Levels off their nodes");
    lines.add("");
    lines.add(
        "**Simulated**: a round hole whose radius grows evenly, ramps of 1 ms. Both comparators switch");
    lines.add(
        String.format(
            Locale.ROOT,
            "%.0f mV too high with %.0f mV of hysteresis, the front end lags by %.0f \u00b5s, and the lamp has faded by %.1f %%",
            OFFSET_MILLIVOLTS,
            HYSTERESIS_MILLIVOLTS,
            LAG_MICROSECONDS,
            100 * LAMP_FADE));
    lines.add("since the light was set (4 V). Error of the effective time, above zero is long:");
    lines.add("");
    lines.add(
        "| true time | two levels, before | after a sweep of the thresholds | and full light measured again | light curve | and full light measured again |");
    lines.add("|---|---|---|---|---|---|");
    lines.add(of(1 / 500.0).row("1/500 s"));
    lines.add(of(1 / 60.0).row("1/60 s"));
    lines.add(of(1).row("1 s"));
    lines.add("");
    lines.add(
        "What remains at 1/500 is the two-level rule itself: 0.7 % of 2 ms of ramps. Full light");
    lines.add("measured again is that of the plateau of the 1 s firing.");
    lines.add("");
    return lines;
  }

  static Errors of(double effectiveSeconds) {
    LightLevels set = levels(TripPoints.EXACT);
    TripPoints trips = new TripPoints(sweep(900), sweep(3200));
    LightLevels placed = levels(trips);
    double share = curve(light(1), set).plateauLight().getAsDouble();
    double full = set.darkCounts() + share * (set.fullCounts() - set.darkCounts());

    LightCurve light = light(effectiveSeconds);
    double truth = light.integralSeconds();
    CurveExposure.Measured curve = curve(light, set);
    CurveExposure.Measured again = curve(light, set.withFull(full));
    Exposure.Timed before = timed(light, set);
    Exposure.Timed after = timed(light, placed);
    return new Errors(
        before.effectiveSeconds() / truth - 1,
        corrected(after, placed, trips, curve) / truth - 1,
        corrected(after, placed.withFull(full), trips, curve) / truth - 1,
        curve.effectiveSeconds() / truth - 1,
        again.effectiveSeconds() / truth - 1);
  }

  private static double corrected(
      Exposure.Timed timed, LightLevels light, TripPoints trips, CurveExposure.Measured curve) {
    LevelCorrection correction = trips.correction(light).orElseThrow();
    return correction.effectiveSeconds(
        timed,
        RATE,
        curve.opening().map(Ramp::power).orElse(1.0),
        curve.closing().map(Ramp::power).orElse(1.0));
  }

  /** A reading stands for the middle of its step: half a count more than it reads. */
  private static double counts(double millivolts) {
    return millivolts * 1024 / FrontEnd.SUPPLY_MILLIVOLTS - 0.5;
  }

  private static LightLevels levels(TripPoints trips) {
    ThresholdCodes codes =
        ((ThresholdCodes.Found) ThresholdCodes.forLight(counts(DARK), counts(FULL), trips)).codes();
    return new LightLevels(
        counts(DARK),
        counts(FULL),
        counts(FrontEnd.thresholdMillivolts(codes.low())),
        counts(FrontEnd.thresholdMillivolts(codes.high())));
  }

  /** A sweep in fine codes of 1/4096 of the supply through steady light. */
  private static ComparatorTrips sweep(double lightMillivolts) {
    double step = FrontEnd.SUPPLY_MILLIVOLTS / 4096;
    double up = step * Math.floor((lightMillivolts - 200) / step);
    while (lightMillivolts > up + OFFSET_MILLIVOLTS - HYSTERESIS_MILLIVOLTS / 2) {
      up += step;
    }
    double down = up + 200;
    while (lightMillivolts < down + OFFSET_MILLIVOLTS + HYSTERESIS_MILLIVOLTS / 2) {
      down -= step;
    }
    double light = counts(lightMillivolts);
    return TripEstimate.of(
        new TripEstimate.Way(counts(up), light), new TripEstimate.Way(counts(down), light));
  }

  private static LightCurve light(double effectiveSeconds) {
    // The radius grows evenly: each ramp lets a third of full light through.
    double open = effectiveSeconds - 2 * RAMP_SECONDS / 3;
    double[] seconds = new double[2 * LINES + 2];
    double[] light = new double[2 * LINES + 2];
    for (int i = 0; i <= LINES; i++) {
      double way = (double) i / LINES;
      int back = 2 * LINES + 1 - i;
      seconds[i] = RAMP_SECONDS * way;
      light[i] = BladeLaw.ROUND_RADIUS_LINEAR.openFraction(way);
      seconds[back] = RAMP_SECONDS + open + RAMP_SECONDS * (1 - way);
      light[back] = light[i];
    }
    return new LightCurve(seconds, light);
  }

  private static CurveExposure.Measured curve(LightCurve light, LightLevels levels) {
    SampledLight sampled =
        CurveSampler.INVENTED.sample(
            FADED, LightPath.of(light), START, 900, new SeededDraws(Validation.SEED));
    return CurveMethod.measure(sampled, levels, RATE).measured().orElseThrow();
  }

  private static Exposure.Timed timed(LightCurve light, LightLevels levels) {
    List<Edge> edges = new ArrayList<>();
    edges.addAll(edges(light, Channel.CENTRE_LOW, levels.lowCounts()));
    edges.addAll(edges(light, Channel.CENTRE_HIGH, levels.highCounts()));
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return (Exposure.Timed)
        LeafExposureMethod.measure(
            new Firing(edges, List.of()), ((LightLevels.Known) levels.levels()).levels(), RATE);
  }

  private static List<Edge> edges(LightCurve light, Channel channel, double thresholdCounts) {
    double threshold = (thresholdCounts + 0.5) * FrontEnd.SUPPLY_MILLIVOLTS / 1024;
    double on = threshold + OFFSET_MILLIVOLTS + HYSTERESIS_MILLIVOLTS / 2;
    double off = threshold + OFFSET_MILLIVOLTS - HYSTERESIS_MILLIVOLTS / 2;
    LightPath path = LightPath.of(light);
    double rise = FADED.crossings(path, 0, on).get(0).seconds();
    double fall = FADED.crossings(path, 0, off).get(1).seconds();
    return List.of(
        new Edge(channel, true, START + RATE.ticks(rise)),
        new Edge(channel, false, START + RATE.ticks(fall)));
  }
}
