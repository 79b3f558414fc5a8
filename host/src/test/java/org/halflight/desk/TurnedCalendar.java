package org.halflight.desk;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;

/** Date and time that go by the time of a rig, and can be turned on by days. For any thread. */
final class TurnedCalendar extends Clock {
  private static final Instant BEGINS = Instant.parse("2026-03-02T09:00:00Z");

  private final LongSupplier nanos;
  private final long start;
  private final AtomicLong days = new AtomicLong();

  TurnedCalendar(LongSupplier nanos) {
    this.nanos = nanos;
    start = nanos.getAsLong();
  }

  void turn(int on) {
    days.addAndGet(on);
  }

  @Override
  public Instant instant() {
    return BEGINS.plus(Duration.ofDays(days.get())).plusNanos(nanos.getAsLong() - start);
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException();
  }
}
