package org.halflight.bench;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionInput.LevelStands;
import org.halflight.signal.Channel;

/**
 * Keeps the thresholds of a rig where the light of the session wants them: both of a full rig, or
 * the one of a small rig, which changes levels after each firing. For one thread.
 */
final class SessionThresholds {
  private final Workbench workbench;
  private final Consumer<RigCommand> send;
  private final ThresholdKeeper both = new ThresholdKeeper();
  private final LevelTurner turner = new LevelTurner();

  /**
   * @param send sends a command to the rig
   */
  SessionThresholds(Workbench workbench, Consumer<RigCommand> send) {
    this.workbench = workbench;
    this.send = send;
  }

  /** A board that starts has its own thresholds; those of this session's light go back to it. */
  void restore() {
    Session session = session();
    if (session.isOneLevelRig()) {
      move(turner.begin(session.light(), session.trips()));
    } else {
      session.light().flatMap(light -> both.restore(light, session.trips())).ifPresent(send);
    }
  }

  /** Hears what the rig says. */
  List<SessionEvent> onEvent(RigEvent said) {
    if (session().isOneLevelRig()) {
      return turner.onEvent(said).map(this::follow).orElse(List.of());
    }
    both.onEvent(said).ifPresent(send);
    return List.of();
  }

  /** The session went on: the one threshold goes to the other level after a firing with light. */
  void onNews(List<SessionEvent> news) {
    if (session().isOneLevelRig() && news.stream().anyMatch(SessionThresholds::sawLight)) {
      move(turner.turn());
    }
  }

  /** Whether they were looked at and did not stand where they should; tells it once. */
  boolean areOff() {
    return both.isOff();
  }

  private List<SessionEvent> follow(LevelTurner.Next next) {
    if (next instanceof LevelTurner.Next.Send command) {
      send.accept(command.command());
      return List.of();
    }
    return workbench.handle(
        next instanceof LevelTurner.Next.Stands stands
            ? new LevelStands(Optional.of(stands.level()))
            : new SessionInput.LightForgotten());
  }

  private void move(RigCommand threshold) {
    workbench.handle(new LevelStands(Optional.empty()));
    send.accept(threshold);
  }

  private static boolean sawLight(SessionEvent news) {
    return news instanceof SessionEvent.Settled settled
        && !settled.result().firing().of(Channel.CENTRE_LOW).isEmpty();
  }

  private Session session() {
    return workbench.fold().session();
  }
}
