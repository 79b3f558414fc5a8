package org.halflight.record;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;

/**
 * A raw light curve as bytes: exact, and about one byte a reading.
 *
 * <p>Byte 0 is the form, 1; byte 1 is 1 where the curve was cut off. Then for each part in order
 * one byte, twice the code of the part in the line protocol, plus one after a gap, and as varints
 * (see {@link EdgeBlob}): ticks of its first value since those of the part before (for the first
 * part, since the ticks that the firing is known by), zigzag; its period; how many values follow;
 * and each value less the one before (the first less 0), zigzag.
 */
final class CurveBlob {
  private static final int FORM = 1;

  private CurveBlob() {}

  static byte[] of(SampledLight curve, long firstTicks) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(1024);
    out.write(FORM);
    out.write(curve.cutOff() ? 1 : 0);
    long before = firstTicks;
    for (Part part : curve.parts()) {
      out.write(2 * code(part.kind()) + (part.gapBefore() ? 1 : 0));
      write(out, zigzag(part.firstTicks() - before));
      write(out, part.periodTicks());
      write(out, part.values().size());
      int last = 0;
      for (int value : part.values()) {
        write(out, zigzag(value - last));
        last = value;
      }
      before = part.firstTicks();
    }
    return out.toByteArray();
  }

  /** The curve of a blob; empty where these bytes are none. */
  static Optional<SampledLight> read(byte[] blob, long firstTicks) {
    try {
      return Optional.of(new Reader(blob).curve(firstTicks));
    } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static int code(Kind kind) {
    return switch (kind) {
      case OPENING -> 0;
      case PLATEAU -> 1;
      case CLOSING -> 2;
    };
  }

  private static Kind kind(int code) {
    return switch (code) {
      case 0 -> Kind.OPENING;
      case 1 -> Kind.PLATEAU;
      case 2 -> Kind.CLOSING;
      default -> throw new IllegalArgumentException("no part of a curve has the code " + code);
    };
  }

  private static long zigzag(long number) {
    return (number << 1) ^ (number >> 63);
  }

  private static void write(ByteArrayOutputStream out, long number) {
    long bits = number;
    while ((bits & ~0x7FL) != 0) {
      out.write((int) ((bits & 0x7F) | 0x80));
      bits >>>= 7;
    }
    out.write((int) bits);
  }

  private static final class Reader {
    private final byte[] blob;
    private int at;

    Reader(byte[] blob) {
      this.blob = blob;
    }

    SampledLight curve(long firstTicks) {
      if (next() != FORM) {
        throw new IllegalArgumentException("not a form of curves that is known");
      }
      boolean cutOff = next() != 0;
      List<Part> parts = new ArrayList<>();
      long ticks = firstTicks;
      while (at < blob.length) {
        int what = next();
        ticks += signed();
        long period = number();
        long count = number();
        List<Integer> values = new ArrayList<>();
        int value = 0;
        for (long i = 0; i < count; i++) {
          value += (int) signed();
          values.add(value);
        }
        parts.add(new Part(kind(what >> 1), ticks, period, values, (what & 1) != 0));
      }
      return new SampledLight(parts, cutOff);
    }

    private int next() {
      return blob[at++] & 0xFF;
    }

    private long signed() {
      long bits = number();
      return (bits >>> 1) ^ -(bits & 1);
    }

    private long number() {
      long bits = 0;
      int shift = 0;
      int next;
      do {
        next = next();
        bits |= (next & 0x7FL) << shift;
        shift += 7;
      } while (next > 0x7F && shift <= 63);
      return bits;
    }
  }
}
