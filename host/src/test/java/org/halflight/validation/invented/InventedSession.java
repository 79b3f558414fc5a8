package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A run at one marked speed, in plain numbers.
 *
 * @param speed the marking
 * @param darkCounts light as it was read when it was set, in whole counts
 * @param fullCounts likewise
 * @param lowCounts the thresholds, likewise
 * @param highCounts likewise
 * @param profile text of the rig's profile; empty where nobody calibrated it
 * @param panelCounts light with the panel in place, moved by a radius of the pupil to either side,
 *     and in place again; empty where nobody tested that
 * @param told what the rig told, in order
 * @param trueSeconds all the light of each firing
 */
public record InventedSession(
    String speed,
    int darkCounts,
    int fullCounts,
    int lowCounts,
    int highCounts,
    Optional<String> profile,
    List<Double> panelCounts,
    List<Told> told,
    List<Double> trueSeconds) {
  /** Standard uncertainty of a reading of the panel. */
  public static final double PANEL_UNCERTAINTY_COUNTS = 0.3;

  private static final long BEAT_TICKS = 1L << 22;
  private static final double FIRST_SECONDS = 1;

  /** From the end of one firing to the next: more than quiet time and curve take. */
  private static final double PAUSE_SECONDS = 0.6;

  public InventedSession {
    panelCounts = List.copyOf(panelCounts);
    told = List.copyOf(told);
    trueSeconds = List.copyOf(trueSeconds);
  }

  /**
   * What a rig tells of some firings.
   *
   * @param lights of the firings, in order
   */
  public static InventedSession of(
      String speed, Rig rig, boolean calibrated, boolean curves, List<Light> lights, Draws draws) {
    return new Teller(rig, curves, draws).session(speed, calibrated, lights);
  }

  /** The same, with the light set once more when all is over. */
  public InventedSession withLightAgain() {
    List<Told> all = new ArrayList<>(told);
    all.add(new Told.LightAgain(told.get(told.size() - 1).ticks()));
    return new InventedSession(
        speed,
        darkCounts,
        fullCounts,
        lowCounts,
        highCounts,
        profile,
        panelCounts,
        all,
        trueSeconds);
  }

  /** The same, with the panel of light tested before the first firing. */
  InventedSession withPanelTested(Rig rig, double fall, Draws draws) {
    double span = rig.full() - rig.dark();
    // The mean of r squared over the pupil is a half in the middle, one more a radius beside it.
    double moved = span * (1 - 1.5 * fall) / (1 - 0.5 * fall);
    List<Double> counts = new ArrayList<>();
    for (double light : new double[] {span, moved, moved, span}) {
      counts.add(rig.dark() + light - 0.5 + PANEL_UNCERTAINTY_COUNTS * draws.normal());
    }
    return new InventedSession(
        speed, darkCounts, fullCounts, lowCounts, highCounts, profile, counts, told, trueSeconds);
  }

  /** One telling. */
  private static final class Teller {
    /** What software takes to look at the channel of the high level, in ticks. */
    private static final int STAMP_TICKS = 8;

    private final Rig rig;
    private final boolean curves;
    private final Draws draws;
    private final List<Told> told = new ArrayList<>();

    Teller(Rig rig, boolean curves, Draws draws) {
      this.rig = rig;
      this.curves = curves;
      this.draws = draws;
    }

    InventedSession session(String speed, boolean calibrated, List<Light> lights) {
      Optional<String> profile =
          calibrated ? Optional.of(Calibration.of(rig, draws)) : Optional.empty();
      double begins = FIRST_SECONDS;
      List<Double> truths = new ArrayList<>();
      List<Told> beats = new ArrayList<>();
      long beat = BEAT_TICKS;
      for (Light light : lights) {
        double lamp = (1 + rig.fade()) * (1 + rig.wander() * draws.normal());
        double zero = begins * rig.ticksPerSecond() + draws.between(0, 1);
        int from = told.size();
        edges(light, lamp, zero);
        long ends = (long) (zero + (light.endSeconds() + PAUSE_SECONDS) * rig.ticksPerSecond());
        for (; beat < ends; beat += BEAT_TICKS) {
          beats.add(beat(beat, light, lamp, zero, told.subList(from, told.size())));
        }
        if (curves) {
          curve(light, lamp, zero);
        }
        truths.add(light.trueSeconds());
        begins += light.endSeconds() + PAUSE_SECONDS + draws.between(0, 0.3);
      }
      for (int i = 0; i < 3; i++) {
        beats.add(new Told.Beat(beat + i * BEAT_TICKS, 0, sum16(rig.dark())));
      }
      told.addAll(beats);
      told.sort(Comparator.comparingLong(Told::ticks));
      return new InventedSession(
          speed,
          reading(rig.dark()),
          reading(rig.full()),
          reading(rig.lowThreshold()),
          reading(rig.highThreshold()),
          profile,
          List.of(),
          told,
          truths);
    }

    /** A reading is the count below the voltage. */
    private static int reading(double counts) {
      return (int) Math.floor(counts);
    }

    private static int sum16(double counts) {
      return (int) Math.floor(16 * Math.max(0, counts - 0.5));
    }

    private void edges(Light light, double lamp, double zero) {
      double span = (rig.full() - rig.dark()) * lamp;
      List<Told> own = new ArrayList<>();
      for (int channel = 0; channel < 2; channel++) {
        boolean low = channel == 0;
        double trip =
            (low ? rig.lowThreshold() + rig.lowOffset() : rig.highThreshold() + rig.highOffset())
                - rig.dark();
        double half = (low ? rig.lowHysteresis() : rig.highHysteresis()) / 2;
        long last = Long.MIN_VALUE;
        for (Light.Passing passing :
            light.passings((trip + half) / span, Math.max(1e-6, (trip - half) / span))) {
          double late =
              passing.rising()
                  ? (low ? rig.lowRiseSeconds() : rig.highRiseSeconds())
                  : (low ? rig.lowFallSeconds() : rig.highFallSeconds());
          long ticks =
              (long) Math.floor(zero + (passing.seconds() + late) * rig.ticksPerSecond())
                  + (low ? 0 : draws.upTo(STAMP_TICKS));
          last = Math.max(last + 1, ticks);
          own.add(new Told.Edge(channel, passing.rising(), last));
        }
      }
      own.sort(Comparator.comparingLong(Told::ticks));
      told.addAll(own);
    }

    private Told.Beat beat(long at, Light light, double lamp, double zero, List<Told> edges) {
      int levels = 0;
      for (Told each : edges) {
        if (each.ticks() <= at) {
          Told.Edge edge = (Told.Edge) each;
          levels = edge.light() ? levels | (1 << edge.channel()) : levels & ~(1 << edge.channel());
        }
      }
      double sum = 0;
      for (int i = 0; i < 16; i++) {
        double seconds = ((double) at - zero) / rig.ticksPerSecond() - (i + 0.5) / 16e3;
        sum += light.seen(seconds) / 16;
      }
      return new Told.Beat(at, levels, sum16(rig.dark() + (rig.full() - rig.dark()) * lamp * sum));
    }

    private void curve(Light light, double lamp, double zero) {
      List<Told.Part> parts = new CurveReader(light, rig, lamp, zero, draws).parts();
      Told.Part last = parts.get(parts.size() - 1);
      long over = last.firstTicks() + last.values().size() * last.periodTicks();
      long edgesOver = told.get(told.size() - 1).ticks();
      told.add(new Told.Curve(Math.max(over, edgesOver) + 16_000, parts));
    }
  }
}
