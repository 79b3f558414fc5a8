package org.halflight.link;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;

/** A clock that only goes on when it is told to. Safe for use by several threads. */
public final class FakeClock implements LongSupplier {
  // Near the end of the range, so that what compares times by order instead of difference fails.
  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 1_000_000_000L);

  @Override
  public long getAsLong() {
    return nanos.get();
  }

  public void passMillis(long millis) {
    nanos.addAndGet(TimeUnit.MILLISECONDS.toNanos(millis));
  }
}
