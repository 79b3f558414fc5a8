package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The main opening of a light curve as two comparators would see it, and how far the two-level rule
 * is out on it.
 *
 * <p>Widths come from single readings at the crossings, so the lamp's noise on the plateau is not
 * in them. For the error of the rule the plateau counts as full light, from where the light first
 * comes within {@link #TOP_REACH} of its own top to where it last is there: only the ramps are left
 * to differ, whatever the lamp does meanwhile.
 *
 * @param lowSeconds time above the low level; empty where single readings do not show a crossing
 * @param highSeconds time above the high level, likewise; 0 where the light never reached it
 * @param gapSeconds how much longer the light stays above the low level than above the high one,
 *     where it reached both
 * @param ruleErrorSeconds what the rule of two levels reads of this opening, less what it is;
 *     likewise
 * @param coarseSeconds what the error of the rule may be out by, since means and no single readings
 *     show a crossing; mostly 0
 * @param dips whether the light fell below its top for a while between first and last being there
 */
record CurveShape(
    OptionalDouble lowSeconds,
    OptionalDouble highSeconds,
    double gapSeconds,
    OptionalDouble ruleErrorSeconds,
    double coarseSeconds,
    boolean dips) {
  /** Nearer than this to its top, as a part of full light, it is there. */
  static final double TOP_REACH = 0.01;

  /** Readings below this rank among those above the high level are not its top. */
  private static final double TOP_RANK = 0.9;

  /** Nothing is known of it. */
  static final CurveShape UNKNOWN =
      new CurveShape(
          OptionalDouble.empty(), OptionalDouble.empty(), 0, OptionalDouble.empty(), 0, false);

  /**
   * The light above a level without a break.
   *
   * @param first the last point before it
   * @param last the first point behind it
   * @param coarseSeconds how far its ends may lie elsewhere; 0 where single readings show them
   */
  private record Span(
      int first, int last, double fromSeconds, double toSeconds, double coarseSeconds) {
    double seconds() {
      return toSeconds - fromSeconds;
    }
  }

  /** The spans that are one opening. */
  private record Group(List<Span> spans) {
    double seconds() {
      return spans.stream().mapToDouble(Span::seconds).sum();
    }

    double coarseSeconds() {
      return spans.stream().mapToDouble(Span::coarseSeconds).sum();
    }

    OptionalDouble shownSeconds() {
      return coarseSeconds() > 0 ? OptionalDouble.empty() : OptionalDouble.of(seconds());
    }

    Span first() {
      return spans.get(0);
    }

    Span last() {
      return spans.get(spans.size() - 1);
    }
  }

  /**
   * The shape of a curve that was seen from dark to dark.
   *
   * @param floor light up to here is dark
   * @param addedSeconds light of the main opening before the first and after the last reading
   */
  static CurveShape of(CurvePoints points, double floor, double addedSeconds, LevelPair levels) {
    List<Group> groups = groups(spans(points, levels.low()));
    if (groups.isEmpty()) {
      return UNKNOWN;
    }
    Group low = groups.stream().max(Comparator.comparingDouble(Group::seconds)).get();
    Group high =
        new Group(
            spans(points, levels.high()).stream()
                .filter(span -> span.fromSeconds() >= low.first().fromSeconds())
                .filter(span -> span.toSeconds() <= low.last().toSeconds())
                .toList());
    if (high.spans().isEmpty()) {
      return new CurveShape(
          low.shownSeconds(), OptionalDouble.of(0), 0, OptionalDouble.empty(), 0, false);
    }
    int[] bright =
        IntStream.range(high.first().first() + 1, high.last().last())
            .filter(i -> points.lightAt(i) >= levels.high())
            .toArray();
    double[] sorted = IntStream.of(bright).mapToDouble(points::lightAt).sorted().toArray();
    double top = Math.min(1, sorted[(int) (TOP_RANK * (sorted.length - 1))]);
    int[] full = IntStream.of(bright).filter(i -> points.lightAt(i) >= top - TOP_REACH).toArray();
    int from = full[0];
    int to = full[full.length - 1];
    double fullSeconds = points.secondsAt(to) - points.secondsAt(from);
    boolean dips =
        fullSeconds > 0 && points.integral(from, to) / fullSeconds < top - CurveMethod.LIGHT_DOUBT;
    double light =
        points.integral(foot(points, low.first().first(), -1, floor, levels.low()), from)
            + fullSeconds
            + points.integral(to, foot(points, low.last().last(), 1, floor, levels.low()))
            + addedSeconds;
    return new CurveShape(
        low.shownSeconds(),
        high.shownSeconds(),
        low.seconds() - high.seconds(),
        TwoLevelRule.allows(levels)
            ? OptionalDouble.of(
                TwoLevelRule.effectiveSeconds(low.seconds(), high.seconds(), levels) - light)
            : OptionalDouble.empty(),
        (low.coarseSeconds() + high.coarseSeconds()) / 2,
        dips);
  }

  /** Where a ramp meets the dark, or another opening that the light did not go dark before. */
  private static int foot(CurvePoints points, int start, int step, double floor, double low) {
    int i = start;
    int least = i;
    while (i + step >= 0
        && i + step < points.size()
        && points.lightAt(i) > floor
        && points.lightAt(i) <= low) {
      i += step;
      least = points.lightAt(i) < points.lightAt(least) ? i : least;
    }
    return least;
  }

  private static List<Span> spans(CurvePoints points, double level) {
    List<Span> spans = new ArrayList<>();
    int rise = -1;
    for (int i = 0; i + 1 < points.size(); i++) {
      boolean here = points.lightAt(i) > level;
      boolean next = points.lightAt(i + 1) > level;
      if (!here && next) {
        rise = i;
      }
      if (here && !next && rise >= 0) {
        spans.add(
            new Span(
                rise,
                i + 1,
                points.crossing(rise, level),
                points.crossing(i, level),
                coarse(points, rise) + coarse(points, i)));
      }
    }
    return spans;
  }

  /** Within the spans of two means, or between a mean and a reading, a crossing may be anywhere. */
  private static double coarse(CurvePoints points, int left) {
    if (points.isSingle(left) && points.isSingle(left + 1)) {
      return 0;
    }
    int from = Math.max(0, left - 1);
    int to = Math.min(points.size() - 1, left + 2);
    return points.secondsAt(to) - points.secondsAt(from);
  }

  /** Noise at a slow crossing is one opening, as it is in the edges. */
  private static List<Group> groups(List<Span> spans) {
    List<Group> groups = new ArrayList<>();
    List<Span> open = new ArrayList<>();
    for (Span span : spans) {
      if (!open.isEmpty()
          && span.fromSeconds() - open.get(open.size() - 1).toSeconds()
              > LeafExposureMethod.CHATTER_GAP_SECONDS) {
        groups.add(new Group(List.copyOf(open)));
        open.clear();
      }
      open.add(span);
    }
    if (!open.isEmpty()) {
      groups.add(new Group(List.copyOf(open)));
    }
    return groups;
  }
}
