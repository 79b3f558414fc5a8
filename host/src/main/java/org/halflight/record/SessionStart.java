package org.halflight.record;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.EventLine;
import org.halflight.bench.Marks;

/**
 * What a session is known by in the record, live and from its file alike.
 *
 * @param key made from the first event of the session, so that it stays when the file is copied,
 *     renamed or gone on with
 * @param fileName name of the session file, for people; may be empty
 * @param beganAt when it began, as its first event says
 */
public record SessionStart(String key, String fileName, Optional<Instant> beganAt) {
  private static final int KEY_BYTES = 16;

  /**
   * The start of a session.
   *
   * @param first its first event; two sessions with the same first event are one to the record
   */
  public static SessionStart of(BenchEvent first, String fileName) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(EventLine.format(first).getBytes(StandardCharsets.UTF_8));
      return new SessionStart(
          HexFormat.of().formatHex(digest, 0, KEY_BYTES), fileName, beganAt(first));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** The date and time of a mark that says that the program begins; empty for all else. */
  static Optional<Instant> beganAt(BenchEvent event) {
    return Marks.beganAt(event).map(OffsetDateTime::toInstant);
  }
}
