package org.halflight.rig;

import java.util.Objects;
import org.halflight.signal.Channel;

/** What a host says; one record a kind of command of docs/protocol.md. */
public sealed interface RigCommand {
  /** Asks for the greeting. */
  record AskGreeting() implements RigCommand {}

  /** Asks for a beat and the loss counters. */
  record AskStatus() implements RigCommand {}

  /** Asks for an echo of a token of 0 to 65535. */
  record Ping(int token) implements RigCommand {
    public Ping {
      if (token < 0 || token > 0xFFFF) {
        throw new IllegalArgumentException("a token is 0 to 65535, not " + token);
      }
    }
  }

  /** Sets the threshold codes, each 0 to 255, low below high. */
  record SetThresholds(int lowCode, int highCode) implements RigCommand {
    public SetThresholds {
      if (lowCode < 0 || lowCode >= highCode || highCode > 255) {
        throw new IllegalArgumentException(
            "threshold codes must be 0 <= low < high <= 255, not " + lowCode + " and " + highCode);
      }
    }
  }

  /** Asks for the thresholds as they are at the comparators. */
  record AskThresholds() implements RigCommand {}

  /**
   * Asks for light blocks of a sensor, or stops a request under way.
   *
   * @param channel the centre (by its low channel) or an outer sensor
   * @param blocks how many milliseconds, up to 65535; 0 stops
   */
  record MeasureLight(Channel channel, int blocks) implements RigCommand {
    public MeasureLight {
      if (!LightSensors.has(channel)) {
        throw new IllegalArgumentException("no light is read on channel " + channel);
      }
      if (blocks < 0 || blocks > 0xFFFF) {
        throw new IllegalArgumentException("light blocks are 0 to 65535, not " + blocks);
      }
    }
  }

  /** Gives the rig a serial number of 1 to 12 characters of A-Z a-z 0-9 . _ -. */
  record SetSerial(String serial) implements RigCommand {
    public SetSerial {
      Objects.requireNonNull(serial);
      if (!serial.matches("[A-Za-z0-9._-]{1,12}")) {
        throw new IllegalArgumentException(
            "a rig serial number has 1 to 12 characters of A-Z a-z 0-9 . _ -, not '"
                + serial
                + "'");
      }
    }
  }
}
