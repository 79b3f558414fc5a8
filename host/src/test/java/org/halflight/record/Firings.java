package org.halflight.record;

import java.util.Optional;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringPlace;
import org.halflight.session.FiringResult;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;

/** More firings out of one. */
final class Firings {
  private Firings() {}

  /** The same firing, so many seconds later and under another number. */
  static FiringResult later(FiringResult firing, int seconds) {
    return later(firing, seconds, firing.run(), firing.setting());
  }

  /** The same firing later, in another run and at another speed. */
  static FiringResult later(
      FiringResult firing, int seconds, int run, Optional<DialSetting> setting) {
    long shift = seconds * firing.rate().ticksPerSecond();
    Firing moved =
        new Firing(
            firing.firing().edges().stream()
                .map(edge -> new Edge(edge.channel(), edge.high(), edge.ticks() + shift))
                .toList(),
            firing.firing().damage());
    return new FiringResult(
        firing.number() + seconds,
        new FiringKey(
            firing.key().rigSerial(), firing.key().bootCount(), firing.key().firstTicks() + shift),
        moved,
        firing.rate(),
        new FiringPlace(run, setting, firing.reference(), firing.phase(), firing.afterRest()),
        firing.outcome(),
        LeafExposureMethod.measure(moved, firing.levels().orElse(LevelPair.GAUSS), firing.rate()),
        firing.measuredWith(),
        firing.notes(),
        Optional.empty());
  }
}
