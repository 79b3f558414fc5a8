package org.halflight.box;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.LongSupplier;

/**
 * The time of a simulated bench, which the bench itself publishes in a file: nanoseconds since its
 * start. It stands while the bench stands, so a host that goes by it is never too slow for the
 * board. Safe for use by several threads and processes.
 */
final class BoardClock implements LongSupplier {
  private static final VarHandle NANOS =
      MethodHandles.byteBufferViewVarHandle(long[].class, ByteOrder.nativeOrder());

  private final ByteBuffer page;

  private BoardClock(ByteBuffer page) {
    this.page = page;
  }

  /** The clock in a file that a bench has made. */
  static BoardClock of(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      return new BoardClock(channel.map(FileChannel.MapMode.READ_ONLY, 0, Long.BYTES));
    }
  }

  @Override
  public long getAsLong() {
    return (long) NANOS.getAcquire(page, 0);
  }
}
