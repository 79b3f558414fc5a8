package org.halflight.everyday;

import java.util.ArrayList;
import java.util.List;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;

/** All that was tried beside the marked speeds. */
public final class Everyday {
  private Everyday() {}

  /**
   * What firings and light readings of a session say, run by run; nothing for what was not tried.
   *
   * @param firings of the session, in order
   * @param readings of the light with the shutter at rest, in order
   */
  public static List<Tried> of(List<FiringResult> firings, List<LightReading> readings) {
    List<Tried> tried = new ArrayList<>();
    tried.addAll(Linkage.of(firings, LinkageLimits.USUAL));
    return tried;
  }
}
