package org.halflight.files;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * Files and folders that only their owner may read: what is measured and noted of other people's
 * cameras is nobody else's business. What is there already keeps its rights.
 *
 * <p>Where files have rights of owner, group and others (Linux, macOS), folders get {@code
 * rwx------} and files {@code rw-------} in the moment in which they are made. Windows has no such
 * rights; there they inherit those of the user's profile, which are the same in effect.
 */
public final class PrivateFiles {
  private static final FileAttribute<?>[] NONE = {};

  private PrivateFiles() {}

  /** For a folder that is made. */
  public static FileAttribute<?>[] ofFolder(Path near) {
    return attributes(near, "rwx------");
  }

  /** For a file that is made. */
  public static FileAttribute<?>[] ofFile(Path near) {
    return attributes(near, "rw-------");
  }

  /**
   * Makes a folder and those above it that are not there.
   *
   * @throws IOException when it cannot be made, or something else bears its name
   */
  public static void makeFolder(Path folder) throws IOException {
    Path whole = folder.toAbsolutePath().normalize();
    if (Files.isDirectory(whole)) {
      return;
    }
    if (whole.getParent() != null) {
      makeFolder(whole.getParent());
    }
    try {
      Files.createDirectory(whole, ofFolder(whole));
    } catch (FileAlreadyExistsException there) {
      if (!Files.isDirectory(whole)) {
        throw there;
      }
    }
  }

  /**
   * Makes the folder of a file and those above it that are not there.
   *
   * @throws IOException when it cannot be made
   */
  public static void makeFolderOf(Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      makeFolder(folder);
    }
  }

  /**
   * Makes an empty file.
   *
   * @throws FileAlreadyExistsException when there is something of that name
   * @throws IOException when it cannot be made
   */
  public static void make(Path file) throws IOException {
    Files.createFile(file, ofFile(file));
  }

  /**
   * Makes an empty file where there is none, so that whoever writes into it next makes none that
   * others may read.
   *
   * @throws IOException when it cannot be made
   */
  public static void makeIfMissing(Path file) throws IOException {
    if (!Files.exists(file)) {
      try {
        make(file);
      } catch (FileAlreadyExistsException meanwhile) {
        // Another program made it: it is there, which is what was asked for.
        return;
      }
    }
  }

  /** Whether files of this place have rights of owner, group and others. */
  public static boolean hasRights(Path near) {
    return near.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  private static FileAttribute<?>[] attributes(Path near, String rights) {
    return hasRights(near)
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : NONE;
  }
}
