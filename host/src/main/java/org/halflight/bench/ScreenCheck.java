package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.light.ScreenLight;

/**
 * Looks whether the light of the screen reaches the sensor: the screen is black, then white, a few
 * times, and the centre sensor is read each time. What the screen shows is told by whoever paints
 * it, so that nothing hangs on how fast that is. Not safe for use by several threads.
 */
public final class ScreenCheck {
  /** Black and white, so often. */
  private static final int PAIRS = 3;

  /** Readings that are passed over: a screen takes a tenth of a second to follow. Our own limit. */
  private static final int SETTLE_READINGS = 5;

  private static final int READINGS = 6;

  private final double wantedCounts;
  private final List<Double> black = new ArrayList<>();
  private final List<Double> white = new ArrayList<>();
  private int turn;
  private boolean painted;
  private long heard;
  private int taken;
  private double sum;
  private Optional<ScreenLight> result = Optional.empty();

  /**
   * @param wantedCounts full light less dark, in counts of the converter
   */
  public ScreenCheck(double wantedCounts) {
    this.wantedCounts = wantedCounts;
  }

  /** Which turn it is, from 0. */
  public int turn() {
    return turn;
  }

  /** Whether the screen is to be white now, or black; empty when it is over. */
  public Optional<Boolean> shown() {
    return isOver() ? Optional.empty() : Optional.of(turn % 2 == 1);
  }

  /** Part of it that is done, 0 to 1. */
  public double progress() {
    return turn / (2.0 * PAIRS);
  }

  /** The screen shows now what a turn wants. */
  public void isPainted(int ofTurn) {
    if (ofTurn == turn && !painted) {
      painted = true;
      taken = 0;
      sum = 0;
      heard = -1;
    }
  }

  /**
   * Takes what the meter has read since.
   *
   * @return whether there is anything else to show
   */
  public boolean goOn(AimMeter meter) {
    meter.looksAtTheLamp(isOver());
    if (isOver() || !painted || meter.readings() == heard) {
      return false;
    }
    heard = meter.readings();
    taken++;
    if (taken > SETTLE_READINGS) {
      sum += meter.counts();
    }
    return taken == SETTLE_READINGS + READINGS && turnsOver();
  }

  private boolean turnsOver() {
    (turn % 2 == 1 ? white : black).add(sum / READINGS);
    painted = false;
    turn++;
    if (turn == 2 * PAIRS) {
      result = Optional.of(ScreenLight.of(white, black, wantedCounts));
    }
    return true;
  }

  /** Whether it is over. */
  public boolean isOver() {
    return result.isPresent();
  }

  /** What it came to, when it is over. */
  public Optional<ScreenLight> result() {
    return result;
  }
}
