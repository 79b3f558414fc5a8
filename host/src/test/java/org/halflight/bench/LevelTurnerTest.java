package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.junit.jupiter.api.Test;

class LevelTurnerTest {
  private static final LightLevels LIGHT = new LightLevels(8, 819, 180, 648);
  private static final ThresholdCodes CODES =
      ((ThresholdCodes.Found) ThresholdCodes.forLight(8, 819, TripPoints.EXACT)).codes();

  private final LevelTurner turner = new LevelTurner();
  private final List<LevelTurner.Next> next = new ArrayList<>();

  @Test
  void aLevelStandsOnlyAfterTheRigHasReadItBack() {
    assertThat(turner.begin(Optional.of(LIGHT), TripPoints.EXACT))
        .isEqualTo(new RigCommand.SetThresholds(CODES.low(), 255));
    beats(1);
    assertThat(next).isEmpty();
    beats(1);
    assertThat(next).containsExactly(send(new RigCommand.AskThresholds()));
    readBack(CODES.low(), 181);
    assertThat(next).last().isEqualTo(new LevelTurner.Next.Stands(Level.LOW));
    beats(20);
    assertThat(next).hasSize(2);
  }

  @Test
  void levelsTakeTurns() {
    turner.begin(Optional.of(LIGHT), TripPoints.EXACT);
    stand(CODES.low(), 180);
    assertThat(turner.turn()).isEqualTo(new RigCommand.SetThresholds(CODES.high(), 255));
    stand(CODES.high(), 648);
    assertThat(next).last().isEqualTo(new LevelTurner.Next.Stands(Level.HIGH));
    assertThat(turner.turn()).isEqualTo(new RigCommand.SetThresholds(CODES.low(), 255));
    stand(CODES.low(), 180);
    assertThat(next).last().isEqualTo(new LevelTurner.Next.Stands(Level.LOW));
  }

  @Test
  void aCommandThatWasLostIsSentAgainAndTheLevelDoesNotStandMeanwhile() {
    turner.begin(Optional.of(LIGHT), TripPoints.EXACT);
    stand(CODES.low(), 180);
    RigCommand toHigh = turner.turn();
    next.clear();
    beats(2);
    readBack(CODES.low(), 180);
    assertThat(next).containsExactly(send(new RigCommand.AskThresholds()), send(toHigh));
    stand(CODES.high(), 648);
    assertThat(next).last().isEqualTo(new LevelTurner.Next.Stands(Level.HIGH));
  }

  @Test
  void aReadBackThatWasLostIsAskedForAgain() {
    turner.begin(Optional.of(LIGHT), TripPoints.EXACT);
    beats(2 + 6);
    assertThat(next)
        .containsExactly(
            send(new RigCommand.AskThresholds()), send(new RigCommand.AskThresholds()));
  }

  @Test
  void aThresholdThatIsNotWhereTheLightHadSetItIsSaidToBeOff() {
    turner.begin(Optional.of(LIGHT), TripPoints.EXACT);
    stand(CODES.low(), 190);
    assertThat(next).last().isEqualTo(new LevelTurner.Next.Off());
  }

  @Test
  void withoutALightTheStartingLevelsTakeTurns() {
    // Codes of the protocol after a start.
    assertThat(turner.begin(Optional.empty(), TripPoints.EXACT))
        .isEqualTo(new RigCommand.SetThresholds(0x2B, 255));
    stand(0x2B, 190);
    assertThat(next).last().isEqualTo(new LevelTurner.Next.Stands(Level.LOW));
    assertThat(turner.turn()).isEqualTo(new RigCommand.SetThresholds(0xA1, 255));
  }

  private static LevelTurner.Next send(RigCommand command) {
    return new LevelTurner.Next.Send(command);
  }

  private void stand(int code, int counts) {
    beats(2);
    readBack(code, counts);
  }

  private void beats(int count) {
    for (int i = 0; i < count; i++) {
      turner.onEvent(new RigEvent.TimeAt(4_000_000L * i, 0, 0)).ifPresent(next::add);
    }
  }

  private void readBack(int code, int counts) {
    int sum = 64 * counts;
    turner.onEvent(new RigMessage.Thresholds(0, code, 255, sum, sum)).ifPresent(next::add);
  }
}
