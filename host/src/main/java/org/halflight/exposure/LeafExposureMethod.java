package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.exposure.Exposure.NeverFullyOpen;
import org.halflight.exposure.Exposure.Reason;
import org.halflight.exposure.Exposure.StuckOpen;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.exposure.Exposure.Unusable;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulse;
import org.halflight.signal.Pulses;
import org.halflight.time.TickRate;

/**
 * From the edges of the centre sensor at two levels to the exposure of one firing.
 *
 * <p><b>Main opening.</b> Pulses of the low channel with gaps of at most 100 us are one opening:
 * noise at a slow crossing. The opening with the most light is the main one; those before and after
 * are early light and rebound. The width at a level is the sum of the time above it within the main
 * opening, gaps left out, which is what the integral over levels asks for.
 *
 * <p><b>All the light.</b> The exposure is the integral of all light, so early light and rebound
 * are in the effective time, whatever their share: what begins within {@link #EXPOSURE_GAP_SECONDS}
 * of the main opening is one exposure with it. Light further off is another one, and the firing is
 * flagged for it. Each opening is weighed by the rule of two levels. One that passes the high level
 * without opening fully comes out 7 % short at the worst where it is a triangle of light. One that
 * passes the low level only comes out at 62, 99 and 118 % where it is a triangle that peaks at
 * 0.25, 0.3 and 0.4; the firing is flagged for that. Light below the low level is not seen: what
 * was seen is then a lower limit.
 *
 * <p><b>Reflex viewing.</b> Before the exposure the blades close and a flap or mirror lifts. If
 * that is not tight, or too early, light comes before the main opening. It reaches the film, so it
 * counts as all early light does; but however long before it comes, it is no second opening of the
 * shutter. Light past a flap may last longer than the exposure and is seldom full, so the main
 * opening of such a firing is the one that is longest above the high level.
 *
 * <p><b>Fully open?</b> If the leaves never open fully, the width has a kink at the peak of the
 * light, and the two-level rule is void. The time fully open, the width at level 1, follows from
 * the two widths by each opening law: {@code W(1) = W(q2) - (W(q1) - W(q2)) (1 - q2^(1/p)) /
 * (q2^(1/p) - q1^(1/p))}. At the Gauss levels that is below zero when the high width is less than
 * 0.268 of the low one by the area-linear law, and less than 0.207 by the radius-linear law. If
 * both laws say so by more than the levels can be wrong, the firing is 'never fully open'. If a
 * blade that brakes by {@code E = 1 - (1 - x)^4} would say so (below 0.719 at the Gauss levels), or
 * it is too close, the firing is timed and flagged: blades that brake and turn round below full
 * light may then read wrong by more than {@link TwoLevelRule#errorShare} allows (6.2 % short to 6.7
 * % long in a scan of such blades). The light curve, where there is one, tells whether they did.
 * The levels stay fractions of the full light of the set-up; they are never scaled to the peak of
 * the pulse.
 *
 * <p>What two levels cannot see: leaves that stop short, above the high level, and dwell there. The
 * light of the plateau, measured by the rig, tells that.
 */
public final class LeafExposureMethod {
  /** Gaps up to this within one opening are noise at a crossing. */
  public static final double CHATTER_GAP_SECONDS = 100e-6;

  /** More chatter than this share of the width is flagged. */
  public static final double CHATTER_FLAG_SHARE = 0.002;

  /**
   * Early and late light are flagged from this share of the main opening on. Below it they are
   * counted but not flagged: noise at a slow crossing leaves specks of light beside the opening.
   */
  public static final double STRAY_LIGHT_FLAG_SHARE = 0.001;

  /**
   * Light that begins up to this long before or after the main opening is part of the exposure, in
   * seconds: blades that rebound. What begins further off is another opening, and the release a
   * double.
   */
  public static final double EXPOSURE_GAP_SECONDS = 10e-3;

  /**
   * Time above the low level, further off than {@link #EXPOSURE_GAP_SECONDS}, from which there was
   * another opening, in seconds: longer than any spark of noise, and less than a tenth of a stop at
   * 1/1000. Our choice.
   */
  public static final double LEAST_APART_SECONDS = 50e-6;

  /**
   * Early light and rebound count as weighed by the low level only from this share of theirs on
   * that was. Our choice.
   */
  static final double LOW_LEVEL_ONLY_SHARE = 0.1;

  /**
   * How far the two channels of the centre sensor may disagree on a simultaneous change: the high
   * level is sampled by software, the low one captured.
   */
  public static final double ORDER_SLACK_SECONDS = 10e-6;

  /**
   * The time fully open must be below zero by this share of the low width before 'never fully open'
   * is said: the levels are known to about 1 % of full light, no better.
   */
  public static final double FULLY_OPEN_GUARD_SHARE = 0.01;

