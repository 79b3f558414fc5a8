package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;

class LatestWorkTest {
  private final Deque<Runnable> elsewhere = new ArrayDeque<>();
  private final List<String> arrived = new ArrayList<>();
  private final LatestWork<Integer, String> work =
      new LatestWork<>(
          elsewhere::add,
          of -> {
            if (of < 0) {
              throw new IllegalStateException("an odd thing");
            }
            return "made of " + of;
          },
          Integer::equals,
          (of, made) -> arrived.add(made));

  @Test
  void ofWhatComesMeanwhileOnlyTheNewestIsWorkedOut() throws Exception {
    assertThat(work.isDone()).as("nothing was asked for").isTrue();
    for (int i = 1; i <= 4; i++) {
      work.of(i);
    }
    assertThat(elsewhere).hasSize(1);
    assertThat(work.isDone()).isFalse();
    runOne();
    runOne();
    assertThat(arrived).containsExactly("made of 1", "made of 4");
    assertThat(work.isDone()).isTrue();
    work.of(4);
    assertThat(elsewhere).as("it comes to the same").isEmpty();
  }

  @Test
  void aFaultKeepsNothingElseFromTheScreen() throws Exception {
    work.of(-1);
    // Whoever watches the other thread hears of it.
    assertThatThrownBy(this::runOne).hasMessage("an odd thing");
    settle();
    assertThat(elsewhere).as("the same is not tried for ever").isEmpty();
    work.of(2);
    runOne();
    assertThat(arrived).containsExactly("made of 2");
  }

  private void runOne() throws Exception {
    elsewhere.remove().run();
    settle();
  }

  private static void settle() throws Exception {
    SwingUtilities.invokeAndWait(() -> {});
  }
}
