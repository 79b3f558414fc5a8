package org.halflight.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.halflight.fixtures.Seed;
import org.halflight.fixtures.Seeds;
import org.halflight.light.LampLight.FastRipple;
import org.halflight.light.LampLight.MainsFlicker;
import org.halflight.light.LampLight.Steady;
import org.halflight.light.LampLight.Unknown;
import org.halflight.light.LampLight.Unsteady;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lamps made of formulas: the expected depths are those that went in. */
class FlickerJudgeTest {
  private static final double DARK = 10;

  /** Readings of a lamp, with half a count of noise, cut to whole counts as a converter does. */
  private static List<LightBlock> blocks(int count, DoubleUnaryOperator light) {
    Random noise = new Random(Seeds.usually(41));
    List<LightBlock> blocks = new ArrayList<>();
    for (int index = 0; index < count; index++) {
      int sum = 0;
      int least = 1023;
      int most = 0;
      for (int i = 0; i < LightBlock.READINGS; i++) {
        double seconds = index * 1e-3 + i * 62.5e-6;
        double counts = DARK + light.applyAsDouble(seconds) + 0.5 * noise.nextGaussian();
        int reading = (int) Math.max(0, Math.min(1023, Math.floor(counts)));
        sum += reading;
        least = Math.min(least, reading);
        most = Math.max(most, reading);
      }
      blocks.add(new LightBlock(index, sum, least, most));
    }
    return blocks;
  }

  private static DoubleUnaryOperator wave(double hertz, double depthPercent) {
    return t -> 500 * (1 + depthPercent / 100 * Math.sin(2 * Math.PI * hertz * t + 0.7));
  }

  private static LampLight judge(List<LightBlock> blocks) {
    return FlickerJudge.judge(blocks, 16 * DARK);
  }

  @Test
  void aSteadyLamp() {
    LampLight light = judge(blocks(500, t -> 500));
    assertThat(light).isInstanceOf(Steady.class);
    assertThat(((Steady) light).figures().mainsDepthPercent()).isLessThan(0.05);
    assertThat(((Steady) light).figures().meanCounts()).isCloseTo(499.5, within(0.2));
  }

  @ParameterizedTest
  @CsvSource({
    "100, 100, 0.5",
    "100, 100, 8",
    "100, 100, 60",
    "120, 120, 0.5",
    "120, 120, 20",
    "100.4, 100, 10",
    "119.6, 120, 10",
    "50, 50, 5",
    "60, 60, 5"
  })
  void mainsFlicker(double hertz, int found, double depthPercent) {
    MainsFlicker flicker = (MainsFlicker) judge(blocks(1000, wave(hertz, depthPercent)));
    assertThat(flicker.hertz()).isEqualTo(found);
    assertThat(flicker.depthPercent()).isCloseTo(depthPercent, within(0.02 * depthPercent + 0.03));
  }

  @Test
  void aRectifiedLampHasTheDepthOfItsFirstHarmonic() {
    // |sin| has a mean of 2/pi and a first harmonic of 4/(3 pi): two thirds.
    MainsFlicker flicker =
        (MainsFlicker) judge(blocks(1000, t -> 500 * Math.abs(Math.sin(2 * Math.PI * 50 * t))));
    assertThat(flicker.hertz()).isEqualTo(100);
    assertThat(flicker.depthPercent()).isCloseTo(66.7, within(1.0));
  }

  @Test
  void missingBlocksDoNoHarm(@Seed(5) long seed) {
    Random random = new Random(seed);
    List<LightBlock> blocks = blocks(1000, wave(100, 8));
    blocks.removeIf(block -> random.nextInt(10) < 3);
    MainsFlicker flicker = (MainsFlicker) judge(blocks);
    assertThat(flicker.hertz()).isEqualTo(100);
    assertThat(flicker.depthPercent()).isCloseTo(8, within(0.2));
  }

  @ParameterizedTest
  @CsvSource({"1000", "980", "3900", "7812.5"})
  void aLampDimmedBySwitching(double hertz) {
    FastRipple ripple = (FastRipple) judge(blocks(500, t -> (t * hertz) % 1 < 0.5 ? 900 : 20));
    assertThat(ripple.depthPercent()).isCloseTo(95.6, within(5.0));
  }

  @Test
  void aSmallRippleHasItsDepth() {
    FastRipple ripple = (FastRipple) judge(blocks(500, wave(2300, 10)));
    assertThat(ripple.depthPercent()).isCloseTo(10, within(1.0));
  }

  @Test
  void aLampThatWarmsUp() {
    Unsteady unsteady = (Unsteady) judge(blocks(1000, t -> 500 * (1 + 0.02 * t)));
    assertThat(unsteady.driftPercent()).isCloseTo(1.8, within(0.1));
  }

  @Test
  void somethingMovesBeforeTheLamp() {
    Unsteady unsteady = (Unsteady) judge(blocks(1000, t -> 500 * (t > 0.43 && t < 0.47 ? 0.9 : 1)));
    assertThat(unsteady.restPercent()).isGreaterThan(0.5);
  }

  @Test
  void whatDoesNotTell() {
    assertThat(judge(List.of())).isEqualTo(new Unknown(LampLight.Reason.TOO_FEW_BLOCKS));
    assertThat(judge(blocks(120, t -> 500)))
        .isEqualTo(new Unknown(LampLight.Reason.TOO_FEW_BLOCKS));
    List<LightBlock> sparse = blocks(1000, t -> 500);
    sparse.removeIf(block -> block.index() % 3 != 0);
    assertThat(judge(sparse)).isEqualTo(new Unknown(LampLight.Reason.TOO_FEW_BLOCKS));
    assertThat(judge(blocks(300, t -> 30))).isEqualTo(new Unknown(LampLight.Reason.TOO_DARK));
    assertThat(judge(blocks(300, t -> 1100))).isEqualTo(new Unknown(LampLight.Reason.SATURATED));
  }
}
