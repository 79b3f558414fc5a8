package org.halflight.bench;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ProfileCorrection;
import org.halflight.profile.RigProfile;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/** Reads the slots of a disc that turns before the sensor: its light, the levels, its edges. */
public final class DiscRun {
  /** How long to take edges for: some tens of turns. */
  public static final double USUAL_SECONDS = 6;

  private static final Set<Channel> CENTRE = EnumSet.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH);

  /** The part of a usual reading that its light takes. */
  private static final double LIGHT_PART = 0.3;

  /** Where a reading stands. */
  public enum Stage {
    LIGHT,
    LEVELS,
    EDGES
  }

  /** What came of it. */
  public sealed interface Outcome {}

  /** Edges, to be read. */
  public record Taken(DiscEdges edges) implements Outcome {}

  /** No levels could be placed in the light. */
  public record NoLight(DiscLight.Outcome light) implements Outcome {}

  /** The rig has one level only. */
  public record OneLevelRig() implements Outcome {}

  /** The rig did not do what it was asked, or the person stopped it. */
  public record Refused(CalibrationRefusal refusal) implements Outcome {}

  private final RigWork work;
  private final Consumer<Stage> report;
  private final DoubleConsumer share;

  /**
   * @param work a rig that has greeted
   * @param report hears how it goes on
   * @param share hears what part of it is over, 0 to 1
   */
  public DiscRun(RigWork work, Consumer<Stage> report, DoubleConsumer share) {
    this.work = work;
    this.report = report;
    this.share = share;
  }

  /**
   * Runs it through while the disc turns.
   *
   * @param seconds how long to take edges
   * @param profile of the rig, for where its comparators switch
   */
  public Outcome run(double seconds, Optional<RigProfile> profile) {
    RigMessage.Greeting greeting = work.greeting().orElseThrow();
    if ((greeting.channels() & 1 << Channel.CENTRE_HIGH.code()) == 0) {
      return new OneLevelRig();
    }
    try {
      TaskRunner runner = new TaskRunner(work);
      // Curves of slow slots would hold the edges up.
      runner.command(new RigCommand.TakeCurves(RigCommand.CurveMode.OFF));
      Outcome outcome = readEdges(runner, seconds, profile);
      runner.command(new RigCommand.TakeCurves(RigCommand.CurveMode.ON));
      return outcome;
    } catch (CalibrationRefused refused) {
      work.send(new RigCommand.TakeCurves(RigCommand.CurveMode.ON));
      work.leaveInOrder();
      return new Refused(refused.refusal());
    }
  }

  private Outcome readEdges(TaskRunner runner, double seconds, Optional<RigProfile> profile)
      throws CalibrationRefused {
    report.accept(Stage.LIGHT);
    DiscLight.Outcome light =
        DiscLight.of(
            runner.run(LightTask.ofADisc(part -> share.accept(LIGHT_PART * part))).blocks(),
            DiscEdges.trips(profile.map(ProfileCorrection::new)));
    if (!(light instanceof DiscLight.Found found)) {
      return new NoLight(light);
    }
    report.accept(Stage.LEVELS);
    ThresholdTask stand = runner.run(new ThresholdTask(found.codes().low(), found.codes().high()));
    report.accept(Stage.EDGES);
    EdgesTask edges =
        runner.run(
            new EdgesTask(
                edge -> CENTRE.contains(edge.channel()),
                seconds,
                part -> share.accept(LIGHT_PART + (1 - LIGHT_PART) * part)));
    return new Taken(
        new DiscEdges(
            work.rig(),
            work.rate(),
            new LightLevels(
                found.light().darkCounts(),
                found.light().fullCounts(),
                stand.lowCounts(),
                stand.highCounts()),
            edges.edges()));
  }
}
