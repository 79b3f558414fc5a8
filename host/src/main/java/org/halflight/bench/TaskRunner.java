package org.halflight.bench;

import java.util.List;
import org.halflight.link.LinkState;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.time.TickRate;

/**
 * Runs tasks one after the other and gives up where the rig has no more to say.
 *
 * <p>How long the rig takes is told by its own beats behind its answer to a task. Those before the
 * answer may be old, where this computer is slow to take what came.
 */
final class TaskRunner {
  private final RigWork work;

  TaskRunner(RigWork work) {
    this.work = work;
    // What happened before is no business of the tasks.
    work.restarted();
    work.unanswered();
    work.changes();
  }

  /** Runs a task to its end. */
  <T extends RigTask> T run(T task) throws CalibrationRefused {
    send(task, task.begin());
    Elapsed elapsed = new Elapsed();
    while (true) {
      List<RigEvent> said = work.step();
      if (work.isStopped()) {
        throw new CalibrationRefused(new CalibrationRefusal.Stopped());
      }
      if (said.isEmpty() && work.isIdle()) {
        // A rig that has nothing to do says the time only when it is asked.
        work.askTime();
      }
      for (RigEvent event : said) {
        if (event instanceof RigMessage.Answer answered
            && answered.result() != RigMessage.Result.DONE) {
          throw new CalibrationRefused(new CalibrationRefusal.NoAnswer());
        }
        if (event instanceof RigEvent.TimeAt && work.isWaiting()) {
          continue;
        }
        if (task.onEvent(event, work.rate()) == RigTask.State.DONE) {
          return task;
        }
        task.next().ifPresent(command -> send(task, command));
        if (event instanceof RigEvent.TimeAt time
            && elapsed.seconds(time, work.rate()) > task.patienceSeconds(work.rate())) {
          throw new CalibrationRefused(new CalibrationRefusal.NoAnswer());
        }
      }
      if (work.restarted()) {
        throw new CalibrationRefused(new CalibrationRefusal.Restarted());
      }
      if (work.unanswered()
          || work.changes().stream().map(LinkChange::state).anyMatch(LinkState.LOST::equals)) {
        throw new CalibrationRefused(new CalibrationRefusal.NoAnswer());
      }
    }
  }

  private void send(RigTask task, RigCommand command) {
    task.ahead().ifPresent(work::sendAhead);
    work.send(command);
  }

  /** Gives a command and waits for its answer. */
  void command(RigCommand command) throws CalibrationRefused {
    run(
        new RigTask() {
          @Override
          public RigCommand begin() {
            return command;
          }

          @Override
          public State onEvent(RigEvent event, TickRate rate) {
            return event instanceof RigMessage.Answer ? State.DONE : State.UNDER_WAY;
          }
        });
  }
}
