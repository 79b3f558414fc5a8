package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seeds;
import org.halflight.profile.FrontEndLag;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** A front end in closed form: one pole, comparators with fixed delays, stamps of 62.5 ns. */
class ChainFitTest {
  private static final double TAU = 4e-6;
  private static final double SPAN = 775;
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
    Random random = new Random(Seeds.usually(21));
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
                ChainFit.of(
                    pulses(new double[] {0.15, 0.25, 0.4}, new double[] {0.6, 0.7, 0.85}), SPAN))
            .fit();

    assertThat(fit.lagIsSeparate()).isTrue();
    // These comparators are not slow on flanks, which the fit cannot know.
    FrontEndLag lag = fit.lag().orElseThrow();
    assertThat(lag.seconds()).isCloseTo(TAU, within(2 * lag.standardUncertaintySeconds()));
    assertThat(lag.standardUncertaintySeconds()).isLessThan(0.3e-6);
    assertThat(fit.delays().get(Channel.CENTRE_LOW).widthOffsetSeconds())
        .isCloseTo(2e-6, within(0.1e-6));
    assertThat(fit.delays().get(Channel.CENTRE_HIGH).widthOffsetSeconds())
        .isCloseTo(6e-6, within(0.1e-6));
    assertThat(fit.delays().get(Channel.CENTRE_HIGH).riseSeconds()).isCloseTo(2e-6, within(0.2e-6));
    assertThat(fit.slope().orElseThrow().p()).isGreaterThan(0.01);
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
    ChainFit fit = ((ChainFit.Fitted) ChainFit.of(all, SPAN)).fit();
    assertThat(fit.lagIsSeparate()).isFalse();
    // These comparators are not slow on flanks, which the fit cannot know.
    FrontEndLag lag = fit.lag().orElseThrow();
    assertThat(lag.seconds()).isCloseTo(TAU, within(2 * lag.standardUncertaintySeconds()));
    assertThat(lag.standardUncertaintySeconds()).isLessThan(0.3e-6);
    assertThat(fit.slope()).isEmpty();
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
    ChainFit fit = ((ChainFit.Fitted) ChainFit.of(all, SPAN)).fit();
    assertThat(fit.shortestTrustworthySeconds().orElseThrow()).isEqualTo(100e-6);
  }

  @Test
  void tooFewPulsesAreSaid() {
    assertThat(ChainFit.of(List.of(), SPAN)).isEqualTo(new ChainFit.TooFew(Channel.CENTRE_LOW, 0));
    assertThat(ChainFit.of(List.of(pulse(Channel.CENTRE_HIGH, 0.7, 2e-3, 0, 0, 0)), SPAN))
        .isEqualTo(new ChainFit.TooFew(Channel.CENTRE_HIGH, 1));
  }

  /** The same pulses with widths that grow by a share of themselves. */
  private static SlopeTest slope(double share) {
    List<SeenPulse> wrong =
        pulses(new double[] {0.2}, new double[] {0.8}).stream()
            .map(
                p ->
                    new SeenPulse(
                        p.channel(),
                        p.level(),
                        p.trueSeconds(),
                        p.riseDelaySeconds(),
                        p.fallDelaySeconds() + stamped(share * p.trueSeconds())))
            .toList();
    return ((ChainFit.Fitted) ChainFit.of(wrong, SPAN)).fit().slope().orElseThrow();
  }

  @Test
  void aSlopeOtherThanOneShows() {
    assertThat(slope(0).isFault()).isFalse();
    assertThat(slope(1e-3).slopeError()).isCloseTo(1e-3, within(5e-6));
    assertThat(slope(1e-3).isFault()).as("0.1 percent").isTrue();
    // 100 ppm of the longest pulse, 20 ms, is 2 us.
    assertThat(slope(1e-4).isFault()).as("0.01 percent").isTrue();
    assertThat(slope(-1e-4).isFault()).isTrue();
  }

  /** The power that the test states is there: on pulses that are cut to steps and scatter. */
  @Test
  void theSlopeIsTestedAsSharplyAsItSays() {
    SlopeTest sound = slope(0);
    assertThat(sound.findable()).isBetween(1e-6, 20e-6);
    assertThat(slope(2 * sound.findable()).p()).isLessThan(SlopeTest.ALPHA);
    assertThat(sound.bendP()).isGreaterThan(0.01);
  }

  /**
   * A comparator that gathers overdrive is later on slow flanks; the lag is still found within its
   * expanded uncertainty, from none of it to more than common ones have.
   */
  @Test
  void theSlownessOfComparatorsIsNotTakenForLag() {
    for (double gather : new double[] {0, 2, 5, 10, 20}) {
      for (double tau : new double[] {0.5e-6, 1e-6, 3e-6}) {
        List<SeenPulse> all = new ArrayList<>();
        for (double q : new double[] {0.2113, 0.12, 0.35, 0.7887, 0.65, 0.88}) {
          double millivolts = SPAN * 5000 / 1024;
          double rise =
              -tau * Math.log(1 - q)
                  + 1e-6 * Math.sqrt(2 * gather * 1e6 * tau / (millivolts * (1 - q)));
          double fall =
              -tau * Math.log(q) + 1e-6 * Math.sqrt(2 * gather * 1e6 * tau / (millivolts * q));
          for (int i = 0; i < 10; i++) {
            all.add(
                new SeenPulse(
                    q < 0.5 ? Channel.CENTRE_LOW : Channel.CENTRE_HIGH,
                    q,
                    2e-3,
                    stamped(rise + 3e-7),
                    stamped(fall + 3e-7)));
          }
        }
        FrontEndLag lag = ((ChainFit.Fitted) ChainFit.of(all, SPAN)).fit().lag().orElseThrow();
        assertThat(Math.abs(lag.seconds() - tau))
            .as("gathers %s mV us, lags %s s: %s", gather, tau, lag)
            .isLessThan(2 * lag.standardUncertaintySeconds());
        assertThat(lag.standardUncertaintySeconds()).isLessThan(0.1e-6);
      }
    }
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
    return PulseMatch.of(MADE, edges, Channel.CENTRE_LOW, 0.2, 0.2, TickRate.BOARD_16_MHZ);
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
