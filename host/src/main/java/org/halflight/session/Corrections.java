package org.halflight.session;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Firing;

/** What becomes of firings after they have settled: not counted, moved, stuck open, damaged. */
final class Corrections {
  private final FiringLog log;
  private final RunProgress progress;
  private final DialQuestions questions;
  private final OneLevelWatch oneLevel;

  Corrections(
      FiringLog log, RunProgress progress, DialQuestions questions, OneLevelWatch oneLevel) {
    this.log = log;
    this.progress = progress;
    this.questions = questions;
    this.oneLevel = oneLevel;
  }

  /** The last firing of the run that counts and may be rejected. */
  Optional<FiringResult> toReject() {
    return log.last(r -> r.run() == progress.run() && r.isTry());
  }

  void reject(FiringKey firing, String reason, List<SessionEvent> events) {
    log.find(firing)
        .filter(FiringResult::isTry)
        .ifPresent(counted -> reject(counted, reason, events));
  }

  void rejectLast(String reason, List<SessionEvent> events) {
    log.last(FiringResult::isTry).ifPresent(last -> reject(last, reason, events));
  }

  private void reject(FiringResult counted, String reason, List<SessionEvent> events) {
    FiringResult rejected = counted.rejected(reason);
    log.replace(rejected);
    events.add(new SessionEvent.Rejected(rejected));
    oneLevel.measureAgain(rejected, log, events);
    questions.withdraw(Set.of(rejected.key()), events);
    progress.showAgain(rejected, events);
  }

  /** The person says under which special conditions a firing was made. */
  void under(FiringKey firing, FiringConditions conditions, List<SessionEvent> events) {
    log.find(firing)
        .map(made -> made.under(progress.apartFromRun(made.run(), conditions)))
        .ifPresent(
            made -> {
              log.replace(made);
              events.add(new SessionEvent.FiringIsUnder(made));
              progress.countsOtherwise(made, events);
            });
  }

  /** A firing that is not counted gets another reason; nothing else changes. */
  void changeReason(FiringKey firing, String reason, List<SessionEvent> events) {
    log.find(firing)
        .filter(known -> known.rejection().isPresent())
        .map(known -> known.because(reason))
        .ifPresent(
            changed -> {
              log.replace(changed);
              events.add(new SessionEvent.ReasonChanged(changed));
            });
  }

  /** Firings were fired at another speed than was shown. */
  void move(SessionInput.FiringsMoved moved, List<SessionEvent> events) {
    Set<FiringKey> asked = new HashSet<>(moved.firings());
    List<FiringResult> changed =
        log.all().stream()
            .filter(r -> asked.contains(r.key()) && r.shown().isPresent())
            .filter(r -> !r.shown().equals(Optional.of(moved.to())))
            .map(r -> r.moved(moved.to()))
            .toList();
    changed.forEach(result -> log.change(result, events));
    boolean closed = questions.withdraw(asked, events);
    if (closed || !changed.isEmpty()) {
      progress.lacksOne();
      progress.goOn(events);
    }
  }

  /** The firings of the open question stay where they are. */
  void keepAsShown(List<SessionEvent> events) {
    if (questions.keep(events)) {
      progress.goOn(events);
    }
  }

  /** The person has closed the shutter; both hands were on the camera, and the key comes after. */
  void closedByHand(List<SessionEvent> events) {
    Optional<FiringResult> last = log.last(r -> r.outcome().isOfTheShutter());
    if (last.isPresent()
        && last.get().exposure() instanceof Exposure.Timed timed
        && timed.widthLowSeconds() > UnderwayWatch.openLongSeconds(last.get().shown())) {
      FiringResult changed = last.get().stuckOpen(timed.asStuckOpen());
      log.change(changed, events);
      questions.withdraw(Set.of(changed.key()), events);
      progress.showAgain(changed, events);
    }
  }

  /** Damage that was found later touched a firing. */
  void damage(FiringResult result, Firing.Damage damage, List<SessionEvent> events) {
    if (result.firing().damage().contains(damage)) {
      return;
    }
    FiringResult changed = result.damagedBy(damage);
    log.change(changed, events);
    questions.withdraw(Set.of(changed.key()), events);
    oneLevel.measureAgain(changed, log, events);
    progress.lacksOne();
  }
}
