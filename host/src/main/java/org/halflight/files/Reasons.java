package org.halflight.files;

import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Locale;
import java.util.Map;
import org.halflight.words.Words;

/** Why the system would not read or write a file, in words for a person. */
public final class Reasons {
  /** What systems say, and the sentence for it. */
  private static final Map<String, String> KNOWN =
      Map.of(
          "no space left", "full",
          "disk quota", "full",
          "not enough space", "full",
          "file too large", "tooLarge",
          "name too long", "longName",
          "read-only", "readOnly",
          "not a directory", "noFolder",
          "is a directory", "folder",
          "permission denied", "permission",
          "operation not permitted", "permission");

  private Reasons() {}

  /** The reason, without a full stop; never the name of a class. */
  public static String of(Throwable trouble) {
    if (trouble instanceof AccessDeniedException) {
      return say("permission");
    }
    if (trouble instanceof NoSuchFileException) {
      return say("missing");
    }
    if (trouble instanceof NotDirectoryException) {
      return say("noFolder");
    }
    if (trouble instanceof CharacterCodingException) {
      return say("noText");
    }
    String said =
        trouble instanceof FileSystemException system && system.getReason() != null
            ? system.getReason()
            : trouble.getMessage();
    if (said == null || said.isBlank()) {
      return say("unknown");
    }
    String lower = said.toLowerCase(Locale.ROOT);
    return KNOWN.entrySet().stream()
        .filter(known -> lower.contains(known.getKey()))
        .map(known -> say(known.getValue()))
        .findFirst()
        .orElseGet(() -> isPlain(said) ? said.strip().replaceAll("\\s+", " ") : say("unknown"));
  }

  /** Whether it names no class of a program. */
  private static boolean isPlain(String said) {
    return !said.matches("(?s).*(Exception|Error\\b|\\b(java|org|com)\\.[a-z]+\\.).*");
  }

  private static String say(String reason) {
    return Words.say("file.reason." + reason);
  }
}
