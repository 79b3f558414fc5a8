package org.halflight.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A file on a disk that has room for so many bytes, and may refuse to shorten it. */
final class FullDisk implements SeekableByteChannel {
  private byte[] bytes = new byte[0];
  private int position;
  private int room;
  private boolean shortens = true;

  FullDisk(int room) {
    this.room = room;
  }

  void room(int now) {
    room = now;
  }

  void shortens(boolean now) {
    shortens = now;
  }

  String text() {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  byte[] bytes() {
    return bytes.clone();
  }

  @Override
  public int read(ByteBuffer into) {
    throw new UnsupportedOperationException();
  }

  @Override
  public int write(ByteBuffer from) throws IOException {
    int fits = Math.min(from.remaining(), room - position);
    if (fits <= 0) {
      throw new IOException("No space left on device");
    }
    bytes = Arrays.copyOf(bytes, Math.max(bytes.length, position + fits));
    from.get(bytes, position, fits);
    position += fits;
    return fits;
  }

  @Override
  public long position() {
    return position;
  }

  @Override
  public SeekableByteChannel position(long newPosition) {
    position = (int) newPosition;
    return this;
  }

  @Override
  public long size() {
    return bytes.length;
  }

  @Override
  public SeekableByteChannel truncate(long size) throws IOException {
    if (!shortens) {
      throw new IOException("Input/output error");
    }
    bytes = Arrays.copyOf(bytes, (int) Math.min(size, bytes.length));
    return this;
  }

  @Override
  public boolean isOpen() {
    return true;
  }

  @Override
  public void close() {}
}
