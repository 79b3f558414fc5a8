package org.halflight.link.serial;

import java.util.Optional;
import org.halflight.files.NativeLibraries;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.LinkRefusedException.Reason;
import org.halflight.words.Words;

/** The sentences for ports that cannot be opened. */
final class Refusals {
  // Error numbers of Linux, macOS and the BSDs.
  private static final int ENOENT = 2;
  private static final int ENXIO = 6;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int ENODEV = 19;

  /** The lock of another program, on Linux; the library locks what it opens. */
  private static final int EAGAIN_LINUX = 11;

  private static final int EAGAIN_BSD = 35;

  // Error numbers of Windows.
  private static final int ERROR_FILE_NOT_FOUND = 2;
  private static final int ERROR_ACCESS_DENIED = 5;

  private Refusals() {}

  /** The refusal that the rights on a device file foretell, if any. */
  static Optional<LinkRefusedException> foretold(String path, Optional<DeviceFiles.Rights> rights) {
    return rights
        .filter(found -> !found.usable())
        .map(found -> new LinkRefusedException(Reason.NO_PERMISSION, sentence(path, found)));
  }

  private static String sentence(String path, DeviceFiles.Rights rights) {
    if (!rights.groupMayUse()) {
      return Words.say("link.refused.no-permission", path);
    }
    return Words.say(
        rights.joined() ? "link.refused.joined" : "link.refused.group", path, rights.group());
  }

  /**
   * The refusal that an error number of Linux, macOS or a BSD means.
   *
   * @param missing whether there is no file of that path
   */
  static LinkRefusedException ofUnix(String path, int errorNumber, boolean missing) {
    Reason reason =
        switch (errorNumber) {
          case EBUSY, EAGAIN_LINUX, EAGAIN_BSD -> Reason.BUSY;
          case EACCES -> Reason.NO_PERMISSION;
          // What the library leaves for a port that this program has open already (measured with
          // 2.11.4 on Linux); a file that is there cannot be the one that is not found.
          case ENOENT -> missing ? Reason.ABSENT : Reason.BUSY;
          case ENXIO, ENODEV -> Reason.ABSENT;
          default -> Reason.FAILED;
        };
    return refusal(path, errorNumber, reason);
  }

  /** The refusal that an error number of Windows means. */
  static LinkRefusedException ofWindows(String path, int errorNumber) {
    Reason reason =
        switch (errorNumber) {
          case ERROR_ACCESS_DENIED -> Reason.BUSY;
          case ERROR_FILE_NOT_FOUND -> Reason.ABSENT;
          default -> Reason.FAILED;
        };
    return refusal(path, errorNumber, reason);
  }

  private static LinkRefusedException refusal(String path, int errorNumber, Reason reason) {
    return new LinkRefusedException(reason, Words.of("link.refused", reason, path, errorNumber));
  }

  static LinkRefusedException absent(String path, Throwable cause) {
    return new LinkRefusedException(Reason.ABSENT, absent(path), cause);
  }

  private static String absent(String path) {
    return Words.of("link.refused", Reason.ABSENT, path);
  }

  /** The native part of the serial library did not start. */
  static LinkRefusedException noDriver(Throwable cause) {
    return new LinkRefusedException(
        Reason.NO_DRIVER,
        Words.of("link.refused", Reason.NO_DRIVER, NativeLibraries.folder()),
        cause);
  }
}
