package org.halflight.verdict;

import java.util.List;
import java.util.Optional;
import org.halflight.session.Assembly;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.stored.StoredWords;

/**
 * One stage of assembly with what was fired in it.
 *
 * @param assembly how far the shutter was put together
 * @param lightSet whether full light was set since the cells were last changed
 * @param bulb what the quick test of B showed, where it was made
 * @param slow the slowest speed of the train
 * @param top the top speed
 */
public record Stage(
    Assembly assembly, boolean lightSet, Optional<Bulb> bulb, Fired slow, Fired top) {
  /** What a part of the test of B showed. */
  public enum Seen {
    /** As it should be. */
    RIGHT,
    /** Not as it should be. */
    WRONG,
    /** Not tried, or not to be seen with this rig. */
    NOT_KNOWN;

    /** As tables store them. */
    public static final StoredWords<Seen> WORDS =
        StoredWords.of(
            Seen.class,
            seen ->
                switch (seen) {
                  case RIGHT -> "right";
                  case WRONG -> "wrong";
                  case NOT_KNOWN -> "not-known";
                });
  }

  /**
   * The quick test of B.
   *
   * @param tap opens at a tap and closes
   * @param hold stays open for as long as it is held
   * @param drop closes at once when it is let go
   */
  public record Bulb(Seen tap, Seen hold, Seen drop) {
    /** Whether some part of it is wrong. */
    public boolean isWrong() {
      return tap == Seen.WRONG || hold == Seen.WRONG || drop == Seen.WRONG;
    }

    /** Whether some part of it is right and none is wrong. */
    public boolean isRight() {
      return !isWrong() && (tap == Seen.RIGHT || hold == Seen.RIGHT || drop == Seen.RIGHT);
    }
  }

  /**
   * The firings of one speed.
   *
   * @param speed that was set
   * @param errors of those with a time, in stops, in order; above zero is slow
   * @param failed how many firings hung, did not open or never opened fully
   */
  public record Fired(MarkedSpeed speed, Sample errors, int failed) {
    /** From values. */
    public static Fired of(MarkedSpeed speed, List<Double> errorStops, int failed) {
      return new Fired(speed, Sample.of(errorStops), failed);
    }

    /** All firings. */
    public int fired() {
      return errors.n() + failed;
    }
  }

  /** Firings without a time, of both speeds. */
  int failed() {
    return slow.failed + top.failed;
  }

  /** All firings of both speeds. */
  int fired() {
    return slow.fired() + top.fired();
  }
}
