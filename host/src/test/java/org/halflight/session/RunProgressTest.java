package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;

class RunProgressTest {
  private static final MarkedSpeed S60 = InventedBench.S60;
  private static final MarkedSpeed S125 = InventedBench.S125;

  private final PartsOfASession parts = new PartsOfASession();
  private final RunProgress progress = parts.progress;

  private static RunSetup run(String camera, Phase phase) {
    return new RunSetup(camera, phase, "leaf", List.of(S60, S125), Reference.EXACT, 2);
  }

  @Test
  void aSpeedIsShownUntilItHasItsFiringsAndTheRunEndsWithTheLast() {
    assertThat(progress.begin(run("A", Phase.AS_LEFT), parts.events)).isFalse();
    for (int i = 0; i < 4; i++) {
      assertThat(progress.shown().flatMap(DialSetting::speed)).contains(i < 2 ? S60 : S125);
      parts.fire(1 + i, i < 2 ? 1 / 64.0 : 1 / 128.0);
      progress.goOn(parts.events);
    }
    assertThat(progress.isRunDone()).isTrue();
    progress.goOn(parts.events);
    assertThat(parts.events(SessionEvent.RunDone.class)).as("said once").hasSize(1);
  }

  @Test
  void whatThePersonChoseWhileAdjustingStays() {
    progress.begin(run("A", Phase.ADJUSTING), parts.events);
    progress.next(parts.events);
    for (int i = 0; i < 5; i++) {
      parts.fire(1 + i, 1 / 128.0);
      progress.goOn(parts.events);
    }
    assertThat(progress.shown().flatMap(DialSetting::speed)).contains(S125);
    progress.previous(parts.events);
    assertThat(progress.shown().flatMap(DialSetting::speed)).contains(S60);
  }

  @Test
  void theSameWithOtherTriesGoesOnAndAnotherCameraIsAnotherRun() {
    RunSetup first = run("A", Phase.AS_LEFT);
    progress.begin(first, parts.events);
    assertThat(progress.begin(first.withMostTries(3), parts.events)).isFalse();
    assertThat(progress.run()).isEqualTo(1);
    assertThat(progress.begin(run("", Phase.AS_LEFT), parts.events)).isFalse();
    assertThat(progress.begin(run("B", Phase.AS_LEFT), parts.events)).isTrue();
    assertThat(progress.run()).isEqualTo(3);
  }

  @Test
  void neighboursAreThoseOfTheDialAndNotOfTheRun() {
    progress.begin(run("A", Phase.AS_LEFT), parts.events);
    assertThat(progress.neighbours(S125)).containsExactly(S60, InventedBench.S250);
  }
}
