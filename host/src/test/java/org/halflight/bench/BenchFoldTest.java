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
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

class BenchFoldTest {
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

    BenchFold fold = BenchFold.replay(events);
    assertThat(fold.session().results()).hasSize(1);
    FiringResult result = fold.session().results().get(0);
    assertThat(result.notes().plateauShare().orElseThrow()).isCloseTo(0.5, Offset.offset(1e-9));
    assertThat(result.notes().lightDoubtful()).isTrue();
    assertThat(fold.damagedMarks()).isEqualTo(1);
    assertThat(BenchFold.replay(events).session().results()).isEqualTo(fold.session().results());
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
