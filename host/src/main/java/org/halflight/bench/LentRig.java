package org.halflight.bench;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;

/**
 * The rig of a session while it works for itself. What it says reaches the session file and the
 * work alike. It is given back at rest: an LED that goes out and thresholds that move make edges.
 * For one thread.
 */
final class LentRig implements RigFeed {
  /** Beats, or answers in their place, after which thresholds stand and edges are in. */
  private static final int REST_BEATS = 3;

  /** A rig that says nothing for so many short whiles is gone. */
  private static final int IDLE_MOST = 20;

  /** Any single work of the rig is done by then; the LED goes out by itself after 10 s. */
  private static final int DARK_TRIES = 40;

  private final RigFeed feed;
  private final Consumer<Optional<Item>> step;
  private final Consumer<LentRig> back;
  private int beats;
  private boolean busy;

  /**
   * @param step takes what came at each step, also nothing
   * @param back takes the rig back when it is dark
   */
  LentRig(RigFeed feed, Consumer<Optional<Item>> step, Consumer<LentRig> back) {
    this.feed = feed;
    this.step = step;
    this.back = back;
  }

  /** Hears what the rig said. */
  void heard(List<RigEvent> said) {
    for (RigEvent each : said) {
      beats += each instanceof RigEvent.TimeAt ? 1 : 0;
      busy |=
          each instanceof RigEvent.Answered answered && answered.result() == RigMessage.Result.BUSY;
    }
  }

  @Override
  public Optional<Item> next() {
    Optional<Item> item = feed.next();
    step.accept(item);
    return item;
  }

  @Override
  public void send(RigCommand command) {
    feed.send(command);
  }

  /** Puts the LED out, and gives the rig back. */
  @Override
  public void close() {
    busy = true;
    // A rig that was stopped in the middle of something is busy with it for a while.
    for (int tries = 0; busy && tries < DARK_TRIES; tries++) {
      busy = false;
      feed.send(RigCommand.DriveReference.off());
      rest(1);
    }
    back.accept(this);
  }

  /** Lets some beats go by. */
  void rest() {
    rest(REST_BEATS);
  }

  private void rest(int howMany) {
    beats = 0;
    int idle = 0;
    while (beats <= howMany && idle < IDLE_MOST) {
      if (next().isEmpty()) {
        feed.send(new RigCommand.AskStatus());
        idle++;
      }
    }
  }
}
