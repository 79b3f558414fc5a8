package org.halflight.record;

import java.io.ByteArrayOutputStream;

/**
 * Numbers in the blobs of the record, small ones in few bytes: seven bits a byte, the lowest first,
 * bit 7 set when more follow. Numbers with a sign are zigzag: n to 2n, -n to 2n - 1.
 */
final class Varints {
  private Varints() {}

  static void write(ByteArrayOutputStream out, long number) {
    long bits = number;
    while ((bits & ~0x7FL) != 0) {
      out.write((int) ((bits & 0x7F) | 0x80));
      bits >>>= 7;
    }
    out.write((int) bits);
  }

  static void writeSigned(ByteArrayOutputStream out, long number) {
    write(out, (number << 1) ^ (number >> 63));
  }

  /**
   * Reads a blob from its beginning. Where it ends too early its methods throw {@link
   * IndexOutOfBoundsException}, at a number of more than 64 bits {@link IllegalArgumentException}.
   */
  static final class Reader {
    private final byte[] blob;
    private int at;

    Reader(byte[] blob) {
      this.blob = blob;
    }

    boolean hasMore() {
      return at < blob.length;
    }

    int nextByte() {
      return blob[at++] & 0xFF;
    }

    long next() {
      long bits = 0;
      for (int shift = 0; shift <= 63; shift += 7) {
        int part = nextByte();
        bits |= (part & 0x7FL) << shift;
        if (part <= 0x7F) {
          return bits;
        }
      }
      throw new IllegalArgumentException("a number of more than 64 bits before byte " + at);
    }

    long nextSigned() {
      long bits = next();
      return (bits >>> 1) ^ -(bits & 1);
    }
  }
}
