package org.halflight.desk;

import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.BiPredicate;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.swing.SwingUtilities;
import org.jspecify.annotations.Nullable;

/**
 * Works something out of the newest thing that came, on another thread and one at a time: what
 * comes meanwhile is next, and of several only the newest. For the window's own thread.
 *
 * @param <T> what it is worked out from
 * @param <R> what comes of it
 */
final class LatestWork<T, R> {
  private final Executor elsewhere;
  private final Function<T, R> work;
  private final BiPredicate<T, T> same;
  private final BiConsumer<T, R> arrived;
  private @Nullable T wanted;
  private @Nullable T made;
  private boolean making;

  /**
   * @param elsewhere where the work is done
   * @param work is done there
   * @param same whether two things come to the same
   * @param arrived takes what came of it, on the window's own thread
   */
  LatestWork(
      Executor elsewhere, Function<T, R> work, BiPredicate<T, T> same, BiConsumer<T, R> arrived) {
    this.elsewhere = elsewhere;
    this.work = work;
    this.same = same;
    this.arrived = arrived;
  }

  /** Has this worked out as soon as nothing else is, unless it comes to the same as the last. */
  void of(T newest) {
    wanted = newest;
    if (making || isDone()) {
      return;
    }
    making = true;
    there(elsewhere, () -> work.apply(newest), result -> arrived(newest, result));
  }

  /**
   * Does something on another thread and comes back to the window's own.
   *
   * @param arrived takes what came of it; nothing after a fault, which is reported by whoever
   *     watches the threads: the next thing is done all the same
   */
  static <R> void there(Executor elsewhere, Supplier<R> work, Consumer<@Nullable R> arrived) {
    elsewhere.execute(
        () -> {
          @Nullable R result = null;
          try {
            result = work.get();
          } finally {
            @Nullable R came = result;
            SwingUtilities.invokeLater(() -> arrived.accept(came));
          }
        });
  }

  private void arrived(T of, @Nullable R result) {
    making = false;
    made = of;
    if (result != null) {
      arrived.accept(of, result);
    }
    if (wanted != null) {
      of(wanted);
    }
  }

  /** Whether what was asked for last is worked out. */
  boolean isDone() {
    return wanted == null || (made != null && same.test(made, wanted));
  }
}
