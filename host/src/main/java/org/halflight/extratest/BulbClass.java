package org.halflight.extratest;

import java.util.Arrays;
import java.util.List;

/**
 * Delay classes of flash bulbs: how long before the shutter is open the contact has to close, so
 * that the bulb burns brightest while it is open. M and FP are as a camera maker's support article
 * gives them; the others are from memory and say so wherever they are shown.
 */
public enum BulbClass {
  /** From memory: about 5 ms; a fifth either way is our choice. */
  F(4, 6, true),
  /** From memory: 9 to 18 ms. */
  MF(9, 18, true),
  /** 13 to 19 ms before 80 % open. */
  M(13, 19, false),
  /** 15 to 20 ms; made for focal-plane shutters. */
  FP(15, 20, false),
  /** From memory: about 30 ms; a fifth either way is our choice. */
  S(24, 36, true);

  private static final double M_CURTAINS_LEAST_MILLIS = 7;
  private static final double M_CURTAINS_MOST_MILLIS = 15;

  private final double leastMillis;
  private final double mostMillis;
  private final boolean fromMemory;

  BulbClass(double leastMillis, double mostMillis, boolean fromMemory) {
    this.leastMillis = leastMillis;
    this.mostMillis = mostMillis;
    this.fromMemory = fromMemory;
  }

  /** Least delay of the class, in milliseconds. */
  public double leastMillis() {
    return leastMillis;
  }

  /** Greatest delay of the class, in milliseconds. */
  public double mostMillis() {
    return mostMillis;
  }

  /** Whether its delay is from memory, without a source. */
  public boolean isFromMemory() {
    return fromMemory;
  }

  /**
   * Every class that a delay fits behind blades, and none where it fits none: classes overlap.
   *
   * @param delaySeconds from closing to four fifths open
   */
  public static List<BulbClass> fitting(double delaySeconds) {
    double millis = delaySeconds * 1e3;
    return Arrays.stream(values())
        .filter(each -> millis >= each.leastMillis && millis <= each.mostMillis)
        .toList();
  }

  /**
   * Every class that a delay fits behind curtains. M there is 7 to 15 ms before the slit is at the
   * centre, FP as above (both a camera maker's support article); the others belong to blades.
   *
   * @param delaySeconds from closing to the slit at the centre
   */
  public static List<BulbClass> fittingCurtains(double delaySeconds) {
    double millis = delaySeconds * 1e3;
    return Arrays.stream(values())
        .filter(
            each ->
                switch (each) {
                  case M -> millis >= M_CURTAINS_LEAST_MILLIS && millis <= M_CURTAINS_MOST_MILLIS;
                  case FP -> millis >= each.leastMillis && millis <= each.mostMillis;
                  case F, MF, S -> false;
                })
        .toList();
  }
}
