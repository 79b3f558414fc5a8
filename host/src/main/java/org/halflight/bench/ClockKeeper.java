package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.halflight.calibration.ClockFit;
import org.halflight.calibration.ClockPairWatch;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.LiveClock;
import org.halflight.profile.ClockRate;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.SessionInput;
import org.halflight.session.Source;
import org.halflight.signal.BoardTraits;
import org.halflight.time.TickRate;

/**
 * Holds the clock of the rig against the host's while a session goes on: about one ping a second
 * while nothing happens, the rate anew every minute. The session is told the rate of a rig that
 * somebody built; the practice rig and a simulated board go by another time. For one thread.
 */
final class ClockKeeper {
  /** One ping in so many seconds of rig time; rigs tell the time four times a second. */
  static final double PING_EVERY_SECONDS = 1;

  /** Until there is a rate, it is looked for this often; and while the pings contradict. */
  static final double FIRST_RATE_EVERY_SECONDS = 15;

  /** The rate wanders slowly, and a fit keeps the bench waiting for a moment. */
  static final double RATE_EVERY_SECONDS = 60;

  private final Supplier<HostClock> host;
  private HostClock hostClock;
  private ClockPairWatch watch = new ClockPairWatch();
  private PingEchoes echoes = echoesFor(watch);
  private String serial = "";
  private TickRate rate = BoardTraits.USUAL.rate();
  private int token;
  private double pingedSeconds = Double.NEGATIVE_INFINITY;
  private double ratedSeconds = Double.NEGATIVE_INFINITY;
  private Optional<LiveClock.Known> known = Optional.empty();
  private boolean contradiction;

  /**
   * @param host what its clock is worth; may change while the system is still being asked
   */
  ClockKeeper(Supplier<HostClock> host) {
    this.host = host;
    // Asked now, the system has answered by the time of the first rate.
    hostClock = host.get();
  }

  private static PingEchoes echoesFor(ClockPairWatch watch) {
    return new PingEchoes(watch::received, watch::sent);
  }

  /** Takes note of a line to the rig. */
  void sent(BenchEvent.Sent line) {
    echoes.sent(line);
  }

  /**
   * Hears what a line of the rig said.
   *
   * @return the same without the answers to pings, for everybody else
   */
  List<RigEvent> onEvents(long hostNanos, List<RigEvent> said) {
    List<RigEvent> others = new ArrayList<>();
    for (RigEvent each : said) {
      if (each instanceof RigMessage.Greeting greeted) {
        onRigIdentified(greeted.serial(), greeted.board().rate());
      } else if (each instanceof RigEvent.Restarted) {
        // Its clock is the same, its ticks are not.
        watch = new ClockPairWatch();
        echoes = echoesFor(watch);
        pingedSeconds = Double.NEGATIVE_INFINITY;
        ratedSeconds = Double.NEGATIVE_INFINITY;
      }
      echoes.onEvent(hostNanos, each, rate);
      if (!echoes.isAnswer(each)) {
        others.add(each);
      }
    }
    return others;
  }

  private void onRigIdentified(String now, TickRate nominal) {
    rate = nominal;
    if (!serial.equals(now)) {
      serial = now;
      watch = new ClockPairWatch();
      echoes = echoesFor(watch);
      known = Optional.empty();
      contradiction = false;
    }
  }

  /** A ping, where one is due; to be asked for at a beat while nothing happens. */
  Optional<RigCommand> ping(RigEvent.TimeAt beat) {
    double now = rate.seconds(beat.ticks());
    if (serial.isEmpty() || !isComparable() || now - pingedSeconds < PING_EVERY_SECONDS) {
      return Optional.empty();
    }
    pingedSeconds = now;
    token = (token + 1) & 0xFFFF;
    return Optional.of(new RigCommand.Ping(token));
  }

  /** The rate anew, where it is due and another one; to be asked for at a beat as well. */
  Optional<SessionInput> rate(RigEvent.TimeAt beat) {
    double now = rate.seconds(beat.ticks());
    boolean first = known.isEmpty() || contradiction;
    if (now - ratedSeconds < (first ? FIRST_RATE_EVERY_SECONDS : RATE_EVERY_SECONDS)) {
      return Optional.empty();
    }
    hostClock = host.get();
    LiveClock found = watch.rate(hostClock.standardUncertaintyPpm());
    if (found instanceof LiveClock.TooFew) {
      return Optional.empty();
    }
    ratedSeconds = now;
    contradiction = found instanceof LiveClock.Contradiction;
    if (!(found instanceof LiveClock.Known fresh)) {
      // What was found before holds on: a busy host says nothing about the board.
      return Optional.empty();
    }
    known = Optional.of(fresh);
    ClockRate told = fresh.rate();
    return Source.of(serial) == Source.RIG
        ? Optional.of(new SessionInput.ClockHeld(serial, told))
        : Optional.empty();
  }

  /** What is known now. */
  LiveClock now() {
    if (!isComparable()) {
      return new LiveClock.NotComparable();
    }
    if (contradiction) {
      return new LiveClock.Contradiction(watch.pings());
    }
    return known
        .map(LiveClock.class::cast)
        .orElseGet(() -> new LiveClock.TooFew(watch.pings(), ClockFit.LEAST));
  }

  /** What the clock of the host is worth. */
  HostClock host() {
    return hostClock;
  }

  private boolean isComparable() {
    return Source.of(serial) != Source.PRACTICE;
  }
}
