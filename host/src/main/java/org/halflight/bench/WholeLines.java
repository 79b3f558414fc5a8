package org.halflight.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;

/**
 * Adds lines at the end of a file, each whole or not at all: what a full disk let in of a line is
 * taken back, so that it can neither count nor swallow the next one. Not safe for use by several
 * threads.
 */
final class WholeLines {
  /** Ends the rest of a line that cannot be taken back; no line of any form may end so. */
  static final String CUT = "%";

  private static final String SPOILT = CUT + "\n";

  private final SeekableByteChannel channel;
  private long endBytes;
  private boolean torn;

  /**
   * @param endBytes where the last whole line ends
   */
  WholeLines(SeekableByteChannel channel, long endBytes) {
    this.channel = channel;
    this.endBytes = endBytes;
  }

  /**
   * Adds a line.
   *
   * @throws IOException when the disk does not take it; then it is not there
   */
  void add(String line) throws IOException {
    if (torn) {
      mend();
    }
    try {
      endBytes = write(endBytes, line + "\n");
    } catch (IOException e) {
      torn = true;
      undo();
      throw e;
    }
  }

  private void undo() {
    try {
      channel.truncate(endBytes);
      torn = false;
    } catch (IOException later) {
      // The next line sees to it; until then nobody reads on from here.
      torn = true;
    }
  }

  private void mend() throws IOException {
    undo();
    if (torn) {
      endBytes = write(channel.size(), SPOILT);
      torn = false;
    }
  }

  private long write(long at, String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.ISO_8859_1));
    channel.position(at);
    while (bytes.hasRemaining()) {
      if (channel.write(bytes) <= 0) {
        throw new IOException("nothing more is taken");
      }
    }
    return at + bytes.limit();
  }
}
