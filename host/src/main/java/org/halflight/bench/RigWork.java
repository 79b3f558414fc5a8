package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.halflight.light.Aim;
import org.halflight.link.LinkState;
import org.halflight.profile.ProfiledRig;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigStream;
import org.halflight.signal.BoardTraits;
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

  /** What the rig may take to be left in order when the program is ended. */
  private static final long ENDS_WITHIN_SECONDS = 5;

  private final RigFeed feed;
  private final RigStream stream = new RigStream();
  private final PingStamps stamps = new PingStamps();
  private final List<LinkChange> changes = new ArrayList<>();
  private final CommandsUnderWay commands = new CommandsUnderWay();
  private Optional<RigMessage.Greeting> greeting = Optional.empty();
  private boolean restarted;
  private boolean unanswered;
  private final CountDownLatch closed = new CountDownLatch(1);
  private volatile boolean stopped;
  private Runnable meanwhile = () -> {};
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

  /** The program is being ended: stops what goes on, and waits until the rig was let go of. */
  public void programEnds() {
    stop();
    try {
      closed.await(ENDS_WITHIN_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** What is done at every step of the work, on its thread: somebody is listened to. */
  public void meanwhile(Runnable each) {
    meanwhile = each;
  }

  /** Whether the person stopped it. */
  public boolean isStopped() {
    return stopped;
  }

  /** Takes the next line; what it said. */
  public List<RigEvent> step() {
    meanwhile.run();
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
    List<RigEvent> said = stream.accept(received.rigLine());
    for (RigEvent each : said) {
      if (each instanceof RigMessage.Greeting greeted) {
        greeting = Optional.of(greeted);
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
    return !(event instanceof RigMessage.Answer answered) || commands.isWaitedFor(answered);
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
   * Aims the light until this is stopped, or the rig is lost.
   *
   * @param shown hears what the meter shows, whenever a needle has moved
   */
  public void aim(AimMeter meter, Consumer<Aim> shown) {
    changes.clear();
    send(meter.begin());
    while (!stopped && changes.stream().noneMatch(its -> its.state() == LinkState.LOST)) {
      for (RigEvent said : step()) {
        meter.onEvent(said).ifPresent(this::send);
      }
      shown.accept(meter.aim());
    }
    feed.send(meter.end());
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

  /** The rig, as its profile knows it; it must have greeted. */
  public ProfiledRig rig() {
    RigMessage.Greeting known = greeting.orElseThrow();
    return new ProfiledRig(known.serial(), known.kind(), known.firmware());
  }

  /** The nominal rate of the rig's clock. */
  public TickRate rate() {
    return greeting.map(RigMessage.Greeting::board).orElse(BoardTraits.USUAL).rate();
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
    closed.countDown();
  }
}
