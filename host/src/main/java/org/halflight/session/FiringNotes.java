package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LightLevels;
import org.halflight.speeds.MarkedSpeed;

/**
 * What else there is to know about a firing. None of it changes a figure.
 *
 * @param releaseDelaySeconds from the press of the release to first light, where both were seen
 * @param plateauCounts light with the shutter fully open, in counts of the rig's ten-bit converter,
 *     where the shutter was open long enough for the rig to report it
 * @param plateauShare the same less dark, as a share of the full light that was set; not known
 *     without a set light
 * @param lightDoubtful whether the light may not have been the one that was set: a plateau was off,
 *     and this firing came since the last good one
 * @param leak whether light came while cocking although the blades should have stayed shut
 * @param capOn whether the person had said that the lens cap is on
 * @param movedFrom the speed that was shown when it was fired, where the person has moved it since
 * @param rejection the reason the person gave for not counting it; empty when it counts
 * @param firstReason the reason given at first, where the person has changed it since
 * @param conditions special ones that the person said it was made under
 */
public record FiringNotes(
    OptionalDouble releaseDelaySeconds,
    OptionalDouble plateauCounts,
    OptionalDouble plateauShare,
    boolean lightDoubtful,
    boolean leak,
    boolean capOn,
    Optional<MarkedSpeed> movedFrom,
    Optional<String> rejection,
    Optional<String> firstReason,
    FiringConditions conditions) {
  /** Nothing to note. */
  public static final FiringNotes NONE =
      new FiringNotes(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          false,
          false,
          false,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          FiringConditions.NONE);

  FiringNotes doubtful() {
    return with(true, movedFrom, rejection, firstReason, conditions);
  }

  /** The same in light that is known only now: its plateau is a share of that. */
  FiringNotes inLight(LightLevels light) {
    OptionalDouble share =
        plateauCounts.isPresent()
            ? OptionalDouble.of(light.shareOfFull(plateauCounts.getAsDouble()))
            : OptionalDouble.empty();
    return new FiringNotes(
        releaseDelaySeconds,
        plateauCounts,
        share,
        share.isPresent() && PlateauWatch.isOff(share.getAsDouble()),
        leak,
        capOn,
        movedFrom,
        rejection,
        firstReason,
        conditions);
  }

  FiringNotes moved(Optional<MarkedSpeed> from) {
    return with(lightDoubtful, from, rejection, firstReason, conditions);
  }

  FiringNotes rejected(Optional<String> reason) {
    return with(lightDoubtful, movedFrom, reason, Optional.empty(), conditions);
  }

  /** Rejected, or not, as another firing is. */
  FiringNotes rejectedAs(FiringNotes other) {
    return with(lightDoubtful, movedFrom, other.rejection, other.firstReason, conditions);
  }

  /** The same rejection for another reason; that given at first is kept. */
  FiringNotes because(String reason) {
    Optional<String> first = firstReason.or(() -> rejection).filter(was -> !was.equals(reason));
    return with(lightDoubtful, movedFrom, Optional.of(reason), first, conditions);
  }

  /** Made under other conditions. */
  FiringNotes under(FiringConditions others) {
    return with(lightDoubtful, movedFrom, rejection, firstReason, others);
  }

  private FiringNotes with(
      boolean doubtful,
      Optional<MarkedSpeed> from,
      Optional<String> reason,
      Optional<String> before,
      FiringConditions others) {
    return new FiringNotes(
        releaseDelaySeconds,
        plateauCounts,
        plateauShare,
        doubtful,
        leak,
        capOn,
        from,
        reason,
        before,
        others);
  }
}
