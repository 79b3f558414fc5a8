package org.halflight.bench;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * The forms that session files have had: how an event stands on a line. New files have the last
 * one; a file that was begun in another stays in it.
 */
public enum SessionForm {
  /** The bare text of the event. A changed byte in a mark is not always found. */
  FIRST("halflight-session 1") {
    @Override
    public String line(BenchEvent event) {
      return EventLine.format(event);
    }

    @Override
    public Optional<BenchEvent> event(String line) {
      return EventLine.parse(line);
    }
  },

  /** Each line ends in its CRC-32, and each mark has its running number behind the {@code M}. */
  SECOND("halflight-session 2") {
    @Override
    public String line(BenchEvent event) {
      String text = EventLine.format(event);
      if (event instanceof BenchEvent.Mark mark) {
        text = MARK + mark.number() + text.substring(1);
      }
      return text + " " + checksum(text);
    }

    @Override
    public Optional<BenchEvent> event(String line) {
      int end = line.length() - CHECKSUM_DIGITS - 1;
      if (end < 0
          || line.charAt(end) != ' '
          || !checksum(line.substring(0, end)).equals(line.substring(end + 1))) {
        return Optional.empty();
      }
      String text = line.substring(0, end);
      return text.startsWith(MARK) ? mark(text) : EventLine.parse(text);
    }
  };

  private static final String MARK = "M ";
  private static final int CHECKSUM_DIGITS = 8;
  private static final HexFormat DIGITS = HexFormat.of().withUpperCase();

  private final String heading;

  SessionForm(String heading) {
    this.heading = heading;
  }

  /** The first line of a file of this form. */
  public String heading() {
    return heading;
  }

  /** The form whose first line this is. */
  public static Optional<SessionForm> of(String heading) {
    return Arrays.stream(values()).filter(form -> form.heading.equals(heading)).findFirst();
  }

  /** The form that new files have. */
  public static SessionForm newest() {
    return SECOND;
  }

  /** Whether marks have numbers, so that they can be undone. */
  public boolean numbersMarks() {
    return this != FIRST;
  }

  /** One line for an event, without its line end. */
  public abstract String line(BenchEvent event);

  /** The event of a line; empty when the line is none, or not as it was written. */
  public abstract Optional<BenchEvent> event(String line);

  private static Optional<BenchEvent> mark(String text) {
    int end = text.indexOf(' ', MARK.length());
    if (end < 0) {
      return Optional.empty();
    }
    long number;
    try {
      number = Long.parseLong(text.substring(MARK.length(), end));
    } catch (NumberFormatException none) {
      return Optional.empty();
    }
    return number < 1
        ? Optional.empty()
        : EventLine.parse("M" + text.substring(end))
            .map(event -> ((BenchEvent.Mark) event).numbered(number));
  }

  private static String checksum(String text) {
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.ISO_8859_1));
    return DIGITS.toHexDigits((int) crc.getValue());
  }
}
