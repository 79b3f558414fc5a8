package org.halflight.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NativeLibrariesTest {
  @TempDir private Path folder;
  private Path in;

  @BeforeEach
  void make() throws Exception {
    in = folder.resolve("native");
    PrivateFiles.makeFolder(in);
  }

  @Test
  void leftoversOfDeadProcessesGoAndTheFolderOfALivingOneStays() throws Exception {
    Path dead = Files.createDirectory(in.resolve("p-dead"));
    Files.writeString(dead.resolve("lock"), "");
    Files.createDirectories(dead.resolve("jSerialComm/2.11.4"));
    Files.writeString(dead.resolve("jSerialComm/2.11.4/library"), "left");
    Path hardlyBegun = Files.createDirectory(in.resolve("p-hardly-begun"));
    Path others = Files.writeString(in.resolve("notes"), "not ours");
    Path living = Files.createDirectory(in.resolve("p-living"));
    try (FileChannel held =
        FileChannel.open(
            living.resolve("lock"), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      assertThat(held.tryLock()).isNotNull();
      NativeLibraries.removeLeftovers(in);
      assertThat(dead).doesNotExist();
      assertThat(hardlyBegun).doesNotExist();
      assertThat(others).exists();
      assertThat(living.resolve("lock")).exists();
    }
  }

  @Test
  void aLinkIsNotFollowedWhereLeftoversAreRemoved() throws Exception {
    Path precious = Files.createDirectory(folder.resolve("precious"));
    Files.writeString(precious.resolve("work"), "of years");
    Files.createSymbolicLink(in.resolve("p-link"), precious);
    NativeLibraries.removeLeftovers(in);
    assertThat(precious.resolve("work")).exists();
  }

  @Test
  void eachProcessGetsAFolderOfItsOwn() throws Exception {
    Path one = NativeLibraries.make(in);
    Path other = NativeLibraries.make(in);
    assertThat(one).isNotEqualTo(other).hasParent(in);
    if (PrivateFiles.hasRights(one)) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(one)))
          .isEqualTo("rwx------");
    }
  }

  @Test
  void aFolderIntoWhichOthersMayWriteIsRefused() throws Exception {
    if (!PrivateFiles.hasRights(in)) {
      System.out.println("NativeLibrariesTest: no rights of owner, group and others here");
      return;
    }
    for (String rights : new String[] {"rwxrwxrwx", "rwxrwx---", "rwx---rwx", "rwxr-x---"}) {
      Files.setPosixFilePermissions(in, PosixFilePermissions.fromString(rights));
      assertThatThrownBy(() -> NativeLibraries.make(in))
          .isInstanceOf(Trouble.class)
          .hasMessageContaining("Others may write into the folder " + in);
    }
    Files.setPosixFilePermissions(in, PosixFilePermissions.fromString("rwx------"));
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxrwxrwx"));
    assertThatThrownBy(() -> NativeLibraries.make(in))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining(folder.toRealPath().toString());
  }

  @Test
  void aLinkInThePlaceOfTheFolderIsRefused() throws Exception {
    Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    Path link = Files.createSymbolicLink(folder.resolve("link"), elsewhere);
    if (PrivateFiles.hasRights(in)) {
      assertThatThrownBy(() -> NativeLibraries.make(link)).isInstanceOf(Trouble.class);
    }
  }

  @Test
  void aFolderOfAnotherUserIsRefused() throws Exception {
    // Only where this user may give files away can there be such a folder.
    try {
      Files.setAttribute(in, "unix:uid", 65534);
    } catch (UnsupportedOperationException | java.io.IOException | IllegalArgumentException no) {
      System.out.println("NativeLibrariesTest: may not give a folder to another user here");
      return;
    }
    assertThatThrownBy(() -> NativeLibraries.make(in)).isInstanceOf(Trouble.class);
  }
}
