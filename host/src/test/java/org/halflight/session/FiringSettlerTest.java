package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.junit.jupiter.api.Test;

class FiringSettlerTest {
  private final PartsOfASession parts = new PartsOfASession();
  private final FiringSettler settler =
      new FiringSettler(
          parts.log,
          parts.questions,
          parts.progress,
          parts.rig,
          parts.light,
          parts.meter,
          new UnderwayWatch(parts.progress, parts.meter));

  private List<Outcome> outcomes() {
    return parts.log.all().stream().map(FiringResult::outcome).toList();
  }

  @Test
  void lateLightIsThatOfThePressBeforeIt() {
    Firing press =
        new Firing(
            List.of(
                PartsOfASession.edge(Channel.RELEASE, true, 1),
                PartsOfASession.edge(Channel.RELEASE, false, 1.1)),
            List.of());
    settler.settle(press, parts.events);
    assertThat(outcomes()).containsExactly(Outcome.DID_NOT_OPEN);
    settler.settle(PartsOfASession.firing(9, 10e-3), parts.events);
    assertThat(outcomes()).containsExactly(Outcome.TIMED);
    assertThat(parts.log.all().get(0).isBySelfTimer()).isTrue();
    settler.settle(PartsOfASession.firing(12, 10e-3), parts.events);
    assertThat(outcomes()).containsExactly(Outcome.TIMED, Outcome.TIMED);
  }

  @Test
  void anOpeningWhileTheLightIsSetIsNoRelease() {
    parts.light.onBeingSet(true, 0);
    settler.settle(PartsOfASession.firing(1, 10e-3), parts.events);
    assertThat(outcomes()).containsExactly(Outcome.HELD_FOR_LIGHT);
  }

  @Test
  void edgesToldTwiceChangeNothing() {
    Firing firing = PartsOfASession.firing(1, 10e-3);
    settler.settle(firing, parts.events);
    settler.settle(firing, parts.events);
    assertThat(parts.events(SessionEvent.Settled.class)).hasSize(1);
  }

  @Test
  void lightTakesTheCapOff() {
    settler.onCap(true);
    settler.settle(PartsOfASession.firing(1, 10e-3), parts.events);
    assertThat(settler.isCapOn()).isFalse();
  }
}
