package org.halflight.validation.invented;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;

/** A session as the lines of a file, after docs/protocol.md and docs/file-formats.md. */
public final class SessionText {
  /** Serial number of every invented rig. */
  public static final String RIG = "R-0042";

  /** Version of its firmware. */
  public static final String FIRMWARE = "1.0.0";

  /** The day of every invented session. */
  public static final String DAY = "2026-11-30";

  private static final long NANOS_LATE = 3_000_000;
  private static final int VALUES_OF_A_WINDOW = 32;
  private static final int VALUES_OF_A_PLATEAU = 16;

  private final List<String> lines = new ArrayList<>();
  private int sequence;
  private int marks;
  private int edges;
  private int curves;
  private long nanos;

  private SessionText() {}

  /**
   * A mark.
   *
   * @param kind of it
   * @param values by their names
   */
  public record Mark(String kind, Map<String, String> values) {}

  /** The marks before the first firing, in order. */
  public static List<Mark> marks(InventedSession session) {
    List<Mark> marks = new ArrayList<>();
    session
        .profile()
        .ifPresent(
            text ->
                marks.add(
                    mark("profile", "is", "in-use", "on", DAY, "most-days", "90", "text", text)));
    marks.add(light(session));
    marks.add(run(session.speed(), session.trueSeconds().size()));
    for (int i = 0; i < session.panelCounts().size(); i++) {
      boolean inPlace = i == 0 || i + 1 == session.panelCounts().size();
      marks.add(
          mark(
              "light-read",
              "of",
              inPlace ? "panel-in-place" : "panel-moved",
              "counts",
              String.valueOf(session.panelCounts().get(i)),
              "uncertainty",
              String.valueOf(InventedSession.PANEL_UNCERTAINTY_COUNTS),
              "blocks",
              "64",
              "ticks",
              String.valueOf(1_100_000L * (i + 1))));
    }
    return marks;
  }

  /** The mark that a run at one speed begins. */
  public static Mark run(String speed, int firings) {
    return mark(
        "run",
        "camera",
        "invented",
        "phase",
        "as-left",
        "dial",
        "leaf",
        "speeds",
        speed,
        "reference",
        "exact",
        "firings",
        String.valueOf(firings));
  }

  /** The mark that the light was set. */
  public static Mark light(InventedSession session) {
    return mark(
        "light",
        "dark",
        String.valueOf(session.darkCounts()),
        "full",
        String.valueOf(session.fullCounts()),
        "low",
        String.valueOf(session.lowCounts()),
        "high",
        String.valueOf(session.highCounts()));
  }

  /** The whole file. */
  public static String of(InventedSession session, String name) {
    SessionText text = new SessionText();
    text.lines.add("halflight-session 2");
    text.add(mark("begins", "version", "invented", "at", DAY + "T12:00Z", "session", name));
    text.received(
        "H", "01 00F42400 full 7F " + RIG + " 00000007 power " + FIRMWARE + " " + hex(12, 0));
    text.received("B", hex(12, 0) + " 00 " + hex(4, 0));
    marks(session).forEach(text::add);
    session.told().forEach(told -> text.add(session, told));
    text.add(mark("ends"));
    return String.join("\n", text.lines) + "\n";
  }

  private static Mark mark(String kind, String... namesAndValues) {
    Map<String, String> values = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      values.put(namesAndValues[i], namesAndValues[i + 1]);
    }
    return new Mark(kind, values);
  }

  private void add(InventedSession session, Told told) {
    nanos = Math.max(nanos, Math.round(told.ticks() * 62.5) + NANOS_LATE);
    if (told instanceof Told.Edge edge) {
      received("E", edge.channel() + " " + (edge.light() ? 1 : 0) + " " + hex(8, edge.ticks()));
      edges++;
    } else if (told instanceof Told.Beat beat) {
      received(
          "B", hex(12, beat.ticks()) + " " + hex(2, beat.levels()) + " " + hex(4, beat.sum16()));
      received("L", hex(8, edges) + " 0000 0000 0000 0000 0000 0000");
    } else if (told instanceof Told.Curve curve) {
      curve(curve);
    } else if (told instanceof Told.LightAgain) {
      add(light(session));
    }
  }

  private void curve(Told.Curve curve) {
    String number = hex(2, curves++);
    for (int i = 0; i < curve.parts().size(); i++) {
      Told.Part part = curve.parts().get(i);
      boolean last = i + 1 == curve.parts().size();
      received(
          "C",
          number
              + " "
              + part.kind()
              + " "
              + hex(8, part.firstTicks())
              + " "
              + hex(8, part.periodTicks())
              + " "
              + hex(4, part.values().size())
              + (last ? " 01" : " 00"));
      boolean plateau = part.kind() == 1;
      int aLine = plateau ? VALUES_OF_A_PLATEAU : VALUES_OF_A_WINDOW;
      for (int from = 0; from < part.values().size(); from += aLine) {
        StringBuilder values = new StringBuilder();
        for (int value :
            part.values().subList(from, Math.min(part.values().size(), from + aLine))) {
          values.append(hex(plateau ? 4 : 2, value));
        }
        received("D", number + " " + hex(4, from) + " " + values);
      }
    }
  }

  /** A line from the rig, with its number and its check. */
  private void received(String kind, String fields) {
    String text = kind + " " + hex(4, sequence++) + " " + fields;
    summed("R " + nanos + " " + text + "#" + hex(4, crc16(text)));
  }

  private void add(Mark mark) {
    StringBuilder text = new StringBuilder("M " + ++marks + " " + nanos + " " + mark.kind());
    mark.values()
        .forEach((name, value) -> text.append(' ').append(name).append('=').append(safe(value)));
    summed(text.toString());
  }

  private void summed(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.ISO_8859_1));
    lines.add(text + " " + hex(8, sum.getValue()));
  }

  private static String safe(String value) {
    StringBuilder safe = new StringBuilder();
    for (byte each : value.getBytes(StandardCharsets.UTF_8)) {
      boolean plain = each > ' ' && each < 0x7F && each != '%' && each != '=';
      safe.append(plain ? String.valueOf((char) each) : "%" + hex(2, each & 0xFF));
    }
    return safe.toString();
  }

  /** CRC-16/IBM-3740: polynomial 1021 from FFFF, nothing reflected. */
  static int crc16(String text) {
    int crc = 0xFFFF;
    for (byte each : text.getBytes(StandardCharsets.US_ASCII)) {
      crc ^= (each & 0xFF) << 8;
      for (int i = 0; i < 8; i++) {
        crc = (crc & 0x8000) != 0 ? (crc << 1) ^ 0x1021 : crc << 1;
      }
      crc &= 0xFFFF;
    }
    return crc;
  }

  /** The low digits of a number, in capitals. */
  private static String hex(int digits, long value) {
    StringBuilder text = new StringBuilder();
    for (int i = digits - 1; i >= 0; i--) {
      text.append("0123456789ABCDEF".charAt((int) ((value >>> (4 * i)) & 0xF)));
    }
    return text.toString();
  }
}
