package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/**
 * Shutters that open fully, by many laws of opening and closing, up and down by a law of their own.
 * Crossings and effective times are worked out here from closed forms and by counting light on a
 * grid; nothing is taken from the program.
 */
class FullyOpenFamilyTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final double TICK = 62.5e-9;

  /** Where the light crosses a level, as a part of the ramp, and the part that the ramp loses. */
  private static final class Law {
    private final String name;
    private final double[] crossings;
    private final double lost;

    private Law(String name, double[] crossings, double lost) {
      this.name = name;
      this.crossings = crossings;
      this.lost = lost;
    }

    static Law closed(String name, DoubleUnaryOperator timeTo, double lost, LevelPair levels) {
      return new Law(
          name,
          new double[] {timeTo.applyAsDouble(levels.low()), timeTo.applyAsDouble(levels.high())},
          lost);
    }

    /** By light on a grid, for holes without a closed form. */
    static Law counted(String name, DoubleUnaryOperator light, LevelPair levels) {
      int steps = 4000;
      double lost = 0;
      double[] crossings = new double[2];
      double[] level = {levels.low(), levels.high()};
      double before = light.applyAsDouble(0);
      for (int i = 1; i <= steps; i++) {
        double now = light.applyAsDouble((double) i / steps);
        lost += (1 - (before + now) / 2) / steps;
        for (int k = 0; k < 2; k++) {
          if (before < level[k] && now >= level[k]) {
            crossings[k] = (i - 1 + (level[k] - before) / (now - before)) / steps;
          }
        }
        before = now;
      }
      return new Law(name, crossings, lost);
    }
  }

  /** Part of the unit disc that a centred regular pentagon of this inradius uncovers. */
  private static double fiveBlades(double inradius) {
    double half = Math.PI / 5;
    if (inradius >= 1) {
      return 1;
    }
    double cut = inradius / Math.cos(half) <= 1 ? half : Math.acos(inradius);
    return 5 * (Math.tan(cut) * inradius * inradius + half - cut) / Math.PI;
  }

  private static List<Law> laws(LevelPair levels) {
    List<Law> laws = new ArrayList<>();
    for (double p : new double[] {0.5, 0.7, 1, 1.5, 2, 2.5, 3, 3.5, 4}) {
      laws.add(Law.closed("x^" + p, q -> Math.pow(q, 1 / p), p / (p + 1), levels));
      laws.add(Law.closed("1-(1-x)^" + p, q -> 1 - Math.pow(1 - q, 1 / p), 1 / (p + 1), levels));
    }
    laws.add(Law.counted("five blades", FullyOpenFamilyTest::fiveBlades, levels));
    laws.add(Law.counted("five blades, accelerating", x -> fiveBlades(x * x), levels));
    laws.add(Law.counted("five blades, braking", x -> fiveBlades(x * (2 - x)), levels));
    return laws;
  }

  private static Timed timed(
      Law up, Law down, double rise, double open, double fall, LevelPair at) {
    List<Edge> edges = new ArrayList<>();
    double end = 1e-3 + rise + open + fall;
    for (int k = 0; k < 2; k++) {
      Channel channel = k == 0 ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH;
      edges.add(new Edge(channel, true, RATE.ticks(1e-3 + rise * up.crossings[k])));
      edges.add(new Edge(channel, false, RATE.ticks(end - fall * down.crossings[k])));
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return (Timed) LeafExposureMethod.measure(new Firing(edges, List.of()), at, RATE);
  }

  @Test
  void noneIsBeyondTheBound() {
    double step = LevelPair.GAUSS.low();
    int cases = 0;
    int beyondTheRoundHole = 0;
    double worst = 0;
    for (double[] beside : new double[][] {{0, 0}, {0.0299, -0.0299}, {-0.0299, 0.0299}}) {
      LevelPair levels = new LevelPair(step + beside[0], 1 - step + beside[1]);
      List<Law> laws = laws(levels);
      for (Law up : laws) {
        for (Law down : laws) {
          // 1.5 ms each way and asymmetric ones, at the top speed.
          for (double[] ramps : new double[][] {{1.5e-3, 1.5e-3}, {0.6e-3, 1.4e-3}}) {
            double effective = 1.953e-3;
            double open = effective - ramps[0] * (1 - up.lost) - ramps[1] * (1 - down.lost);
            if (open < 0) {
              continue;
            }
            Timed timed = timed(up, down, ramps[0], open, ramps[1], levels);
            double error = timed.effectiveSeconds() - effective;
            assertThat(Math.abs(error))
                .as("%s, %s at %s: bound %s", up.name, down.name, levels, timed.methodSeconds())
                .isLessThanOrEqualTo(timed.methodSeconds() + 2 * TICK);
            if (beside[0] == 0) {
              cases++;
              worst = Math.max(worst, Math.abs(error) / effective);
              beyondTheRoundHole += Math.abs(error) > roundHoleBound(timed) + 2 * TICK ? 1 : 0;
            }
          }
        }
      }
    }
    // Of these, the bound for round holes alone held back many: that is why there is another one.
    assertThat(cases).isGreaterThan(393);
    assertThat(beyondTheRoundHole).isGreaterThan(cases / 6);
    assertThat(worst).isBetween(0.0155, 0.0158);
  }

  /** An accelerating round hole of 1.5 ms ramps at the top speed: 1.57 % short. */
  @Test
  void anAcceleratingRoundHoleIsWithinTheBoundNow() {
    Law accelerating = Law.closed("x^4", q -> Math.pow(q, 0.25), 0.8, LevelPair.GAUSS);
    double open = 1.953e-3 - 2 * 1.5e-3 * 0.2;
    Timed timed = timed(accelerating, accelerating, 1.5e-3, open, 1.5e-3, LevelPair.GAUSS);
    double error = timed.effectiveSeconds() - 1.953e-3;
    assertThat(error / 1.953e-3).isBetween(-0.0158, -0.0156);
    assertThat(roundHoleBound(timed) / 1.953e-3).isBetween(0.0068, 0.0069);
    assertThat(-error).isLessThanOrEqualTo(timed.methodSeconds() + 2 * TICK);
  }

  /** 0.72 % of opening plus closing time by the law of a round hole: what such holes need. */
  private static double roundHoleBound(Timed timed) {
    return 0.0072243
        * timed.blades().orElseThrow().openingPlusClosingSeconds(OpeningLaw.RADIUS_LINEAR);
  }
}
