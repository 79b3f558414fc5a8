package org.halflight.verdict;

import java.util.List;
import org.halflight.session.FiringResult;
import org.halflight.session.ProfileUse;

/**
 * Whether what some firings come to counts as calibrated.
 *
 * @param uses what the timed firings were measured with, each once, in order of firing
 */
public record Standing(List<ProfileUse> uses) {
  /** No profile was used. */
  public static final Standing NOT_CALIBRATED = new Standing(List.of(ProfileUse.NONE));

  public Standing {
    uses = List.copyOf(uses);
  }

  /** Of firings; where none was timed, of all of them. */
  public static Standing of(List<FiringResult> firings) {
    List<FiringResult> timed =
        firings.stream().filter(f -> f.effectiveSeconds().isPresent()).toList();
    return new Standing(
        (timed.isEmpty() ? firings : timed)
            .stream().map(FiringResult::profileUse).distinct().toList());
  }

  /** Only where every one of them does. */
  public boolean isCalibrated() {
    return !uses.isEmpty() && uses.stream().allMatch(ProfileUse::isCalibrated);
  }
}