  private LeafExposureMethod() {}

  /**
   * Measures a firing that is over.
   *
   * @param levels the levels in force, as fractions of full light
   * @param rate how fast the board counts
   */
  public static Exposure measure(Firing firing, LevelPair levels, TickRate rate) {
    return measure(firing, levels, rate, firing.lastTicks());
  }

  /**
   * Measures a firing that is over or under way.
   *
   * @param nowTicks the shutter is known to have stayed as the last edges left it until this time
   */
  public static Exposure measure(Firing firing, LevelPair levels, TickRate rate, long nowTicks) {
    return measure(firing, levels, rate, nowTicks, false);
  }

  /** Measures a firing of a shutter with reflex viewing likewise. */
  static Exposure measureBehindFlap(Firing firing, LevelPair levels, TickRate rate, long nowTicks) {
    return measure(firing, levels, rate, nowTicks, true);
  }

  private static Exposure measure(
      Firing firing, LevelPair levels, TickRate rate, long nowTicks, boolean hasFlap) {
    if (!firing.damage().isEmpty()) {
      return new Unusable(Reason.DAMAGED, firing.damage());
    }
    if (!TwoLevelRule.allows(levels)) {
      return unusable(Reason.LEVELS_TOO_FAR_OFF);
    }
    Pulses low = Pulses.of(firing, Channel.CENTRE_LOW);
    Pulses high = Pulses.of(firing, Channel.CENTRE_HIGH);
    if (low.isEmpty() && high.isEmpty()) {
      return unusable(Reason.NO_LIGHT);
    }
    if (low.startsHigh() || high.startsHigh()) {
      return unusable(Reason.STARTS_IN_LIGHT);
    }
    if (low.stillHighSince().isPresent()) {
      return stillOpen(low, rate, Math.max(nowTicks, firing.lastTicks()));
    }
    if (low.isEmpty()) {
      return unusable(Reason.HIGH_WITHOUT_LOW);
    }
    if (high.stillHighSince().isPresent()) {
      return unusable(Reason.HIGH_DOES_NOT_CLOSE);
    }
    return closed(low.pulses(), high.pulses(), levels, rate, hasFlap);
  }

  private static Exposure unusable(Reason reason) {
    return new Unusable(reason, List.of());
  }

  private static Exposure stillOpen(Pulses low, TickRate rate, long nowTicks) {
    List<Pulse> all = new ArrayList<>(low.pulses());
    all.add(new Pulse(low.stillHighSince().getAsLong(), nowTicks));
    List<Opening> openings = Opening.join(all, rate.ticks(CHATTER_GAP_SECONDS));
    Opening last = openings.get(openings.size() - 1);
    return new StuckOpen(rate.seconds(last.lightTicks()), last.startTicks());
  }

  private static Exposure closed(
      List<Pulse> lowPulses,
      List<Pulse> highPulses,
      LevelPair levels,
      TickRate rate,
      boolean hasFlap) {
    long slackTicks = rate.ticks(ORDER_SLACK_SECONDS);
    List<Opening> openings = Opening.join(lowPulses, rate.ticks(CHATTER_GAP_SECONDS));
    List<List<Pulse>> highIn = new ArrayList<>();
    int placed = 0;
    for (Opening opening : openings) {
      List<Pulse> within = within(opening, highPulses, slackTicks);
      placed += within.size();
      highIn.add(within);
    }
    if (placed < highPulses.size()) {
      return unusable(
          highPulses.stream().allMatch(pulse -> overlapsAny(pulse, openings))
              ? Reason.LEVELS_REVERSED
              : Reason.HIGH_WITHOUT_LOW);
    }
    int main = main(openings, highIn, hasFlap);
    Opening low = openings.get(main);
    if (highIn.get(main).isEmpty()) {
      return neverFullyOpen(openings, highIn, main, levels, rate);
    }
    Opening high = new Opening(highIn.get(main));
    if (high.lightTicks() > low.lightTicks() + 2 * slackTicks) {
      return unusable(Reason.LEVELS_REVERSED);
    }
    double lowSeconds = rate.seconds(low.lightTicks());
    double highSeconds = rate.seconds(high.lightTicks());
    ByLaw fullyOpen =
        ByLaw.of(
            law ->
                LeafTravel.widthSeconds(
                    lowSeconds,
                    levels.low(),
                    LeafTravel.openingPlusClosingSeconds(lowSeconds, highSeconds, levels, law),
                    law,
                    1));
    double guardSeconds = FULLY_OPEN_GUARD_SHARE * lowSeconds;
    if (fullyOpen.greatest() < -guardSeconds) {
      return neverFullyOpen(openings, highIn, main, levels, rate);
    }
    double before = 0;
    double after = 0;
    double lowOnly = 0;
    long apartTicks = 0;
    for (int i = 0; i < openings.size(); i++) {
      if (i == main) {
        continue;
      }
      Opening other = openings.get(i);
      double light = light(other, highIn.get(i), levels, rate);
      before += i < main ? light : 0;
      after += i > main ? light : 0;
      lowOnly += highIn.get(i).isEmpty() ? light : 0;
      boolean pastFlap = hasFlap && i < main;
      apartTicks += !pastFlap && isApart(other, low, rate) ? other.lightTicks() : 0;
    }
    Set<Flag> flags = EnumSet.noneOf(Flag.class);
    if (rate.seconds(apartTicks) >= LEAST_APART_SECONDS) {
      flags.add(Flag.LIGHT_APART);
    }
    return timed(low, high, fullyOpen, before, after, lowOnly, flags, levels, rate, hasFlap);
  }

