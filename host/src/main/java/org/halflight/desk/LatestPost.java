package org.halflight.desk;

import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * Hands values from one thread to another. Where the other is slower it gets the latest only, at
 * once and without a queue that grows. Safe for use by several threads.
 */
final class LatestPost<T> implements Consumer<T> {
  private final AtomicReference<T> waiting = new AtomicReference<>();
  private final Executor there;
  private final Consumer<T> to;

  LatestPost(Executor there, Consumer<T> to) {
    this.there = there;
    this.to = to;
  }

  @Override
  public void accept(T value) {
    if (waiting.getAndSet(value) == null) {
      there.execute(() -> to.accept(waiting.getAndSet(null)));
    }
  }
}
