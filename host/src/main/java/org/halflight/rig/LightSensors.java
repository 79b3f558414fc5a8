package org.halflight.rig;

import org.halflight.signal.Channel;

/** The channels whose light can be read as a number; the centre goes by its low channel. */
final class LightSensors {
  private LightSensors() {}

  static boolean has(Channel channel) {
    return channel == Channel.CENTRE_LOW
        || channel == Channel.OUTER_A
        || channel == Channel.OUTER_B;
  }
}
