package org.halflight.link.serial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Optional;
import java.util.Set;

/** Who may use the file of a device. */
@FunctionalInterface
interface DeviceFiles {
  /**
   * The rights on one device file.
   *
   * @param usable whether this program may read and write it
   * @param group the group that owns it
   * @param groupMayUse whether members of that group may read and write it
   */
  record Rights(boolean usable, String group, boolean groupMayUse) {}

  /** The rights on a device; empty where it has no file, or the system no such rights. */
  Optional<Rights> rights(String path);

  /** The device files of this computer. */
  static Optional<Rights> ofThisComputer(String path) {
    try {
      Path file = Path.of(path);
      PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
      if (view == null || !path.startsWith("/") || !Files.exists(file)) {
        return Optional.empty();
      }
      PosixFileAttributes attributes = view.readAttributes();
      return Optional.of(
          new Rights(
              Files.isReadable(file) && Files.isWritable(file),
              attributes.group().getName(),
              attributes
                  .permissions()
                  .containsAll(
                      Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE))));
    } catch (IOException | InvalidPathException unknown) {
      // Rights that cannot be read decide nothing: opening the port will tell.
      return Optional.empty();
    }
  }
}
