package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.NoSuchElementException;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class FigureTest {
  @Test
  void aFigureIsChangedAndAReasonStays() {
    assertThat(new Known<>(2).map(two -> two + 1)).isEqualTo(new Known<>(3));
    Figure<Integer> few = new NotEnoughFirings<>(1, 3);
    assertThat(few.map(two -> two + 1)).isEqualTo(new NotEnoughFirings<Integer>(1, 3));
    Figure<Integer> alike = new NoScatter<>();
    assertThat(alike.map(two -> two + 1)).isEqualTo(new NoScatter<Integer>());
  }

  @Test
  void whatIsNotKnownIsNotGiven() {
    assertThat(new Known<>(2).get()).isEqualTo(2);
    assertThatThrownBy(() -> new NotEnoughFirings<>(1, 3).get())
        .isInstanceOf(NoSuchElementException.class);
  }

  /** Enough firings are no reason. */
  @Test
  void tooFewAreFewerThanTheLeast() {
    assertThatThrownBy(() -> new NotEnoughFirings<>(3, 3))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new NotEnoughFirings<>(-1, 3))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(new NotEnoughFirings<>(0, 1).known()).isEmpty();
  }
}
