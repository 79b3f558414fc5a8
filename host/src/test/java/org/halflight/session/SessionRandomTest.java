package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import org.halflight.exposure.LightLevels;
import org.halflight.fixtures.Seed;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/**
 * Whatever comes in whatever order: nothing is thrown, no edge is lost, and it replays the same.
 */
class SessionRandomTest {
  private static final List<MarkedSpeed> SPEEDS =
      List.of(
          MarkedSpeed.parse("1/30"),
          MarkedSpeed.parse("1/60"),
          MarkedSpeed.parse("1/125"),
          MarkedSpeed.parse("1/250"));

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private Random random;
  private List<SessionInput> inputs;
  private double now;
  private long boot;
  private int levels;
  private boolean calm;
  private double length = 1 / 100.0;

  @Test
  void neverThrowsNeverLosesAFiringAndReplaysTheSame(@Seed long seed) {
    Map<String, Integer> seen = new TreeMap<>();
    for (int round = 0; round < 120; round++) {
      random = new Random(seed + round);
      inputs = new ArrayList<>();
      now = 1;
      boot = 1;
      levels = 0;
      calm = round % 2 == 0;
      inputs.add(new SessionInput.RigIs("R-0001", boot, BoardTraits.USUAL, ""));
      for (int i = 0; i < 150; i++) {
        something();
      }
      inputs.add(new SessionInput.Ends());

      Session session = new Session();
      List<SessionEvent> news = new ArrayList<>();
      inputs.forEach(input -> news.addAll(session.handle(input)));
      String where = "seed " + seed + ", round " + round;
      assertWhole(session, news, where);
      session.results().forEach(r -> seen.merge(r.outcome().name(), 1, Integer::sum));
      news.forEach(n -> seen.merge(n.getClass().getSimpleName(), 1, Integer::sum));

      Session again = new Session();
      List<SessionEvent> newsAgain = new ArrayList<>();
      inputs.forEach(input -> newsAgain.addAll(again.handle(input)));
      assertThat(again.results()).as(where).isEqualTo(session.results());
      assertThat(newsAgain).as(where).isEqualTo(news);
    }
    // The inputs reach every outcome and much of the rules, or this test would show little.
    for (Outcome outcome : Outcome.values()) {
      assertThat(seen).as("seed " + seed).containsKey(outcome.name());
    }
    for (Class<?> kind :
        List.of(
            SessionEvent.Changed.class,
            SessionEvent.Rejected.class,
            SessionEvent.QuestionAsked.class,
            SessionEvent.QuestionClosed.class,
            SessionEvent.PlateauOff.class,
            SessionEvent.CockingKnown.class,
            SessionEvent.KnobAdded.class,
            SessionEvent.LinkGap.class)) {
      assertThat(seen).as("seed " + seed).containsKey(kind.getSimpleName());
    }
  }

