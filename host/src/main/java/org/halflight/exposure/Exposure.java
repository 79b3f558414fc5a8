package org.halflight.exposure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.signal.Firing;
import org.halflight.stored.StoredWords;

/**
 * What one firing of a shutter comes to. Each case is an outcome of the measurement, none an error
 * of the program.
 */
public sealed interface Exposure {
  /**
   * How far off the light of an early light or rebound may be that passed the low level only, plus
   * or minus, as a share of it: triangles that peak at 0.25 to 0.4 come out at 62 to 118 %.
   */
  double LOW_LEVEL_ONLY_BOUND = 0.4;

  /**
   * And of one that passed the high level: a triangle that peaks just above it comes out 7 % short,
   * and up to a tenth of the light may have passed the low level only.
   */
  double BOTH_LEVELS_BOUND = 0.12;

  /** What to know about a timed exposure before trusting its last digit. */
  enum Flag {
    /**
     * By one opening law the leaves never opened fully, by another they did. Where they did not,
     * the effective time may be wrong by more than its bound: see {@link LeafExposureMethod}.
     */
    MAY_NOT_OPEN_FULLY,
    /** The light crossed a level more than once near a crossing, for more than a little. */
    CHATTER,
    /** The light fell below the high level in the middle of the opening and rose again. */
    DIP_WHILE_OPEN,
    /** Light before the main opening. */
    EARLY_LIGHT,
    /**
     * Light before the main opening of a shutter with reflex viewing, however long before: the flap
     * or mirror of the body let it through.
     */
    FLAP_LIGHT,
    /** Light after the main closing: rebound. */
    LATE_LIGHT,
    /**
     * Early light or rebound passed the low level only, and how much light it was is uncertain by
     * {@value Exposure#LOW_LEVEL_ONLY_BOUND} of it.
     */
    LOW_LEVEL_ONLY,
    /** Light too far from the main opening to be one exposure with it: opened twice. */
    LIGHT_APART,
    /**
     * Read from results of earlier versions only: they compared the integrals of edges and curve,
     * which the wander of a lamp alone moves apart at slow speeds.
     */
    CURVE_DISAGREES,
    /**
     * The light curve stayed below full light: leaves that stop short, or light that has faded
     * since it was set.
     */
    CURVE_BELOW_FULL,
    /**
     * At one level edges and light curve are open for times that lie further apart than one light
     * allows: no verdict, the rig wants a check.
     */
    WIDTHS_APART;

    /** As files store them. */
    public static final StoredWords<Flag> WORDS =
        StoredWords.of(
            Flag.class,
            flag ->
                switch (flag) {
                  case MAY_NOT_OPEN_FULLY -> "may-not-open-fully";
                  case CHATTER -> "chatter";
                  case DIP_WHILE_OPEN -> "dip-while-open";
                  case EARLY_LIGHT -> "early-light";
                  case FLAP_LIGHT -> "flap-light";
                  case LATE_LIGHT -> "late-light";
                  case LOW_LEVEL_ONLY -> "low-level-only";
                  case LIGHT_APART -> "light-apart";
                  case CURVE_DISAGREES -> "curve-disagrees";
                  case CURVE_BELOW_FULL -> "curve-below-full";
                  case WIDTHS_APART -> "widths-apart";
                });
  }

  /** Why a firing gives no figure. */
  enum Reason {
    /** No edge of the centre sensor at all: a sound, a contact or a finger only. */
    NO_LIGHT,
    /** Edges are or may be missing; see the damage. */
    DAMAGED,
    /** The sensor saw light already before the firing. */
    STARTS_IN_LIGHT,
    /** The high level was crossed where the low one was not. */
    HIGH_WITHOUT_LOW,
    /** The light stayed above the high level for longer than above the low one. */
    LEVELS_REVERSED,
    /** The low level saw the closing and the high one did not. */
    HIGH_DOES_NOT_CLOSE,
    /** The levels are too far from those that the two-level rule holds for. */
    LEVELS_TOO_FAR_OFF,
    /** A rig of one level has not yet seen this speed at its other level. */
    OTHER_LEVEL_WANTED;

