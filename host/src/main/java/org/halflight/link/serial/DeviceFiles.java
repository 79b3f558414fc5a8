package org.halflight.link.serial;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Who may use the file of a device. */
@FunctionalInterface
interface DeviceFiles {
  /**
   * The rights on one device file.
   *
   * @param usable whether this program may read and write it
   * @param group the group that owns it
   * @param groupMayUse whether members of that group may read and write it
   * @param joined whether this person is in that group by the system's list, and so is from the
   *     next login on
   */
  record Rights(boolean usable, String group, boolean groupMayUse, boolean joined) {}

  /** The groups of Linux and other Unix systems, with their members. */
  Path LIST = Path.of("/etc/group");

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
      String group = attributes.group().getName();
      return Optional.of(
          new Rights(
              Files.isReadable(file) && Files.isWritable(file),
              group,
              attributes
                  .permissions()
                  .containsAll(
                      Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE)),
              isListed(LIST, group, System.getProperty("user.name", ""))));
    } catch (IOException | InvalidPathException unknown) {
      // Rights that cannot be read decide nothing: opening the port will tell.
      return Optional.empty();
    }
  }

  /** Whether a list of groups has a person in a group: {@code dialout:x:20:name,other}. */
  static boolean isListed(Path list, String group, String person) {
    try (Stream<String> lines = Files.lines(list)) {
      return lines
          .map(line -> line.split(":", -1))
          .anyMatch(
              parts ->
                  parts.length == 4
                      && parts[0].equals(group)
                      && List.of(parts[3].split(",", -1)).contains(person));
    } catch (IOException | UncheckedIOException unreadable) {
      return false;
    }
  }
}