  private void assertWhole(Session session, List<SessionEvent> news, String where) {
    List<FiringResult> results = session.results();
    List<Edge> kept = new ArrayList<>();
    results.forEach(r -> kept.addAll(r.firing().edges()));
    List<Edge> given = new ArrayList<>();
    List<Edge> knob = new ArrayList<>();
    inputs.forEach(
        input -> {
          if (input instanceof SessionInput.EdgeAt edge) {
            (edge.edge().channel() == Channel.KNOB ? knob : given).add(edge.edge());
          }
        });
    results.forEach(r -> assertThat(knob).as(where).containsAll(r.firing().knob()));
    assertThat(kept).as(where).containsExactlyInAnyOrderElementsOf(given);
    for (int i = 0; i < results.size(); i++) {
      assertThat(results.get(i).number()).as(where).isEqualTo(i + 1);
    }
    assertThat(new HashSet<>(results.stream().map(FiringResult::key).toList()))
        .as(where)
        .hasSameSizeAs(results);
    // Who follows the news alone knows the same as the session.
    Map<FiringKey, FiringResult> told = new HashMap<>();
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.Settled settled) {
        told.put(settled.result().key(), settled.result());
      } else if (each instanceof SessionEvent.Changed changed) {
        told.put(changed.result().key(), changed.result());
      } else if (each instanceof SessionEvent.KnobAdded added) {
        told.put(added.result().key(), added.result());
      } else if (each instanceof SessionEvent.Rejected rejected) {
        told.put(rejected.result().key(), rejected.result());
      }
    }
    assertThat(told.values()).as(where).containsExactlyInAnyOrderElementsOf(results);
  }

  private void something() {
    // In every other round hardly anything but firings happens, so that rows of them build up.
    switch (random.nextInt(calm ? 160 : 25)) {
      case 0 -> begin();
      case 1 -> inputs.add(new SessionInput.SpeedChosen(anySpeed()));
      case 2 ->
          inputs.add(
              new SessionInput.UntimedTestChosen(
                  random.nextBoolean() ? UntimedTest.B : UntimedTest.T));
      case 3 -> inputs.add(new SessionInput.NextChosen());
      case 4 -> inputs.add(new SessionInput.PreviousChosen());
      case 5 -> inputs.add(new SessionInput.LastRejected("invented"));
      case 6 -> inputs.add(new SessionInput.ClosedByHand());
      case 7 -> inputs.add(new SessionInput.AcceptedAsShown());
      case 8 -> move();
      case 9 -> inputs.add(new SessionInput.CockingLearnt(random.nextBoolean()));
      case 10 -> inputs.add(new SessionInput.LensCap(random.nextBoolean()));
      case 11 -> inputs.add(new SessionInput.LightSet(new LightLevels(20, 820, 189, 651)));
      case 12 -> trouble();
      case 13 -> pressOnly();
      case 14 -> straggler();
      case 15 -> pass(random.nextInt(3) == 0 ? 5 : 0.3);
      case 16 -> {
        inputs.add(new SessionInput.LightBeingSet(true));
        light();
        inputs.add(new SessionInput.LightBeingSet(false));
      }
      default -> light();
    }
  }

  /** An edge by itself; never at the tick of another, which would make it the same firing. */
  private void straggler() {
    now += random.nextDouble();
    inputs.add(edge(anyChannel(), random.nextBoolean(), now));
    now += 0.001;
  }

  private void begin() {
    inputs.add(
        new SessionInput.RunBegins(
            new RunSetup(
                    random.nextBoolean() ? "" : "invented " + random.nextInt(2),
                    any(List.of(Phase.values())),
                    random.nextBoolean() ? "leaf" : "custom",
                    SPEEDS.subList(0, 1 + random.nextInt(SPEEDS.size())),
                    random.nextBoolean() ? Reference.EXACT : Reference.LITERAL,
                    1 + random.nextInt(3),
                    random.nextBoolean()
                        ? new UntimedTest[0]
                        : new UntimedTest[] {UntimedTest.B, UntimedTest.T})
                .withCustoms(new CameraCustoms(random.nextBoolean(), random.nextBoolean()))
                .withConditions(new RunConditions(OptionalDouble.empty(), Map.of()))));
  }

  private void move() {
    List<FiringKey> keys = new ArrayList<>();
    for (SessionInput input : inputs) {
      if (input instanceof SessionInput.EdgeAt edge && random.nextInt(20) == 0) {
        keys.add(new FiringKey("R-0001", boot, edge.edge().ticks()));
      }
    }
    inputs.add(new SessionInput.FiringsMoved(keys, anySpeed()));
  }

  private void trouble() {
    switch (random.nextInt(4)) {
      case 0 -> inputs.add(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
      case 1 -> inputs.add(new SessionInput.LinkLost());
      case 2 -> inputs.add(new SessionInput.Damaged(Firing.Damage.EDGES_LOST));
      default -> {
        inputs.add(new SessionInput.Damaged(Firing.Damage.RIG_RESTARTED));
        inputs.add(new SessionInput.RigIs("R-0001", ++boot, BoardTraits.USUAL, ""));
        now = 1;
        levels = 0;
      }
    }
  }

  private void pressOnly() {
    inputs.add(edge(Channel.RELEASE, true, now));
    inputs.add(edge(Channel.RELEASE, false, now + 0.05));
    pass(0.5);
  }

  private void light() {
    // Mostly as long as the one before, so that there are rows of like firings.
    length = random.nextInt(5) == 0 ? 1 / 256.0 * Math.pow(2, 4 * random.nextDouble()) : length;
    double usual = length;
    if (random.nextInt(12) == 0) {
      length = 4;
    }
    boolean pressed = random.nextInt(3) == 0;
    if (pressed) {
      inputs.add(edge(Channel.RELEASE, true, now));
      now += 0.02;
    }
    boolean bright = random.nextInt(4) != 0;
    inputs.add(edge(Channel.CENTRE_LOW, true, now));
    if (bright) {
      inputs.add(edge(Channel.CENTRE_HIGH, true, now + 0.0003));
      int sum16 = 16 * (random.nextInt(3) == 0 ? 400 : 820);
      inputs.add(
          new SessionInput.BeatAt(RATE.ticks(now + length / 2), levels, OptionalInt.of(sum16)));
      inputs.add(edge(Channel.CENTRE_HIGH, false, now + length - 0.0003));
    }
    inputs.add(edge(Channel.CENTRE_LOW, false, now + length));
    now += length;
    length = usual;
    if (pressed) {
      inputs.add(edge(Channel.RELEASE, false, now + 0.001));
      now += 0.002;
    }
    pass(random.nextInt(4) == 0 ? 0.1 : 0.4);
  }

  private void pass(double seconds) {
    now += seconds;
    inputs.add(new SessionInput.BeatAt(RATE.ticks(now), levels));
    now += 0.01;
  }

  private MarkedSpeed anySpeed() {
    return any(SPEEDS);
  }

  private <T> T any(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  private Channel anyChannel() {
    return any(List.of(Channel.values()));
  }

  private SessionInput edge(Channel channel, boolean high, double seconds) {
    int bit = 1 << channel.code();
    levels = high ? levels | bit : levels & ~bit;
    return new SessionInput.EdgeAt(new Edge(channel, high, RATE.ticks(seconds)));
  }
}
