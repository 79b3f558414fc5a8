package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.Seen;
import org.halflight.firstlight.StepWatch;
import org.halflight.firstlight.TaskJudge;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/**
 * Reads the pins of a rig that is lent to first light: its light ten times a second or more, its
 * levels as they change, and what it is set to. It uses the commands that every rig has.
 */
public final class RigLook {
  /** Another setting than after a start; each threshold moves by a volt or more. */
  private static final ThresholdCodes MOVED = new ThresholdCodes(0x64, 0xDC);

  private static final int PULSES = 3;

  /** Long enough for the ramped drive to reach its full light. */
  private static final double PULSE_SECONDS = 0.1;

  /** The work that a rig is lent to was stopped, or the rig did not do what it was asked. */
  public static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient CalibrationRefusal why;

    private Refused(CalibrationRefused why) {
      super(why);
      this.why = why.refusal();
    }

    /** Why. */
    public CalibrationRefusal why() {
      return why;
    }
  }

  private final RigWork work;
  private final BoardTraits board;
  private final AimMeter meter;
  private boolean reads;

  /**
   * @param work a rig that has greeted
   */
  public RigLook(RigWork work) {
    this.work = work;
    board = work.greeting().orElseThrow().board();
    meter = new AimMeter(board);
    meter.looksAtTheLamp(false);
  }

  /** Takes one line, with the light read on and on; what it said goes to a watch. */
  public void step(StepWatch watch) {
    if (!reads) {
      reads = true;
      work.send(meter.begin());
    }
    for (RigEvent said : work.step()) {
      watch.onEvent(said);
      meter.onEvent(said).ifPresent(work::send);
    }
  }

  /** Reads no light for a while. */
  public void rest() {
    if (reads) {
      reads = false;
      work.send(meter.end());
    }
  }

  /**
   * Puts the thresholds where they are after a start, whatever the light was set to.
   *
   * @throws Refused when the rig does not answer
   */
  public void begin() throws Refused {
    try {
      if (!board.fixedLevel()) {
        new TaskRunner(work).run(setting(ThresholdCodes.AFTER_START));
      }
    } catch (CalibrationRefused refused) {
      throw new Refused(refused);
    }
  }

  private static ThresholdTask setting(ThresholdCodes codes) {
    return new ThresholdTask(codes.low(), codes.high());
  }

  /**
   * Moves the thresholds and reads them back; a fixed level is only read.
   *
   * @param supply as it was measured
   * @throws Refused when the rig does not answer
   */
  public Finding thresholds(Optional<Seen.Supply> supply) throws Refused {
    rest();
    try {
      TaskRunner runner = new TaskRunner(work);
      if (board.fixedLevel()) {
        return TaskJudge.reference(runner.run(ThresholdTask.asItIs()).read(), supply);
      }
      RigMessage.Thresholds moved = runner.run(setting(MOVED)).read();
      RigMessage.Thresholds usual = runner.run(setting(ThresholdCodes.AFTER_START)).read();
      return TaskJudge.thresholds(board.oneLevel(), usual, moved);
    } catch (CalibrationRefused refused) {
      throw new Refused(refused);
    }
  }

  /**
   * The reference LED under its cover.
   *
   * @throws Refused when the rig does not answer
   */
  public Finding led() throws Refused {
    rest();
    try {
      TaskRunner runner = new TaskRunner(work);
      runner.command(RigCommand.DriveReference.off());
      double dark = runner.run(LightTask.asItIs()).counts();
      double lit = runner.run(LightTask.ofTheLed()).counts();
      runner.command(RigCommand.DriveReference.off());
      List<Integer> seen = new ArrayList<>();
      for (ReferenceDrive drive : List.of(ReferenceDrive.SQUARE, ReferenceDrive.RAMPED)) {
        PulseTask pulses =
            runner.run(new PulseTask(drive, board.rate().ticks(PULSE_SECONDS), PULSES));
        seen.add(
            (int)
                pulses.edges().stream()
                    .filter(edge -> edge.channel() == Channel.CENTRE_LOW && edge.high())
                    .count());
      }
      return TaskJudge.led(board, dark, lit, PULSES, seen.get(0), seen.get(1));
    } catch (CalibrationRefused refused) {
      work.leaveInOrder();
      throw new Refused(refused);
    }
  }
}
