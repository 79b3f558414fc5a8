package org.halflight.rig;

import java.util.Optional;

/**
 * Turns messages and commands into lines of the line protocol (docs/protocol.md) and back.
 *
 * <p>Without state; safe for use by several threads.
 */
public final class LineCodec {
  /** The most characters of a line without its line end. */
  public static final int LINE_CHARACTERS_MOST = 95;

  private static final int CRC_DIGITS = 4;

  /** Kind, space, four digits. */
  private static final int HEAD_CHARACTERS = 6;

  private LineCodec() {}

  /**
   * The line of a message of a rig, without line end.
   *
   * @throws IllegalArgumentException when a value does not fit its field
   */
  public static String format(RigMessage message) {
    return frame(MessageFields.body(message));
  }

  /**
   * The line of a command of a host, without line end.
   *
   * @param sequence the line counter of the host, 0 to 65535
   * @throws IllegalArgumentException when a value does not fit its field
   */
  public static String format(int sequence, RigCommand command) {
    return frame(CommandFields.body(sequence, command));
  }

  /** A body with its {@code #} and CRC behind it. */
  private static String frame(String body) {
    String line = body + '#' + String.format("%04X", Crc16.of(body));
    if (line.length() > LINE_CHARACTERS_MOST) {
      throw new IllegalArgumentException("line is longer than 96 bytes: " + line);
    }
    return line;
  }

  /**
   * Reads a line. Never throws, whatever noise the line is.
   *
   * @param line without line end
   */
  public static ParsedLine parse(String line) {
    if (line.length() > LINE_CHARACTERS_MOST) {
      return bad(ParsedLine.Reason.TOO_LONG);
    }
    int hash = line.length() - CRC_DIGITS - 1;
    if (hash < 0 || line.charAt(hash) != '#' || !areHex(line, hash + 1, line.length())) {
      return bad(ParsedLine.Reason.FORM);
    }
    String body = line.substring(0, hash);
    // Form goes before CRC, so that text which never was a line is not counted as a damaged one.
    if (!isWellFormed(body)) {
      return bad(ParsedLine.Reason.FORM);
    }
    if (Integer.parseInt(line.substring(hash + 1), 16) != Crc16.of(body)) {
      return bad(ParsedLine.Reason.CRC);
    }
    char kind = body.charAt(0);
    int sequence = Integer.parseInt(body.substring(2, HEAD_CHARACTERS), 16);
    FieldReader fields = new FieldReader(body.substring(HEAD_CHARACTERS));
    if (MessageFields.KINDS.indexOf(kind) >= 0) {
      Optional<RigMessage> message = MessageFields.read(kind, sequence, fields);
      return message.<ParsedLine>map(ParsedLine.Message::new).orElse(bad(ParsedLine.Reason.FIELDS));
    }
    if (CommandFields.KINDS.indexOf(kind) >= 0) {
      Optional<RigCommand> command = CommandFields.read(kind, fields);
      return command
          .<ParsedLine>map(found -> new ParsedLine.Command(sequence, found))
          .orElse(bad(ParsedLine.Reason.FIELDS));
    }
    return new ParsedLine.UnknownKind(kind, sequence);
  }

  private static ParsedLine bad(ParsedLine.Reason reason) {
    return new ParsedLine.Bad(reason);
  }

  /** Whether a body is KIND SPACE SEQ and then fields, each behind one space and none empty. */
  private static boolean isWellFormed(String body) {
    if (body.length() < HEAD_CHARACTERS
        || !isLetter(body.charAt(0))
        || body.charAt(1) != ' '
        || !areHex(body, 2, HEAD_CHARACTERS)) {
      return false;
    }
    boolean inField = true;
    for (int i = HEAD_CHARACTERS; i < body.length(); i++) {
      boolean space = body.charAt(i) == ' ';
      if (space ? !inField : !isWordCharacter(body.charAt(i))) {
        return false;
      }
      if (i == HEAD_CHARACTERS && !space) {
        return false;
      }
      inField = !space;
    }
    return inField;
  }

  private static boolean areHex(String text, int from, int to) {
    for (int i = from; i < to; i++) {
      if (!FieldReader.isHexDigit(text.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isLetter(char c) {
    return FieldReader.isIn(c, 'A', 'Z') || FieldReader.isIn(c, 'a', 'z');
  }

  static boolean isWordCharacter(char c) {
    return isLetter(c) || FieldReader.isIn(c, '0', '9') || c == '.' || c == '_' || c == '-';
  }
}
