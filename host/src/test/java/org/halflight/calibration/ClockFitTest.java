package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.halflight.fixtures.PublishedTable;
import org.halflight.fixtures.Seed;
import org.halflight.profile.ClockRate;
import org.junit.jupiter.api.Test;

class ClockFitTest {
  private static List<ClockStamp> published() {
    List<ClockStamp> stamps = new ArrayList<>();
    for (Map<String, String> row : PublishedTable.rows("clock_onesided_synthetic.csv")) {
      stamps.add(
          new ClockStamp(
              Double.parseDouble(row.get("mcu_us")) * 1e-6,
              Double.parseDouble(row.get("host_us")) * 1e-6));
    }
    return stamps;
  }

  /** The answer of a linear programme for the same data, at the head of the file. */
  @Test
  void hullEqualsTheLinearProgramme() {
    ClockLine line = HullLine.of(published(), StampSide.HOST_LATE);
    assertThat(line.slope() * 1e6).isCloseTo(411.577740273, within(1e-4));
    // Its intercept is told from the first board time on.
    double first = published().get(0).boardSeconds();
    double atFirst = published().get(0).differenceSeconds();
    assertThat((line.at(first) - atFirst) * 1e6).isCloseTo(-202.903249, within(0.01));
  }

  /** Theil-Sen of the same data: 410.618437 ppm (head of the file). */
  @Test
  void medianSlopesEqualTheirPublishedFigure() {
    assertThat(EarlyStamps.medianLine(published()).slope() * 1e6)
        .isCloseTo(410.6184373, within(1e-4));
  }

  @Test
  void stampsThatTheHostSendsUseTheUpperHull() {
    List<ClockStamp> mirrored =
        published().stream()
            .map(
                stamp ->
                    new ClockStamp(
                        stamp.boardSeconds(), stamp.boardSeconds() - stamp.differenceSeconds()))
            .toList();
    assertThat(HullLine.of(mirrored, StampSide.HOST_EARLY).slope() * 1e6)
        .isCloseTo(-411.577740273, within(1e-4));
  }

  @Test
  void theFitTellsHowSureItIsAndWhichWayTheClockRuns() {
    ClockFit fit = ((ClockFit.Fitted) ClockFit.of(published(), StampSide.HOST_LATE)).fit();

    // The host gains on the board: the board is slow. The truth is 412.1698 ppm of the host.
    double truth = 1e6 * (1 / (1 + 412.1698e-6) - 1);
    assertThat(fit.fastPpm()).isNegative();
    assertThat(Math.abs(fit.fastPpm() - truth)).isLessThan(3 * fit.standardUncertaintyPpm());
    assertThat(fit.standardUncertaintyPpm()).isBetween(0.05, 5.0);
    assertThat(fit.dropped()).isZero();
    assertThat(fit.rate(20).standardUncertaintyPpm()).isGreaterThan(20);
    assertThat(fit.rate(20).source()).isEqualTo(ClockRate.Source.HOST_CLOCK);
  }

  @Test
  void oneEarlyStampIsDroppedBeforeItDragsTheHull(@Seed(7) long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<ClockStamp> stamps =
        new ArrayList<>(OneSided.stamps(120, 300e-6, OneSided.exponential(random, 200e-6)));
    double honest = HullLine.of(stamps, StampSide.HOST_LATE).slope();
    ClockStamp early = stamps.get(30);
    stamps.set(30, new ClockStamp(early.boardSeconds(), early.hostSeconds() - 0.05));

    assertThat(Math.abs(HullLine.of(stamps, StampSide.HOST_LATE).slope() - honest))
        .isGreaterThan(100e-6);
    ClockFit fit = ((ClockFit.Fitted) ClockFit.of(stamps, StampSide.HOST_LATE)).fit();
    assertThat(fit.dropped()).isEqualTo(1);
    assertThat(fit.fastPpm()).isCloseTo(-299.91, within(3 * fit.standardUncertaintyPpm()));
  }

  @Test
  void stampsThatNoLineFitsAreAContradiction(@Seed(8) long seed) {
    // The host's clock was slewed by 500 ppm for the last third: no one rate is right.
    SplittableRandom random = new SplittableRandom(seed);
    List<ClockStamp> stamps = new ArrayList<>();
    for (ClockStamp stamp : OneSided.stamps(240, 300e-6, OneSided.exponential(random, 50e-6))) {
      double slewed = Math.max(0, stamp.boardSeconds() - 160) * 500e-6;
      stamps.add(new ClockStamp(stamp.boardSeconds(), stamp.hostSeconds() + slewed));
    }
    assertThat(ClockFit.of(stamps, StampSide.HOST_LATE)).isInstanceOf(ClockFit.Contradiction.class);
  }

  @Test
  void tooFewStampsAreSaid() {
    assertThat(ClockFit.of(published().subList(0, 19), StampSide.HOST_LATE))
        .isEqualTo(new ClockFit.TooFew(19));
  }

  @Test
  void windowsFollowAClockThatDrifts(@Seed(9) long seed) {
    // 3450 ppm fast and 1 ppm a minute more; delays of a host at rest.
    SplittableRandom random = new SplittableRandom(seed);
    List<ClockStamp> stamps = new ArrayList<>();
    ClockWatch watch = new ClockWatch(StampSide.HOST_LATE);
    double board = 0;
    for (int second = 0; second < 600; second++) {
      board += 1 + (3450 + second / 60.0) * 1e-6;
      ClockStamp stamp = new ClockStamp(board, second + 200e-6 * random.nextExponential());
      stamps.add(stamp);
      watch.add(stamp);
    }
    double[] middles = {3450.5 + 0.5, 3452.5 + 0.5, 3454.5 + 0.5, 3456.5 + 0.5, 3458.5 + 0.5};
    List<List<ClockStamp>> windows = ClockWatch.windows(stamps, 120);
    assertThat(windows).hasSize(5);
    for (int i = 0; i < middles.length; i++) {
      ClockFit fit = ((ClockFit.Fitted) ClockFit.of(windows.get(i), StampSide.HOST_LATE)).fit();
      assertThat(fit.fastPpm()).as("window " + i).isCloseTo(middles[i], within(1.5));
    }
    assertThat(watch.rate().orElseThrow().fastPpm()).isCloseTo(3459, within(1.5));
    watch.add(new ClockStamp(0, 700));
    assertThat(watch.rate()).as("after a restart").isEmpty();
  }

  @Test
  void timesThatDoNotRiseAreTheCallersMistake() {
    assertThatThrownBy(
            () ->
                HullLine.of(
                    List.of(new ClockStamp(1, 1), new ClockStamp(1, 2)), StampSide.HOST_LATE))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
