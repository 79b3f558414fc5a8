package org.halflight.exposure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.halflight.exposure.CurveExposure.HalfLight;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.CurveExposure.Reason;
import org.halflight.exposure.CurveExposure.Refused;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.halflight.time.TickRate;

/**
 * From the sampled light of one opening to its exposure: the integral itself, without a rule of
 * levels and without a model of the blades. {@link EdgesAndCurve} says when it decides.
 *
 * <p>The light is a fraction of the full light that was set, never of the peak of the pulse; so the
 * effective time of leaves that never open fully is right too.
 */
public final class CurveMethod {
  /** What the converter itself may be wrong, in counts of ten bits (data sheet of its kind). */
  public static final double CONVERTER_COUNTS = 2;

  /**
   * A peak this far below full light may still be full light: a lamp fades, and levels are known to
   * about 1 %. Our choice.
   */
  public static final double LIGHT_DOUBT = 0.02;

  /** Brighter than full light by this is another light than the one that was set. */
  public static final double BRIGHTER = 0.05;

  /** The light at the first and last reading may be this at most, where the ramp is known. */
  static final double ADDED_UP_TO = 0.3;

  /** Readings from here up tell the law of a ramp. */
  private static final double RAMP_FROM = 0.02;

  /**
   * Readings up to here, as a part of the peak. What lies above is rounded by blades that come to
   * rest, and a stop of the lens hides it first: the foot of the ramp is what total time and stop
   * table hang on.
   */
  private static final double RAMP_TO = 0.75;

  /** A ramp is shown where single readings reach up to here, as a part of the peak. */
  private static final double RAMP_SHOWN_TO = 0.5;

  /** Means of the plateau below this part of the greatest one hold some of the ramps. */
  private static final double PLATEAU_FROM = 0.97;

  private static final int SATURATED_READING = 255;
  private static final int SATURATED_SUM = 16 * BoardTraits.FULL_SCALE_COUNTS;

  private final CurvePoints points;
  private final LightLevels levels;
  private final double floor;

  private CurveMethod(CurvePoints points, LightLevels levels) {
    this.points = points;
    this.levels = levels;
    this.floor = BrightStretch.floor(levels);
  }

  /** From a curve, the light that was set, and how fast the board counts. */
  public static CurveExposure measure(SampledLight curve, LightLevels levels, TickRate rate) {
    if (LightLevels.refusal(levels.darkCounts(), levels.fullCounts()) != null) {
      return new Refused(Reason.LIGHT_NOT_KNOWN);
    }
    if (curve.cutOff()) {
      return new Refused(Reason.CUT_OFF);
    }
    if (hasHoles(curve)) {
      return new Refused(Reason.PARTS_MISSING);
    }
    for (Part part : curve.parts()) {
      int end = part.kind().isOfMeans() ? SATURATED_SUM : SATURATED_READING;
      if (part.values().stream().anyMatch(value -> value < 0)) {
        return new Refused(Reason.VALUES_LOST);
      }
      if (part.values().stream().anyMatch(value -> value >= end)) {
        return new Refused(Reason.SATURATED);
      }
    }
    return new CurveMethod(CurvePoints.of(curve, levels, rate), levels).measure(curve);
  }

  /**
   * The main opening of a curve that was measured, as comparators at two levels would see it.
   *
   * @param measured what {@link #measure} made of it under the same light
   * @param at the levels in force
   */
  static CurveShape shape(
      SampledLight curve, LightLevels levels, TickRate rate, Measured measured, LevelPair at) {
    CurveMethod method = new CurveMethod(CurvePoints.of(curve, levels, rate), levels);
    return CurveShape.of(method.points, method.floor, measured.addedSeconds(), at);
  }

  /**
   * By how much the light of a curve stays longer above the low level than above the high one, in
   * seconds; empty where the curve does not show that it passed both.
   */
  public static OptionalDouble gapSeconds(
      SampledLight curve, LightLevels light, TickRate rate, LevelPair at) {
    if (!(measure(curve, light, rate) instanceof Measured measured)) {
      return OptionalDouble.empty();
    }
    CurveShape shape = shape(curve, light, rate, measured, at);
    return shape.highSeconds().orElse(0) > 0 && shape.lowSeconds().isPresent()
        ? OptionalDouble.of(shape.gapSeconds())
        : OptionalDouble.empty();
  }

  private static boolean hasHoles(SampledLight curve) {
    for (int i = 0; i < curve.parts().size(); i++) {
      Part part = curve.parts().get(i);
      if (part.gapBefore()) {
        return true;
      }
      if (i > 0) {
        Part before = curve.parts().get(i - 1);
        long end = before.firstTicks() + before.values().size() * before.periodTicks();
        if (part.firstTicks() - end > 2 * Math.max(part.periodTicks(), before.periodTicks())) {
          return true;
        }
      }
    }
    return false;
  }

  private CurveExposure measure(SampledLight curve) {
    List<BrightStretch> stretches = BrightStretch.of(points, floor);
    return stretches.stream()
        .max(Comparator.comparingDouble(BrightStretch::seconds))
        .map(
            main ->
                main(main.before(), main.behind(), main.seconds(), beside(main, stretches), curve))
        .orElseGet(() -> new Refused(Reason.NO_LIGHT));
  }

