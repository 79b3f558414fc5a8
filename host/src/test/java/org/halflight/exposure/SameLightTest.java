package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.fixtures.Seed;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whether edges and light curve see the same light, on invented light of its own arithmetic
 * (simulated). The lamp is another one at each firing by 0.35 % and flutters by as much from
 * reading to reading.
 */
class SameLightTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final int FIRINGS = 40;
  private static final double LAMP = 0.0035;

  /** Laws of ramps that are none of the method's powers. */
  private static final Map<String, DoubleUnaryOperator> LAWS = new LinkedHashMap<>();

  static {
    LAWS.put("smooth", x -> x * x * (3 - 2 * x));
    LAWS.put("sine", x -> Math.sin(x * Math.PI / 2));
    LAWS.put("from rest", x -> 1 - Math.cos(x * Math.PI / 2));
    LAWS.put("braking", x -> 1 - Math.pow(1 - x, 3));
    LAWS.put("star", x -> 0.35 * x + 0.65 * x * x);
    LAWS.put("accelerating", x -> Math.pow(x, 3.5));
  }

  private record Both(
      Firing edges, SampledLight curve, Measured measured, LightLevels levels, LevelPair at) {
    Decided decided(OptionalDouble fullLightAfter) {
      Exposure exposure = LeafExposureMethod.measure(edges, at, RATE);
      return new EdgesAndCurve(exposure, Optional.empty(), at, curve, levels, measured, RATE)
          .decided(fullLightAfter)
          .orElseThrow();
    }
  }

  private static Both fire(
      InventedLight light, LevelPair at, double dark, double full, double offset, Random random) {
    InventedLight.Rig rig =
        new InventedLight.Rig(dark, full, 1 + LAMP * random.nextGaussian(), LAMP, offset);
    double span = full - dark;
    LightLevels levels =
        new LightLevels(dark, full, dark + span * at.low(), dark + span * at.high());
    SampledLight curve = light.curve(rig, random);
    return new Both(
        light.edges(at, rig),
        curve,
        (Measured) CurveMethod.measure(curve, levels, RATE),
        levels,
        at);
  }

  /** Both edges of a channel moved apart, so that its width is longer. */
  private static Firing widened(Firing firing, Channel channel, double seconds) {
    long half = Math.round(seconds / 2 * InventedLight.TICKS);
    return new Firing(
        firing.edges().stream()
            .map(
                edge ->
                    edge.channel() == channel
                        ? new Edge(
                            channel, edge.high(), edge.ticks() + (edge.high() ? -half : half))
                        : edge)
            .sorted(java.util.Comparator.comparingLong(Edge::ticks))
            .toList(),
        firing.damage());
  }

  /** Ramps of 0.5 to 3 ms, at most as long as the speed allows, unlike each other. */
  private static InventedLight draw(double seconds, DoubleUnaryOperator law, Random random) {
    double rise = Math.min(0.8 * seconds, 0.5e-3 + 2.5e-3 * random.nextDouble());
    double fall = Math.min(0.8 * seconds, rise * (0.7 + 0.6 * random.nextDouble()));
    double ramps = new InventedLight(law, rise, 0, law, fall, 1).effectiveSeconds();
    return new InventedLight(law, rise, Math.max(2e-5, seconds - ramps), law, fall, 1);
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        1, 0.5, 0.25, 1 / 8.0, 1 / 16.0, 1 / 32.0, 1 / 64.0, 1 / 128.0, 1 / 256.0, 1 / 512.0
      })
  void oneLightIsHardlyEverTakenForTwoAndAFaultOfHalfARampIsFound(
      double seconds, @Seed(1) long seed) {
    Random random = new Random(seed);
    int firings = 0;
    int falsely = 0;
    int faults = 0;
    int found = 0;
    double apart = 0;
    for (DoubleUnaryOperator law : LAWS.values()) {
      for (int i = 0; i < FIRINGS; i++) {
        double span = 250 + 600 * random.nextDouble();
        LevelPair at =
            new LevelPair(
                LevelPair.GAUSS.low() + 0.02 * (2 * random.nextDouble() - 1),
                LevelPair.GAUSS.high() + 0.02 * (2 * random.nextDouble() - 1));
        InventedLight light = draw(seconds, law, random);
        Both both = fire(light, at, 8, 8 + span, 0.004 * random.nextGaussian(), random);
        Decided sound = both.decided(OptionalDouble.empty());
        firings++;
        falsely += sound.by() == DecidedBy.CHECK_RIG ? 1 : 0;
        apart = Math.max(apart, sound.apartSeconds().orElseThrow());
        Exposure.Timed timed = (Exposure.Timed) LeafExposureMethod.measure(both.edges(), at, RATE);
        double ramp =
            timed.blades().orElseThrow().openingPlusClosingSeconds(OpeningLaw.AREA_LINEAR) / 2;
        for (Channel channel : new Channel[] {Channel.CENTRE_LOW, Channel.CENTRE_HIGH}) {
          Firing faulty = widened(both.edges(), channel, ramp / 2);
          Exposure exposure = LeafExposureMethod.measure(faulty, at, RATE);
          faults++;
          found +=
              exposure instanceof Exposure.Unusable
                      || new Both(faulty, both.curve(), both.measured(), both.levels(), at)
                              .decided(OptionalDouble.empty())
                              .by()
                          == DecidedBy.CHECK_RIG
                  ? 1
                  : 0;
        }
      }
    }
    System.out.printf(
        "same light, simulated, 1/%.0f s: %d of %d false, %d of %d faults found, widest %.1f us%n",
        1 / seconds, falsely, firings, found, faults, apart * 1e6);
    assertThat(falsely).isLessThanOrEqualTo(firings / 100);
    assertThat(found).isGreaterThanOrEqualTo((int) Math.ceil(0.99 * faults));
  }

  @Test
  void theIntegralsOfOneLightLieFurtherApartAtOneSecondThanTheirOldTolerance(@Seed(1) long seed) {
    Random random = new Random(seed);
    int far = 0;
    for (int i = 0; i < 40; i++) {
      InventedLight light = draw(1, LAWS.get("smooth"), random);
      Both both = fire(light, LevelPair.GAUSS, 8, 808, 0, random);
      Exposure.Timed timed =
          (Exposure.Timed) LeafExposureMethod.measure(both.edges(), LevelPair.GAUSS, RATE);
      Measured measured = both.measured();
      double tolerance = timed.methodSeconds() + measured.toleranceSeconds();
      far += Math.abs(timed.effectiveSeconds() - measured.effectiveSeconds()) > tolerance ? 1 : 0;
      assertThat(both.decided(OptionalDouble.empty()).by()).isEqualTo(DecidedBy.EDGES_CORRECTED);
    }
    assertThat(far).as("of 40, by integrals").isGreaterThan(5);
  }

  @Test
  void theSampledRampsCorrectTheRuleWhateverTheLaw(@Seed(1) long seed) {
    Random random = new Random(seed);
    for (double seconds : new double[] {1 / 32.0, 1 / 128.0, 1 / 512.0}) {
      for (Map.Entry<String, DoubleUnaryOperator> law : LAWS.entrySet()) {
        double before = 0;
        double after = 0;
        int n = 40;
        for (int i = 0; i < n; i++) {
          InventedLight light =
              new InventedLight(
                  law.getValue(), 1e-3, Math.max(2e-5, seconds - 1e-3), law.getValue(), 1.3e-3, 1);
          double truth = light.effectiveSeconds();
          Both both = fire(light, LevelPair.GAUSS, 8, 708, 0, random);
          Exposure.Timed timed =
              (Exposure.Timed) LeafExposureMethod.measure(both.edges(), LevelPair.GAUSS, RATE);
          double gap = timed.widthLowSeconds() - timed.widthHighSeconds();
          Decided decided = both.decided(OptionalDouble.empty());
          assertThat(decided.by()).as(law.getKey()).isEqualTo(DecidedBy.EDGES_CORRECTED);
          before += (timed.effectiveSeconds() - truth) / gap / n;
          after += (decided.effectiveSeconds().getAsDouble() - truth) / gap / n;
          assertThat(decided.methodSeconds()).isLessThan(0.011 * gap);
        }
        System.out.printf(
            "rule on %s ramps, simulated, 1/%.0f s: %.2f %% of the gap before, %.2f %% after%n",
            law.getKey(), 1 / seconds, 100 * before, 100 * after);
        assertThat(Math.abs(after)).as(law.getKey()).isLessThan(EdgesAndCurve.CORRECTED_SHARE);
      }
    }
  }

  @Test
  void bladesThatDwellBelowFullAreTimedByTheCurveOnceFullLightIsKnown(@Seed(1) long seed) {
    Random random = new Random(seed);
    // 8 ms of full light by a shutter that dwells at 0.85: the truth is 0.00 stop of 1/125.
    double dwell = 0.85;
    double open = (1 / 128.0 - dwell * dwell * 1e-3) / dwell;
    InventedLight light =
        new InventedLight(
            t -> Math.max(0, Math.min(dwell, Math.min(t / 1e-3, (dwell * 2e-3 + open - t) / 1e-3))),
            dwell * 2e-3 + open);
    assertThat(light.effectiveSeconds())
        .isCloseTo(1 / 128.0, org.assertj.core.api.Assertions.within(2e-6));
    for (int i = 0; i < 20; i++) {
      Both both = fire(light, LevelPair.GAUSS, 8, 808, 0, random);
      Decided waits = both.decided(OptionalDouble.empty());
      assertThat(waits.by()).isEqualTo(DecidedBy.FULL_LIGHT_AGAIN);
      assertThat(waits.effectiveSeconds()).isEmpty();
      assertThat(both.decided(OptionalDouble.of(0.9)).by()).isEqualTo(DecidedBy.FULL_LIGHT_AGAIN);
      Decided decided = both.decided(OptionalDouble.of(0.998));
      assertThat(decided.by()).isEqualTo(DecidedBy.CURVE);
      assertThat(stops(decided, 1 / 128.0)).isBetween(-0.03, 0.03);
      Exposure.Timed timed =
          (Exposure.Timed) LeafExposureMethod.measure(both.edges(), LevelPair.GAUSS, RATE);
      // What the edges alone would say.
      assertThat(Math.log(timed.effectiveSeconds() * 128) / Math.log(2)).isGreaterThan(0.1);
    }
  }

  @Test
  void bladesThatStickOnTheirWayAreTimedByTheCurve(@Seed(1) long seed) {
    Random random = new Random(seed);
    // Opens to 0.3 in 0.3 ms, sticks there for 3 ms, then opens fully.
    InventedLight light =
        new InventedLight(
            t ->
                Math.max(
                    0,
                    Math.min(
                        1,
                        Math.min(
                            t < 0.3e-3 ? t / 1e-3 : t < 3.3e-3 ? 0.3 : 0.3 + (t - 3.3e-3) / 1e-3,
                            (10e-3 - t) / 1e-3))),
            10e-3);
    double truth = light.effectiveSeconds();
    Both both = fire(light, LevelPair.GAUSS, 8, 808, 0, random);
    Decided decided = both.decided(OptionalDouble.empty());
    // It opened fully in the end, so full light is known.
    assertThat(decided.by()).isEqualTo(DecidedBy.CURVE);
    assertThat(stops(decided, truth)).isBetween(-0.03, 0.03);
  }

  private static double stops(Decided decided, double truth) {
    return Math.log(decided.effectiveSeconds().getAsDouble() / truth) / Math.log(2);
  }
}
