package org.halflight.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.halflight.link.Link;
import org.halflight.link.LinkLostException;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.PortSurvey;
import org.halflight.link.Ports;
import org.halflight.rig.PortOutcome.Finding;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.words.Words;

/**
 * Looks for rigs on ports by asking whoever is there for a greeting.
 *
 * <p>It waits only in reads of the link, and each port takes at most about 4 s. Ports are asked one
 * after the other. Opening a port restarts many boards: only ports that look like a board are
 * opened, unless the wish says otherwise.
 *
 * <p>Without state; safe for use by several threads if its ports and clock are.
 */
public final class RigFinder {
  /** The version of the line protocol that this program speaks. */
  static final int PROTOCOL = 1;

  /** The speed of rigs. */
  static final int BAUD_RATE = 250_000;

  /** Speeds to try after that of rigs. */
  private static final int[] OTHER_BAUD_RATES = {500_000, 115_200};

  /** A board that opening restarts greets within this, by protocol. */
  static final long START_NANOS = TimeUnit.MILLISECONDS.toNanos(2500);

  /** A board that runs answers at once, and beats every 262 ms: enough for two of both. */
  static final long OTHER_SPEED_NANOS = TimeUnit.MILLISECONDS.toNanos(600);

  /** A question that came while the board was starting is lost, so it is put again. */
  static final long ASK_EVERY_NANOS = TimeUnit.MILLISECONDS.toNanos(500);

  private final Ports ports;
  private final LongSupplier nanos;

  /**
   * @param nanos a clock that never runs back, in nanoseconds
   */
  public RigFinder(Ports ports, LongSupplier nanos) {
    this.ports = ports;
    this.nanos = nanos;
  }

  /**
   * Looks for a rig. Links to rigs that were not meant are closed again.
   *
   * @param goOn asked every 100 ms or so; when it says no, the search ends without a rig
   */
  public RigSearch search(RigSelector wish, BooleanSupplier goOn) {
    return search(wish, Map.of(), goOn);
  }

  /**
   * {@link #search(RigSelector, BooleanSupplier)}, leaving out ports.
   *
   * @param known ports that are not opened, with what was found on them
   */
  RigSearch search(RigSelector wish, Map<PortCandidate, PortOutcome> known, BooleanSupplier goOn) {
    List<PortCandidate> candidates;
    try {
      candidates = ports.candidates();
    } catch (LinkRefusedException refused) {
      return new RigSearch(Optional.empty(), List.of(), List.of(), refused.getMessage());
    }
    List<PortOutcome> outcomes = new ArrayList<>();
    List<OpenRig> rigs = new ArrayList<>();
    Optional<OpenRig> chosen = Optional.empty();
    try {
      for (PortCandidate candidate : candidates) {
        boolean wanted = candidate.likelyBoard() || wish.everyPort();
        if (!wanted || !goOn.getAsBoolean()) {
          continue;
        }
        Optional<PortOutcome> before = Optional.ofNullable(known.get(candidate));
        outcomes.add(before.isPresent() ? before.get() : ask(candidate, rigs, goOn));
        if (rigs.stream().anyMatch(rig -> wish.isSurely(rig.greeting()))) {
          break;
        }
      }
      long answered = outcomes.stream().filter(each -> each.finding() == Finding.RIG).count();
      // One that answered before, and was let go, may be meant as well as one that answers now.
      if (goOn.getAsBoolean() && (answered == rigs.size() || !wish.isAny())) {
        chosen = wish.choose(rigs);
      }
    } finally {
      Optional<OpenRig> kept = chosen;
      rigs.stream()
          .filter(rig -> kept.filter(mine -> mine.link() == rig.link()).isEmpty())
          .forEach(rig -> rig.link().close());
    }
    String sentence =
        chosen
            .map(rig -> Words.say("rig.found", rig.name(), rig.candidate().path()))
            .orElseGet(() -> whyNone(wish, candidates, outcomes, goOn));
    return new RigSearch(chosen, candidates, outcomes, sentence);
  }

  /**
   * Asks over the same link again whether its rig still answers, as it does after a reset that left
   * the link whole. The link stays open either way.
   *
   * @return the rig as it is now; empty when it is silent or the link is gone
   */
  Optional<OpenRig> askAgain(OpenRig rig, int nextSequence, BooleanSupplier goOn) {
    GreetingProbe hearing = new GreetingProbe(rig.link(), rig.reader(), nextSequence, nanos, goOn);
    try {
      return hearing
          .listen(START_NANOS, ASK_EVERY_NANOS)
          .map(greeting -> open(rig.candidate(), rig.link(), hearing, greeting, rig.baudRate()));
    } catch (LinkLostException gone) {
      return Optional.empty();
    }
  }

