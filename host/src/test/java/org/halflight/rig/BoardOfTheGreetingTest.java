package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalLong;
import org.halflight.rig.RigEvent.Contradicted;
import org.halflight.rig.RigEvent.EdgeAt;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** What hangs on the kind of board follows its greeting. */
class BoardOfTheGreetingTest {
  private static final int TWO_LEVELS = 0x7F;
  private static final int ONE_LEVEL = 0x61;

  @Test
  void aGreetingTellsClockAndLevels() {
    assertThat(greeting(16_000_000, TWO_LEVELS).board()).isEqualTo(BoardTraits.USUAL);
    assertThat(greeting(8_000_000, ONE_LEVEL).board())
        .isEqualTo(new BoardTraits(new TickRate(8_000_000), true, false));
  }

  @Test
  void aGreetingNamesTheKnobContactWhereTheFirmwareHasOne() {
    assertThat(greeting(16_000_000, TWO_LEVELS).board().knob()).isFalse();
    assertThat(greeting(16_000_000, 0xFF).board())
        .isEqualTo(new BoardTraits(TickRate.BOARD_16_MHZ, false, true));
    assertThat(greeting(16_000_000, 0xE1).board())
        .isEqualTo(new BoardTraits(TickRate.BOARD_16_MHZ, true, true));
  }

  @Test
  void aStarterRigIsKnownByItsWord() {
    BoardTraits starter = greeting("starter", 16_000_000, 0xC1).board();

    assertThat(starter.kind()).isEqualTo(BoardTraits.Kind.STARTER);
    assertThat(starter.oneLevel() && starter.fixedLevel() && starter.knob()).isTrue();
    assertThat(starter.flashContact() || starter.clicks() || starter.referenceLed()).isFalse();
  }

  @Test
  void ticksOfASlowerClockAreFewer() {
    BoardTraits slow = new BoardTraits(new TickRate(8_000_000), false, false);

    assertThat(slow.lateTicks()).isEqualTo(160_000);
    assertThat(slow.stampTicks()).isEqualTo(32);
    assertThat(slow.beatSlackTicks()).isEqualTo(8_000);
  }

  /**
   * An edge 15 ms before the one before it: late at 16 MHz, and so at 8 MHz with half the ticks.
   */
  @Test
  void anEdgeMayBeLateBySoManyTicksAsTheClockHasInTwentyMilliseconds() {
    assertThat(lateBy(240_000, 16_000_000)).hasOnlyElementsOfType(EdgeAt.class);
    assertThat(lateBy(120_000, 8_000_000)).hasOnlyElementsOfType(EdgeAt.class);
    assertThat(lateBy(240_000, 8_000_000))
        .contains(new Contradicted(OptionalLong.of(5_000_000 - 160_000)));
  }

  private List<RigEvent> lateBy(long ticks, long ticksPerSecond) {
    RigStream fresh = new RigStream();
    long last = 10_000_000;
    List.of(
            greeting(ticksPerSecond, TWO_LEVELS),
            new Beat(1, 5_000_000, 0, 0),
            new Beat(2, last, 0, 0),
            new EdgeSeen(3, Channel.CENTRE_LOW, true, (int) last))
        .forEach(message -> accept(fresh, message));
    return accept(fresh, new EdgeSeen(4, Channel.RELEASE, true, (int) (last - ticks)));
  }

  private static List<RigEvent> accept(RigStream stream, RigMessage message) {
    return stream.accept(RigLine.of(LineCodec.format(message)));
  }

  private static Greeting greeting(long ticksPerSecond, int channels) {
    return greeting("full", ticksPerSecond, channels);
  }

  private static Greeting greeting(String kind, long ticksPerSecond, int channels) {
    return new Greeting(0, 1, ticksPerSecond, kind, channels, "R-1", 1, "power", "1.1.0", 0);
  }
}
