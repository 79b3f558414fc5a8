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
    return frame(MessageFields.FORMS.body(message.sequence(), message));
  }

  /**
   * The line of a command of a host, without line end.
   *
   * @param sequence the line counter of the host, 0 to 65535
   * @throws IllegalArgumentException when a value does not fit its field
   */
  public static String format(int sequence, RigCommand command) {
    return frame(CommandFields.FORMS.body(sequence, command));
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
    if (hash < 0 || line.charAt(hash) != '#' || !areHex(line.substring(hash + 1))) {
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
    String fields = body.substring(HEAD_CHARACTERS);
    if (MessageFields.FORMS.has(kind)) {
      Optional<RigMessage> message = MessageFields.FORMS.read(kind, sequence, fields);
      return message.<ParsedLine>map(ParsedLine.Message::new).orElse(bad(ParsedLine.Reason.FIELDS));
    }
    if (CommandFields.FORMS.has(kind)) {
      Optional<RigCommand> command = CommandFields.FORMS.read(kind, sequence, fields);
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
        || !areHex(body.substring(2, HEAD_CHARACTERS))) {
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

  static boolean areHex(String text) {
    return text.chars().allMatch(c -> isIn(c, '0', '9') || isIn(c, 'A', 'F') || isIn(c, 'a', 'f'));
  }

  private static boolean isLetter(int c) {
    return isIn(c, 'A', 'Z') || isIn(c, 'a', 'z');
  }

  static boolean isWordCharacter(int c) {
    return isLetter(c) || isIn(c, '0', '9') || c == '.' || c == '_' || c == '-';
  }

  private static boolean isIn(int c, char first, char last) {
    return c >= first && c <= last;
  }
}
