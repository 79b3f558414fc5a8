package org.halflight.link.serial;

import java.util.Optional;
import org.halflight.files.NativeLibraries;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.LinkRefusedException.Reason;

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
    String start = "You may not use the port " + path + ", so the rig on it cannot be read. ";
    return rights.groupMayUse()
        ? start
            + "Join the group "
            + rights.group()
            + ": sudo usermod -a -G "
            + rights.group()
            + " $USER, then log in again."
        : start + "Ask whoever looks after this computer for the right to read and write it.";
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
    return new LinkRefusedException(
        reason,
        switch (reason) {
          case BUSY ->
              "Another program has the port "
                  + path
                  + " open, so the rig on it cannot be read. Close that program, or the other"
                  + " window of this one.";
          case ABSENT -> absent(path);
          case NO_PERMISSION ->
              "You may not use the port "
                  + path
                  + ", so the rig on it cannot be read. Ask whoever looks after this computer for"
                  + " the right to read and write it.";
          default ->
              "The port "
                  + path
                  + " cannot be opened (error "
                  + errorNumber
                  + " of the system), so the rig on it cannot be read. Pull its plug, put it in"
                  + " again, and see that its driver is there.";
        });
  }

  static LinkRefusedException absent(String path, Throwable cause) {
    return new LinkRefusedException(Reason.ABSENT, absent(path), cause);
  }

  private static String absent(String path) {
    return "There is no port " + path + ". Plug the rig in, or name another port.";
  }

  /** The native part of the serial library did not start. */
  static LinkRefusedException noDriver(Throwable cause) {
    return new LinkRefusedException(
        Reason.NO_DRIVER,
        "The serial port library does not start, so no rig can be read; the practice rig and"
            + " stored runs still work. It must unpack a file into the folder "
            + NativeLibraries.folder()
            + ": see that you may write there and that programs may run from there, or start with"
            + " -Dhalflight.native=ANOTHER_FOLDER.",
        cause);
  }
}