  /** The place of the main opening. */
  private static int main(List<Opening> openings, List<List<Pulse>> highIn, boolean hasFlap) {
    Comparator<Integer> light = Comparator.comparingLong(i -> openings.get(i).lightTicks());
    Comparator<Integer> high = Comparator.comparingLong(i -> ticks(highIn.get(i)));
    return IntStream.range(0, openings.size())
        .boxed()
        .max((hasFlap ? high.thenComparing(light) : light).thenComparing(Comparator.reverseOrder()))
        .orElseThrow();
  }

  /** Whether an opening begins too far from the main one to be one exposure with it. */
  private static boolean isApart(Opening other, Opening main, TickRate rate) {
    long zero = main.startTicks();
    return !ExposureWindow.holds(
        rate.seconds(other.startTicks() - zero), 0, rate.seconds(main.endTicks() - zero));
  }

  private static Timed timed(
      Opening low,
      Opening high,
      ByLaw fullyOpen,
      double lightBefore,
      double lightAfter,
      double lowLevelOnly,
      Set<Flag> flags,
      LevelPair levels,
      TickRate rate,
      boolean hasFlap) {
    double lowSeconds = rate.seconds(low.lightTicks());
    double highSeconds = rate.seconds(high.lightTicks());
    double main = TwoLevelRule.effectiveSeconds(lowSeconds, highSeconds, levels);

    // Each side by the time above each level on that side of the middle, so that chatter counts as
    // it does in the widths.
    long middle = high.startTicks() + (high.endTicks() - high.startTicks()) / 2;
    double rising =
        rate.seconds(
            low.lightTicksWithin(low.startTicks(), middle)
                - high.lightTicksWithin(high.startTicks(), middle));
    double falling =
        rate.seconds(
            low.lightTicksWithin(middle, low.endTicks())
                - high.lightTicksWithin(middle, high.endTicks()));
    ByLaw opening = ByLaw.of(law -> LeafTravel.rampSeconds(rising, levels, law));
    ByLaw closing = ByLaw.of(law -> LeafTravel.rampSeconds(falling, levels, law));
    ByLaw total =
        ByLaw.of(
            law ->
                LeafTravel.widthSeconds(
                    lowSeconds, levels.low(), opening.under(law) + closing.under(law), law, 0));
    ByLaw halfWidth =
        ByLaw.of(
            law ->
                LeafTravel.widthSeconds(
                    lowSeconds, levels.low(), opening.under(law) + closing.under(law), law, 0.5));

    if (Math.min(fullyOpen.least(), fullyOpenBraking(lowSeconds, highSeconds, levels))
        <= FULLY_OPEN_GUARD_SHARE * lowSeconds) {
      flags.add(Flag.MAY_NOT_OPEN_FULLY);
    }
    long chatterGap = rate.ticks(CHATTER_GAP_SECONDS);
    if (high.longestGapTicks() > chatterGap) {
      flags.add(Flag.DIP_WHILE_OPEN);
    }
    if (low.gapTicks() > CHATTER_FLAG_SHARE * low.lightTicks()
        || chatterTicks(high, chatterGap) > CHATTER_FLAG_SHARE * low.lightTicks()) {
      flags.add(Flag.CHATTER);
    }
    if (lightBefore > STRAY_LIGHT_FLAG_SHARE * main) {
      flags.add(hasFlap ? Flag.FLAP_LIGHT : Flag.EARLY_LIGHT);
    }
    if (lightAfter > STRAY_LIGHT_FLAG_SHARE * main) {
      flags.add(Flag.LATE_LIGHT);
    }
    if (lowLevelOnly > STRAY_LIGHT_FLAG_SHARE * main
        && lowLevelOnly >= LOW_LEVEL_ONLY_SHARE * (lightBefore + lightAfter)) {
      flags.add(Flag.LOW_LEVEL_ONLY);
    }
    return new Timed(
        main + lightBefore + lightAfter,
        TwoLevelRule.errorSeconds(lowSeconds, highSeconds, levels),
        lowSeconds,
        highSeconds,
        lightBefore / main,
        lightAfter / main,
        new Crossings(low.startTicks(), high.startTicks(), high.endTicks(), low.endTicks()),
        flags,
        new BladeTravel(
            halfWidth,
            fullyOpen,
            opening,
            closing,
            total,
            ByLaw.of(law -> main / total.under(law))));
  }

