package org.halflight.validation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.ClockPair;
import org.halflight.calibration.ClockStamp;
import org.halflight.calibration.OneSided;
import org.halflight.calibration.SeenPulse;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ProfileCorrection;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * What calibration is worth, simulated in closed form: a clock 3450 ppm fast that gains 1 ppm a
 * minute, a front end that lags by one pole, comparators with unequal fixed delays, offsets and
 * hysteresis, and a leaf shutter with straight ramps of 1 ms at three lamp levels.
 */
final class CalibratedTimes {
  static final double LAG = 3e-6;
  private static final double DARK = 5;
  private static final double LED = 780;
  private static final double HYSTERESIS = 3;
  private static final double RAMP = 1e-3;
  private static final double[] PULSES = {100e-6, 500e-6, 2e-3, 1.0 / 64, 0.125};

  /** Fixed delays on rising and falling light, and the offset in counts. */
  private record Trips(Channel channel, double rise, double fall, double offset) {}

  private static final Trips LOW = new Trips(Channel.CENTRE_LOW, 1.2e-6, 3e-6, 2);
  private static final Trips HIGH = new Trips(Channel.CENTRE_HIGH, 2e-6, 9e-6, -3);

  /** One row of the table: errors as shares of the true effective time. */
  record Row(double seconds, double lampCounts, double before, double after) {}

  private final SplittableRandom random = new SplittableRandom(Validation.SEED);

  private static long ticks(double second) {
    double fast = 3450e-6 * second + 1e-6 / 60 * second * second / 2;
    return (long) Math.floor(16e6 * (second + fast));
  }

  /** Pings of two minutes from a time on, as a USB port delays them. */
  private ClockPair clock(double from) {
    DoubleSupplier delay = OneSided.usb(random);
    List<ClockStamp> received = new ArrayList<>();
    List<ClockStamp> sent = new ArrayList<>();
    for (int i = 0; i < 480; i++) {
      double at = from + i * 0.25;
      double board = ticks(at) / 16e6;
      received.add(new ClockStamp(board, at + delay.getAsDouble()));
      sent.add(new ClockStamp(board, at - delay.getAsDouble()));
    }
    return ClockPair.of(received, sent).orElseThrow();
  }

  private List<SeenPulse> pulses(Trips of, double... levels) {
    List<SeenPulse> seen = new ArrayList<>();
    for (double level : levels) {
      double up = level + HYSTERESIS / 2 / (LED - DARK);
      double down = level - HYSTERESIS / 2 / (LED - DARK);
      for (double width : PULSES) {
        double height = -Math.expm1(-width / LAG);
        for (int i = 0; i < 10; i++) {
          double jitter = random.nextDouble() / 16e6;
          double rise = -LAG * Math.log(1 - up) + of.rise() + jitter;
          double fall = -LAG * Math.log(down / height) + of.fall() + jitter;
          seen.add(
              new SeenPulse(
                  of.channel(),
                  up,
                  down,
                  width,
                  Math.floor(rise * 16e6) / 16e6,
                  Math.floor(fall * 16e6) / 16e6));
        }
      }
    }
    return seen;
  }

  /** The profile that such a rig gets. */
  RigProfile profile(double from) {
    List<SeenPulse> seen = new ArrayList<>(pulses(LOW, 0.211, 0.12, 0.35));
    seen.addAll(pulses(HIGH, 0.789, 0.65, 0.88));
    ChainFit fit = ((ChainFit.Fitted) ChainFit.of(seen, LED - DARK)).fit();
    return new RigProfile(
        new ProfiledRig("SIMULATED", "full", "simulated"),
        LocalDate.EPOCH,
        new LightRange(DARK, LED, LED),
        Optional.empty(),
        Map.of(LOW.channel(), trip(LOW), HIGH.channel(), trip(HIGH)),
        clock(from).rate(0),
        fit.lag(),
        fit.delays(),
        fit.lines(),
        fit.shortestTrustworthySeconds());
  }

  /** Swept in steps of a quarter of a count. */
  private ComparatorTrips trip(Trips of) {
    double step = 0.25 * (random.nextDouble() - 0.5);
    return new ComparatorTrips(
        of.offset() + HYSTERESIS / 2 + step, of.offset() - HYSTERESIS / 2 + step, 0.29);
  }

