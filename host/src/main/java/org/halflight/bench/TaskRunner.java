package org.halflight.bench;

import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;

/** Runs tasks one after the other and gives up where the rig has no more to say. */
final class TaskRunner {
  private final RigWork work;

  TaskRunner(RigWork work) {
    this.work = work;
    // What happened before is no business of the tasks.
    work.restarted();
    work.changes();
  }

  /** Runs a task to its end. */
  <T extends RigTask> T run(T task) throws CalibrationRefused {
    work.send(task.begin());
    int beats = 0;
    while (true) {
      for (RigEvent event : work.step()) {
        if (event instanceof RigEvent.Answered answered
            && answered.result() != RigMessage.Result.DONE) {
          throw new CalibrationRefused(new CalibrationRefusal.NoAnswer());
        }
        if (task.hear(event) == RigTask.State.DONE) {
          return task;
        }
        task.next().ifPresent(work::send);
        beats += event instanceof RigEvent.TimeAt ? 1 : 0;
      }
      if (work.restarted()) {
        throw new CalibrationRefused(new CalibrationRefusal.Restarted());
      }
      boolean lost =
          work.changes().stream().map(LinkChange::state).anyMatch(LinkState.LOST::equals);
      if (lost || beats > task.patienceBeats()) {
        throw new CalibrationRefused(new CalibrationRefusal.NoAnswer());
      }
    }
  }

  /** Gives a command and waits for two beats. */
  void command(RigCommand command) throws CalibrationRefused {
    run(
        new RigTask() {
          private int beats;

          @Override
          public RigCommand begin() {
            return command;
          }

          @Override
          public State hear(RigEvent event) {
            beats += event instanceof RigEvent.TimeAt ? 1 : 0;
            return beats >= 2 ? State.DONE : State.UNDER_WAY;
          }
        });
  }
}
