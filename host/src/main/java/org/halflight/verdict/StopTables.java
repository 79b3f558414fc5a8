package org.halflight.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.BladeTravel;
import org.halflight.exposure.ByLaw;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Exposure;
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
    Map<MarkedSpeed, List<BladeTravel>> timed = new LinkedHashMap<>();
    Set<FiringKey> inMeans = AlikeFirings.inMeans(firings);
    for (FiringResult firing : firings) {
      if (inMeans.contains(firing.key())
          && firing.phase().filter(phase::equals).isPresent()
          && firing.shown().isPresent()
          && !firing.decidedBy().equals(Optional.of(DecidedBy.CURVE))
          && firing.exposure() instanceof Exposure.Timed exposure
          && exposure.countsAsFullyOpen()) {
        exposure
            .blades()
            .ifPresent(
                blades ->
                    timed
                        .computeIfAbsent(firing.shown().get(), speed -> new ArrayList<>())
                        .add(blades));
      }
    }
    Map<MarkedSpeed, StopTable> tables = new LinkedHashMap<>();
    timed.forEach((speed, blades) -> tables.put(speed, mean(blades)));
    return tables;
  }

  private static StopTable mean(List<BladeTravel> blades) {
    return new StopTable(
        ByLaw.of(law -> mean(blades, each -> each.totalSeconds().under(law))),
        ByLaw.of(law -> mean(blades, each -> each.openingPlusClosingSeconds(law))));
  }

  private static double mean(List<BladeTravel> blades, ToDoubleFunction<BladeTravel> figure) {
    return blades.stream().mapToDouble(figure).average().orElseThrow();
  }
}
