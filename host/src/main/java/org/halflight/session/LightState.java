package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.signal.Channel;

/**
 * The light: which openings belong to setting it, as what it was set, and what readings of full
 * light say of it since.
 */
final class LightState {
  private static final long NEVER = Long.MIN_VALUE;

  private final FiringLog log;
  private final LightTrust trust = new LightTrust();
  private final FullLightWait fullLight = new FullLightWait();
  private Optional<LightLevels> set = Optional.empty();

  /** What was set before the cells were changed, until something is fired with the new ones. */
  private Optional<LightLevels> ofOtherCells = Optional.empty();

  private TripPoints trips = TripPoints.EXACT;
  private Map<Channel, SensorLight> outer = Map.of();
  private Optional<HeldLight.ThresholdsAt> thresholds = Optional.empty();
  private boolean fixedLevel;
  private boolean beingSet;
  private long beingSetUntilTicks = NEVER;

  LightState(FiringLog log) {
    this.log = log;
  }

  /** Dark and full light as they were set; empty where they were not. */
  Optional<LightLevels> set() {
    return set;
  }

  /**
   * The light as it reads now. Where the level is the board's own reference, its reading tells how
   * the supply has moved since the light was set, and all readings with it.
   */
  Optional<LightLevels> now() {
    return fixedLevel && thresholds.isPresent()
        ? set.map(its -> its.times(thresholds.get().lowCounts() / its.lowCounts()))
        : set;
  }

  void onRig(boolean hasFixedLevel) {
    fixedLevel = hasFixedLevel;
  }

  /** Light of the outer sensors when the light was set, of those that were read. */
  Map<Channel, SensorLight> outer() {
    return outer;
  }

  /** Where the comparators switch. */
  TripPoints trips() {
    return trips;
  }

  boolean isInDoubt() {
    return trust.isInDoubt();
  }

  boolean isFullLightWanted() {
    return fullLight.isAny();
  }

  /** The light begins to be set, or that ends. */
  void onBeingSet(boolean begins, long nowTicks) {
    if (beingSet && !begins) {
      beingSetUntilTicks = nowTicks;
    }
    beingSet = begins;
  }

  /**
   * Whether a firing that began at a time is an opening for setting the light; the shutter may be
   * let go after the light was set.
   */
  boolean isForSetting(long firstTicks) {
    return beingSet || firstTicks <= beingSetUntilTicks;
  }

  /** Ticks of before mean nothing any more. */
  void forgetTicks() {
    beingSetUntilTicks = NEVER;
    thresholds = Optional.empty();
  }

  void onSet(SessionInput.LightSet input, List<SessionEvent> events) {
    LightLevels levels = input.levels();
    onFullLight(levels.fullCounts() - levels.darkCounts(), Optional.empty(), events);
    // Another light than theirs is set from here on.
    fullLight.forget();
    set = Optional.of(levels);
    ofOtherCells = Optional.empty();
    trips = input.trips();
    outer = input.outer();
    trust.lightSet(log.size());
  }

  /**
   * The light was not set, and is known now from a shutter that was held open. Firings of before
   * were under this light; where one had a plateau, that was seen.
   */
  void onHeld(LightLevels levels) {
    fullLight.forget();
    set = Optional.of(levels);
    trips = TripPoints.EXACT;
    outer = Map.of();
    trust.lightSet(log.size());
  }

  /** The thresholds were read. */
  void onThresholds(HeldLight.ThresholdsAt at) {
    thresholds = Optional.of(at);
  }

  /** They may have been moved since. */
  void forgetThresholds() {
    thresholds = Optional.empty();
  }

  /** Where the thresholds stand, as they were read last; empty where they were not since then. */
  Optional<HeldLight.ThresholdsAt> thresholds() {
    return thresholds;
  }

  /** The thresholds are not where the light had set them. */
  void forget() {
    set = Optional.empty();
    ofOtherCells = Optional.empty();
  }

  /**
   * A stage of assembly: what full light was says nothing with other cells. It holds again where
   * they were not really changed.
   */
  void onStage(SessionEvent.StageBegins stage) {
    if (stage.lightAgain()) {
      ofOtherCells = stage.how() == StageSwitch.How.PUT_RIGHT ? set.or(() -> ofOtherCells) : set;
      set = Optional.empty();
    } else {
      set = set.or(() -> ofOtherCells);
      ofOtherCells = Optional.empty();
    }
  }

  /** Another rig has other sensors and thresholds; what was set before any rig was there holds. */
  void onOtherRig(boolean isFirst) {
    set = isFirst ? set : Optional.empty();
    ofOtherCells = Optional.empty();
    fullLight.forget();
  }

  /** A firing settled, or its curve came. */
  void onFiring(FiringResult result) {
    fullLight.onFiring(result);
  }

  /** Full light was read by itself. */
  void onReading(LightReading full, List<SessionEvent> events) {
    if (set.isPresent()) {
      double share = now().orElseThrow().shareOfFull(full.counts());
      events.add(new SessionEvent.FullLightRead(share));
      onShare(share, Optional.empty(), events);
    }
  }

  /** The plateau of a firing as a share of the full light that was set. */
  OptionalDouble share(OptionalDouble plateauCounts) {
    return plateauCounts.isPresent() && set.isPresent()
        ? OptionalDouble.of(now().orElseThrow().shareOfFull(plateauCounts.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** Whether a firing with this plateau, or with none, is in doubt. */
  boolean doubts(OptionalDouble plateauShare) {
    return trust.doubts(plateauShare);
  }

  /**
   * Full light was seen.
   *
   * @param share of the full light that was set
   * @param own the firing whose plateau it is; empty where it was read by itself
   */
  void onShare(double share, Optional<FiringKey> own, List<SessionEvent> events) {
    boolean known = trust.isInDoubt();
    List<FiringResult> doubted =
        trust.onPlateau(share, log).stream().map(FiringResult::doubtful).toList();
    doubted.forEach(log::replace);
    if (trust.isInDoubt() && !known) {
      List<FiringKey> keys = new ArrayList<>(doubted.stream().map(FiringResult::key).toList());
      own.ifPresent(keys::add);
      events.add(new SessionEvent.PlateauOff(share, keys));
    }
    doubted.forEach(result -> events.add(new SessionEvent.Changed(result)));
    LightLevels levels = set.orElseThrow();
    onFullLight(share * (levels.fullCounts() - levels.darkCounts()), own, events);
  }

  /** Full light was measured again: what the curves of earlier firings waited for. */
  private void onFullLight(double lightCounts, Optional<FiringKey> own, List<SessionEvent> events) {
    fullLight.measured(lightCounts, own, log).forEach(now -> log.change(now, events));
  }
}
