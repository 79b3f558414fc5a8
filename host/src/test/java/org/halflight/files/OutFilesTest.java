package org.halflight.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutFilesTest {
  private static final String OLD_TABLE = "firing,rig_serial\r\n1,R-0001\r\n";
  private static final byte[] NEW = "marked_speed,mean_ms\r\n".getBytes(StandardCharsets.UTF_8);

  @TempDir private Path folder;

  @Test
  void aNewFileComesWholeAndForThisUserOnly() throws Exception {
    Path file = folder.resolve("new.csv");
    OutFiles.neverReplacing().file(file, FileKind.TABLE).write(NEW);
    assertThat(file).hasBinaryContent(NEW);
    assertThat(Files.getPosixFilePermissions(file))
        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
    assertNothingLeftBeside(1);
  }

  @Test
  void aFileOfTheSameKindIsReplacedOnlyWhereThePersonSaidSo() throws Exception {
    Path file = Files.writeString(folder.resolve("old.csv"), OLD_TABLE);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
    refused(OutFiles.neverReplacing(), file, FileKind.TABLE, "already exists");
    assertThat(file).hasContent(OLD_TABLE);
    OutFiles.of(true, List.of()).file(file, FileKind.TABLE).write(NEW);
    assertThat(file).hasBinaryContent(NEW);
    // Who might read the old one may read the new one.
    assertThat(Files.getPosixFilePermissions(file))
        .isEqualTo(PosixFilePermissions.fromString("rw-r-----"));
    assertNothingLeftBeside(1);
  }

  @ParameterizedTest
  @CsvSource({
    "SQLite format 3\0abc,a record",
    "halflight-session 1,a session file",
    "halflight-session 77,a session file",
    "halflight rig profile 1,a rig profile",
    "My shopping list,a file of another kind",
    "%PDF-1.6,a PDF page"
  })
  void whatIsOfAnotherKindStaysEvenByForce(String begins, String kind) throws Exception {
    // Whatever it is called.
    for (String name : List.of("some.csv", "record.sqlite", "x.session", "plain")) {
      Path file = Files.writeString(folder.resolve(name), begins.replace("\\0", "\0") + "\nmore\n");
      byte[] before = Files.readAllBytes(file);
      refused(OutFiles.of(true, List.of()), file, FileKind.TABLE, kind);
      refused(OutFiles.of(true, List.of()), file, FileKind.PICTURE, kind);
      assertThat(file).hasBinaryContent(before);
    }
  }

  @Test
  void aTableIsNoPictureAndAnEmptyRecordIsARecord() throws Exception {
    Path table = Files.writeString(folder.resolve("t.csv"), OLD_TABLE);
    refused(OutFiles.of(true, List.of()), table, FileKind.PICTURE, "is a table");
    Path empty = Files.createFile(folder.resolve("record.sqlite"));
    refused(OutFiles.of(true, List.of()), empty, FileKind.TABLE, "is a record");
    assertThat(empty).isEmptyFile();
  }

  @Test
  void onlyATableOfTheSameSortIsReplacedAndRawEdgesNever() throws Exception {
    OutFiles files = OutFiles.of(true, List.of());
    Path firings = Files.writeString(folder.resolve("f.csv"), OLD_TABLE);
    assertThatThrownBy(() -> files.table(firings, List.of("source", "phase", "marked_speed")))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("a different table");
    // One that an earlier version wrote, with fewer columns, and one for a spreadsheet.
    Path quoted =
        Files.writeString(folder.resolve("q.csv"), "\"firing\",\"rig_serial\",\"more\"\r\n");
    files.table(quoted, List.of("firing", "rig_serial")).write(NEW);
    assertThat(quoted).hasBinaryContent(NEW);
    String raw = "rig,kind,firmware,ticks_per_second,dark_counts\r\n";
    Path edges = Files.writeString(folder.resolve("edges.csv"), raw);
    refused(files, edges, FileKind.EDGES, "raw edges");
    refused(files, edges, FileKind.TABLE, "raw edges");
    assertThat(edges).hasContent(raw.strip());
    assertThat(firings).hasContent(OLD_TABLE);
  }

  @ParameterizedTest
  @CsvSource({
    "a.session",
    "b.sqlite",
    "c.SQLITE",
    "d.profile",
    "record.sqlite-wal",
    "record.sqlite.lock",
    "x.session.kept"
  })
  void namesThatAreKeptForOtherFilesAreNotTaken(String name) {
    refused(OutFiles.of(true, List.of()), folder.resolve(name), FileKind.TABLE, "is the name of");
    assertThat(folder.resolve(name)).doesNotExist();
  }

  @Test
  void whatTheCommandReadsIsNotWrittenUnderAnyName() throws Exception {
    Path input = Files.writeString(folder.resolve("edges.csv"), OLD_TABLE);
    Path other = Files.createLink(folder.resolve("same.csv"), input);
    Path link = Files.createSymbolicLink(folder.resolve("link.csv"), input);
    Path round = folder.resolve("..").resolve(folder.getFileName()).resolve("edges.csv");
    for (Path name : List.of(input, other, link, round)) {
      refused(OutFiles.of(true, List.of(input)), name, FileKind.TABLE, "this command reads");
    }
    assertThat(input).hasContent(OLD_TABLE);
    // A file that the command is about to make.
    Path later = folder.resolve("later");
    refused(OutFiles.of(true, List.of(later)), later, FileKind.TABLE, "this command reads");
  }

  @Test
  void oneFileIsNotNamedTwice() throws Exception {
    OutFiles files = OutFiles.of(true, List.of());
    Path one = folder.resolve("one.csv");
    files.file(one, FileKind.TABLE);
    refused(files, one, FileKind.TABLE, "named twice");
    refused(files, folder.resolve(".").resolve("one.csv"), FileKind.PICTURE, "named twice");
    Path old = Files.writeString(folder.resolve("old.csv"), OLD_TABLE);
    Path same = Files.createLink(folder.resolve("same.csv"), old);
    files.file(old, FileKind.TABLE).write(NEW);
    // Replaced meanwhile, so that these are two files now.
    files.file(same, FileKind.TABLE).write(NEW);
    assertThat(same).hasBinaryContent(NEW);
  }

  @Test
  void aLinkIsFollowedAndStays() throws Exception {
    Path file = Files.writeString(folder.resolve("old.csv"), OLD_TABLE);
    Path link = Files.createSymbolicLink(folder.resolve("link.csv"), file);
    OutFiles.of(true, List.of()).file(link, FileKind.TABLE).write(NEW);
    assertThat(link).isSymbolicLink();
    assertThat(file).hasBinaryContent(NEW);
    Path dead = Files.createSymbolicLink(folder.resolve("dead.csv"), folder.resolve("gone"));
    refused(OutFiles.of(true, List.of()), dead, FileKind.TABLE, "does not exist");
  }

  @Test
  void foldersAndDevicesAndMissingFoldersAreSaid() {
    OutFiles files = OutFiles.of(true, List.of());
    refused(files, folder, FileKind.TABLE, "is a folder");
    refused(files, folder.resolve("no").resolve("x.csv"), FileKind.TABLE, "There is no folder");
    refused(files, Path.of("/dev/null"), FileKind.TABLE, "not an ordinary file");
    refused(files, folder.resolve("x".repeat(300) + ".csv"), FileKind.TABLE, "too long", true);
  }

  @Test
  void aFileThatCameMeanwhileIsNotReplaced() throws Exception {
    Path file = folder.resolve("new.csv");
    OutFile out = OutFiles.neverReplacing().file(file, FileKind.TABLE);
    Files.writeString(file, OLD_TABLE);
    assertThatThrownBy(() -> out.write(NEW))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("already exists");
    assertThat(file).hasContent(OLD_TABLE);
    OutFile forced = OutFiles.of(true, List.of()).file(folder.resolve("other.csv"), FileKind.TABLE);
    Files.writeString(folder.resolve("other.csv"), "halflight-session 1\n");
    assertThatThrownBy(() -> forced.write(NEW))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("a session file");
    assertThat(folder.resolve("other.csv")).hasContent("halflight-session 1\n");
  }

  @Test
  void whereWritingFailsTheOldFileStaysAndNothingElse() throws Exception {
    Path file = Files.writeString(folder.resolve("old.csv"), OLD_TABLE);
    OutFile out = OutFiles.of(true, List.of()).file(file, FileKind.TABLE);
    assertThatThrownBy(
            () ->
                out.<RuntimeException>write(
                    beside -> {
                      Files.writeString(beside, "half");
                      throw new IOException("No space left on device");
                    }))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("the disk is full");
    assertThat(file).hasContent(OLD_TABLE);
    assertNothingLeftBeside(1);
  }

  @Test
  void freeNamesAreCounted() throws Exception {
    Path page = folder.resolve("page.pdf");
    for (String name : List.of("page.pdf", "page-2.pdf", "page-3.pdf")) {
      OutFile file = OutFiles.neverReplacing().free(page, FileKind.PAGE);
      assertThat(file.path()).isEqualTo(folder.resolve(name));
      file.write(name.getBytes(StandardCharsets.UTF_8));
    }
    assertThat(page).hasContent("page.pdf");
  }

  private void assertNothingLeftBeside(int files) throws IOException {
    try (var there = Files.list(folder)) {
      assertThat(there).hasSize(files);
    }
  }

  private static void refused(OutFiles files, Path path, FileKind kind, String words) {
    refused(files, path, kind, words, false);
  }

  private static void refused(
      OutFiles files, Path path, FileKind kind, String words, boolean atWriting) {
    assertThatThrownBy(
            () -> {
              OutFile file = files.file(path, kind);
              if (atWriting) {
                file.write(NEW);
              }
            })
        .isInstanceOf(Trouble.class)
        .hasMessageContaining(words);
  }
}
