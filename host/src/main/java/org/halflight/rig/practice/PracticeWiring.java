package org.halflight.rig.practice;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.halflight.signal.Channel;

/** How the practice rig is wired, and which of its sensors a finger covers. */
final class PracticeWiring {
  private final Set<Channel> covered = EnumSet.noneOf(Channel.class);
  private WiringFault fault = WiringFault.NONE;

  void is(WiringFault wrong) {
    fault = wrong;
  }

  boolean has(WiringFault wrong) {
    return fault == wrong;
  }

  /** A finger comes on a sensor, or goes away. */
  void cover(Channel sensor, boolean on) {
    Channel its = has(WiringFault.OUTERS_SWAPPED) ? swapped(sensor) : sensor;
    if (on) {
      covered.add(its);
    } else {
      covered.remove(its);
    }
  }

  private static Channel swapped(Channel sensor) {
    return switch (sensor) {
      case OUTER_A -> Channel.OUTER_B;
      case OUTER_B -> Channel.OUTER_A;
      default -> sensor;
    };
  }

  /** Whether no light reaches what a channel that sees light is compared with. */
  boolean isDark(Channel channel) {
    boolean centre = channel == Channel.CENTRE_LOW || channel == Channel.CENTRE_HIGH;
    return covered.contains(channel) || (centre && has(WiringFault.CENTRE_DEAD));
  }

  /** The pin at which an input comes, if it does. */
  Optional<Channel> pin(Channel input) {
    return switch (fault) {
      case LEVELS_SWAPPED -> Optional.of(exchanged(input, Channel.CENTRE_LOW, Channel.CENTRE_HIGH));
      case RELEASE_ON_KNOB -> Optional.of(exchanged(input, Channel.RELEASE, Channel.KNOB));
      case LOW_OPEN -> Optional.of(input).filter(its -> its != Channel.CENTRE_LOW);
      case RELEASE_OPEN -> Optional.of(input).filter(its -> its != Channel.RELEASE);
      case CONTACT_SHORTED -> Optional.of(input).filter(its -> its != Channel.CONTACT);
      default -> Optional.of(input);
    };
  }

  private static Channel exchanged(Channel input, Channel one, Channel other) {
    return input == one ? other : input == other ? one : input;
  }

  /** The level at a pin for the level of its input. */
  boolean level(Channel input, boolean high) {
    return high != (has(WiringFault.LOW_INVERTED) && input == Channel.CENTRE_LOW);
  }

  /** Pins that are high whatever happens. */
  int shorted() {
    return has(WiringFault.CONTACT_SHORTED) ? 1 << Channel.CONTACT.code() : 0;
  }
}
