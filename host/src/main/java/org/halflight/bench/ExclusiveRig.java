package org.halflight.bench;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;

/**
 * The rig of a session while it works for itself. What it says reaches the session file and the
 * work alike. It is given back at rest: an LED that goes out and thresholds that move make edges.
 * For one thread.
 */
final class ExclusiveRig implements RigFeed {
  /** Beats, or answers in their place, after which thresholds stand and edges are in. */
  private static final int REST_BEATS = 3;

  /** A rig that says nothing for so long is gone. */
  private static final long SILENCE_NANOS = TimeUnit.SECONDS.toNanos(2);

  /** And that often. */
  private static final int SILENT_STEPS = 20;

  /** Any single work of the rig is done by then; the LED goes out by itself after 10 s. */
  private static final int DARK_TRIES = 40;

  private final RigFeed feed;
  private final CommandsUnderWay commands;
  private final Consumer<Optional<Item>> step;
  private final Consumer<ExclusiveRig> back;
  private int beats;
  private boolean busy;

  /**
   * @param commands of the session and of the work, which hear every line before this does
   * @param step takes what came at each step, also nothing
   * @param back takes the rig back when it is dark
   */
  ExclusiveRig(
      RigFeed feed,
      CommandsUnderWay commands,
      Consumer<Optional<Item>> step,
      Consumer<ExclusiveRig> back) {
    this.feed = feed;
    this.commands = commands;
    this.step = step;
    this.back = back;
  }

  /** Hears what the rig said. */
  void onEvent(RigEvent said) {
    // A beat from before the answer is one from before the rig did what it was asked.
    beats += said instanceof RigEvent.TimeAt && !commands.isWaiting() ? 1 : 0;
    busy |=
        said instanceof RigMessage.Answer answered && answered.result() == RigMessage.Result.BUSY;
  }

  @Override
  public Optional<Item> next() {
    Optional<Item> item = feed.next();
    step.accept(item);
    return item;
  }

  @Override
  public void send(RigCommand command) {
    commands.asked(command);
    feed.send(command);
  }

  @Override
  public long nowNanos() {
    return feed.nowNanos();
  }

  /** Puts the LED out, and gives the rig back. */
  @Override
  public void close() {
    busy = true;
    // A rig that was stopped in the middle of something is busy with it for a while.
    for (int tries = 0; busy && tries < DARK_TRIES; tries++) {
      busy = false;
      send(RigCommand.DriveReference.off());
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
    Silence silence = new Silence(feed::nowNanos, SILENCE_NANOS, SILENT_STEPS);
    RigCommand status = new RigCommand.AskStatus();
    while (beats <= howMany && !silence.isOver()) {
      boolean nothing = next().isEmpty();
      silence.step(nothing);
      if (nothing && !commands.isWaitingFor(status)) {
        send(status);
      }
    }
  }
}
