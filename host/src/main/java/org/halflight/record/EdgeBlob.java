package org.halflight.record;

import java.io.ByteArrayOutputStream;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;

/**
 * Raw edges of a firing, or of the knob beside it, as bytes: exact, and small (some 4 bytes an
 * edge).
 *
 * <p>Byte 0 is the form, 1. Then for each edge in the order of the firing: the ticks since the edge
 * before (for the first edge, since the ticks that the firing is known by) as signed {@link
 * Varints}; then one byte, twice the code of the channel, plus one when the level after the edge is
 * high.
 */
final class EdgeBlob {
  private static final int FORM = 1;

  private EdgeBlob() {}

  /** Edges of the record that cannot be read. */
  static final class Unreadable extends SQLException {
    private static final long serialVersionUID = 1L;

    Unreadable(long firstTicks) {
      super(String.valueOf(firstTicks));
    }
  }

  /**
   * @param edges in order of time
   * @param firstTicks the ticks that their firing is known by
   */
  static byte[] of(List<Edge> edges, long firstTicks) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(2 + 5 * edges.size());
    out.write(FORM);
    long before = firstTicks;
    for (Edge edge : edges) {
      Varints.writeSigned(out, edge.ticks() - before);
      out.write(2 * edge.channel().code() + (edge.high() ? 1 : 0));
      before = edge.ticks();
    }
    return out.toByteArray();
  }

  /** The edges of a blob; empty where these bytes are none. */
  static Optional<List<Edge>> read(byte[] blob, long firstTicks) {
    if (blob.length < 3 || blob[0] != FORM) {
      return Optional.empty();
    }
    try {
      return read(new Varints.Reader(blob), firstTicks);
    } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static Optional<List<Edge>> read(Varints.Reader in, long firstTicks) {
    in.nextByte();
    List<Edge> edges = new ArrayList<>();
    long ticks = firstTicks;
    while (in.hasMore()) {
      ticks += in.nextSigned();
      int what = in.nextByte();
      Optional<Channel> channel = Channel.ofCode(what >> 1);
      if (channel.isEmpty()) {
        return Optional.empty();
      }
      edges.add(new Edge(channel.get(), (what & 1) != 0, ticks));
    }
    return Optional.of(edges);
  }
}
