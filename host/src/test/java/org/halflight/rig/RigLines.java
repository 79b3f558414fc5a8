package org.halflight.rig;

import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.signal.Channel;

/** Writes the lines of a rig and counts them as the rig does. */
final class RigLines {
  static final long START_TICKS = 0x12C0;

  private int sequence;
  private long bootCount = 7;
  private final String serial;

  RigLines(String serial) {
    this.serial = serial;
  }

  RigLines() {
    this("R-0001");
  }

  /** The greeting of a new start. */
  String start() {
    sequence = 0;
    bootCount++;
    return greeting(START_TICKS);
  }

  String greeting(long ticks) {
    return LineCodec.format(
        new Greeting(
            next(), 1, 16_000_000, "full", 0x7F, serial, bootCount, "power", "1.0.0", ticks));
  }

  String greetingOfProtocol(int protocol) {
    return LineCodec.format(
        new Greeting(
            next(),
            protocol,
            16_000_000,
            "full",
            0x7F,
            serial,
            bootCount,
            "power",
            "9.0",
            START_TICKS));
  }

  String edge(Channel channel, boolean high, long ticks) {
    return LineCodec.format(new RigMessage.EdgeSeen(next(), channel, high, (int) ticks));
  }

  String beat(long ticks, Channel... high) {
    int levels = 0;
    for (Channel channel : high) {
      levels |= 1 << channel.code();
    }
    return LineCodec.format(new RigMessage.Beat(next(), ticks, levels, 0x1234));
  }

  String losses(int snapshotsLost, int floods) {
    return LineCodec.format(new Losses(next(), 99, snapshotsLost, 0, floods, 0, 0, 0));
  }

  /** Counters of a rig that lost nothing and sent so many edges. */
  String edgesSent(long edges) {
    return LineCodec.format(new Losses(next(), edges, 0, 0, 0, 0, 0, 0));
  }

  String answer(int commandSequence) {
    return LineCodec.format(new RigMessage.Answer(next(), commandSequence, RigMessage.Result.DONE));
  }

  String message(RigMessage template) {
    String line = LineCodec.format(template);
    String body = line.substring(0, 2) + String.format("%04X", next()) + line.substring(6);
    body = body.substring(0, body.indexOf('#'));
    return body + "#" + String.format("%04X", Crc16.of(body));
  }

  String unknown() {
    String body = "Z " + String.format("%04X", next()) + " 00";
    return body + "#" + String.format("%04X", Crc16.of(body));
  }

  /** Lines that are sent but never come. */
  void lose(int count) {
    sequence = (sequence + count) & 0xFFFF;
  }

  void setNextSequence(int next) {
    sequence = next;
  }

  private int next() {
    int now = sequence;
    sequence = (sequence + 1) & 0xFFFF;
    return now;
  }
}
