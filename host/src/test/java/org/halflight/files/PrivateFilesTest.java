package org.halflight.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PrivateFilesTest {
  @TempDir private Path folder;

  @Test
  void foldersAndFilesAreOfTheirOwnerAlone() throws Exception {
    Path deep = folder.resolve("a/b/c");
    PrivateFiles.makeFolder(deep);
    PrivateFiles.makeFolder(deep);
    Path file = deep.resolve("measured");
    PrivateFiles.makeIfMissing(file);
    Files.writeString(file, "kept");
    PrivateFiles.makeIfMissing(file);
    assertThat(file).content().isEqualTo("kept");
    for (Path each : new Path[] {deep.getParent().getParent(), deep.getParent(), deep}) {
      assertThat(rights(each, "rwx------")).isEqualTo("rwx------");
    }
    assertThat(rights(file, "rw-------")).isEqualTo("rw-------");
  }

  @Test
  void whatIsThereKeepsItsRights() throws Exception {
    Path shared = Files.createDirectory(folder.resolve("shared"));
    String before = rights(shared, "");
    PrivateFiles.makeFolder(shared.resolve("own"));
    assertThat(rights(shared, "")).isEqualTo(before);
  }

  /** The rights of a file; on Windows, which has none of this kind, those that are wanted. */
  private static String rights(Path file, String wanted) throws Exception {
    return PrivateFiles.hasRights(file)
        ? PosixFilePermissions.toString(Files.getPosixFilePermissions(file))
        : wanted;
  }
}
