package org.halflight.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FaultLogTest {
  @TempDir private Path folder;

  @Test
  void oneSentenceNamesTheFileWithTheDetails() throws Exception {
    FaultLog log = new FaultLog(folder.resolve("data"), () -> Instant.EPOCH);
    String said = log.goesOn(new IllegalStateException("the odd thing"), "at the bench");
    Path file = folder.resolve("data").resolve(FaultLog.NAME);
    assertThat(said).contains("at the bench").contains(file.toString()).doesNotContain("Exception");
    assertThat(said.lines()).hasSize(1);
    assertThat(Files.readString(file))
        .contains("1970-01-01T00:00:00Z at the bench")
        .contains("java.lang.IllegalStateException: the odd thing")
        .contains("at org.halflight.files.FaultLogTest");
    assertThat(Files.getPosixFilePermissions(file))
        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
  }

  @Test
  void itStaysSmallHoweverManyFaultsThereAre() throws Exception {
    FaultLog log = new FaultLog(folder, () -> Instant.EPOCH);
    StackOverflowError deep = new StackOverflowError();
    deep.setStackTrace(
        java.util.Collections.nCopies(
                5000, new StackTraceElement("org.halflight.Some", "method", "Some.java", 1))
            .toArray(StackTraceElement[]::new));
    for (int i = 0; i < 100; i++) {
      log.goesOn(deep, "at the bench");
    }
    long bytes = 0;
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        bytes += Files.size(file);
      }
    }
    assertThat(bytes).isBetween((long) FaultLog.MOST_BYTES, 2L * FaultLog.MOST_BYTES + 40_000);
  }

  @Test
  void whereItCannotBeWrittenTheSentenceComesAllTheSame() throws Exception {
    Path file = Files.createFile(folder.resolve("data"));
    String said =
        new FaultLog(file, () -> Instant.EPOCH).ends(new OutOfMemoryError(), "while starting");
    assertThat(said).contains("while starting").contains("could not be written");
  }
}
