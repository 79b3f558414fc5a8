package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MessageTextTest {
  @Test
  void whatTheHintsBeginWithIsSaidOnce() {
    MessageText found = new MessageText("The ring costs half a stop.", MessageText.Kind.NEWS);
    assertThat(found.with("The ring costs half a stop. Look at its seat.").text())
        .isEqualTo("The ring costs half a stop. Look at its seat.");
    assertThat(found.with("Look at its seat.").text())
        .isEqualTo("The ring costs half a stop. Look at its seat.");
  }
}
