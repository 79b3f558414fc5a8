package org.halflight.rig;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.rig.PortOutcome.Finding;
import org.halflight.trouble.Trouble;

/**
 * Remembers what was found on each port until its plug is pulled, so that no board is restarted for
 * the same answer again. For one thread.
 */
final class PortMemory {
  private final Ports ports;
  private final Map<PortCandidate, PortOutcome> settled = new LinkedHashMap<>();

  PortMemory(Ports ports) {
    this.ports = ports;
  }

  /** Any port may have a rig now. */
  void forget() {
    settled.clear();
  }

  /**
   * Looks at ports; those that are settled are not opened.
   *
   * @param always a port that is opened all the same: where the rig was
   */
  RigSearch search(
      RigFinder finder, RigSelector wish, Optional<String> always, BooleanSupplier goOn) {
    try {
      keepOnly(ports.candidates());
    } catch (Trouble cannotList) {
      // The search meets the same trouble and has its sentence.
      settled.clear();
    }
    always.ifPresent(path -> settled.keySet().removeIf(port -> port.path().equals(path)));
    RigSearch search = finder.search(wish, Map.copyOf(settled), goOn);
    search.outcomes().stream()
        .filter(PortOutcome::isSettled)
        .forEach(outcome -> settled.put(outcome.candidate(), outcome));
    return search;
  }

  private void keepOnly(List<PortCandidate> there) {
    boolean aRigWent =
        settled.values().stream()
            .anyMatch(each -> each.finding() == Finding.RIG && !there.contains(each.candidate()));
    settled.keySet().retainAll(Set.copyOf(there));
    if (aRigWent) {
      // Of several rigs one was pulled: the one that is left may be meant.
      settled.values().removeIf(each -> each.finding() == Finding.RIG);
    }
  }
}
