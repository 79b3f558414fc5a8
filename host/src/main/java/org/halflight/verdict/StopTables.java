package org.halflight.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.OpeningLaw;
import org.halflight.exposure.StopTable;
import org.halflight.session.AlikeFirings;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;

/** The stop tables of a leaf shutter, each from the mean travel of the firings of one speed. */
public final class StopTables {
  private StopTables() {}

  /**
   * One table for each speed with firings that count and in which the leaves are taken to have
   * opened fully.
   *
   * @param firings of a leaf shutter
   * @param phase whose firings to take
   */
  public static Map<MarkedSpeed, StopTable> of(List<FiringResult> firings, Phase phase) {
    Map<MarkedSpeed, List<LeafExposure.Timed>> timed = new LinkedHashMap<>();
    Set<FiringKey> inMeans = AlikeFirings.inMeans(firings);
    for (FiringResult firing : firings) {
      if (inMeans.contains(firing.key())
          && firing.phase().filter(phase::equals).isPresent()
          && firing.shown().isPresent()
          && !firing.decidedBy().equals(Optional.of(DecidedBy.CURVE))
          && firing.exposure() instanceof LeafExposure.Timed exposure
          && exposure.countsAsFullyOpen()) {
        timed.computeIfAbsent(firing.shown().get(), speed -> new ArrayList<>()).add(exposure);
      }
    }
    Map<MarkedSpeed, StopTable> tables = new LinkedHashMap<>();
    timed.forEach((speed, exposures) -> tables.put(speed, mean(exposures)));
    return tables;
  }

  private static StopTable mean(List<LeafExposure.Timed> exposures) {
    return new StopTable(
        ByLaw.of(law -> mean(exposures, timed -> timed.totalSeconds().under(law))),
        ByLaw.of(law -> mean(exposures, timed -> travel(timed, law))));
  }

  private static double travel(LeafExposure.Timed timed, OpeningLaw law) {
    return timed.openingPlusClosingSeconds(law);
  }

  private static double mean(
      List<LeafExposure.Timed> exposures, ToDoubleFunction<LeafExposure.Timed> figure) {
    return exposures.stream().mapToDouble(figure).average().orElseThrow();
  }
}
