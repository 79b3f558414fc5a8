package org.halflight.record;

import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/** Something is wrong with the file of the record, or with the disk that it is on. */
public final class RecordTrouble extends Trouble {
  private static final long serialVersionUID = 1L;

  /** What is wrong; the message says it in a sentence. */
  public enum Reason {
    /** Another copy of the program has it open. */
    IN_USE,
    /** A later version of the program wrote it. */
    NEWER,
    /** It is a file of something else, or an empty one. */
    NOT_OURS,
    /** There is no such file. */
    MISSING,
    /** Its pages contradict each other, or it is no database at all. */
    DAMAGED,
    /** The file or its folder may not be written to. */
    READ_ONLY,
    /** The disk is full. */
    FULL,
    /** A backup or its place. */
    BACKUP,
    /** It was closed. */
    CLOSED,
    /** Anything else that the disk or the system says. */
    FAILED
  }

  private final Reason reason;

  private RecordTrouble(Reason reason, String sentence, @Nullable Throwable cause) {
    super(sentence, cause);
    this.reason = reason;
  }

  static RecordTrouble of(Reason reason, String key, Object... parts) {
    return new RecordTrouble(reason, Words.say(key, parts), null);
  }

  RecordTrouble because(Throwable cause) {
    return new RecordTrouble(reason, getMessage(), cause);
  }

  /** What is wrong. */
  public Reason reason() {
    return reason;
  }
}
