package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.job.Camera;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
  @TempDir private Path folder;
  private Path file;
  private Path backup;
  private WorkshopRecord record;

  @BeforeEach
  void open() {
    file = folder.resolve("record.sqlite");
    backup = folder.resolve("elsewhere/backup.sqlite");
    record = RecordFixture.open(file);
    record.importSession(RecordFixture.everything("R-1"), "a.session");
  }

  @AfterEach
  void close() {
    record.close();
  }

  @Test
  void aBackupIsAWholeRecord() {
    record.backUp(backup);
    record.importSession(RecordFixture.everything("R-2"), "b.session");
    try (WorkshopRecord copy = RecordFixture.open(backup)) {
      assertThat(copy.integrityFaults()).isEmpty();
      CameraLine line = copy.cameras().get(0);
      assertThat(copy.history(line.camera().id()).orElseThrow().runs()).hasSize(2);
    }
    assertThat(folder.resolve("elsewhere/backup.sqlite.part")).doesNotExist();
  }

  @Test
  void aBackupMayBeMadeInTheMiddleOfAWrite() {
    // The listener is called while the writing transaction is open.
    record.close();
    List<CommitListener.Point> seen = new java.util.ArrayList<>();
    WorkshopRecord[] self = new WorkshopRecord[1];
    self[0] =
        WorkshopRecord.open(
            file,
            RecordFixture.CLOCK,
            point -> {
              if (point == CommitListener.Point.WRITTEN && seen.isEmpty()) {
                seen.add(point);
                self[0].backUp(backup);
              }
            });
    record = self[0];
    record.keep(Camera.of("under way", ShutterKind.LEAF, BenchScript.DIAL));
    assertThat(seen).hasSize(1);
    assertThat(record.cameras()).hasSize(2);
    try (WorkshopRecord copy = RecordFixture.open(backup)) {
      assertThat(copy.cameras()).hasSize(1);
    }
  }

  @Test
  void restoringGoesOnWithTheBackupAndKeepsWhatItReplaced() {
    record.backUp(backup);
    record.keep(Camera.of("later", ShutterKind.LEAF, BenchScript.DIAL));
    Path replaced = record.restore(backup);
    assertThat(record.cameras()).hasSize(1);
    assertThat(backup).exists();
    record.keep(Camera.of("after", ShutterKind.LEAF, BenchScript.DIAL));
    try (WorkshopRecord old = RecordFixture.open(replaced)) {
      assertThat(old.cameras()).extracting(line -> line.camera().label()).contains("later");
    }
    Path again = record.restore(backup);
    assertThat(again).isNotEqualTo(replaced);
    record.close();
    record = RecordFixture.open(file);
    assertThat(record.cameras()).hasSize(1);
    assertThat(record.integrityFaults()).isEmpty();
  }

  @Test
  void aBackupIsNeverWrittenOver() throws IOException {
    Files.createDirectories(backup.getParent());
    Files.writeString(backup, "mine");
    assertThatThrownBy(() -> record.backUp(backup))
        .isInstanceOf(RecordTrouble.class)
        .hasMessageContaining("already exists")
        .hasMessageContaining("another name");
    assertThat(Files.readString(backup)).isEqualTo("mine");
  }

  @Test
  void aBackupThatCannotBeWrittenLeavesTheRecordAlone() throws IOException {
    Path notAFolder = Files.writeString(folder.resolve("file"), "");
    assertThatThrownBy(() -> record.backUp(notAFolder.resolve("backup.sqlite")))
        .isInstanceOf(RecordTrouble.class)
        .hasMessageContaining("could not be written");
    assertThat(record.cameras()).hasSize(1);
  }

  @Test
  void whatIsNoBackupIsNotPutInPlace() throws IOException {
    Path text =
        Files.writeString(folder.resolve("notes.txt"), "no database, but some text".repeat(99));
    assertThatThrownBy(() -> record.restore(text))
        .isInstanceOf(RecordTrouble.class)
        .extracting(e -> ((RecordTrouble) e).reason())
        .isEqualTo(RecordTrouble.Reason.DAMAGED);
    assertThatThrownBy(() -> record.restore(folder.resolve("nothing.sqlite")))
        .isInstanceOf(RecordTrouble.class)
        .hasMessageContaining("There is no backup");
    assertThat(folder.resolve("nothing.sqlite")).doesNotExist();
    Path empty = Files.createFile(folder.resolve("empty.sqlite"));
    assertThatThrownBy(() -> record.restore(empty)).isInstanceOf(RecordTrouble.class);
    assertThat(record.cameras()).hasSize(1);
  }
}
