package org.halflight.verdict;

import java.util.List;
import org.halflight.session.FiringResult;
import org.halflight.session.ProfileUse;

/**
 * Whether what some firings come to counts as calibrated.
 *
 * @param uses what the timed firings were measured with, each once, in order of firing
 * @param rigChecked whether a rig check of the same session came before each of them
 * @param liveClock whether each was corrected by the rate that the pings of its session told
 */
public record CalibrationStatus(List<ProfileUse> uses, boolean rigChecked, boolean liveClock) {
  /** No profile was used. */
  public static final CalibrationStatus NOT_CALIBRATED =
      new CalibrationStatus(List.of(ProfileUse.NONE), false, false);

  public CalibrationStatus {
    uses = List.copyOf(uses);
  }

  /** Of firings; where none was timed, of all of them. */
  public static CalibrationStatus of(List<FiringResult> firings) {
    List<FiringResult> timed =
        firings.stream().filter(f -> f.effectiveSeconds().isPresent()).toList();
    List<ProfileUse> all =
        (timed.isEmpty() ? firings : timed).stream().map(FiringResult::profileUse).toList();
    return new CalibrationStatus(
        all.stream().map(ProfileUse::calibration).distinct().toList(),
        !all.isEmpty() && all.stream().allMatch(use -> use.state().checked()),
        !all.isEmpty() && all.stream().allMatch(use -> use.state().liveClock().isPresent()));
  }

  /** Only where every one of them does. */
  public boolean isCalibrated() {
    return !uses.isEmpty() && uses.stream().allMatch(ProfileUse::isCalibrated);
  }
}
