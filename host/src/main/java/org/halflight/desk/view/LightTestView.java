package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.UntimedTest;

/**
 * A test of the light that goes on, reading by reading.
 *
 * @param doing what goes on
 * @param sentence what the person is to do, or what came of it
 * @param remark why the same is asked again, or what was read last; may be empty
 * @param step which reading it is, from 1; 0 where none is
 * @param steps how many there are
 * @param progress through all of them, 0 to 1
 * @param check which test it is; empty where none goes on
 * @param brief what the person is to do, in a word or two
 */
public record LightTestView(
    Doing doing,
    String sentence,
    String remark,
    int step,
    int steps,
    double progress,
    Optional<UntimedTest> check,
    String brief) {
  /** What goes on. */
  public enum Doing {
    /** Nothing. */
    NOTHING,
    /** The person is asked to do something. */
    ASKING,
    /** The light is read. */
    READING
  }

  /** Whether a test goes on. */
  public boolean isUnderWay() {
    return doing != Doing.NOTHING;
  }
}
