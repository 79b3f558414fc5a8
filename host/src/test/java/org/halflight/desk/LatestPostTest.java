package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;

class LatestPostTest {
  private final Deque<Runnable> there = new ArrayDeque<>();
  private final List<String> got = new ArrayList<>();
  private final LatestPost<String> post = new LatestPost<>(there::add, got::add);

  @Test
  void aSlowReceiverGetsTheLatestOnce() {
    post.accept("first");
    post.accept("second");
    post.accept("third");
    assertThat(there).hasSize(1);
    there.remove().run();
    assertThat(got).containsExactly("third");
  }

  @Test
  void aQuickReceiverGetsAll() {
    post.accept("first");
    there.remove().run();
    post.accept("second");
    there.remove().run();
    assertThat(got).containsExactly("first", "second");
    assertThat(there).isEmpty();
  }
}
