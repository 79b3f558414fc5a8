package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.function.IntUnaryOperator;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;

class LightProbeTest {
  private final LightProbe probe = new LightProbe(What.STOP, "8", true);

  @Test
  void theMeanOfASecondIsReadWithTheStepOfTheConverter() {
    probe.begin();
    probe.onEvent(new RigEvent.TimeAt(16_000_000, 0, 0));
    // Blocks of 100 and 101 counts in turn: every stretch of 100 ms has the same mean.
    probe(i -> i % 2 == 0 ? 100 : 101);

    LightReading reading = probe.reading().orElseThrow();

    assertThat(probe.step()).isEqualTo(LightProbe.Step.DONE);
    assertThat(reading.counts()).isCloseTo(100.5, within(1e-9));
    // GUM 4.3.7: a rectangle of one count has a standard deviation of 1/sqrt(12) = 0.2887.
    assertThat(reading.standardUncertaintyCounts()).isCloseTo(0.2887, within(1e-4));
    assertThat(reading.blocks()).isEqualTo(1000);
    assertThat(reading.ticks()).isEqualTo(16_000_000);
    assertThat(reading.at()).isEqualTo("8");
    assertThat(reading.opening()).isTrue();
  }

  @Test
  void lightThatMovesIsReadAgainUntilItStands() {
    probe.begin();
    Optional<RigCommand> again = probe(i -> 100 + i / 100);

    assertThat(probe.step()).isEqualTo(LightProbe.Step.READING);
    assertThat(again).contains(new RigCommand.MeasureLight(Channel.CENTRE_LOW, 1000));
    probe(i -> 110);
    assertThat(probe.step()).isEqualTo(LightProbe.Step.DONE);
    assertThat(probe.reading().orElseThrow().counts()).isEqualTo(110);
  }

  @Test
  void lightThatNeverStandsIsGivenUp() {
    probe.begin();
    for (int i = 0; i < 10 && probe.step() == LightProbe.Step.READING; i++) {
      probe(k -> 100 + k / 100);
    }
    assertThat(probe.step()).isEqualTo(LightProbe.Step.NOT_STILL);
    assertThat(probe.reading()).isEmpty();
  }

  @Test
  void aRigThatSendsNoLightIsNotWaitedForForEver() {
    probe.begin();
    for (int i = 0; i < 20; i++) {
      probe.onEvent(new RigEvent.TimeAt(i * 4_194_304L, 0, 0));
    }
    assertThat(probe.step()).isEqualTo(LightProbe.Step.NO_ANSWER);
  }

  @Test
  void skippedBlocksAtTheEndDoNoHarm() {
    probe.begin();
    for (int i = 0; i < 900; i++) {
      probe.onEvent(block(i, 100));
    }
    for (int i = 0; i < 8; i++) {
      probe.onEvent(new RigEvent.TimeAt(i * 4_194_304L, 0, 0));
    }
    assertThat(probe.step()).isEqualTo(LightProbe.Step.DONE);
    assertThat(probe.reading().orElseThrow().blocks()).isEqualTo(900);
  }

  private Optional<RigCommand> probe(IntUnaryOperator counts) {
    Optional<RigCommand> next = Optional.empty();
    for (int i = 0; i < LightProbe.BLOCKS; i++) {
      next = probe.onEvent(block(i, counts.applyAsInt(i)));
    }
    return next;
  }

  private static RigEvent block(int index, int counts) {
    return new RigMessage.LightBlock(0, Channel.CENTRE_LOW, index, 16 * counts, counts, counts);
  }
}
