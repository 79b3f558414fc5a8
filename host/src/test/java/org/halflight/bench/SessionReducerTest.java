package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.halflight.exposure.LightLevels;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

class SessionReducerTest {
  private final List<BenchEvent> events = new ArrayList<>();
  private int sequence;

  @Test
  void theLightOfABeatReachesTheFiringThatItFellInto() {
    say(new RigMessage.Greeting(next(), 1, 16_000_000, "full", 0x7F, "R-1", 1, "power", "1", 0));
    mark(new SessionInput.LightSet(new LightLevels(20, 820, 189.06, 650.94)));
    mark(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/8")));
    say(new RigMessage.Beat(next(), 1_000_000, 0, 16 * 20));
    edge(Channel.CENTRE_LOW, true, 2_000_000);
    edge(Channel.CENTRE_HIGH, true, 2_016_000);
    say(new RigMessage.Beat(next(), 3_000_000, 0b11, 16 * 420));
    edge(Channel.CENTRE_HIGH, false, 3_984_000);
    edge(Channel.CENTRE_LOW, false, 4_000_000);
    say(new RigMessage.Beat(next(), 9_000_000, 0, 16 * 20));
    events.add(new BenchEvent.Mark(0, "unheard-of", Map.of()));

    SessionReducer fold = SessionReducer.replay(events);
    assertThat(fold.session().results()).hasSize(1);
    FiringResult result = fold.session().results().get(0);
    assertThat(result.notes().plateauShare().orElseThrow()).isCloseTo(0.5, Offset.offset(1e-9));
    assertThat(result.notes().lightDoubtful()).isTrue();
    assertThat(fold.unknownMarks()).isEqualTo(1);
    assertThat(fold.damagedMarks()).isZero();
    assertThat(SessionReducer.replay(events).session().results())
        .isEqualTo(fold.session().results());
  }

  @Test
  void whereverTheProgramDiesALaterStartEndsWhatWasUnderWay() {
    greet(1);
    mark(new SessionInput.LightSet(new LightLevels(20, 820, 189.06, 650.94)));
    mark(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/125")));
    press(500_000);
    fire(20_000_000);
    fire(40_000_000);
    List<BenchEvent> whole = List.copyOf(events);
    for (int length = 1; length <= whole.size(); length++) {
      List<FiringResult> before =
          SessionReducer.replay(whole.subList(0, length)).session().results();
      events.clear();
      events.addAll(whole.subList(0, length));
      events.add(new BenchEvent.Mark(0, Marks.BEGINS, Map.of("version", "2")));
      greet(2);
      fire(3_000_000);
      List<FiringResult> after = SessionReducer.replay(events).session().results();
      assertThat(after).as("died after event " + length).hasSize(before.size() + 1);
      assertThat(after.subList(0, before.size())).isEqualTo(before);
      assertThat(after.get(before.size()).outcome()).isEqualTo(Outcome.TIMED);
    }
  }

  @Test
  void whatWasDarkAtALaterStartSettlesAsItIs() {
    greet(1);
    mark(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/125")));
    opens(3_000_000);
    closes(3_128_000);
    events.add(new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    // The board went on: its next firing comes a tenth of a second later.
    opens(4_728_000);
    closes(4_856_000);
    List<FiringResult> results = SessionReducer.replay(events).session().results();
    assertThat(results).extracting(FiringResult::outcome).contains(Outcome.TIMED);
    assertThat(results.get(0).outcome()).isEqualTo(Outcome.TIMED);
    assertThat(results.get(0).firing().damage()).isEmpty();
    assertThat(results.get(0).firing().edges()).hasSize(4);
  }

  @Test
  void whatWasLightAtALaterStartIsDamagedAndNotStuck() {
    greet(1);
    mark(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/125")));
    opens(3_000_000);
    events.add(new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    FiringResult cut = SessionReducer.replay(events).session().results().get(0);
    assertThat(cut.outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(cut.firing().damage()).containsExactly(Firing.Damage.LINK_LOST);
  }

  @Test
  void whatBeginsAtTheTickOfABrokenFiringIsItsRest() {
    greet(1);
    mark(new SessionInput.SpeedChosen(MarkedSpeed.parse("1/125")));
    say(new RigMessage.Beat(next(), 2_900_000, 0, 16 * 20));
    edge(Channel.CENTRE_LOW, true, 3_000_000);
    events.add(new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    // Both levels were crossed within one tick, and the program died between the two lines.
    edge(Channel.CENTRE_HIGH, true, 3_000_000);
    edge(Channel.CENTRE_HIGH, false, 3_112_000);
    edge(Channel.CENTRE_LOW, false, 3_128_000);
    say(new RigMessage.Beat(next(), 9_000_000, 0, 16 * 20));
    List<FiringResult> results = SessionReducer.replay(events).session().results();
    assertThat(results).hasSize(1);
    assertThat(results.get(0).firing().edges()).hasSize(4);
    assertThat(results.get(0).firing().damage()).contains(Firing.Damage.LINK_LOST);
    assertThat(results.get(0).outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(results.get(0).number()).isEqualTo(1);
  }

  private void greet(long bootCount) {
    sequence = 0;
    say(
        new RigMessage.Greeting(
            next(), 1, 16_000_000, "full", 0x7F, "R-1", bootCount, "power", "1", 0));
  }

  private void press(int ticks) {
    edge(Channel.RELEASE, true, ticks);
    edge(Channel.RELEASE, false, ticks + 800_000);
    say(new RigMessage.Beat(next(), ticks + 6_000_000L, 0, 16 * 20));
  }

  private void fire(int ticks) {
    opens(ticks);
    closes(ticks + 128_000);
    say(new RigMessage.Beat(next(), ticks + 6_000_000L, 0, 16 * 20));
  }

  private void opens(int ticks) {
    say(new RigMessage.Beat(next(), ticks - 100_000L, 0, 16 * 20));
    edge(Channel.CENTRE_LOW, true, ticks);
    edge(Channel.CENTRE_HIGH, true, ticks + 16_000);
  }

  private void closes(int ticks) {
    edge(Channel.CENTRE_HIGH, false, ticks - 16_000);
    edge(Channel.CENTRE_LOW, false, ticks);
  }

  private void say(RigMessage message) {
    events.add(new BenchEvent.Received(0, LineCodec.format(message)));
  }

  private void edge(Channel channel, boolean high, int ticks) {
    say(new RigMessage.EdgeSeen(next(), channel, high, ticks));
  }

  private void mark(SessionInput input) {
    events.add(Marks.of(0, input));
  }

  private int next() {
    return sequence++;
  }
}
