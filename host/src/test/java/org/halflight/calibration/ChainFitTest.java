package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** A front end in closed form: one pole, comparators with fixed delays, stamps of 62.5 ns. */
class ChainFitTest {
  private static final double TAU = 4e-6;
  private static final double[] WIDTHS = {100e-6, 500e-6, 2e-3, 20e-3};

  private static double stamped(double seconds) {
    return Math.floor(seconds * 16e6) / 16e6;
  }

  /** Light 1 - exp(-t / tau) from on, from its height at off with exp(-t / tau). */
  private static SeenPulse pulse(
      Channel channel, double q, double width, double rise, double fall, double jitter) {
    double height = 1 - Math.exp(-width / TAU);
    return new SeenPulse(
        channel,
        q,
        width,
        stamped(-TAU * Math.log(1 - q) + rise + jitter),
        stamped(-TAU * Math.log(q / height) + fall + jitter));
  }

  private static List<SeenPulse> pulses(double[] lows, double[] highs) {
    Random random = new Random(21);
    List<SeenPulse> all = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      for (double width : WIDTHS) {
        for (double q : lows) {
          all.add(
              pulse(
                  Channel.CENTRE_LOW,
                  q,
                  width,
                  1e-6,
                  3e-6,
                  1e-7 * Math.abs(random.nextGaussian())));
        }
        for (double q : highs) {
          all.add(
              pulse(
                  Channel.CENTRE_HIGH,
                  q,
                  width,
                  2e-6,
                  8e-6,
                  1e-7 * Math.abs(random.nextGaussian())));
        }
      }
    }
    return all;
  }

  @Test
  void severalLevelsTellLagAndComparatorsApart() {
    ChainFit fit =
        ((ChainFit.Fitted)
                ChainFit.of(pulses(new double[] {0.15, 0.25, 0.4}, new double[] {0.6, 0.7, 0.85})))
            .fit();

    assertThat(fit.lagIsSeparate()).isTrue();
    assertThat(fit.lag().orElseThrow().seconds()).isCloseTo(TAU, within(0.05e-6));
    assertThat(fit.delays().get(Channel.CENTRE_LOW).widthOffsetSeconds())
        .isCloseTo(2e-6, within(0.1e-6));
    assertThat(fit.delays().get(Channel.CENTRE_HIGH).widthOffsetSeconds())
        .isCloseTo(6e-6, within(0.1e-6));
    assertThat(fit.delays().get(Channel.CENTRE_HIGH).riseSeconds()).isCloseTo(2e-6, within(0.2e-6));
    assertThat(fit.slopeP().orElseThrow()).isGreaterThan(0.01);
    assertThat(fit.lines().get(Channel.CENTRE_LOW).slopeIsFixed()).isTrue();
    assertThat(fit.shortestTrustworthySeconds().orElseThrow()).isEqualTo(100e-6);
  }

  /** A one-pole lag makes square pulses 1.317 tau longer at q1 and shorter at q2. */
  @Test
  void oneLevelEachTakesTheComparatorsAsEqual() {
    List<SeenPulse> all = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      all.add(pulse(Channel.CENTRE_LOW, 0.2113, 2e-3, 1e-6, 2e-6, 0));
      all.add(pulse(Channel.CENTRE_HIGH, 0.7887, 2e-3, 1e-6, 2e-6, 0));
    }
    ChainFit fit = ((ChainFit.Fitted) ChainFit.of(all)).fit();
    assertThat(fit.lagIsSeparate()).isFalse();
    assertThat(fit.lag().orElseThrow().seconds()).isCloseTo(TAU, within(0.05e-6));
    assertThat(fit.slopeP()).isEmpty();
    double low = all.get(0).excessSeconds() - 1e-6;
    assertThat(low).isCloseTo(1.317 * TAU, within(0.1e-6));
  }

  @Test
  void aPulseThatThePoleSwallowsIsNotTrusted() {
    List<SeenPulse> all = new ArrayList<>(pulses(new double[] {0.2113}, new double[] {0.7887}));
    for (int i = 0; i < 10; i++) {
      all.add(pulse(Channel.CENTRE_LOW, 0.2113, 8e-6, 1e-6, 3e-6, 0));
      all.add(pulse(Channel.CENTRE_HIGH, 0.7887, 8e-6, 2e-6, 8e-6, 0));
    }
    ChainFit fit = ((ChainFit.Fitted) ChainFit.of(all)).fit();
    assertThat(fit.shortestTrustworthySeconds().orElseThrow()).isEqualTo(100e-6);
  }

  @Test
  void tooFewPulsesAreSaid() {
    assertThat(ChainFit.of(List.of())).isEqualTo(new ChainFit.TooFew(Channel.CENTRE_LOW, 0));
    assertThat(ChainFit.of(List.of(pulse(Channel.CENTRE_HIGH, 0.7, 2e-3, 0, 0, 0))))
        .isEqualTo(new ChainFit.TooFew(Channel.CENTRE_HIGH, 1));
  }

  @Test
  void aSlopeOtherThanOneShows() {
    List<SeenPulse> wrong =
        pulses(new double[] {0.2}, new double[] {0.8}).stream()
            .map(
                p ->
                    new SeenPulse(
                        p.channel(),
                        p.level(),
                        p.trueSeconds(),
                        p.riseDelaySeconds(),
                        p.fallDelaySeconds() + 1e-3 * p.trueSeconds()))
            .toList();
    assertThat(((ChainFit.Fitted) ChainFit.of(wrong)).fit().slopeP().orElseThrow())
        .isLessThan(1e-6);
  }

  private static final List<MadePulse> MADE =
      List.of(
          new MadePulse(100_000, 132_000),
          new MadePulse(500_000, 532_000),
          new MadePulse(900_000, 932_000));

  private static List<Edge> edges(boolean high, int delay) {
    List<Edge> edges = new ArrayList<>();
    for (MadePulse made : MADE) {
      edges.add(new Edge(Channel.CENTRE_LOW, high, made.beginTicks() + delay));
      edges.add(new Edge(Channel.CENTRE_LOW, !high, made.endTicks() + 2L * delay));
    }
    return edges;
  }

  private static PulseMatch.Outcome match(List<Edge> edges) {
    return PulseMatch.of(MADE, edges, Channel.CENTRE_LOW, 0.2, TickRate.BOARD_16_MHZ);
  }

  @Test
  void pulsesAreFoundByTheirPlace() {
    PulseMatch.Matched found = (PulseMatch.Matched) match(edges(true, 16));
    assertThat(found.pulses()).hasSize(3);
    assertThat(found.pulses().get(0).riseDelaySeconds()).isEqualTo(1e-6);
    assertThat(found.pulses().get(0).fallDelaySeconds()).isEqualTo(2e-6);
    assertThat(found.missed()).isZero();
  }

  @Test
  void wrongUseHasItsOutcome() {
    assertThat(match(List.of())).isEqualTo(new PulseMatch.NothingSeen(Channel.CENTRE_LOW));
    assertThat(match(edges(false, 16))).isEqualTo(new PulseMatch.Reversed(Channel.CENTRE_LOW));
    assertThat(match(edges(true, 200_000)))
        .isEqualTo(new PulseMatch.Disturbed(Channel.CENTRE_LOW, 3));
  }
}
