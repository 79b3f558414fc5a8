package org.halflight.bench;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
  /** Steps without a line after which the rig has no more to say. */
  private static final int QUIET_STEPS = 30;

  private static final int STEPS_MOST = 500;

  private static final String LED_OFF = "r [0-9A-F]{4} 0 .*";
  private static final String STATUS_ASKED = "s [0-9A-F]{4}#.*";

  private final RigFeed feed;
  private final RigStream stream = new RigStream();
  private final PingStamps stamps = new PingStamps();
  private final List<LinkChange> changes = new ArrayList<>();
  private final Set<Integer> statusAsked = new HashSet<>();
  private Optional<RigMessage.Greeting> greeting = Optional.empty();
  private int offSequence = -1;
  private boolean restarted;
  private volatile boolean stopped;
  private boolean idle;

  public RigWork(RigFeed feed) {
    this(feed, Optional.empty(), Set.of());
  }

  /**
   * @param known what a rig that is lent in the middle of a session said of itself
   * @param notForTasks line counters of commands of the session that are not answered yet
   */
  RigWork(RigFeed feed, Optional<RigMessage.Greeting> known, Set<Integer> notForTasks) {
    statusAsked.addAll(notForTasks);
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
    BenchEvent event = ((RigFeed.Item.Line) came.get()).event();
    if (event instanceof BenchEvent.Sent sent) {
      stamps.sent(sent);
      if (sent.line().matches(LED_OFF)) {
        offSequence = Integer.parseInt(sent.line().substring(2, 6), 16);
      }
      if (sent.line().matches(STATUS_ASKED)) {
        statusAsked.add(Integer.parseInt(sent.line().substring(2, 6), 16));
      }
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
      stamps.heard(received.hostNanos(), each, rate());
    }
    return said.stream().filter(each -> !isAnswerToStatus(each)).toList();
  }

  private boolean isAnswerToOff(RigEvent event) {
    return event instanceof RigEvent.Answered answered && answered.commandSequence() == offSequence;
  }

  /** What was asked only to hear the time must not be taken for the answer to a task. */
  private boolean isAnswerToStatus(RigEvent event) {
    return event instanceof RigEvent.Answered answered
        && statusAsked.remove(answered.commandSequence());
  }

  /** Whether nothing came for a short while when this last took a step. */
  boolean isIdle() {
    return idle;
  }

  void send(RigCommand command) {
    feed.send(command);
  }

  /**
   * Switches the reference LED off and hears the rig out, so that what is under way ends and the
   * rig is left as a session finds it.
   */
  void leaveInOrder() {
    send(RigCommand.DriveReference.off());
    offSequence = -1;
    int quiet = 0;
    boolean off = false;
    for (int steps = 0; steps < STEPS_MOST && quiet < QUIET_STEPS && !off; steps++) {
      off = step().stream().anyMatch(this::isAnswerToOff);
      quiet = isIdle() ? quiet + 1 : 0;
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
