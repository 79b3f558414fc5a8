package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HeldKeysTest {
  private static final int BACKSPACE = 8;
  private static final int N = 78;

  private final HeldKeys keys = new HeldKeys();
  private long now = 1_000_000;
  private int counted;

  @Test
  void heldForTwoSecondsCountsOnceWhereThePressAloneIsRepeated() {
    press(0);
    press(500);
    for (int i = 0; i < 60; i++) {
      press(25);
    }
    assertThat(counted).isEqualTo(1);
    release(25);
    press(80);
    assertThat(counted).isEqualTo(2);
  }

  @Test
  void heldForTwoSecondsCountsOnceWhereReleaseAndPressAreRepeated() {
    press(0);
    release(660);
    press(0);
    for (int i = 0; i < 60; i++) {
      release(25);
      press(i % 3);
    }
    assertThat(counted).isEqualTo(1);
    release(25);
    press(80);
    assertThat(counted).isEqualTo(2);
  }

  @Test
  void quickFingersCountEachTime() {
    for (int i = 0; i < 10; i++) {
      press(40);
      release(30);
    }
    assertThat(counted).isEqualTo(10);
  }

  @Test
  void anotherKeyMeanwhileIsAnother() {
    press(0);
    assertThat(keys.pressed(N, now)).isTrue();
    press(30);
    assertThat(keys.pressed(N, now)).isFalse();
    assertThat(counted).isEqualTo(1);
  }

  @Test
  void aReleaseThatWentToAnotherWindowLocksNoKeyUp() {
    press(0);
    keys.forget();
    press(100);
    assertThat(counted).isEqualTo(2);
    press(HeldKeys.LONGEST_PAUSE_MILLIS + 1);
    assertThat(counted).isEqualTo(3);
  }

  @Test
  void aClockThatIsSetBackLocksNoKeyUp() {
    press(0);
    release(100);
    press(-3_600_000);
    assertThat(counted).isEqualTo(2);
    press(-3_600_000);
    assertThat(counted).isEqualTo(3);
  }

  private void press(long afterMillis) {
    now += afterMillis;
    counted += keys.pressed(BACKSPACE, now) ? 1 : 0;
  }

  private void release(long afterMillis) {
    now += afterMillis;
    keys.released(BACKSPACE, now);
  }
}
