package org.halflight.upload;

import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Why firmware could not be put on a board, and what to do. */
public final class UploadTrouble extends Trouble {
  private static final long serialVersionUID = 1L;

  /** What went wrong. */
  public enum Reason {
    /** The image that came with this program is not what it was. */
    DAMAGED_IMAGE,
    /** No bootloader answers at any speed. */
    NO_BOOTLOADER,
    /** The board has another chip. Nothing was written. */
    OTHER_CHIP,
    /** The bootloader answered before, and no longer does. */
    SILENT,
    /** The bootloader answered something else than it should have. */
    GARBLED,
    /** What was read back is not what was written. */
    DIFFERS,
    /** The cable was pulled meanwhile. */
    UNPLUGGED,
    /** The person stopped it. */
    STOPPED,
    /** It is written and verified, but the rig does not greet with it. */
    NO_GREETING,
    /** It is not clear which board is meant. */
    WHICH_BOARD,
    /** It is not clear which rig the board is to become. */
    WHICH_RIG,
    /** The firmware on the board says that it is another rig. Nothing was written. */
    OTHER_RIG
  }

  private final Reason reason;

  /**
   * @param parts what is to be filled in into the sentence {@code upload.trouble.} with the reason
   */
  public UploadTrouble(Reason reason, Object... parts) {
    super(Words.of("upload.trouble", reason, parts));
    this.reason = reason;
  }

  /** What went wrong. */
  public Reason reason() {
    return reason;
  }

  /** Whether the same again may well go right: noise on the line, a computer that was too slow. */
  public boolean isWorthAnotherTry() {
    return reason == Reason.SILENT || reason == Reason.GARBLED || reason == Reason.DIFFERS;
  }
}