    /** As files store them. */
    public static final StoredWords<Reason> WORDS =
        StoredWords.of(
            Reason.class,
            reason ->
                switch (reason) {
                  case NO_LIGHT -> "no-light";
                  case DAMAGED -> "damaged";
                  case STARTS_IN_LIGHT -> "starts-in-light";
                  case HIGH_WITHOUT_LOW -> "high-without-low";
                  case LEVELS_REVERSED -> "levels-reversed";
                  case HIGH_DOES_NOT_CLOSE -> "high-does-not-close";
                  case LEVELS_TOO_FAR_OFF -> "levels-too-far-off";
                  case OTHER_LEVEL_WANTED -> "other-level-wanted";
                });
  }

  /**
   * A timed exposure at the centre of the frame. All times but the first are of the main opening:
   * the longest one at the low level.
   *
   * @param effectiveSeconds all the light: the integral of the main opening, of early light and of
   *     rebound as a fraction of full light, each by the two-level rule. Light below the low level
   *     is not seen, so where there was some this is a lower limit
   * @param methodSeconds bound of the error of the rule itself at the main opening, plus or minus,
   *     in seconds; not the uncertainty of the measurement, and no bound for ramps that stick
   * @param widthLowSeconds time above the low level
   * @param widthHighSeconds time above the high level
   * @param earlyLightShare light of all openings before the main one, as a share of its light
   * @param lateLightShare light of all openings after the main one (rebound), likewise
   * @param crossings when the light crossed the two levels
   * @param flags what to know about it
   * @param travel how blades or curtains moved
   */
  record Timed(
      double effectiveSeconds,
      double methodSeconds,
      double widthLowSeconds,
      double widthHighSeconds,
      double earlyLightShare,
      double lateLightShare,
      Crossings crossings,
      Set<Flag> flags,
      Travel travel)
      implements Exposure {
    public Timed {
      flags = Set.copyOf(flags);
    }

    /** The same with other flags. */
    Timed withFlags(Set<Flag> others) {
      return with(others, travel, methodSeconds);
    }

    /** The same with other flags, another travel, and another bound of the error of the rule. */
    Timed with(Set<Flag> others, Travel moved, double ruleSeconds) {
      return new Timed(
          effectiveSeconds,
          ruleSeconds,
          widthLowSeconds,
          widthHighSeconds,
          earlyLightShare,
          lateLightShare,
          crossings,
          others,
          moved);
    }

    /** How the blades moved; empty for curtains. */
    public Optional<BladeTravel> blades() {
      return travel instanceof BladeTravel blades ? Optional.of(blades) : Optional.empty();
    }

    /** The same opening where it was a person that closed the shutter. */
    public StuckOpen asStuckOpen() {
      return new StuckOpen(widthLowSeconds, crossings.lowRiseTicks());
    }

    @Override
    public Optional<CurtainTravel> curtains() {
      return travel instanceof CurtainTravel curtains ? Optional.of(curtains) : Optional.empty();
    }

    /** Effective time of the main opening alone, in seconds. */
    public double mainSeconds() {
      return effectiveSeconds / (1 + earlyLightShare + lateLightShare);
    }

    /** Light after the main opening, in seconds of full light. */
    public double reboundSeconds() {
      return lateLightShare * mainSeconds();
    }

    /** Light before the main opening, in seconds of full light. */
    public double earlySeconds() {
      return earlyLightShare * mainSeconds();
    }

    /**
     * How far off early light and rebound may be, plus or minus, as a share of them: few levels
     * weigh them. An allowance for pulses of any height.
     */
    public double outsideBoundShare() {
      return flags.contains(Flag.LOW_LEVEL_ONLY) ? LOW_LEVEL_ONLY_BOUND : BOTH_LEVELS_BOUND;
    }

    /** The same in seconds of full light. */
    public double outsideBoundSeconds() {
      return (reboundSeconds() + earlySeconds()) * outsideBoundShare();
    }

    /** Whether light came too far from the main opening to be one exposure with it. */
    public boolean isDouble() {
      return flags.contains(Flag.LIGHT_APART);
    }

    /**
     * Whether both opening laws, or the light curve, say that it opened fully. A blade that brakes
     * hard may not have all the same: see {@link Flag#MAY_NOT_OPEN_FULLY}.
     */
    public boolean countsAsFullyOpen() {
      double least = LeafExposureMethod.FULLY_OPEN_GUARD_SHARE * widthLowSeconds;
      return !flags.contains(Flag.MAY_NOT_OPEN_FULLY)
          || blades().filter(each -> each.fullyOpenSeconds().least() > least).isPresent();
    }
  }

