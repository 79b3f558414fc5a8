package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.speeds.MarkedSpeed;

/**
 * Whether to ask if the dial stands where the screen says. A slow 1/500 looks like a 1/250, so a
 * time alone proves nothing: three in a row that fit a neighbour better than the speed itself raise
 * one question, and so does the first firing after moving on when it fits the speed before. At most
 * one question is open.
 */
final class DialQuestions {
  /** So many in a row raise the question of the neighbour. */
  static final int IN_A_ROW = 3;

  /**
   * The last so many firings of a speed tell what it reads; more would not tell better, and would
   * make every firing of an endless run slower than the one before.
   */
  static final int MOST_READINGS = 200;

  private record Pair(MarkedSpeed shown, MarkedSpeed other) {}

  private final FiringLog log;
  private final Set<Pair> answered = new HashSet<>();
  private Optional<Question> open = Optional.empty();
  private int firstRunOfCamera;

  DialQuestions(FiringLog log) {
    this.log = log;
  }

  Optional<Question> open() {
    return open;
  }

  /**
   * A run began: what was answered in an earlier one may be asked again.
   *
   * @param firstRunOfCamera firings of runs before this one were of another camera
   */
  void runBegins(int firstRunOfCamera, List<SessionEvent> events) {
    this.firstRunOfCamera = firstRunOfCamera;
    answered.clear();
    close(events);
  }

  /**
   * Looks at a firing that has settled, and asks the question that it raises, if any.
   *
   * @param neighbours of its speed on the dial
   */
  void settled(FiringResult result, List<MarkedSpeed> neighbours, List<SessionEvent> events) {
    if (!FiringLog.isTimedAtASpeed(result)) {
      return;
    }
    MarkedSpeed shown = result.shown().orElseThrow();
    if (open.isPresent()) {
      joinIfItFits(result, shown);
      return;
    }
    open =
        speedBefore(result)
            .flatMap(speed -> dialNotTurned(result, shown, speed))
            .or(() -> neighbour(result, shown, neighbours));
    open.map(SessionEvent.QuestionAsked::new).ifPresent(events::add);
  }

  /**
   * The person lets the firings stay; the same pair is not asked about again in this run.
   *
   * @return whether a question was open
   */
  boolean keep(List<SessionEvent> events) {
    open.ifPresent(question -> answered.add(new Pair(question.shown(), question.other())));
    return close(events);
  }

  /**
   * Firings were moved or rejected: without enough of them the question falls.
   *
   * @return whether it fell
   */
  boolean withdraw(Set<FiringKey> gone, List<SessionEvent> events) {
    if (open.isEmpty() || Collections.disjoint(open.get().firings(), gone)) {
      return false;
    }
    Question question = open.get();
    List<FiringKey> left = question.firings().stream().filter(key -> !gone.contains(key)).toList();
    int least = question.kind() == Question.Kind.NEIGHBOUR ? IN_A_ROW : 1;
    if (left.size() < least) {
      return close(events);
    }
    open = Optional.of(new Question(question.kind(), question.shown(), question.other(), left));
    return false;
  }

  private boolean close(List<SessionEvent> events) {
    boolean closes = open.isPresent();
    open.map(SessionEvent.QuestionClosed::new).ifPresent(events::add);
    open = Optional.empty();
    return closes;
  }

  private void joinIfItFits(FiringResult result, MarkedSpeed shown) {
    Question question = open.orElseThrow();
    List<FiringKey> all = new ArrayList<>(question.firings());
    all.add(result.key());
    List<FiringResult> row = log.lastTries(all.size());
    boolean follows =
        question.shown().equals(shown) && row.stream().map(FiringResult::key).toList().equals(all);
    if (follows && fitsBetter(result, row, shown, question.other())) {
      open = Optional.of(question.joinedBy(result.key()));
    }
  }

  private Optional<Question> dialNotTurned(
      FiringResult result, MarkedSpeed shown, MarkedSpeed before) {
    boolean asks =
        mayAsk(shown, before)
            && own(before, result, List.of()).isPresent()
            && fitsBetter(result, List.of(result), shown, before);
    return asks
        ? Optional.of(
            new Question(Question.Kind.DIAL_NOT_TURNED, shown, before, List.of(result.key())))
        : Optional.empty();
  }

  /** The speed of the timed firing before this one, where that was another. */
  private Optional<MarkedSpeed> speedBefore(FiringResult result) {
    return log.lastTimedBut(result.key())
        .filter(r -> r.run() >= firstRunOfCamera)
        .flatMap(FiringResult::shown)
        .filter(speed -> !result.shown().equals(Optional.of(speed)));
  }

  private Optional<Question> neighbour(
      FiringResult result, MarkedSpeed shown, List<MarkedSpeed> neighbours) {
    List<FiringResult> row = log.lastTries(IN_A_ROW);
    boolean isRow =
        row.size() == IN_A_ROW
            && row.stream()
                .allMatch(
                    r ->
                        FiringLog.isTimedAtASpeed(r)
                            && r.run() == result.run()
                            && r.shown().equals(Optional.of(shown)));
    if (!isRow) {
      return Optional.empty();
    }
    return neighbours.stream()
        .filter(other -> mayAsk(shown, other))
        .filter(other -> row.stream().allMatch(r -> fitsBetter(r, row, shown, other)))
        .findFirst()
        .map(
            other ->
                new Question(
                    Question.Kind.NEIGHBOUR,
                    shown,
                    other,
                    row.stream().map(FiringResult::key).toList()));
  }

  private boolean mayAsk(MarkedSpeed shown, MarkedSpeed other) {
    return !shown.equals(other) && !answered.contains(new Pair(shown, other));
  }

  /** Whether a firing fits the other speed, and better than the shown one as it was until now. */
  private boolean fitsBetter(
      FiringResult result, List<FiringResult> row, MarkedSpeed shown, MarkedSpeed other) {
    double seconds = result.effectiveSeconds().orElseThrow();
    Readings there =
        own(other, result, row).orElseGet(() -> Readings.ofMarking(other, result.reference()));
    if (!there.fit(seconds)) {
      // Mostly so, and then nobody needs to know what the shown speed reads.
      return false;
    }
    Optional<Readings> before = own(shown, result, row);
    Readings here = before.orElseGet(() -> Readings.ofMarking(shown, result.reference()));
    boolean readsSoAnyway = before.isPresent() && here.fit(seconds);
    return !readsSoAnyway && there.distanceStops(seconds) < here.distanceStops(seconds);
  }

  /**
   * Own readings of a speed: the last ones of the latest run that has any, some firings left out.
   * Those of another phase do not count: the work in between has changed them.
   */
  private Optional<Readings> own(MarkedSpeed speed, FiringResult now, List<FiringResult> without) {
    return log.timedByRun(speed, firstRunOfCamera, now.run())
        .map(
            run ->
                run.filter(r -> r.phase().equals(now.phase()))
                    .filter(r -> without.stream().noneMatch(w -> w.key().equals(r.key())))
                    .limit(MOST_READINGS)
                    .toList())
        .filter(good -> !good.isEmpty())
        .findFirst()
        .flatMap(Readings::of);
  }
}
