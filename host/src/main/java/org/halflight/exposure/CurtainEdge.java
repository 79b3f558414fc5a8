package org.halflight.exposure;

import java.util.Arrays;
import java.util.Optional;

/**
 * When the edge of one curtain was in the middle of each sensor: from when each sensor crossed its
 * own level, along the shadow of the edge. The centre crosses two levels, so it tells how wide the
 * shadow is; how long it takes at the outer sensors follows from the speed there, and the speed
 * from the times. Three turns settle that.
 */
final class CurtainEdge {
  private static final int TURNS = 3;
  private static final double THOUSANDTH = 1e-3;

  /** With one place only there is no speed; curtains run with some metres a second. */
  private static final double ANY_METRES_PER_SECOND = 3;

  /** A shadow is between these times what slit and lamp let expect; beyond, noise or a mishap. */
  private static final double NARROWEST = 0.3;

  private static final double WIDEST = 10;

  private final CurtainGeometry geometry;
  private final double[] halfLight;
  private final double[] carry = new double[3];
  private double scale = 1;

  /**
   * @param crossings when each place crossed its level, from start to end; not a number where it
   *     did not; at the centre half light by its two levels, where it crossed both
   * @param lights the fraction of full light at which it did
   * @param rampSeconds from first to full light at the centre by its two levels; not a number where
   *     it did not cross both
   * @param opens whether light comes with the edge
   */
  CurtainEdge(
      CurtainGeometry geometry,
      LevelPair levels,
      double[] crossings,
      double[] lights,
      double rampSeconds,
      boolean opens) {
    this.geometry = geometry;
    halfLight = crossings.clone();
    EdgeShadow shadow = EdgeShadow.of(geometry);
    for (int turn = 0; turn < TURNS; turn++) {
      double speed = metresPerSecondAt(0);
      if (rampSeconds >= 0) {
        double seen = rampSeconds * speed / THOUSANDTH;
        scale = Math.min(WIDEST, Math.max(NARROWEST, seen / shadow.widthBetween(levels)));
      }
      double[] next = new double[3];
      for (Place place : Place.values()) {
        int i = place.index();
        double beyond = shadow.millimetresAt(lights[i]) * scale * THOUSANDTH;
        carry[i] = beyond / metresPerSecondAt(geometry.placeMillimetres(place));
        next[i] = crossings[i] + (opens ? -carry[i] : carry[i]);
      }
      System.arraycopy(next, 0, halfLight, 0, next.length);
    }
  }

  /** Half light at a place; not a number where it saw no edge. */
  double halfLight(Place place) {
    return halfLight[place.index()];
  }

  boolean has(Place place) {
    return Double.isFinite(halfLight(place));
  }

  /** Width of the shadow over what slit and lamp let expect. */
  double widthRatio() {
    return scale;
  }

  /** What the edge takes to pass the shadow at a place, in seconds. */
  double rampSeconds(Place place, LevelPair levels) {
    return EdgeShadow.of(geometry).widthBetween(levels)
        * scale
        * THOUSANDTH
        / metresPerSecondAt(geometry.placeMillimetres(place));
  }

  /** Its way, where all three places saw it pass in order. */
  Optional<CurtainCurve> curve() {
    double[] t = halfLight;
    return t[0] < t[1] && t[1] < t[2]
        ? Optional.of(new CurtainCurve(geometry.placeMillimetres(Place.END), t[0], t[1], t[2]))
        : Optional.empty();
  }

  /** As well as the places that saw it can tell. */
  double metresPerSecondAt(double millimetres) {
    Optional<CurtainCurve> curve = curve();
    if (curve.isPresent()) {
      return curve.get().metresPerSecondAt(millimetres);
    }
    int[] seen = Arrays.stream(Place.values()).filter(this::has).mapToInt(Place::ordinal).toArray();
    double outer = geometry.placeMillimetres(Place.END) * THOUSANDTH;
    for (int i = 0; i + 1 < seen.length; i++) {
      double seconds = halfLight[seen[i + 1]] - halfLight[seen[i]];
      if (seconds > 0) {
        return (seen[i + 1] - seen[i]) * outer / seconds;
      }
    }
    return ANY_METRES_PER_SECOND;
  }
}
