package org.halflight.campaign;

import java.util.Arrays;
import java.util.Random;

/** Changes the bytes of a file, as a bad disk, a careless copy or an editor does. */
final class Mutation {
  private static final String[] WAYS = {
    "byte changed",
    "byte changed",
    "byte changed",
    "bytes changed",
    "cut",
    "blocks swapped",
    "block of zeros",
    "bytes put in",
    "bytes left out",
    "block repeated"
  };

  private final String way;
  private final byte[] bytes;

  private Mutation(String way, byte[] bytes) {
    this.way = way;
    this.bytes = bytes;
  }

  /** What was done to it. */
  String way() {
    return way;
  }

  /** The file as it is now. */
  byte[] bytes() {
    return bytes.clone();
  }

  /** Never the same bytes as before. */
  static Mutation of(Random random, byte[] file) {
    while (true) {
      String way = WAYS[random.nextInt(WAYS.length)];
      byte[] bytes = mutated(random, file, way);
      if (!Arrays.equals(bytes, file)) {
        return new Mutation(way, bytes);
      }
    }
  }

  /** One byte becomes another. */
  static Mutation ofOneByte(Random random, byte[] file) {
    return ofOneByte(random, file, 0, file.length);
  }

  /** One byte between two places becomes another. */
  static Mutation ofOneByte(Random random, byte[] file, int from, int to) {
    byte[] bytes = file.clone();
    bytes[from + random.nextInt(to - from)] ^= (byte) (1 + random.nextInt(255));
    return new Mutation("byte changed", bytes);
  }

  private static byte[] mutated(Random random, byte[] file, String way) {
    int at = random.nextInt(file.length);
    int length = 1 + random.nextInt(Math.min(512, file.length));
    int end = Math.min(file.length, at + length);
    switch (way) {
      case "byte changed" -> {
        return ofOneByte(random, file).bytes();
      }
      case "bytes changed" -> {
        byte[] bytes = file.clone();
        for (int i = 0; i < 2 + random.nextInt(6); i++) {
          bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
      }
      case "cut" -> {
        return Arrays.copyOf(file, at);
      }
      case "blocks swapped" -> {
        byte[] bytes = file.clone();
        int other = random.nextInt(file.length);
        int size = Math.min(length, file.length - Math.max(at, other));
        byte[] kept = Arrays.copyOfRange(bytes, at, at + size);
        System.arraycopy(file, other, bytes, at, size);
        System.arraycopy(kept, 0, bytes, other, size);
        return bytes;
      }
      case "block of zeros" -> {
        byte[] bytes = file.clone();
        Arrays.fill(bytes, at, end, (byte) 0);
        return bytes;
      }
      case "bytes put in" -> {
        byte[] put = new byte[1 + random.nextInt(40)];
        random.nextBytes(put);
        return joined(Arrays.copyOf(file, at), put, Arrays.copyOfRange(file, at, file.length));
      }
      case "bytes left out" -> {
        return joined(Arrays.copyOf(file, at), Arrays.copyOfRange(file, end, file.length));
      }
      default -> {
        return joined(Arrays.copyOf(file, end), Arrays.copyOfRange(file, at, file.length));
      }
    }
  }

  private static byte[] joined(byte[]... parts) {
    int length = 0;
    for (byte[] part : parts) {
      length += part.length;
    }
    byte[] all = new byte[length];
    int at = 0;
    for (byte[] part : parts) {
      System.arraycopy(part, 0, all, at, part.length);
      at += part.length;
    }
    return all;
  }
}
