package org.halflight.firstlight;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.halflight.signal.Channel;

/** Judges an input that a hand switches: contact, release, sound. */
final class ContactJudge {
  /** More changes than a hand makes, bounces included. Our own limit. */
  private static final int CHANGES_MOST = 400;

  private ContactJudge() {}

  /**
   * What an input has shown.
   *
   * @param done whether the person has done what was asked for
   */
  static Finding of(RigFacts facts, Channel input, boolean done) {
    List<Seen> seen = seen(facts, input);
    if (facts.changes(input) > CHANGES_MOST) {
      return Finding.check(Fault.CHATTERS, input, seen);
    }
    if (facts.wasOn(input) && facts.changes(input) == 0) {
      return Finding.check(Fault.STUCK_ON, input, seen);
    }
    Optional<Channel> joined = other(facts, input, true);
    if (joined.isPresent() && input != Channel.CLICK) {
      return Finding.check(Fault.JOINED, joined.get(), seen);
    }
    if (facts.rises(input) > 0 && facts.falls(input) > 0 && !facts.isOn(input)) {
      return Finding.passed(seen);
    }
    if (!done) {
      return Finding.waiting(seen);
    }
    Optional<Channel> another = other(facts, input, false);
    if (facts.changes(input) == 0 && another.isPresent()) {
      return Finding.check(Fault.ANOTHER_INPUT, another.get(), seen(facts, another.get()));
    }
    return Finding.check(
        facts.changes(input) > 0 ? Fault.STAYED_ON : Fault.NOTHING_CAME, input, seen);
  }

  private static List<Seen> seen(RigFacts facts, Channel input) {
    return List.of(new Seen.Changes(input, facts.rises(input), facts.falls(input)));
  }

  /** Another input that changes; light and sound come to a sensor whatever is tried. */
  private static Optional<Channel> other(RigFacts facts, Channel input, boolean joined) {
    return Arrays.stream(Channel.values())
        .filter(each -> each != input && !each.isLight() && each != Channel.CLICK)
        .filter(each -> joined ? facts.together(input, each) >= 2 : facts.changes(each) >= 2)
        .findFirst();
  }
}
