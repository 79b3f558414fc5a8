package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.halflight.session.Outcome;
import org.junit.jupiter.api.Test;

class OutcomeChangeTest {
  @Test
  void ladyTastingTea() {
    // Fisher, The Design of Experiments (1935): 3 of 4 against 1 of 4 has the chance 17/70 on one
    // side; both sides are alike, so 34/70 on two.
    OutcomeChange tea = new OutcomeChange(Outcome.STUCK_OPEN, 3, 4, 1, 4);
    assertThat(tea.p()).isCloseTo(34 / 70.0, within(1e-12));
  }

  @Test
  void nothingSeenProvesNothing() {
    assertThat(new OutcomeChange(Outcome.STUCK_OPEN, 0, 5, 0, 5).p()).isEqualTo(1);
    assertThat(new OutcomeChange(Outcome.STUCK_OPEN, 0, 0, 0, 0).p()).isEqualTo(1);
    // All of ten against none of ten: 2 / (20 choose 10).
    assertThat(new OutcomeChange(Outcome.DID_NOT_OPEN, 10, 10, 0, 10).p())
        .isCloseTo(2 / 184756.0, within(1e-12));
  }

  @Test
  void refusesMoreThanThereAre() {
    assertThatThrownBy(() -> new OutcomeChange(Outcome.STUCK_OPEN, 6, 5, 0, 5))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