  /**
   * The leaves did not open fully, so the light has no full level to be timed by and only bounds
   * are known.
   *
   * @param highReached whether the light reached the high level
   * @param lowestSeconds the effective time is at least this, whatever the shape; early light and
   *     rebound are in it
   * @param highestSeconds and at most this, as long as the first light up to the low level came no
   *     slower than with a round hole; not known where the high level was not reached, since
   *     nothing then tells how fast the leaves moved
   * @param widthLowSeconds time above the low level
   * @param widthHighSeconds time above the high level, 0 when not reached
   * @param startTicks first rise through the low level
   * @param endTicks last fall through it
   * @param effectiveSeconds the effective time by the light curve, the integral by the full light
   *     that was set; empty without a curve that has a figure
   * @param curtains how curtains moved, where outer sensors saw them: the slit was narrower than
   *     what the sensor covers, or closed before it came to the centre
   */
  record NeverFullyOpen(
      boolean highReached,
      double lowestSeconds,
      OptionalDouble highestSeconds,
      double widthLowSeconds,
      double widthHighSeconds,
      long startTicks,
      long endTicks,
      OptionalDouble effectiveSeconds,
      Optional<CurtainTravel> curtains)
      implements Exposure {
    /** Of blades. */
    public NeverFullyOpen(
        boolean highReached,
        double lowestSeconds,
        OptionalDouble highestSeconds,
        double widthLowSeconds,
        double widthHighSeconds,
        long startTicks,
        long endTicks,
        OptionalDouble effectiveSeconds) {
      this(
          highReached,
          lowestSeconds,
          highestSeconds,
          widthLowSeconds,
          widthHighSeconds,
          startTicks,
          endTicks,
          effectiveSeconds,
          Optional.empty());
    }

    /** The same with the effective time of the light curve. */
    NeverFullyOpen withEffective(double seconds) {
      return with(OptionalDouble.of(seconds), curtains);
    }

    /** The same with how the curtains moved. */
    NeverFullyOpen with(CurtainTravel travel) {
      return with(effectiveSeconds, Optional.of(travel));
    }

    private NeverFullyOpen with(OptionalDouble seconds, Optional<CurtainTravel> travel) {
      return new NeverFullyOpen(
          highReached,
          lowestSeconds,
          highestSeconds,
          widthLowSeconds,
          widthHighSeconds,
          startTicks,
          endTicks,
          seconds,
          travel);
    }
  }

  /**
   * The shutter opened and was not seen to close.
   *
   * @param lowestSeconds it was open for at least this long
   * @param startTicks first rise through the low level
   */
  record StuckOpen(double lowestSeconds, long startTicks) implements Exposure {}

  /**
   * No figure.
   *
   * @param reason why
   * @param damage what is wrong with the record of the edges; empty unless that is the reason
   */
  record Unusable(Reason reason, List<Firing.Damage> damage) implements Exposure {
    public Unusable {
      damage = List.copyOf(damage);
    }
  }

  /** How curtains moved; empty for blades, and where no outer sensor saw them. */
  default Optional<CurtainTravel> curtains() {
    return Optional.empty();
  }
}
