package org.halflight.desk.view;

import org.halflight.stored.StoredWords;

/** What sounds tell. Each kind can be switched off by itself. */
public enum SoundKind {
  /** A firing counts. */
  COUNTED,
  /** A firing does not count. */
  REJECTED,
  /** Something is asked. */
  ASKED,
  /** A speed or the run is done. */
  DONE,
  /** Closer, further or enough, while a speed is adjusted. */
  ADJUSTING,
  /** The shutter hangs open. */
  OPEN;

  /** As settings keep them. */
  public static final StoredWords<SoundKind> WORDS =
      StoredWords.of(
          SoundKind.class,
          kind ->
              switch (kind) {
                case COUNTED -> "counted";
                case REJECTED -> "rejected";
                case ASKED -> "asked";
                case DONE -> "done";
                case ADJUSTING -> "adjusting";
                case OPEN -> "open";
              });
}
