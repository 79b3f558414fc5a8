package org.halflight.campaign;

/** Writes the lines of an invented board, as docs/protocol.md has them. */
final class BoardLines {
  private final String serial;
  private long bootCount;
  private int sequence;
  private long edges;

  BoardLines(String serial, long bootCount) {
    this.serial = serial;
    this.bootCount = bootCount;
  }

  String serial() {
    return serial;
  }

  long bootCount() {
    return bootCount;
  }

  /** The board starts anew and greets. */
  String startsAnew(long ticks) {
    bootCount++;
    sequence = 0;
    edges = 0;
    return greeting(ticks);
  }

  String greeting(long ticks) {
    return line(
        'H',
        "01 00F42400 full 7F "
            + serial
            + ' '
            + Hex.of(8, bootCount)
            + " power 1.0.0 "
            + Hex.of(12, ticks));
  }

  String edge(TrueEdge edge) {
    edges++;
    return line('E', edge.channel() + (edge.high() ? " 1 " : " 0 ") + Hex.of(8, edge.ticks()));
  }

  String beat(long ticks, int levels, int light) {
    return line('B', Hex.of(12, ticks) + ' ' + Hex.of(2, levels) + ' ' + Hex.of(4, light));
  }

  /** The counters, with nothing lost. */
  String counters() {
    return counters(0);
  }

  String counters(int snapshotsLost) {
    return line(
        'L', Hex.of(8, edges) + ' ' + Hex.of(4, snapshotsLost) + " 0000 0000 0000 0000 0000");
  }

  /** The head of a part of a light curve. */
  String head(int curve, int part, long first, int period, int count) {
    return line(
        'C',
        Hex.of(2, curve)
            + ' '
            + part
            + ' '
            + Hex.of(8, first)
            + ' '
            + Hex.of(8, period)
            + ' '
            + Hex.of(4, count)
            + " 00");
  }

  private String line(char kind, String fields) {
    String body = kind + " " + Hex.of(4, sequence) + ' ' + fields;
    sequence = sequence + 1 & 0xFFFF;
    return Crc.sealed(body);
  }
}
