package org.halflight.rig;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Cuts bytes into lines. What is no line comes out as text too, so that whoever keeps the lines
 * keeps the damage, and whoever reads them back judges it the same way.
 *
 * <ul>
 *   <li>A line ends with LF; a CR before it is ignored.
 *   <li>Of a line over 96 bytes only the first 96 characters come out, without the rest: {@link
 *       LineCodec#parse} finds it too long. So noise without any line end takes no memory.
 *   <li>A byte that is not printable ASCII comes out as {@code ?}, which no line of the protocol
 *       has: such a line is bad, and a file of lines stays plain text.
 * </ul>
 *
 * <p>For one thread. Start a new one with each link, as half a line of the old one is left behind.
 */
public final class LineReader {
  private static final int KEPT_MOST = LineCodec.LINE_CHARACTERS_MOST + 1;

  private final StringBuilder line = new StringBuilder(KEPT_MOST);
  private boolean carriageReturn;

  /**
   * Takes bytes as they came.
   *
   * @param bytes where they are
   * @param count how many from the start of {@code bytes} count
   * @return the lines that these bytes end, in order, without line ends
   */
  public List<String> accept(byte[] bytes, int count) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      byte next = bytes[i];
      if (next == '\n') {
        lines.add(line.toString());
        line.setLength(0);
        carriageReturn = false;
        continue;
      }
      if (carriageReturn) {
        // It was not before a line end after all, so it is a byte like any other.
        keep('?');
      }
      carriageReturn = next == '\r';
      if (!carriageReturn) {
        keep(next >= ' ' && next <= '~' ? (char) next : '?');
      }
    }
    return lines;
  }

  /** {@link #accept(byte[], int)} for a text of ASCII. */
  public List<String> accept(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return accept(bytes, bytes.length);
  }

  private void keep(char character) {
    if (line.length() < KEPT_MOST) {
      line.append(character);
    }
  }
}
