package org.halflight.workflow;

import org.halflight.bench.DiscLight;
import org.halflight.bench.DiscRun;
import org.halflight.words.Numbers;
import org.halflight.words.Words;

/** How the reading of a slotted disc goes on, in sentences. */
public final class DiscSentences {
  private DiscSentences() {}

  /** What goes on. */
  public static String stage(DiscRun.Stage stage) {
    return Words.of("disc.stage", stage);
  }

  /** Why no edges were taken, and what to do. */
  public static String notTaken(DiscRun.Outcome outcome) {
    if (outcome instanceof DiscRun.Refused refused) {
      return CalibrationSentences.refused(refused.refusal());
    }
    if (outcome instanceof DiscRun.NoLight none) {
      return light(none.light());
    }
    return Words.say("disc.trouble.oneLevel");
  }

  private static String light(DiscLight.Outcome light) {
    if (light instanceof DiscLight.Still) {
      return Words.say("disc.trouble.still");
    }
    if (light instanceof DiscLight.Unsteady unsteady) {
      return unsteady.share() < 1
          ? Words.say("disc.trouble.flickers", Numbers.percent(unsteady.share()))
          : Words.say("disc.trouble.unsteady");
    }
    return Words.of("disc.light", ((DiscLight.Refused) light).reason());
  }
}
