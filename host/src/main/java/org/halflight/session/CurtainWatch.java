package org.halflight.session;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.CurtainMethod;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.Direction;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.SensorLevel;
import org.halflight.exposure.SensorLight;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;

/**
 * What the firings of a run tell about the sensors behind curtains: which outer sensors see light,
 * and which way the curtains travel. Learnt once; a firing that contradicts changes nothing.
 */
final class CurtainWatch {
  private static final List<Channel> OUTER = List.of(Channel.OUTER_A, Channel.OUTER_B);

  private int run;
  private Set<Channel> seen = Set.of();
  private Optional<Direction> direction = Optional.empty();
  private boolean saidCentreOnly;
  private final Set<CurtainNote> said = EnumSet.noneOf(CurtainNote.class);

  /**
   * What is known now.
   *
   * @param light as it was set
   * @param outer light of the outer sensors then
   */
  OuterSensors known(int itsRun, Optional<LightLevels> light, Map<Channel, SensorLight> outer) {
    begin(itsRun);
    Set<Channel> bright = EnumSet.noneOf(Channel.class);
    bright.addAll(seen);
    OUTER.stream().filter(each -> level(each, light, outer).isPresent()).forEach(bright::add);
    return new OuterSensors(
        light
            .map(its -> OptionalDouble.of(its.fullCounts() - its.darkCounts()))
            .orElse(OptionalDouble.empty()),
        level(Channel.OUTER_A, light, outer),
        level(Channel.OUTER_B, light, outer),
        bright,
        direction);
  }

  /** Both outer sensors hang on the middle of the two thresholds of the centre. */
  private static Optional<SensorLevel> level(
      Channel sensor, Optional<LightLevels> light, Map<Channel, SensorLight> outer) {
    return light.flatMap(
        its ->
            Optional.ofNullable(outer.get(sensor))
                .flatMap(own -> own.level((its.lowCounts() + its.highCounts()) / 2)));
  }

  /** A firing of the run settled; whether it told something new. */
  boolean learns(int itsRun, Firing crossings) {
    begin(itsRun);
    Set<Channel> now = EnumSet.noneOf(Channel.class);
    now.addAll(seen);
    OUTER.stream().filter(each -> !crossings.of(each).isEmpty()).forEach(now::add);
    boolean isNews = !now.equals(seen);
    seen = now;
    if (direction.isEmpty()) {
      direction = CurtainMethod.learnt(crossings);
      isNews |= direction.isPresent();
    }
    return isNews;
  }

  /** A firing of before, with what is known since. */
  OuterSensors since(OuterSensors then) {
    OuterSensors more = then.seeing(seen);
    return direction.map(more::going).orElse(more);
  }

  /** Whether it is to be said now, once in a run, that only the centre is measured. */
  boolean isCentreOnlyNews(int itsRun) {
    begin(itsRun);
    boolean isNews = !saidCentreOnly;
    saidCentreOnly = true;
    return isNews;
  }

  /** Whether a note is to be said now: the first firing of the run that has it. */
  boolean isNews(int itsRun, CurtainNote note) {
    begin(itsRun);
    return said.add(note);
  }

  private void begin(int itsRun) {
    if (itsRun != run) {
      run = itsRun;
      seen = Set.of();
      direction = Optional.empty();
      saidCentreOnly = false;
      said.clear();
    }
  }
}
