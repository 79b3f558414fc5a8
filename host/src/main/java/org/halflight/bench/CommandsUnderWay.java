package org.halflight.bench;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.halflight.rig.LineCodec;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;

/**
 * Which commands the rig has not answered yet, as far as lines were taken.
 *
 * <p>Lines may be taken long after the rig sent them. Then beats come that are older than a
 * command; until its answer is there they say nothing about how long the rig takes. So nobody who
 * waits for the rig counts beats while this is waiting. For one thread.
 */
final class CommandsUnderWay {
  /** A minute of beats, behind which an answer is no longer counted on. */
  static final int BEATS_MOST = 240;

  /** Edges go before all else on the wire, which takes some 280 of them between two beats. */
  private static final int FLOOD_EDGES = 200;

  /** So many beats of it in a row: the rig does not get to answer. */
  private static final int FLOOD_BEATS_MOST = 8;

  private static final class Asked {
    private final RigCommand command;
    private final boolean ahead;
    private final Set<Integer> sequences = new HashSet<>();

    Asked(RigCommand command, boolean ahead) {
      this.command = command;
      this.ahead = ahead;
    }

    boolean isHeard() {
      return !ahead && isTask();
    }

    boolean isTask() {
      return !(command instanceof RigCommand.Ping
          || command instanceof RigCommand.AskStatus
          || command instanceof RigCommand.AskGreeting);
    }
  }

  private final List<Asked> open = new ArrayList<>();
  private int beats;
  private int edges;
  private int floods;

  /** A command is given to the feed. */
  void asked(RigCommand command) {
    add(new Asked(command, false));
  }

  /** A command is given to the feed whose answer says nothing to anybody. */
  void askedAhead(RigCommand command) {
    add(new Asked(command, true));
  }

  private void add(Asked asked) {
    if (!isWaiting()) {
      beats = 0;
      floods = 0;
    }
    open.add(asked);
  }

  /** Takes note of a line to the rig, as it went out. */
  void sent(BenchEvent.Sent line) {
    if (LineCodec.parse(line.line()) instanceof ParsedLine.Command out) {
      // One goes out at a time, so of equal ones it is the first, perhaps once more.
      open.stream()
          .filter(each -> each.command.equals(out.command()))
          .findFirst()
          .ifPresent(each -> each.sequences.add(out.sequence()));
    }
  }

  /**
   * Hears an answer.
   *
   * @return whether somebody waits for it; answers to pings and to questions for the status are
   *     waited for by nobody
   */
  boolean isWaitedFor(RigMessage.Answer answer) {
    for (Asked each : open) {
      if (each.sequences.contains(answer.commandSequence())) {
        open.remove(each);
        return each.isHeard();
      }
    }
    return false;
  }

  /** Whether the answer to something that somebody waits for is still to come. */
  boolean isWaiting() {
    return open.stream().anyMatch(Asked::isTask);
  }

  /** Whether the answer to such a command is still to come. */
  boolean isWaitingFor(RigCommand command) {
    return open.stream().anyMatch(each -> each.command.equals(command));
  }

  /** Hears an edge. */
  void edge() {
    edges++;
  }

  /**
   * Hears a beat.
   *
   * @return whether nothing more is to be hoped for; told once
   */
  boolean beat() {
    floods = edges > FLOOD_EDGES ? floods + 1 : 0;
    edges = 0;
    if (isWaiting() && (++beats > BEATS_MOST || floods >= FLOOD_BEATS_MOST)) {
      forget();
      return true;
    }
    return false;
  }

  /**
   * A command stays without an answer.
   *
   * @return whether somebody waited for it
   */
  boolean unanswered(RigCommand command) {
    for (Asked each : open) {
      if (each.command.equals(command)) {
        open.remove(each);
        return each.isTask();
      }
    }
    return false;
  }

  /** Nothing that was asked before will be answered, or nobody wants to know any longer. */
  void forget() {
    open.clear();
  }
}
