package org.halflight.bench;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.calibration.ControlLimits;
import org.halflight.calibration.RigCheck;
import org.halflight.calibration.SeenPulse;
import org.halflight.exposure.LevelPair;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.FrontEndLag;
import org.halflight.profile.RigProfile;
import org.halflight.profile.WidthLine;
import org.halflight.rig.ReferenceDrive;
import org.halflight.signal.Channel;
import org.halflight.stats.Sample;

/**
 * The rig check before a session: ten reference pulses of 2 ms at the Gauss levels, each as the
 * mean of both channels less its width and less what the profile says, on a chart.
 */
public final class RigCheckRun {
  /** Pulses of a check. */
  public static final int PULSES = 10;

  /** Width of each. */
  public static final double WIDTH_SECONDS = 2e-3;

  /**
   * The limits are never narrower than for this scatter: a shift of 3 us is 0.15 % of 2 ms, which
   * is 0.002 stop, and does not matter.
   */
  public static final double LEAST_SD_SECONDS = 1e-6;

  /** What a check comes to. */
  public sealed interface Outcome {}

  /** A chart. */
  public record Checked(RigCheck check) implements Outcome {}

  /** None, and why. */
  public record Refused(CalibrationRefusal refusal) implements Outcome {}

  private final RigWork work;

  /**
   * @param work a rig that has greeted
   */
  public RigCheckRun(RigWork work) {
    this.work = work;
  }

  /** Runs it through, against the rig's own profile. */
  public Outcome run(RigProfile profile) {
    try {
      TaskRunner runner = new TaskRunner(work);
      ReferenceLight light = ReferenceLight.measure(runner);
      ReferencePulses pulses =
          new ReferencePulses(runner, work.rate(), light, profile.tripPoints());
      pulses.stand(LevelPair.GAUSS);
      List<SeenPulse> seen = pulses.make(ReferenceDrive.SQUARE, WIDTH_SECONDS, PULSES);
      double[] low = left(seen, Channel.CENTRE_LOW, profile);
      double[] high = left(seen, Channel.CENTRE_HIGH, profile);
      double[] values = new double[Math.min(low.length, high.length)];
      for (int i = 0; i < values.length; i++) {
        values[i] = (low[i] + high[i]) / 2;
      }
      if (values.length < RigCheck.LEAST) {
        return new Refused(new CalibrationRefusal.TooFewPoints(Channel.CENTRE_LOW, values.length));
      }
      ControlLimits limits = limits(profile);
      return new Checked(judged(RigCheck.of(limits, values), limits, low, high));
    } catch (CalibrationRefused refused) {
      work.leaveInOrder();
      return new Refused(refused.refusal());
    }
  }

  /** A lag moves both levels against each other, which their mean does not show. */
  private static RigCheck judged(
      RigCheck check, ControlLimits limits, double[] low, double[] high) {
    Set<RigCheck.Signal> signals = new HashSet<>(check.signals());
    if (Math.abs(Sample.of(low).mean().get() - Sample.of(high).mean().get())
        > 2 * 3 * limits.sd()) {
      signals.add(RigCheck.Signal.LEVELS_APART);
    }
    return new RigCheck(check.limits(), check.points(), signals);
  }

  private static ControlLimits limits(RigProfile profile) {
    double scatter =
        profile.lines().values().stream()
            .max(Comparator.comparingDouble(WidthLine::residualSdSeconds))
            .map(WidthLine::residualSdSeconds)
            .orElse(0.0);
    return new ControlLimits(0, Math.max(LEAST_SD_SECONDS, scatter));
  }

  /** Excess widths less what the profile expects at these levels. */
  private static double[] left(List<SeenPulse> seen, Channel channel, RigProfile profile) {
    Map<Channel, EdgeDelays> delays = profile.delays();
    double offset =
        Optional.ofNullable(delays.get(channel)).map(EdgeDelays::widthOffsetSeconds).orElse(0.0);
    double tau = profile.lag().map(FrontEndLag::seconds).orElse(0.0);
    return seen.stream()
        .filter(pulse -> pulse.channel() == channel)
        .mapToDouble(pulse -> pulse.excessSeconds() - offset - tau * pulse.stretch())
        .toArray();
  }
}