  private static Firing firing(double at, double effective, LightLevels light) {
    List<Edge> edges = new ArrayList<>();
    double span = light.fullCounts() - DARK;
    for (Trips of : List.of(LOW, HIGH)) {
      double counts = of.equals(LOW) ? light.lowCounts() : light.highCounts();
      double up = (counts + of.offset() + HYSTERESIS / 2 - DARK) / span;
      double down = (counts + of.offset() - HYSTERESIS / 2 - DARK) / span;
      edges.add(new Edge(of.channel(), true, ticks(at + up * RAMP + LAG + of.rise())));
      edges.add(
          new Edge(
              of.channel(), false, ticks(at + effective + (1 - down) * RAMP + LAG + of.fall())));
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of());
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    // Two minutes of pings, then half an hour of firings.
    ProfileCorrection correction = new ProfileCorrection(profile(0));
    for (double seconds : new double[] {1.0 / 512, 1.0 / 64, 1}) {
      for (double lamp : new double[] {500, 700, 900}) {
        ThresholdCodes codes = ((ThresholdCodes.Found) ThresholdCodes.forLight(DARK, lamp)).codes();
        LightLevels light = new LightLevels(DARK, lamp, codes.lowCounts(), codes.highCounts());
        Firing firing = firing(1800, seconds, light);
        TickRate nominal = TickRate.BOARD_16_MHZ;
        rows.add(
            new Row(
                seconds,
                lamp,
                effective(firing, light, TripPoints.EXACT, nominal) / seconds - 1,
                effective(
                            correction.firing(firing, nominal),
                            light,
                            correction.trips(TripPoints.EXACT),
                            correction.rate(nominal))
                        / seconds
                    - 1));
      }
    }
    return rows;
  }

  private static double effective(
      Firing firing, LightLevels light, TripPoints trips, TickRate rate) {
    LevelPair levels = trips.middle(light).orElseThrow();
    return ((Exposure.Timed) LeafExposureMethod.measure(firing, levels, rate)).effectiveSeconds();
  }

  /** The rms error of the slope, in ppm, of the hull, median slopes and least squares. */
  static double[] slopeErrors(String noise, int n, int runs) {
    double[] squares = new double[3];
    SplittableRandom draws = new SplittableRandom(Validation.SEED);
    for (int run = 0; run < runs; run++) {
      DoubleSupplier delay =
          noise.equals("USB") ? OneSided.usb(draws) : OneSided.exponential(draws, 200e-6);
      double[] errors = OneSided.slopeErrors(OneSided.stamps(n, 350e-6, delay), 350e-6);
      for (int i = 0; i < squares.length; i++) {
        squares[i] += errors[i] * errors[i] / runs;
      }
    }
    return new double[] {Math.sqrt(squares[0]), Math.sqrt(squares[1]), Math.sqrt(squares[2])};
  }

  /** The sections of docs/validation.md. */
  static List<String> page() {
    List<String> lines = new ArrayList<>(times());
    addSlopes(lines);
    return lines;
  }

  /** The section on times. */
  static List<String> times() {
    List<String> lines = new ArrayList<>();
    lines.add("## What calibration of a rig is worth");
    lines.add("");
    lines.add(
        "**Simulated** in closed form, no hardware: a clock 3450 ppm fast that gains 1 ppm a minute, and firings half an hour after two minutes of pings through a USB port with delays. The front end lags by 3 \u00b5s. The comparators have fixed delays of 1.2/3 \u00b5s (low) and 2/9 \u00b5s (high, rising and falling light), offsets of 2 and -3 counts, and hysteresis of 3 counts. Ramps are straight, 1 ms.");
    lines.add("The profile was made at one light of the reference LED (780 counts). Errors of the");
    lines.add("effective time; `CalibratedTimesTest` holds them.");
    lines.add("");
    lines.add("| effective time | lamp, counts | uncalibrated | calibrated |");
    lines.add("|---|---|---|---|");
    for (Row row : new CalibratedTimes().rows()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "| 1/%d s | %.0f | %+.3f %% | %+.4f %% |",
              Math.round(1 / row.seconds()),
              row.lampCounts(),
              100 * row.before(),
              100 * row.after()));
    }
    lines.add("");
    return lines;
  }

  private static void addSlopes(List<String> lines) {
    lines.add("## Slope of one clock against another");
    lines.add("");
    lines.add(
        "Rms error of the slope in ppm over 400 **simulated** runs, one stamp a second, seed 2026.");
    lines.add(
        "'Reference' is an independent computation in another language for the same delays (400 runs). 'Exponential' has a mean of 200 \u00b5s. 'USB' is a frame of 1 ms, 100 \u00b5s exponential and stalls in 3 of 100, whose length differs between the two computations.");
    lines.add("");
    lines.add(
        "| delays | stamps | hull | reference | median slopes | reference | least squares | reference |");
    lines.add("|---|---|---|---|---|---|---|---|");
    slopes(lines, "exponential", 60, 0.40, 1.02, 1.48);
    slopes(lines, "exponential", 600, 0.004, 0.028, 0.050);
    slopes(lines, "USB", 60, 2.7, 2.6, 8.3);
    slopes(lines, "USB", 600, 0.078, 0.080, 0.31);
    lines.add("");
  }

  private static void slopes(List<String> lines, String noise, int n, double... reference) {
    double[] found = slopeErrors(noise, n, 400);
    lines.add(
        String.format(
            Locale.ROOT,
            "| %s | %d | %.2g | %s | %.2g | %s | %.2g | %s |",
            noise,
            n,
            found[0],
            reference[0],
            found[1],
            reference[1],
            found[2],
            reference[2]));
  }
}
