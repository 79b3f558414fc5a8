package org.halflight.session;

import java.util.Optional;
import org.halflight.speeds.Reference;

/**
 * Where in the work a release belongs.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param setting what it is held to have been fired at: what was shown, unless the person has moved
 *     it; empty when nothing was shown
 * @param reference how the marking is read
 * @param phase of the run; empty before a run was begun
 * @param afterRest whether it was the first release of an as-found run; the person may say
 *     otherwise
 */
public record FiringPlace(
    int run,
    Optional<DialSetting> setting,
    Reference reference,
    Optional<Phase> phase,
    boolean afterRest) {
  /** The same place at another setting. */
  FiringPlace at(DialSetting other) {
    return new FiringPlace(run, Optional.of(other), reference, phase, afterRest);
  }
}
