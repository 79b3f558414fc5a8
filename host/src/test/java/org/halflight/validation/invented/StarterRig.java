package org.halflight.validation.invented;

import java.util.List;
import java.util.Set;

/**
 * An invented starter rig with its lamp and its room, as they really are. Figures of parts are
 * limits of data sheets, from memory.
 *
 * @param parts of the circuit, on the supply that there is while the light is set
 * @param bandgapVolts of the chip
 * @param offsetVolts of its comparator
 * @param hysteresisVolts likewise
 * @param fullAmps photocurrent of the open shutter, without the room's
 * @param roomAmps of the room, whatever the shutter does
 * @param roomRippleAmps how far that goes up and down, 100 times a second
 * @param supplyShift by which part the supply is higher when the shutter fires
 * @param bandgapShift likewise of the bandgap
 * @param fade by which part the lamp is brighter then
 * @param wander standard deviation of the lamp from firing to firing, as a part
 * @param bowCounts how far the converter's line is bent in the middle
 * @param fastCounts how much more the converter reads at the rate of light curves
 * @param fastGain likewise, as a part
 * @param readingCounts standard deviation of a reading
 * @param clockFast by which part the board counts more ticks than it says
 */
public record StarterRig(
    StarterCircuit.Parts parts,
    double bandgapVolts,
    double offsetVolts,
    double hysteresisVolts,
    double fullAmps,
    double roomAmps,
    double roomRippleAmps,
    double supplyShift,
    double bandgapShift,
    double fade,
    double wander,
    double bowCounts,
    double fastCounts,
    double fastGain,
    double readingCounts,
    double clockFast) {
  /** Where the shutter is measured. */
  public enum Room {
    DARK("dark"),
    /** A window or a battery lamp: 2 to 6 % of full light on the diode. */
    LIT("lit, steady"),
    /** The same by mains lamps, with as much ripple as the check of the light lets pass. */
    LIT_WITH_RIPPLE("lit, 100 Hz ripple");

    private final String words;

    Room(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** What makes a time wrong. */
  public enum Effect {
    /** Noise and steps of the converter are always there. */
    CONVERTER_LINE,
    CONVERTER_RATES,
    DARK,
    LAMP,
    BANDGAP,
    SUPPLY,
    KICK_BACK,
    RIPPLE,
    CLOCK
  }

  /** The resistors of the parts list. */
  public static final List<Double> OHMS = List.of(22e3, 47e3, 100e3);

  public static final double FARADS = 1e-9;

  /** The ripple that the check of the light lets pass, as a part of full light. */
  public static final double RIPPLE_PASSED = 0.003;

  private static final double LEAK_AMPS = 50e-9;
  private static final double RESONATOR = 5000e-6;
  private static final double FADE = 0.006;
  private static final double WANDER = 0.0035;
  private static final double LEAST_FULL_VOLTS = 3;
  private static final double GREATEST_FULL_VOLTS = 4.4;

  /** Above this the program says that the light is too bright. */
  private static final double FULL_OF_SUPPLY = 0.93;

  private static final double MOST_LOST = 0.2;
  private static final double COUNTS_OF_NOISE = 0.5;

  /**
   * A rig with all things off by what its parts allow.
   *
   * @param supplyShift of the supply between setting the light and firing, either way
   */
  public static StarterRig drawn(Room room, double supplyShift, Draws draws) {
    double ohms = OHMS.get(draws.upTo(OHMS.size() - 1));
    double supply = draws.between(4.5, 5.25);
    double most = Math.min(GREATEST_FULL_VOLTS, FULL_OF_SUPPLY * supply);
    double all = draws.between(LEAST_FULL_VOLTS, most) / ohms;
    double ofRoom = room == Room.DARK ? 0 : draws.between(0.02, 0.06);
    double ripple = room == Room.LIT_WITH_RIPPLE ? draws.between(0.2, 1) * RIPPLE_PASSED : 0;
    return new StarterRig(
        new StarterCircuit.Parts(
            ohms,
            FARADS * draws.between(0.9, 1.1),
            draws.between(0, LEAK_AMPS),
            draws.between(0, MOST_LOST),
            supply),
        draws.between(1, 1.2),
        draws.either(0.04),
        draws.between(0, 0.01),
        all * (1 - ofRoom),
        all * ofRoom,
        all * ripple,
        draws.coin() ? supplyShift : -supplyShift,
        // 5 mV a volt of supply, and 10 degrees of 0.1 mV (from memory).
        draws.either(0.002),
        draws.either(FADE),
        WANDER,
        draws.either(1.5),
        draws.either(1),
        draws.either(0.0015),
        COUNTS_OF_NOISE,
        draws.either(RESONATOR));
  }

  /**
   * The same with other parts.
   *
   * @param fullVolts the pin at full light, while it is set
   */
  public StarterRig with(double ohms, double farads, double lost, double fullVolts) {
    double more = fullVolts / ohms / (fullAmps + roomAmps);
    return new StarterRig(
        new StarterCircuit.Parts(ohms, farads, parts.leakAmps(), lost, parts.supplyVolts()),
        bandgapVolts,
        offsetVolts,
        hysteresisVolts,
        fullAmps * more,
        roomAmps * more,
        roomRippleAmps * more,
        supplyShift,
        bandgapShift,
        fade,
        wander,
        bowCounts,
        fastCounts,
        fastGain,
        readingCounts,
        clockFast);
  }

  /** The same without any other effect. */
  public StarterRig only(Set<Effect> effects) {
    boolean dark = effects.contains(Effect.DARK);
    boolean ripple = effects.contains(Effect.RIPPLE);
    boolean bandgap = effects.contains(Effect.BANDGAP);
    boolean lamp = effects.contains(Effect.LAMP);
    boolean rates = effects.contains(Effect.CONVERTER_RATES);
    return new StarterRig(
        new StarterCircuit.Parts(
            parts.ohms(),
            parts.farads(),
            dark ? parts.leakAmps() : 0,
            effects.contains(Effect.KICK_BACK) ? parts.lost() : 0,
            parts.supplyVolts()),
        bandgap ? bandgapVolts : 1.1,
        bandgap ? offsetVolts : 0,
        bandgap ? hysteresisVolts : 0,
        fullAmps,
        dark ? roomAmps : 0,
        ripple ? roomRippleAmps : 0,
        effects.contains(Effect.SUPPLY) ? supplyShift : 0,
        effects.contains(Effect.SUPPLY) || bandgap ? bandgapShift : 0,
        lamp ? fade : 0,
        lamp ? wander : 0,
        effects.contains(Effect.CONVERTER_LINE) ? bowCounts : 0,
        rates ? fastCounts : 0,
        rates ? fastGain : 0,
        readingCounts,
        effects.contains(Effect.CLOCK) ? clockFast : 0);
  }

  /** The pin at full light, while it is set. */
  public double fullVolts() {
    return (fullAmps + roomAmps) * parts.ohms();
  }

  double ticksPerSecond() {
    return 16e6 * (1 + clockFast);
  }
}
