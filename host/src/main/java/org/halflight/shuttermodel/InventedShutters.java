package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.halflight.speeds.MarkedSpeed;

/**
 * Ready model shutters for practice and validation. All of them are <b>invented</b>: no camera was
 * measured for them, and no figure here describes a real one. That dry bearings or dirt in the
 * escapement spoil the slow speeds is in the repair literature (L. P. Clerc, Photography, Theory
 * and Practice; US Army SS0522); how much, is invention.
 */
public final class InventedShutters {
  /** Speeds up to this exact time are made by the spring alone, slower ones by the train. */
  private static final double TRAIN_FROM_SECONDS = 1.0 / 16;

  /** Both strokes driven from rest, as a spring does it; times are invented. */
  private static final BladeStroke BRISK =
      new BladeStroke(BladeLaw.FIVE_BLADES_ACCELERATING, 0.9, BladeLaw.FIVE_BLADES_BRAKING, 0.8);

  private InventedShutters() {}

  /** The modern dial from 1 s to 1/500. */
  public static List<MarkedSpeed> dial() {
    List<MarkedSpeed> dial = new ArrayList<>();
    int[] markings = {1, 2, 4, 8, 15, 30, 60, 125, 250, 500};
    for (int i = 0; i < markings.length; i++) {
      dial.add(
          new MarkedSpeed(
              markings[i] == 1 ? "1" : "1/" + markings[i], 1.0 / markings[i], 1.0 / (1 << i)));
    }
    return dial;
  }

  /**
   * Nothing wrong: all speeds within a sixth of a stop, the fastest a little slow as is usual
   * (trade custom, no source), scatter of a fiftieth of a stop.
   */
  public static LeafShutter soundLeaf(List<MarkedSpeed> dial, long seed) {
    return shutter("invented, sound", BRISK, dial, InventedShutters::sound, seed);
  }

  /**
   * Dirt in the slow-speed train: from 1 s to 1/15 long by 0.5 to 0.9 stop, longer the longer the
   * train runs, because a dry train is braked all along its way; uneven, creeping, worst at the
   * first firing after rest, and now and then it hangs at the slowest. The fast speeds, which the
   * train has no part in, are those of the sound shutter. Its self-timer is as dry, and its flash
   * contact closes too late for the fastest speed.
   */
  public static LeafShutter dirtySlowTrain(List<MarkedSpeed> dial, long seed) {
    return shutter(
            "invented, dirty slow-speed train",
            BRISK,
            dial,
            speed -> {
              double seconds = speed.exactSeconds();
              if (seconds < TRAIN_FROM_SECONDS) {
                return sound(speed);
              }
              double octaves = log2(seconds / TRAIN_FROM_SECONDS);
              return SpeedBehaviour.of(0.5 + 0.1 * octaves, 0.12)
                  .withCreep(0.02)
                  .withAfterRest(0.35)
                  .withChances(seconds >= 0.5 ? 0.05 : 0, 0);
            },
            seed)
        .with(InventedContact.LATE.model())
        .with(ModelSelfTimer.UNEVEN);
  }

  /**
   * The same shutter with its train and its self-timer cleaned and its flash contact set: the train
   * speeds as the fast ones, with a little more scatter left, because a train always adds some.
   */
  public static LeafShutter cleanedSlowTrain(List<MarkedSpeed> dial, long seed) {
    return shutter(
            "invented, cleaned slow-speed train",
            BRISK,
            dial,
            speed ->
                speed.exactSeconds() < TRAIN_FROM_SECONDS
                    ? sound(speed)
                    : SpeedBehaviour.of(0.06, 0.03).withAfterRest(0.03),
            seed)
        .with(InventedContact.BOUNCING.model());
  }

  /**
   * A weak spring or old oil everywhere: every speed long by the same ratio (0.45 stop), as a
   * spring that has lost force slows all that it drives, and slower strokes.
   */
  public static LeafShutter allSlow(List<MarkedSpeed> dial, long seed) {
    return shutter(
        "invented, slow throughout",
        new BladeStroke(BladeLaw.FIVE_BLADES_ACCELERATING, 1.2, BladeLaw.FIVE_BLADES_BRAKING, 1.1),
        dial,
        speed -> SpeedBehaviour.of(0.45, 0.04).withAfterRest(0.1),
        seed);
  }

  /**
   * Sluggish blades: opening and closing together take longer than the fastest speed lasts, so it
   * turns back before the blades are fully open (peak near 0.6 at 1/500) while 1/125 and slower
   * open fully; half a stop fast at the fastest, and it may not open there at all.
   */
  public static LeafShutter neverFullyOpen(List<MarkedSpeed> dial, long seed) {
    return shutter(
        "invented, never fully open at the fastest",
        new BladeStroke(BladeLaw.FIVE_BLADES_CONSTANT, 4.4, BladeLaw.FIVE_BLADES_CONSTANT, 3.6),
        dial,
        speed ->
            speed.exactSeconds() > 1.0 / 400
                ? SpeedBehaviour.of(0.05, 0.04)
                : SpeedBehaviour.of(-0.5, 0.08).withChances(0, 0.05),
        seed);
  }

  /**
   * Right at all speeds, but the blades rebound on closing: three milliseconds later light comes
   * again for a moment, a fifth of the fastest speed's. Far worse than usual, so that its picture
   * shows something.
   */
  public static LeafShutter bouncing(List<MarkedSpeed> dial, long seed) {
    return shutter(
        "invented, bouncing", BRISK, dial, InventedShutters::sound, new Bounce(0.2, 3, 1.5), seed);
  }

  private static SpeedBehaviour sound(MarkedSpeed speed) {
    return SpeedBehaviour.of(speed.exactSeconds() > 1.0 / 400 ? 0.03 : 0.15, 0.02)
        .withAfterRest(0.02);
  }

  private static LeafShutter shutter(
      String name, BladeStroke stroke, List<MarkedSpeed> dial, Behaviours behaviours, long seed) {
    return shutter(name, stroke, dial, behaviours, new Bounce(0.01, 4, 0.8), seed);
  }

  private static LeafShutter shutter(
      String name,
      BladeStroke stroke,
      List<MarkedSpeed> dial,
      Behaviours behaviours,
      Bounce bounce,
      long seed) {
    Map<MarkedSpeed, SpeedBehaviour> speeds = new LinkedHashMap<>();
    dial.forEach(speed -> speeds.put(speed, behaviours.of(speed)));
    return new LeafShutter(name, stroke, speeds, bounce, ReleaseTiming.INVENTED, seed);
  }

  private static double log2(double ratio) {
    return StrictMath.log(ratio) / StrictMath.log(2);
  }

  private interface Behaviours {
    SpeedBehaviour of(MarkedSpeed speed);
  }
}
