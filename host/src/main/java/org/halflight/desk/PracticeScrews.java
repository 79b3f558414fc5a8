package org.halflight.desk;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.TurnCount;
import org.halflight.shuttermodel.CurtainScrew;

/**
 * On the practice rig the screws of the invented camera follow what the person says to have turned:
 * by a key, in words, and back again when that is undone.
 */
final class PracticeScrews {
  private final Map<Adjuster, Double> followed = new EnumMap<>(Adjuster.class);

  /** How far to turn each screw now; none where nothing was said. */
  Map<CurtainScrew, Double> follow(List<AdjusterTurn> said) {
    Map<Adjuster, TurnCount> counts = TurnCount.of(said);
    Map<CurtainScrew, Double> turns = new EnumMap<>(CurtainScrew.class);
    for (Adjuster adjuster : Adjuster.values()) {
      TurnCount count = counts.get(adjuster);
      double wanted = count == null ? 0 : count.change();
      double by = wanted - followed.getOrDefault(adjuster, 0.0);
      if (by != 0) {
        turns.put(CurtainScrew.valueOf(adjuster.name()), by);
        followed.put(adjuster, wanted);
      }
    }
    return turns;
  }
}
