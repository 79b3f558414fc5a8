package org.halflight.rig;

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

    /** Sets the one threshold of a small rig, whose high code says nothing; 0 to 254. */
    public static SetThresholds one(int code) {
      return new SetThresholds(code, 255);
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
      if (!serial.matches("[A-Za-z0-9._-]{1,12}")) {
        throw new IllegalArgumentException(
            "a rig serial number has 1 to 12 characters of A-Z a-z 0-9 . _ -, not '"
                + serial
                + "'");
      }
    }
  }

  /** Which light curves the rig takes. */
  record TakeCurves(CurveMode mode) implements RigCommand {}

  /** Modes of light curves; after a start they are on. */
  enum CurveMode {
    OFF(0),
    ON(1),
    /**
     * On, and the next one long: it goes on for 12 ms after the closing, to look for a rebound.
     * Firmware that does not know it answers 'bad fields' and goes on as before.
     */
    NEXT_ONE_LONG(2),
    /**
     * On, and the next one of an outer sensor; then of the centre again. Firmware before 1.4.0
     * answers 'bad fields'.
     */
    NEXT_OF_OUTER_A(3),
    /** The same of the other one. */
    NEXT_OF_OUTER_B(4);

    private final int code;

    CurveMode(int code) {
      this.code = code;
    }

    /** Whether it asks for the curve of a sensor that only the full rig has. */
    public boolean isOfOuterSensor() {
      return this == NEXT_OF_OUTER_A || this == NEXT_OF_OUTER_B;
    }

    /** Whether it is about the next curve alone. */
    public boolean isForNextOnly() {
      return code > ON.code;
    }

    /** The number of this mode on the wire. */
    public int code() {
      return code;
    }
  }

  /**
   * Drives the reference LED.
   *
   * @param widthTicks how long a pulse is, 1600 (100 us) to 32000000 (2 s); says nothing for a
   *     drive without pulses
   * @param count how many pulses, 1 to 65535; says nothing for a drive without pulses
   */
  record DriveReference(ReferenceDrive drive, long widthTicks, int count) implements RigCommand {
    /** The shortest pulse. */
    public static final long WIDTH_TICKS_LEAST = 0x640;

    /** The longest pulse. */
    public static final long WIDTH_TICKS_MOST = 0x1E84800;

    public DriveReference {
      if (widthTicks < WIDTH_TICKS_LEAST || widthTicks > WIDTH_TICKS_MOST) {
        throw new IllegalArgumentException("a pulse has 1600 to 32000000 ticks, not " + widthTicks);
      }
      if (count < 1 || count > 0xFFFF) {
        throw new IllegalArgumentException("pulses are 1 to 65535, not " + count);
      }
    }

    /** The LED on until told otherwise, 10 s at most. */
    public static DriveReference steady() {
      return withoutPulses(ReferenceDrive.STEADY);
    }

    /** The LED off. */
    public static DriveReference off() {
      return withoutPulses(ReferenceDrive.OFF);
    }

    static DriveReference withoutPulses(ReferenceDrive drive) {
      return new DriveReference(drive, WIDTH_TICKS_LEAST, 1);
    }
  }

  /**
   * Sweeps the threshold of a comparator of the centre sensor up and back down.
   *
   * @param channel the low or the high level
   * @param fromCode lowest fine code, 16 up to below {@code toCode}
   * @param toCode highest fine code, at most 4095 and 512 above the lowest
   */
  record SweepThreshold(Channel channel, int fromCode, int toCode) implements RigCommand {
    /** The least fine code. */
    public static final int CODE_LEAST = 0x10;

    /** The greatest fine code. */
    public static final int CODE_MOST = 0xFFF;

    /** The most steps of a sweep one way. */
    public static final int STEPS_MOST = 0x200;

    public SweepThreshold {
      if (channel != Channel.CENTRE_LOW && channel != Channel.CENTRE_HIGH) {
        throw new IllegalArgumentException("no threshold of " + channel + " is swept");
      }
      if (!isRange(fromCode, toCode)) {
        throw new IllegalArgumentException("no range of a sweep: " + fromCode + " to " + toCode);
      }
    }

    static boolean isRange(int fromCode, int toCode) {
      return fromCode >= CODE_LEAST
          && fromCode < toCode
          && toCode <= CODE_MOST
          && toCode - fromCode <= STEPS_MOST;
    }
  }
}
