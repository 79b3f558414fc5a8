package org.halflight.rig.practice;

import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.halflight.shuttermodel.CurtainPass;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.signal.LightCurve;

/** The light of mishaps. Its times are invented. */
final class MishapLight {
  /** Dark between the two openings of a double: shorter than the quiet that ends a firing. */
  private static final double BETWEEN_SECONDS = 0.06;

  /** A stroke of cocking opens the blades by a part, for so long. */
  private static final double COCKING_OPEN = 0.8;

  private static final double COCKING_SECONDS = 0.03;
  private static final double COCKING_EDGE_SECONDS = 0.004;

  private MishapLight() {}

  /** A firing as a mishap changes it. */
  static ModelFiring of(PracticeMishap mishap, ModelFiring model) {
    return switch (mishap) {
      case NONE -> model;
      case HANG ->
          model instanceof ModelFiring.Curtains
              ? changed(model, CurtainPass::withoutSecond)
              : new ModelFiring.StuckOpen();
      case DOUBLE -> model instanceof ModelFiring.Timed timed ? twice(timed) : model;
      case CAPPED -> changed(model, CurtainPass::capped);
      case STOPS_SHORT -> changed(model, CurtainPass::stoppedShort);
    };
  }

  private static ModelFiring changed(ModelFiring model, UnaryOperator<CurtainPass> changes) {
    return model instanceof ModelFiring.Curtains curtains
        ? new ModelFiring.Curtains(changes.apply(curtains.pass()))
        : model;
  }

  /** Light that a wind takes away. */
  static LightPath fading(double from) {
    return new LightPath(new double[] {0, COCKING_EDGE_SECONDS}, new double[] {from, 0});
  }

  /** A stroke of cocking that lets light through; no hand does it twice alike. */
  static LightPath cockingStroke(double slowness) {
    double edge = COCKING_EDGE_SECONDS * slowness;
    double end = COCKING_SECONDS * slowness;
    return new LightPath(
        new double[] {0, edge, end - edge, end}, new double[] {0, COCKING_OPEN, COCKING_OPEN, 0});
  }

  /** The same light as a share of it, as through a smaller stop. */
  static LightPath dimmed(LightPath path, double share) {
    return share == 1
        ? path
        : new LightPath(
            path.seconds(), Arrays.stream(path.open()).map(open -> open * share).toArray());
  }

  /** The same light, and never less than what comes through shut blades. */
  static LightPath atLeast(LightPath path, double leak) {
    return leak == 0
        ? path
        : new LightPath(
            path.seconds(), Arrays.stream(path.open()).map(open -> Math.max(open, leak)).toArray());
  }

  /** The same light, and other light with it. */
  static LightPath brighter(LightPath path, double more) {
    return more == 0
        ? path
        : new LightPath(
            path.seconds(), Arrays.stream(path.open()).map(open -> open + more).toArray());
  }

  private static ModelFiring.Timed twice(ModelFiring.Timed once) {
    double[] seconds = once.curve().seconds();
    double[] open = once.curve().open();
    int n = seconds.length;
    double later = seconds[n - 1] + BETWEEN_SECONDS;
    double[] bothSeconds = Arrays.copyOf(seconds, 2 * n);
    double[] bothOpen = Arrays.copyOf(open, 2 * n);
    for (int i = 0; i < n; i++) {
      bothSeconds[n + i] = later + seconds[i];
      bothOpen[n + i] = open[i];
    }
    return new ModelFiring.Timed(
        new LightCurve(bothSeconds, bothOpen),
        once.effectiveSeconds(),
        once.bounceShare(),
        once.openSeconds(),
        once.closingSeconds(),
        once.darkSeconds(),
        once.peak());
  }
}
