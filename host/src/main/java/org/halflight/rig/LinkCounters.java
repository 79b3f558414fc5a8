package org.halflight.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** Counts what {@link LinkStatistics} shows. For one thread. */
final class LinkCounters {
  private final Map<ParsedLine.Reason, Long> bad = new EnumMap<>(ParsedLine.Reason.class);
  private long lines;
  private long bytes;
  private long unknown;
  private long repeated;
  private long missing;
  private OptionalLong lastBeatTicks = OptionalLong.empty();
  private Optional<RigMessage.Losses> rigLosses = Optional.empty();

  void line(String line) {
    lines++;
    bytes += line.length() + 1;
  }

  void bad(ParsedLine.Reason reason) {
    bad.merge(reason, 1L, Long::sum);
  }

  void unknown() {
    unknown++;
  }

  void repeated() {
    repeated++;
  }

  void missing(int count) {
    missing += count;
  }

  void beat(long ticks) {
    lastBeatTicks = OptionalLong.of(ticks);
  }

  void losses(RigMessage.Losses losses) {
    rigLosses = Optional.of(losses);
  }

  LinkStatistics snapshot() {
    return new LinkStatistics(
        lines,
        bytes,
        bad.getOrDefault(ParsedLine.Reason.FORM, 0L),
        bad.getOrDefault(ParsedLine.Reason.CRC, 0L),
        bad.getOrDefault(ParsedLine.Reason.FIELDS, 0L),
        bad.getOrDefault(ParsedLine.Reason.TOO_LONG, 0L),
        unknown,
        repeated,
        missing,
        lastBeatTicks,
        rigLosses);
  }
}
