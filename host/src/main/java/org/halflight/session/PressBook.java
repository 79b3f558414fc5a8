package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The presses of the linkage test, and the firings that belong to each. */
final class PressBook {
  /** A second key within this, in seconds by the rig, is the same one twice. Our own limit. */
  static final double TWICE_SECONDS = 1;

  private static final DialSetting LINKAGE = new DialSetting.Untimed(UntimedTest.LINKAGE);

  private final FiringLog log;
  private final List<Kept> kept = new ArrayList<>();
  private final List<PlungerAt> plungers = new ArrayList<>();

  /** As the presses were seen last, and after how many changes of the firings that was. */
  private List<LinkagePress> seen = List.of();

  private long seenAfter;
  private Optional<SessionInput.PressJudged> waiting = Optional.empty();

  /** Firings at places before this one belong to presses that were judged. */
  private int firstOfNext;

  private long lastKeyTicks = Long.MIN_VALUE;

  /** Whether nothing was lost since the key before. */
  private boolean watched = true;

  /** A press with its firings by name: what they come to may still change. */
  private record Kept(
      int run,
      Optional<Phase> phase,
      int number,
      LinkageStep step,
      WindState wind,
      boolean watched,
      List<FiringKey> firings) {}

  PressBook(FiringLog log) {
    this.log = log;
  }

  /**
   * The person tried the film advance.
   *
   * @param now what is shown
   * @param quiet whether no firing is under way
   * @param nowTicks of the rig
   * @param twiceTicks a second key of one press comes within this
   */
  void onKey(
      SessionInput.PressJudged key,
      Optional<DialSetting> now,
      int run,
      Optional<Phase> phase,
      boolean quiet,
      long nowTicks,
      long twiceTicks,
      List<SessionEvent> events) {
    if (!now.equals(Optional.of(LINKAGE))) {
      events.add(new SessionEvent.NotDone(SessionEvent.NotDone.Why.NO_LINKAGE_TEST));
    } else if (waiting.isPresent()) {
      events.add(new SessionEvent.NotDone(SessionEvent.NotDone.Why.PRESS_UNDER_WAY));
    } else if (!quiet) {
      waiting = Optional.of(key);
    } else if (isTwice(run, nowTicks, twiceTicks)) {
      events.add(new SessionEvent.NotDone(SessionEvent.NotDone.Why.PRESS_COUNTED_ALREADY));
    } else {
      count(key, run, phase, nowTicks, events);
    }
  }

  private boolean isTwice(int run, long nowTicks, long twiceTicks) {
    return lastKeyTicks != Long.MIN_VALUE
        && nowTicks - lastKeyTicks < twiceTicks
        && firings(run).isEmpty();
  }

  /** Whether a key waits for its firing to settle. */
  boolean isWaiting() {
    return waiting.isPresent();
  }

  /** The firing that a key waited for has settled. */
  void onQuiet(int run, Optional<Phase> phase, long nowTicks, List<SessionEvent> events) {
    waiting.ifPresent(
        key -> {
          waiting = Optional.empty();
          count(key, run, phase, nowTicks, events);
        });
  }

  private void count(
      SessionInput.PressJudged key,
      int run,
      Optional<Phase> phase,
      long nowTicks,
      List<SessionEvent> events) {
    int number = (int) kept.stream().filter(press -> press.run() == run).count() + 1;
    kept.add(new Kept(run, phase, number, key.step(), key.wind(), watched, firings(run)));
    firstOfNext = log.size();
    watched = true;
    lastKeyTicks = nowTicks;
    events.add(new SessionEvent.PressCounted(seen(kept.get(kept.size() - 1))));
  }

  /** What the rig saw in the test since the key before, but for what the person took back. */
  private List<FiringKey> firings(int run) {
    return IntStream.range(firstOfNext, log.size())
        .mapToObj(log.all()::get)
        .filter(f -> f.run() == run && f.setting().equals(Optional.of(LINKAGE)))
        .filter(f -> f.rejection().isEmpty())
        .map(FiringResult::key)
        .toList();
  }

  /** Light may come that nobody sees, or none of it was missed after all. */
  void onWatched(boolean all) {
    watched = all;
  }

  /** Ticks start again. */
  void forgetTicks() {
    lastKeyTicks = Long.MIN_VALUE;
  }

  void onPlunger(
      PlungerReading reading, int run, Optional<Phase> phase, List<SessionEvent> events) {
    plungers.add(new PlungerAt(run, phase, reading));
    events.add(new SessionEvent.PlungerWasRead(reading));
  }

  /** All presses, with their firings as they are seen now; the same list until they change. */
  List<LinkagePress> presses() {
    if (seen.size() != kept.size() || seenAfter != log.changes()) {
      seen = kept.stream().map(this::seen).toList();
      seenAfter = log.changes();
    }
    return seen;
  }

  List<PlungerAt> plungers() {
    return List.copyOf(plungers);
  }

  private LinkagePress seen(Kept press) {
    List<FiringResult> firings =
        press.firings().stream().flatMap(key -> log.find(key).stream()).toList();
    return new LinkagePress(
        press.run(),
        press.phase(),
        press.number(),
        press.step(),
        press.wind(),
        press.watched(),
        firings);
  }

  /** Presses of the last round of a run, each step as often as it is asked at most. */
  int good(int run) {
    List<LinkagePress> round =
        LinkagePress.lastRound(
            presses().stream().filter(p -> p.run() == run && p.counts()).toList());
    int good = 0;
    for (LinkageStep step : LinkageStep.values()) {
      int made = (int) round.stream().filter(press -> press.step() == step).count();
      good += Math.min(step.presses(), made);
    }
    return good;
  }
}
