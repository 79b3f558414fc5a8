package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigStream;
import org.halflight.time.TickRate;

/**
 * Gives a rig one task after the other, outside of any session: calibration and rig check. For one
 * thread.
 */
public final class RigWork implements AutoCloseable {
  /** A rig that says nothing for so long has no more to say. */
  private static final long QUIET_NANOS = TimeUnit.SECONDS.toNanos(3);

  /** And that often. */
  private static final int QUIET_STEPS = 30;

  private static final int STEPS_MOST = 5000;

  private final RigFeed feed;
  private final RigStream stream = new RigStream();
  private final PingStamps stamps = new PingStamps();
  private final List<LinkChange> changes = new ArrayList<>();
  private final CommandsUnderWay commands = new CommandsUnderWay();
  private Optional<RigMessage.Greeting> greeting = Optional.empty();
  private boolean restarted;
  private boolean unanswered;
  private volatile boolean stopped;
  private boolean idle;

  public RigWork(RigFeed feed) {
    this(feed, Optional.empty());
  }

  /**
   * @param known what a rig that is lent in the middle of a session said of itself
   */
  RigWork(RigFeed feed, Optional<RigMessage.Greeting> known) {
    this.feed = feed;
    greeting = known;
  }

  /** Ends what goes on, soon: it is refused as stopped. */
  public void stop() {
    stopped = true;
  }

  /** Whether the person stopped it. */
  public boolean isStopped() {
    return stopped;
  }

  /** Takes the next line; what it said. */
  public List<RigEvent> step() {
    Optional<RigFeed.Item> came = feed.next();
    idle = came.isEmpty();
    if (came.isEmpty()) {
      return List.of();
    }
    if (came.get() instanceof RigFeed.Item.Changed changed) {
      changes.add(changed.change());
      return List.of();
    }
    if (came.get() instanceof RigFeed.Item.Unanswered given) {
      unanswered |= commands.unanswered(given.command());
      return List.of();
    }
    BenchEvent event = ((RigFeed.Item.Line) came.get()).event();
    if (event instanceof BenchEvent.Sent sent) {
      stamps.sent(sent);
      commands.sent(sent);
      return List.of();
    }
    if (!(event instanceof BenchEvent.Received received)) {
      return List.of();
    }
    List<RigEvent> said = stream.accept(received.line());
    for (RigEvent each : said) {
      if (each instanceof RigEvent.Greeted greeted) {
        greeting = Optional.of(greeted.greeting());
      }
      restarted |= each instanceof RigEvent.Restarted;
      stamps.onEvent(received.hostNanos(), each, rate());
    }
    return said.stream().filter(this::isForTasks).toList();
  }

  /** What was asked only to hear the time must not be taken for the answer to a task. */
  private boolean isForTasks(RigEvent event) {
    if (event instanceof RigEvent.EdgeAt) {
      commands.edge();
    } else if (event instanceof RigEvent.TimeAt) {
      unanswered |= commands.beat();
    }
    return !(event instanceof RigEvent.Answered answered) || commands.isWaitedFor(answered);
  }

  /** Whether nothing came for a short while when this last took a step. */
  boolean isIdle() {
    return idle;
  }

  void send(RigCommand command) {
    commands.asked(command);
    feed.send(command);
  }

  /** Sends a command whose answer is no task's. */
  void sendAhead(RigCommand command) {
    commands.askedAhead(command);
    feed.send(command);
  }

  /** Asks for the time, unless that was asked and not answered yet. */
  void askTime() {
    RigCommand status = new RigCommand.AskStatus();
    if (!commands.isWaitingFor(status)) {
      send(status);
    }
  }

  /** Whether the rig has still to answer a task: till then its beats may be older than that. */
  boolean isWaiting() {
    return commands.isWaiting();
  }

  /** Whether a command of a task stayed without an answer since this was last asked. */
  boolean unanswered() {
    boolean now = unanswered;
    unanswered = false;
    return now;
  }

  /**
   * Switches the reference LED off and hears the rig out, so that what is under way ends and the
   * rig is left as a session finds it.
   */
  void leaveInOrder() {
    // What was asked before is nobody's business any more.
    commands.forget();
    RigCommand off = RigCommand.DriveReference.off();
    send(off);
    Silence silence = new Silence(feed::nowNanos, QUIET_NANOS, QUIET_STEPS);
    for (int steps = 0;
        steps < STEPS_MOST && commands.isWaitingFor(off) && !silence.isOver();
        steps++) {
      step();
      silence.step(isIdle());
    }
  }

  /** The changes of the link since this was last asked. */
  public List<LinkChange> changes() {
    List<LinkChange> told = List.copyOf(changes);
    changes.clear();
    return told;
  }

  /** The last greeting. */
  public Optional<RigMessage.Greeting> greeting() {
    return greeting;
  }

  /** The nominal rate of the rig's clock. */
  public TickRate rate() {
    return greeting
        .map(known -> new TickRate(known.ticksPerSecond()))
        .orElse(TickRate.BOARD_16_MHZ);
  }

  /** Stamps of both clocks so far. */
  public PingStamps stamps() {
    return stamps;
  }

  /** Whether the rig started anew since this was last asked. */
  boolean restarted() {
    boolean now = restarted;
    restarted = false;
    return now;
  }

  @Override
  public void close() {
    feed.close();
  }
}
