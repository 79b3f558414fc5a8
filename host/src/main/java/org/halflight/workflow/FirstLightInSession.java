package org.halflight.workflow;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstStep;
import org.halflight.firstlight.Seen;
import org.halflight.profile.RigProfile;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Session;
import org.halflight.words.Numbers;

/** The steps of first light that are done in a session: what it has seen of them. */
public final class FirstLightInSession {
  private FirstLightInSession() {}

  /**
   * First light with what a session has seen since.
   *
   * @param firingsBefore how many firings the session had when first light began
   */
  public static FirstLight of(FirstLight state, Session session, int firingsBefore) {
    FirstLight now = state;
    Optional<LightLevels> light = session.light();
    if (light.isPresent()) {
      now = now.with(FirstStep.LIGHT, set(light.get()));
    }
    List<FiringResult> firings = session.results();
    Optional<Finding> fired =
        firings.subList(Math.min(firingsBefore, firings.size()), firings.size()).stream()
            .filter(firing -> firing.outcome() != Outcome.HELD_FOR_LIGHT)
            .map(FirstLightInSession::fired)
            .reduce((one, other) -> one.isPassed() ? one : other);
    // A time in light that was not set is none to trust a rig by.
    if (light.isPresent() && fired.isPresent()) {
      now = now.with(FirstStep.FIRING, fired.get());
    }
    Optional<RigProfile> profile =
        Optional.of(session.profileUse())
            .filter(use -> use.isCalibrated() && state.steps().contains(FirstStep.CALIBRATION))
            .flatMap(use -> use.profile());
    return profile.isPresent() ? calibrated(now, profile.get()) : now;
  }

  /** The rig was calibrated. */
  public static FirstLight calibrated(FirstLight state, RigProfile profile) {
    return state.with(FirstStep.CALIBRATION, kept(Numbers.date(profile.date())));
  }

  private static Finding set(LightLevels light) {
    return Finding.passed(List.of(new Seen.LightSet(light.darkCounts(), light.fullCounts())));
  }

  private static Finding fired(FiringResult firing) {
    return firing.effectiveSeconds().isPresent()
        ? Finding.passed(List.of(new Seen.Fired(firing.effectiveSeconds().getAsDouble())))
        : Finding.failed(Fault.NOT_TIMED);
  }

  /** A page was written. */
  public static FirstLight paged(FirstLight state, Path page) {
    return state.with(FirstStep.PAGE, kept(String.valueOf(page.getFileName())));
  }

  /** What was written or kept, by its name. */
  private static Finding kept(String name) {
    return Finding.passed(List.of(new Seen.Kept(name)));
  }
}