  /** The light before and behind the main opening that is part of the exposure. */
  private double beside(BrightStretch main, List<BrightStretch> stretches) {
    return stretches.stream()
        .filter(each -> each.from() != main.from() && each.isOneExposureWith(main, points))
        .mapToDouble(BrightStretch::seconds)
        .sum();
  }

  private CurveExposure main(int from, int to, double light, double other, SampledLight curve) {
    int top = from;
    for (int i = from; i <= to; i++) {
      top = points.lightAt(i) > points.lightAt(top) ? i : top;
    }
    double peak = points.lightAt(top);
    if (peak > 1 + BRIGHTER) {
      return new Refused(Reason.BRIGHTER_THAN_FULL);
    }
    int bottom = top;
    for (int i = top; i <= to; i++) {
      bottom = points.lightAt(i) >= RAMP_TO * Math.min(1, peak) ? i : bottom;
    }
    int firstTop = top;
    for (int i = top; i >= from; i--) {
      firstTop = points.lightAt(i) >= RAMP_TO * Math.min(1, peak) ? i : firstTop;
    }
    Optional<Ramp> opening = ramp(from, firstTop, peak, false);
    Optional<Ramp> closing = ramp(bottom, to, peak, true);
    boolean beginsInLight = points.lightAt(from) > floor;
    boolean endsInLight = points.lightAt(to) > floor;
    if (beginsInLight && (opening.isEmpty() || points.lightAt(from) > ADDED_UP_TO)) {
      return new Refused(Reason.BEGINS_IN_LIGHT);
    }
    if (endsInLight && (closing.isEmpty() || points.lightAt(to) > ADDED_UP_TO)) {
      return new Refused(Reason.ENDS_IN_LIGHT);
    }
    double added =
        (beginsInLight ? beyond(from, opening.get()) : 0)
            + (endsInLight ? beyond(to, closing.get()) : 0);
    double begin = opening.map(Ramp::darkSeconds).orElseGet(() -> points.crossing(from, floor));
    double end = closing.map(Ramp::darkSeconds).orElseGet(() -> points.crossing(to - 1, floor));
    double span = levels.fullCounts() - levels.darkCounts();
    return new Measured(
        light + added + other,
        light + added,
        CONVERTER_COUNTS / span * (end - begin) + added / 2,
        added,
        end - begin,
        peak,
        peak >= 1 - LIGHT_DOUBT - missedAt(top),
        plateau(curve),
        begin,
        opening,
        closing,
        halfLight(from, to),
        other / (light + added));
  }

  /** How much higher than its greatest reading a pointed peak may be: half a step beside it. */
  private double missedAt(int top) {
    double left = top >= 2 ? points.lightAt(top - 1) - points.lightAt(top - 2) : 0;
    double right = top + 2 < points.size() ? points.lightAt(top + 1) - points.lightAt(top + 2) : 0;
    return Math.max(0, Math.min(left, right)) / 2;
  }

  /** The light of a ramp between its dark end and a reading: {@code E t / (p + 1)}. */
  private double beyond(int i, Ramp ramp) {
    return points.lightAt(i)
        * Math.abs(points.secondsAt(i) - ramp.darkSeconds())
        / (ramp.power() + 1);
  }

  private Optional<Ramp> ramp(int from, int to, double peak, boolean closing) {
    int[] used =
        IntStream.rangeClosed(from, to)
            .filter(points::isSingle)
            .filter(
                i ->
                    points.lightAt(i) >= Math.max(RAMP_FROM, floor)
                        && points.lightAt(i) <= RAMP_TO * Math.min(1, peak))
            .toArray();
    boolean isShown =
        IntStream.of(used).anyMatch(i -> points.lightAt(i) >= RAMP_SHOWN_TO * Math.min(1, peak));
    return isShown
        ? RampFitting.of(
            IntStream.of(used).mapToDouble(points::secondsAt).toArray(),
            IntStream.of(used).mapToDouble(points::lightAt).toArray(),
            closing)
        : Optional.empty();
  }

  private Optional<HalfLight> halfLight(int from, int to) {
    int rise = -1;
    int fall = -1;
    for (int i = from; i < to; i++) {
      if (rise < 0 && points.lightAt(i) <= 0.5 && points.lightAt(i + 1) > 0.5) {
        rise = i;
      }
      if (points.lightAt(i) > 0.5 && points.lightAt(i + 1) <= 0.5) {
        fall = i;
      }
    }
    return rise < 0 || fall < 0
        ? Optional.empty()
        : Optional.of(new HalfLight(points.crossing(rise, 0.5), points.crossing(fall, 0.5)));
  }

  /** The mean of the means that hold nothing of the ramps: not the first, not the last. */
  private OptionalDouble plateau(SampledLight curve) {
    Optional<Part> part = curve.parts().stream().filter(p -> p.kind() == Kind.PLATEAU).findFirst();
    if (part.isEmpty() || part.get().values().size() < 3) {
      return OptionalDouble.empty();
    }
    double span = levels.fullCounts() - levels.darkCounts();
    double[] inner =
        IntStream.range(1, part.get().values().size() - 1)
            .mapToDouble(i -> (part.get().counts(i) - levels.darkCounts()) / span)
            .toArray();
    double most = Arrays.stream(inner).max().getAsDouble();
    return Arrays.stream(inner).filter(light -> light >= PLATEAU_FROM * most).average();
  }
}
