package org.halflight.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.LightLevels;
import org.halflight.fixtures.Seed;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

/**
 * Whatever stands in the lines of a rig, nothing is thrown, no line costs without bound, and the
 * same lines bring the same results.
 *
 * <p>The seed is printed; {@code -Dhalflight.seed} runs one again, {@code -Dhalflight.rounds} more.
 */
class AnythingOnTheWireTest {
  private static final int LINES = 400;

  /** What one line may bring at most: a gap gives free what waited for its time. */
  private static final int STEPS_MOST = 20_000;

  @Test
  void nothingIsThrown(@Seed long seed) {
    int rounds = Integer.getInteger("halflight.rounds", 80);
    System.out.println("AnythingOnTheWireTest seed " + seed + ", rounds " + rounds);
    Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
    for (int round = 0; round < rounds; round++) {
      String where = "-Dhalflight.rounds=1 -Dhalflight.seed=" + (seed + round);
      List<BenchEvent> events = events(new SplittableRandom(seed + round));
      List<FiringResult> results = results(events, where);
      assertThat(results(events, where)).as(where).isEqualTo(results);
      results.forEach(r -> outcomes.merge(r.outcome(), 1, Integer::sum));
    }
    System.out.println("AnythingOnTheWireTest " + outcomes);
    assertThat(outcomes).containsKey(Outcome.UNUSABLE);
  }

  private static List<BenchEvent> events(SplittableRandom random) {
    AnyLines lines = new AnyLines(random);
    List<BenchEvent> events = new ArrayList<>();
    events.add(Marks.of(0, new SessionInput.LightSet(new LightLevels(20, 820, 189, 651))));
    events.add(Marks.of(0, new SessionInput.SpeedChosen(MarkedSpeed.parse("1/60"))));
    for (int i = 0; i < LINES; i++) {
      events.add(new BenchEvent.Received(lines.nanos(), lines.next()));
      if (random.nextInt(200) == 0) {
        events.add(Marks.of(lines.nanos(), new SessionInput.LinkLost()));
      }
    }
    return events;
  }

  private static List<FiringResult> results(List<BenchEvent> events, String where) {
    SessionReducer fold = new SessionReducer();
    for (BenchEvent event : events) {
      try {
        SessionReducer.Brought brought = fold.onEvent(event);
        assertThat(brought.said().size() + brought.news().size()).isLessThan(STEPS_MOST);
      } catch (RuntimeException thrown) {
        throw new AssertionError(where + " at " + event, thrown);
      }
    }
    fold.breakOff();
    return fold.session().results();
  }
}
