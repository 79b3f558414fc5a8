package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;

/** How far the quick look of a run has come, by what was fired in it. */
final class QuickLook {
  /** A release that brings no light may only not have been cocked: so many are believed. */
  private static final int SHUT_BELIEVED = 3;

  private final FiringLog log;
  private final VerdictIsIn isKnown;

  QuickLook(FiringLog log, VerdictIsIn isKnown) {
    this.log = log;
    this.isKnown = isKnown;
  }

  /** How often a speed was fired, with light. */
  int fired(int run, MarkedSpeed speed) {
    return (int) counted(run, speed).stream().filter(QuickLook::hasLight).count();
  }

  /** Whether a speed has its one firing. */
  boolean isFired(int run, MarkedSpeed speed) {
    List<FiringResult> counted = counted(run, speed);
    return counted.stream().anyMatch(QuickLook::hasLight) || counted.size() >= SHUT_BELIEVED;
  }

  /** Which speed is to be fired again, once each was fired. */
  Optional<QuickRepeat> repeat(int run, RunSetup setup) {
    return QuickRepeat.next(
        setup.order().stream().distinct().map(speed -> soFar(run, setup, speed)).toList());
  }

  private QuickRepeat.SoFar soFar(int run, RunSetup setup, MarkedSpeed speed) {
    List<FiringResult> counted = counted(run, speed);
    boolean afterRest = counted.stream().anyMatch(FiringResult::afterRest);
    boolean failed = counted.stream().map(FiringResult::outcome).anyMatch(QuickLook::isFailure);
    return new QuickRepeat.SoFar(
        speed,
        counted.size(),
        failed,
        errorStops(counted),
        counted.isEmpty()
            || QuickRepeat.isEnough(counted.size(), setup.firingsPerSpeed(), afterRest)
            || counted.size() >= setup.mostTries()
            || isKnown.of(setup, counted));
  }

  private static OptionalDouble errorStops(List<FiringResult> counted) {
    OptionalDouble mean =
        counted.stream()
            .filter(FiringResult::isGood)
            .flatMapToDouble(firing -> firing.errorStops().stream())
            .average();
    return mean.isPresent()
        ? mean
        : counted.stream().flatMapToDouble(firing -> firing.errorStops().stream()).findFirst();
  }

  /** What the shutter made and the person counts; a small rig may lack the other level yet. */
  private List<FiringResult> counted(int run, MarkedSpeed speed) {
    return log.at(run, Optional.of(new DialSetting.Speed(speed)))
        .filter(firing -> firing.rejection().isEmpty())
        .filter(firing -> FiringLog.isOfTheShutter(firing.outcome(), firing.exposure()))
        .toList();
  }

  private static boolean hasLight(FiringResult firing) {
    return firing.outcome() != Outcome.DID_NOT_OPEN;
  }

  private static boolean isFailure(Outcome outcome) {
    return outcome == Outcome.STUCK_OPEN
        || outcome == Outcome.DID_NOT_OPEN
        || outcome == Outcome.DOUBLE;
  }
}
