package org.halflight.campaign;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;

/** A file on a {@link ShortDisk}: writes come to an end in the middle where there is no room. */
final class ShortChannel extends FileChannel {
  private final ShortDisk disk;
  private final FileChannel real;

  ShortChannel(ShortDisk disk, FileChannel real) {
    this.disk = disk;
    this.real = real;
  }

  @Override
  public int write(ByteBuffer bytes) throws IOException {
    ByteBuffer part = bytes.duplicate();
    part.limit(part.position() + disk.reserve(bytes.remaining()));
    int written = real.write(part);
    bytes.position(bytes.position() + written);
    return written;
  }

  @Override
  public int write(ByteBuffer bytes, long position) throws IOException {
    ByteBuffer part = bytes.duplicate();
    part.limit(part.position() + disk.reserve(bytes.remaining()));
    int written = real.write(part, position);
    bytes.position(bytes.position() + written);
    return written;
  }

  @Override
  public long write(ByteBuffer[] bytes, int from, int count) throws IOException {
    long written = 0;
    for (int i = from; i < from + count; i++) {
      written += write(bytes[i]);
    }
    return written;
  }

  @Override
  public int read(ByteBuffer bytes) throws IOException {
    return real.read(bytes);
  }

  @Override
  public long read(ByteBuffer[] bytes, int from, int count) throws IOException {
    return real.read(bytes, from, count);
  }

  @Override
  public int read(ByteBuffer bytes, long position) throws IOException {
    return real.read(bytes, position);
  }

  @Override
  public long position() throws IOException {
    return real.position();
  }

  @Override
  public FileChannel position(long position) throws IOException {
    real.position(position);
    return this;
  }

  @Override
  public long size() throws IOException {
    return real.size();
  }

  @Override
  public FileChannel truncate(long size) throws IOException {
    real.truncate(size);
    return this;
  }

  @Override
  public void force(boolean metaData) throws IOException {
    real.force(metaData);
  }

  @Override
  public long transferTo(long position, long count, WritableByteChannel to) throws IOException {
    return real.transferTo(position, count, to);
  }

  @Override
  public long transferFrom(ReadableByteChannel from, long position, long count) throws IOException {
    return real.transferFrom(from, position, disk.reserve((int) count));
  }

  @Override
  public MappedByteBuffer map(MapMode mode, long position, long size) throws IOException {
    return real.map(mode, position, size);
  }

  @Override
  public FileLock lock(long position, long size, boolean shared) throws IOException {
    return real.lock(position, size, shared);
  }

  @Override
  public FileLock tryLock(long position, long size, boolean shared) throws IOException {
    return real.tryLock(position, size, shared);
  }

  @Override
  protected void implCloseChannel() throws IOException {
    real.close();
  }
}
