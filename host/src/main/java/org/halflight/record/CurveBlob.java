package org.halflight.record;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;

/**
 * A raw light curve as bytes: exact, and about one byte a reading.
 *
 * <p>Byte 0 is the form, 1; byte 1 is 1 where the curve was cut off, plus 16 times the code of its
 * sensor, 0 for the centre. Then for each part in order one byte, twice the code of the part in the
 * line protocol, plus one after a gap, and as {@link Varints}: ticks of its first value since those
 * of the part before (for the first part, since the ticks that the firing is known by), signed; its
 * period; how many values follow; and each value less the one before (the first less 0), signed.
 */
final class CurveBlob {
  private static final int FORM = 1;
  private static final int CUT_OFF = 1;
  private static final int SENSOR = 16;

  private CurveBlob() {}

  static byte[] of(SampledLight curve, long firstTicks) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(1024);
    out.write(FORM);
    out.write(curve.sensor().code() * SENSOR + (curve.cutOff() ? CUT_OFF : 0));
    long before = firstTicks;
    for (Part part : curve.parts()) {
      out.write(2 * code(part.kind()) + (part.gapBefore() ? 1 : 0));
      Varints.writeSigned(out, part.firstTicks() - before);
      Varints.write(out, part.periodTicks());
      Varints.write(out, part.values().size());
      int last = 0;
      for (int value : part.values()) {
        Varints.writeSigned(out, value - last);
        last = value;
      }
      before = part.firstTicks();
    }
    return out.toByteArray();
  }

  /** The curve of a blob; empty where these bytes are none. */
  static Optional<SampledLight> read(byte[] blob, long firstTicks) {
    try {
      return Optional.of(read(new Varints.Reader(blob), firstTicks));
    } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static int code(Kind kind) {
    return switch (kind) {
      case OPENING -> 0;
      case PLATEAU -> 1;
      case CLOSING -> 2;
      case TAIL -> 3;
    };
  }

  private static Kind kind(int code) {
    return switch (code) {
      case 0 -> Kind.OPENING;
      case 1 -> Kind.PLATEAU;
      case 2 -> Kind.CLOSING;
      case 3 -> Kind.TAIL;
      default -> throw new IllegalArgumentException("no part of a curve has the code " + code);
    };
  }

  private static SampledLight read(Varints.Reader in, long firstTicks) {
    if (in.nextByte() != FORM) {
      throw new IllegalArgumentException("not a form of curves that is known");
    }
    int about = in.nextByte();
    List<Part> parts = new ArrayList<>();
    long ticks = firstTicks;
    while (in.hasMore()) {
      int what = in.nextByte();
      ticks += in.nextSigned();
      long period = in.next();
      long count = in.next();
      List<Integer> values = new ArrayList<>();
      int value = 0;
      for (long i = 0; i < count; i++) {
        value += (int) in.nextSigned();
        values.add(value);
      }
      parts.add(new Part(kind(what >> 1), ticks, period, values, (what & 1) != 0));
    }
    Channel sensor =
        Channel.ofCode(about / SENSOR)
            .filter(Channel::isLight)
            .orElseThrow(() -> new IllegalArgumentException("no sensor has a code of " + about));
    return new SampledLight(sensor, parts, about % SENSOR == CUT_OFF);
  }
}
