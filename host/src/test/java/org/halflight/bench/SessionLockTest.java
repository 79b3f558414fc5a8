package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.halflight.record.ChildJvm;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One program at a time writes a session, whoever reads it meanwhile. */
@Tag("kill")
class SessionLockTest {
  private static final BenchEvent.Mark MARK = new BenchEvent.Mark(1, "next", Map.of());

  @TempDir private Path folder;
  private Path path;
  private Path lock;

  @BeforeEach
  void begin() {
    path = folder.resolve("a.session");
    lock = folder.resolve("a.session.lock");
    SessionFile.create(path).close();
  }

  @Test
  void aReaderOfTheSameProgramDoesNotGiveUpTheLock() throws Exception {
    try (SessionFile file = SessionFile.resume(path)) {
      // As the record takes the session in while the bench writes it.
      assertThat(SessionFile.read(path).events()).isEmpty();
      assertThatThrownBy(() -> SessionFile.resume(path)).isInstanceOf(Trouble.class);
      try (ChildJvm other = new ChildJvm(SessionLockChild.class, path.toString())) {
        assertThat(other.line()).contains("REFUSED");
      }
      file.add(MARK);
    }
    assertThat(SessionFile.read(path).events()).hasSize(1);
    assertThat(lock).doesNotExist();
  }

  @Test
  void whatADeadProgramLeftLocksNobodyOut() throws Exception {
    try (ChildJvm other = new ChildJvm(SessionLockChild.class, path.toString())) {
      assertThat(other.line()).contains("WRITES");
      assertThatThrownBy(() -> SessionFile.resume(path))
          .isInstanceOf(Trouble.class)
          .hasMessageContaining("another Halflight");
      // Whoever only reads is not locked out.
      assertThat(SessionFile.read(path).events()).hasSize(1);
      other.kill();
    }
    assertThat(lock).exists();
    try (SessionFile file = SessionFile.resume(path)) {
      assertThat(file.before()).hasSize(1);
      file.add(MARK);
    }
    assertThat(SessionFile.read(path).events()).hasSize(2);
    assertThat(lock).doesNotExist();
  }

  @Test
  void aSecondAttemptInTheSameProgramDoesNotGiveUpTheLock() throws Exception {
    Path byLink = Files.createSymbolicLink(folder.resolve("link.session"), path);
    try (SessionFile file = SessionFile.resume(path)) {
      for (Path name :
          new Path[] {path, byLink, folder.resolve("../" + folder.getFileName() + "/a.session")}) {
        assertThatThrownBy(() -> SessionFile.resume(name)).isInstanceOf(Trouble.class);
      }
      try (ChildJvm other = new ChildJvm(SessionLockChild.class, path.toString())) {
        assertThat(other.line()).contains("REFUSED");
      }
      file.add(MARK);
    }
    SessionFile.resume(byLink).close();
  }

  @Test
  void aLockFileThatWasCleanedUpMeanwhileIsNoLock() throws IOException {
    SessionLock first = SessionLock.acquire(path).orElseThrow();
    assertThat(SessionLock.acquire(path)).isEmpty();
    first.close();
    first.close();
    SessionLock second = SessionLock.acquire(path).orElseThrow();
    assertThat(lock).exists();
    second.close();
    assertThat(lock).doesNotExist();
  }
}