  /** Asks on one port; a rig that answers is added to {@code rigs}, with its link open. */
  private PortOutcome ask(PortCandidate candidate, List<OpenRig> rigs, BooleanSupplier goOn) {
    Link link;
    try {
      link = ports.open(candidate, BAUD_RATE);
    } catch (LinkRefusedException refused) {
      return new PortOutcome(candidate, finding(refused.reason()), refused.getMessage());
    }
    boolean kept = false;
    try {
      GreetingProbe hearing = new GreetingProbe(link, new LineReader(), 0, nanos, goOn);
      Optional<OpenRig> rig = atAnySpeed(candidate, link, hearing);
      if (rig.isEmpty()) {
        return nobody(candidate, hearing);
      }
      Greeting greeting = rig.get().greeting();
      if (greeting.protocol() != PROTOCOL) {
        return new PortOutcome(
            candidate, Finding.OTHER_PROTOCOL, otherProtocol(rig.get()), Optional.of(greeting));
      }
      rigs.add(rig.get());
      kept = true;
      return new PortOutcome(
          candidate,
          Finding.RIG,
          Words.say("rig.isOn", rig.get().name(), candidate.path()),
          Optional.of(greeting));
    } catch (LinkLostException gone) {
      return new PortOutcome(candidate, Finding.UNUSABLE, gone.getMessage());
    } finally {
      if (!kept) {
        link.close();
      }
    }
  }

  private Optional<OpenRig> atAnySpeed(PortCandidate candidate, Link link, GreetingProbe hearing) {
    Optional<Greeting> greeting = hearing.listen(START_NANOS, ASK_EVERY_NANOS);
    if (greeting.isPresent()) {
      return Optional.of(open(candidate, link, hearing, greeting.get(), BAUD_RATE));
    }
    for (int baudRate : OTHER_BAUD_RATES) {
      if (hearing.isEnded() || hearing.receivedRigLines()) {
        // The speed was right; another one would only turn lines into noise.
        return Optional.empty();
      }
      hearing.changeSpeed(baudRate);
      greeting = hearing.listen(OTHER_SPEED_NANOS, ASK_EVERY_NANOS);
      if (greeting.isPresent()) {
        return Optional.of(open(candidate, link, hearing, greeting.get(), baudRate));
      }
    }
    return Optional.empty();
  }

  private static OpenRig open(
      PortCandidate candidate, Link link, GreetingProbe hearing, Greeting greeting, int baudRate) {
    return new OpenRig(
        candidate,
        link,
        hearing.reader(),
        greeting,
        baudRate,
        hearing.nextSequence(),
        hearing.lines());
  }

  private static PortOutcome nobody(PortCandidate candidate, GreetingProbe hearing) {
    if (hearing.receivedRigLines()) {
      return new PortOutcome(
          candidate, Finding.NO_RIG, Words.say("rig.port.noGreeting", candidate.path()));
    }
    if (hearing.receivedBytes()) {
      return new PortOutcome(
          candidate, Finding.NO_RIG, Words.say("rig.port.noRig", candidate.path()));
    }
    return new PortOutcome(
        candidate, Finding.SILENT, Words.say("rig.port.silent", candidate.path()));
  }

  private static String otherProtocol(OpenRig rig) {
    return Words.say(
        rig.greeting().protocol() < PROTOCOL
            ? "rig.port.otherProtocol.older"
            : "rig.port.otherProtocol.newer",
        rig.name(),
        rig.candidate().path(),
        rig.greeting().protocol(),
        PROTOCOL);
  }

  private static Finding finding(LinkRefusedException.Reason reason) {
    return switch (reason) {
      case NO_PERMISSION -> Finding.NO_PERMISSION;
      case BUSY -> Finding.BUSY;
      case ABSENT, NO_DRIVER, FAILED -> Finding.UNUSABLE;
    };
  }

  private static String whyNone(
      RigSelector wish,
      List<PortCandidate> candidates,
      List<PortOutcome> outcomes,
      BooleanSupplier goOn) {
    if (!goOn.getAsBoolean()) {
      return Words.say("rig.search.stopped");
    }
    List<PortOutcome> rigs =
        outcomes.stream().filter(each -> each.finding() == Finding.RIG).toList();
    return rigs.isEmpty()
        ? PortReport.sentence(NoRig.causes(PortSurvey.bare(candidates), outcomes))
        : wish.whyNone(rigs);
  }
}
