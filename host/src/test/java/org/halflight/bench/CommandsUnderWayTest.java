package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.halflight.rig.LineCodec;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.junit.jupiter.api.Test;

class CommandsUnderWayTest {
  private static final RigCommand SET = new RigCommand.SetThresholds(30, 200);
  private static final RigCommand STATUS = new RigCommand.AskStatus();

  private final CommandsUnderWay commands = new CommandsUnderWay();

  @Test
  void waitsFromTheWishOnUntilTheAnswerToAnyOfItsLines() {
    commands.asked(SET);
    assertThat(commands.isWaiting()).isTrue();
    sent(7, SET);
    assertThat(answered(6)).as("somebody else's").isFalse();
    sent(9, SET);
    assertThat(answered(7)).isTrue();
    assertThat(commands.isWaiting()).isFalse();
    assertThat(answered(9)).as("the second answer to the same").isFalse();
  }

  @Test
  void nobodyWaitsForTheStatusOrForWhatWasSentAhead() {
    commands.asked(STATUS);
    sent(1, STATUS);
    assertThat(commands.isWaiting()).isFalse();
    assertThat(commands.isWaitingFor(STATUS)).isTrue();
    assertThat(answered(1)).isFalse();
    assertThat(commands.isWaitingFor(STATUS)).isFalse();

    commands.askedAhead(SET);
    sent(2, SET);
    assertThat(commands.isWaiting()).isTrue();
    assertThat(answered(2)).as("heard by no task").isFalse();
    assertThat(commands.isWaiting()).isFalse();
  }

  @Test
  void givesUpBehindAMinuteOfBeatsAndSaysSoOnce() {
    commands.asked(SET);
    for (int i = 0; i < CommandsUnderWay.BEATS_MOST; i++) {
      assertThat(commands.beat()).isFalse();
    }
    assertThat(commands.beat()).isTrue();
    assertThat(commands.isWaiting()).isFalse();
    assertThat(commands.beat()).isFalse();
  }

  @Test
  void givesUpWhenEdgesFillTheLineButNotForFewer() {
    commands.asked(SET);
    assertThat(beatsOf(150, 20)).isFalse();
    assertThat(beatsOf(250, 7)).isFalse();
    assertThat(beatsOf(250, 1)).isTrue();
  }

  private boolean beatsOf(int edges, int beats) {
    boolean over = false;
    for (int i = 0; i < beats; i++) {
      for (int k = 0; k < edges; k++) {
        commands.edge();
      }
      over |= commands.beat();
    }
    return over;
  }

  private void sent(int sequence, RigCommand command) {
    commands.sent(new BenchEvent.Sent(0, LineCodec.format(sequence, command)));
  }

  private boolean answered(int sequence) {
    return commands.isWaitedFor(new RigMessage.Answer(0, sequence, RigMessage.Result.DONE));
  }
}