  /** The time fully open by the hardest braking that the bound of the rule covers. */
  private static double fullyOpenBraking(double lowSeconds, double highSeconds, LevelPair levels) {
    double low = Math.pow(1 - levels.low(), 1 / TwoLevelRule.GREATEST_POWER);
    double high = Math.pow(1 - levels.high(), 1 / TwoLevelRule.GREATEST_POWER);
    return highSeconds - Math.max(0, lowSeconds - highSeconds) * high / (low - high);
  }

  private static NeverFullyOpen neverFullyOpen(
      List<Opening> openings, List<List<Pulse>> highIn, int main, LevelPair levels, TickRate rate) {
    Opening low = openings.get(main);
    long highTicks = ticks(highIn.get(main));
    double lowest = 0;
    double highest = 0;
    for (int i = 0; i < openings.size(); i++) {
      if (!isApart(openings.get(i), low, rate)) {
        double lowSeconds = rate.seconds(openings.get(i).lightTicks());
        double highSeconds = rate.seconds(ticks(highIn.get(i)));
        lowest += lowestSeconds(lowSeconds, highSeconds, levels);
        highest += highestSeconds(lowSeconds, highSeconds, levels);
      }
    }
    return new NeverFullyOpen(
        highTicks > 0,
        lowest,
        highTicks > 0 ? OptionalDouble.of(highest) : OptionalDouble.empty(),
        rate.seconds(low.lightTicks()),
        rate.seconds(highTicks),
        low.startTicks(),
        low.endTicks(),
        OptionalDouble.empty());
  }

  /** The width only falls with the level: the steps below it bound the integral. */
  private static double lowestSeconds(double lowSeconds, double highSeconds, LevelPair levels) {
    return levels.low() * lowSeconds + (levels.high() - levels.low()) * highSeconds;
  }

  /**
   * And so do the steps above it, with the light below the low level of a round hole; one that did
   * not reach the high level has no known travel, and only the step.
   */
  private static double highestSeconds(double lowSeconds, double highSeconds, LevelPair levels) {
    double q1 = levels.low();
    double q2 = levels.high();
    if (highSeconds == 0) {
      return q2 * lowSeconds;
    }
    double ramps =
        LeafTravel.openingPlusClosingSeconds(
            lowSeconds, highSeconds, levels, OpeningLaw.RADIUS_LINEAR);
    // Below the low level: the integral of W(q1) + ramps (sqrt q1 - sqrt q) from 0 to q1.
    double below = q1 * lowSeconds + ramps * q1 * Math.sqrt(q1) / 3;
    return below + (q2 - q1) * lowSeconds + (1 - q2) * highSeconds;
  }

  /** The light of an opening by the rule of two levels. */
  private static double light(Opening low, List<Pulse> high, LevelPair levels, TickRate rate) {
    return TwoLevelRule.effectiveSeconds(
        rate.seconds(low.lightTicks()), rate.seconds(ticks(high)), levels);
  }

  private static long ticks(List<Pulse> pulses) {
    return pulses.stream().mapToLong(Pulse::ticks).sum();
  }

  private static List<Pulse> within(Opening opening, List<Pulse> pulses, long slackTicks) {
    return pulses.stream()
        .filter(
            pulse ->
                pulse.startTicks() >= opening.startTicks() - slackTicks
                    && pulse.endTicks() <= opening.endTicks() + slackTicks)
        .toList();
  }

  private static boolean overlapsAny(Pulse pulse, List<Opening> openings) {
    return openings.stream().anyMatch(o -> pulse.ticksWithin(o.startTicks(), o.endTicks()) > 0);
  }

  private static long chatterTicks(Opening opening, long chatterGapTicks) {
    long sum = 0;
    List<Pulse> pulses = opening.pulses();
    for (int i = 1; i < pulses.size(); i++) {
      long gap = pulses.get(i).startTicks() - pulses.get(i - 1).endTicks();
      sum += gap <= chatterGapTicks ? gap : 0;
    }
    return sum;
  }
}
