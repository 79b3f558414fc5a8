package org.halflight.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.halflight.calibration.ChainFit;
import org.halflight.calibration.ClockPair;
import org.halflight.calibration.SeenPulse;
import org.halflight.calibration.SlopeTest;
import org.halflight.exposure.LevelPair;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.RigProfile;
import org.halflight.profile.ThresholdCounts;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand;
import org.halflight.signal.Channel;

/**
 * Calibrates a rig by its own reference LED and the clock of the host: light, trip points, pulses
 * at several levels and widths, ramped pulses, pings.
 */
public final class RigCalibration {
  /** Width of the ramped pulses: long against the filter that ramps them. */
  private static final double RAMPED_SECONDS = 0.02;

  /** Where a calibration stands. */
  public enum Stage {
    LIGHT,
    SWEEP,
    PULSES,
    RAMPED,
    CLOCK
  }

  /** What a calibration comes to. */
  public sealed interface Outcome {}

  /**
   * A profile.
   *
   * @param profile of this rig, today
   * @param pulses that the delays come from
   * @param fit of these pulses
   * @param rampedExcessSeconds how much longer the mean of both levels saw ramped pulses than their
   *     width, delays and levels taken into account; near zero where the correction holds for ramps
   * @param clock rates of the clock, absent where it was left out or too few pings came
   */
  public record Calibrated(
      RigProfile profile,
      List<SeenPulse> pulses,
      ChainFit fit,
      OptionalDouble rampedExcessSeconds,
      Optional<ClockPair> clock)
      implements Outcome {
    public Calibrated {
      pulses = List.copyOf(pulses);
    }
  }

  /** None, and why. */
  public record Refused(CalibrationRefusal refusal) implements Outcome {}

  private final RigWork work;
  private final CalibrationPlan plan;
  private final double hostClockPpm;
  private final Consumer<Stage> tell;
  private final DoubleConsumer share;

  /**
   * @param work a rig that has greeted
   * @param hostClockPpm standard uncertainty of the host's own clock
   * @param tell hears how it goes on
   */
  public RigCalibration(
      RigWork work, CalibrationPlan plan, double hostClockPpm, Consumer<Stage> tell) {
    this(work, plan, hostClockPpm, tell, part -> {});
  }

  /**
   * @param share hears what part of a long stage is done, 0 to 1
   */
  public RigCalibration(
      RigWork work,
      CalibrationPlan plan,
      double hostClockPpm,
      Consumer<Stage> tell,
      DoubleConsumer share) {
    this.share = share;
    this.work = work;
    this.plan = plan;
    this.hostClockPpm = hostClockPpm;
    this.tell = tell;
  }

  /**
   * Runs it through. The LED must light the centre sensor and nothing else may.
   *
   * @param today date of the profile
   */
  public Outcome run(LocalDate today) {
    try {
      return calibrated(today);
    } catch (CalibrationRefused refused) {
      work.leaveInOrder();
      return new Refused(refused.refusal());
    }
  }

  private Outcome calibrated(LocalDate today) throws CalibrationRefused {
    TaskRunner runner = new TaskRunner(work);
    tell.accept(Stage.LIGHT);
    ReferenceLight light = ReferenceLight.measure(runner);
    Map<Channel, ComparatorTrips> trips =
        plan.sweeps() ? sweeps(runner, light) : new EnumMap<>(Channel.class);
    ReferencePulses pulses = new ReferencePulses(runner, work.rate(), light, trips);
    tell.accept(Stage.PULSES);
    List<SeenPulse> seen = new ArrayList<>();
    Optional<ThresholdCounts> thresholds = Optional.empty();
    for (LevelPair levels : plan.levels()) {
      ThresholdTask stand = pulses.stand(levels);
      if (thresholds.isEmpty()) {
        thresholds = Optional.of(new ThresholdCounts(stand.lowCounts(), stand.highCounts()));
      }
      for (double width : plan.widthSeconds()) {
        seen.addAll(pulses.make(ReferenceDrive.SQUARE, width, plan.pulses()));
        share.accept(seconds(seen) / plan.pulseSeconds());
      }
    }
    ChainFit.Outcome outcome = ChainFit.of(seen, light.ledCounts() - light.darkCounts());
    if (outcome instanceof ChainFit.TooFew few) {
      return new Refused(new CalibrationRefusal.TooFewPoints(few.channel(), few.pulses()));
    }
    ChainFit fit = ((ChainFit.Fitted) outcome).fit();
    if (fit.slope().filter(SlopeTest::isFault).isPresent()) {
      return new Refused(new CalibrationRefusal.SlopeNotOne(fit.slope().orElseThrow()));
    }
    tell.accept(Stage.RAMPED);
    pulses.stand(LevelPair.GAUSS);
    OptionalDouble ramped = ramped(pulses, fit);
    tell.accept(Stage.CLOCK);
    Optional<ClockPair> clock = plan.pingSeconds() > 0 ? clock(runner) : Optional.empty();
    Optional<ClockRate> rate = clock.flatMap(pair -> pair.rate(hostClockPpm));
    return new Calibrated(
        new RigProfile(
            work.rig(),
            today,
            light.range(plan.levels()),
            thresholds,
            trips,
            rate,
            fit.lag(),
            fit.delays(),
            fit.lines(),
            fit.shortestTrustworthySeconds()),
        seen,
        fit,
        ramped,
        clock);
  }

  private Map<Channel, ComparatorTrips> sweeps(TaskRunner runner, ReferenceLight light)
      throws CalibrationRefused {
    tell.accept(Stage.SWEEP);
    Map<Channel, ComparatorTrips> trips = new EnumMap<>(Channel.class);
    for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH)) {
      runner.run(new SweepTask(channel, light)).trips().ifPresent(trip -> trips.put(channel, trip));
      runner.command(RigCommand.DriveReference.off());
    }
    return trips;
  }

  private OptionalDouble ramped(ReferencePulses pulses, ChainFit fit) throws CalibrationRefused {
    List<SeenPulse> seen = pulses.make(ReferenceDrive.RAMPED, RAMPED_SECONDS, plan.pulses());
    // The filter stretches one level by as much as it shortens the other: the mean is the width.
    double low = excess(seen, Channel.CENTRE_LOW, fit);
    double high = excess(seen, Channel.CENTRE_HIGH, fit);
    double lowReach = reach(seen, Channel.CENTRE_LOW);
    double highReach = reach(seen, Channel.CENTRE_HIGH);
    double ramp = (low - high) / (lowReach - highReach);
    return OptionalDouble.of((low - ramp * lowReach + high - ramp * highReach) / 2);
  }

  private static double excess(List<SeenPulse> seen, Channel channel, ChainFit fit) {
    return seen.stream()
            .filter(pulse -> pulse.channel() == channel)
            .mapToDouble(SeenPulse::excessSeconds)
            .average()
            .orElseThrow()
        - fit.delays(channel).widthOffsetSeconds();
  }

  private static double reach(List<SeenPulse> seen, Channel channel) {
    return seen.stream()
        .filter(pulse -> pulse.channel() == channel)
        .mapToDouble(SeenPulse::stretch)
        .average()
        .orElseThrow();
  }

  /** Both channels saw each pulse. */
  private static double seconds(List<SeenPulse> seen) {
    return seen.stream().mapToDouble(SeenPulse::trueSeconds).sum() / 2;
  }

  private Optional<ClockPair> clock(TaskRunner runner) throws CalibrationRefused {
    runner.run(new PingTask(plan.pingSeconds(), share));
    return ClockPair.of(work.stamps().received(), work.stamps().sent());
  }
}
