package org.halflight.bench;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/**
 * Takes the lines of a session file one after the other, whatever bytes are in it. A line ends in
 * LF, CR or both.
 */
final class SessionLines {
  /** No line of ours is a hundredth as long; what is longer is not worth the memory. */
  static final int LONGEST = 1 << 20;

  private static final int BUFFER_BYTES = 1 << 16;

  /**
   * A line.
   *
   * @param text one character a byte, without the line end; the beginning only of one that is
   *     longer than {@link #LONGEST}
   * @param tooLong whether it is
   * @param ended whether its line end came, too
   */
  record Line(String text, boolean tooLong, boolean ended) {}

  private final InputStream bytes;
  private final byte[] buffer = new byte[BUFFER_BYTES];
  private int at;
  private int filled;
  private boolean afterReturn;

  SessionLines(InputStream bytes) {
    this.bytes = bytes;
  }

  /** The next line; empty at the end. */
  Optional<Line> next() throws IOException {
    StringBuilder text = new StringBuilder();
    boolean tooLong = false;
    boolean any = false;
    for (int c = read(); c >= 0; c = read()) {
      boolean restOfLineEnd = c == '\n' && afterReturn && !any;
      afterReturn = false;
      if (restOfLineEnd) {
        continue;
      }
      if (c == '\n' || c == '\r') {
        afterReturn = c == '\r';
        return Optional.of(new Line(text.toString(), tooLong, true));
      }
      any = true;
      tooLong |= text.length() >= LONGEST;
      if (!tooLong) {
        text.append((char) c);
      }
    }
    return any ? Optional.of(new Line(text.toString(), tooLong, false)) : Optional.empty();
  }

  private int read() throws IOException {
    if (at >= filled) {
      filled = bytes.read(buffer);
      at = 0;
      if (filled <= 0) {
        return -1;
      }
    }
    return buffer[at++] & 0xFF;
  }
}
