package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SessionFileTest {
  private static final BenchEvent FIRST = new BenchEvent.Received(1, "E 0001 0 1 8F3C22A0#4623");
  private static final BenchEvent SECOND = new BenchEvent.Mark(2, "speed", Map.of("is", "1/60"));

  @TempDir private Path folder;

  @Test
  void readsBackWhatItWroteAndGoesOn() {
    Path path = folder.resolve("deep/er/a.session");
    try (SessionFile file = SessionFile.create(path)) {
      file.add(FIRST);
    }
    try (SessionFile file = SessionFile.resume(path)) {
      file.add(SECOND);
    }
    SessionFile.Contents contents = SessionFile.read(path);
    assertThat(contents.events()).containsExactly(FIRST, SECOND);
    assertThat(contents.damagedLines()).isZero();
  }

  @Test
  void aLineCutShortByAPowerCutCostsItselfOnly() throws IOException {
    Path path = folder.resolve("a.session");
    try (SessionFile file = SessionFile.create(path)) {
      file.add(FIRST);
    }
    Files.writeString(path, "R 99", StandardOpenOption.APPEND);
    try (SessionFile file = SessionFile.resume(path)) {
      file.add(SECOND);
    }
    SessionFile.Contents contents = SessionFile.read(path);
    assertThat(contents.events()).containsExactly(FIRST, SECOND);
    assertThat(contents.damagedLines()).isEqualTo(1);
  }

  @Test
  void neverWritesOverASession() {
    Path path = folder.resolve("a.session");
    SessionFile.create(path).close();
    assertThatThrownBy(() -> SessionFile.create(path))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("is there already");
  }

  @Test
  void twoAtOnceDoNotWriteIntoOneSession() {
    Path path = folder.resolve("a.session");
    try (SessionFile file = SessionFile.create(path)) {
      file.add(FIRST);
      assertThatThrownBy(() -> SessionFile.resume(path))
          .isInstanceOf(Trouble.class)
          .hasMessageContaining("another Halflight");
    }
    SessionFile.resume(path).close();
    assertThat(SessionFile.read(path).events()).containsExactly(FIRST);
  }

  @Test
  void saysWhatAFileIsThatItCannotRead() throws IOException {
    Path other = Files.writeString(folder.resolve("other"), "something else\n");
    Path later = Files.writeString(folder.resolve("later"), "halflight-session 9\n");
    Path empty = Files.writeString(folder.resolve("empty"), "");
    assertThatThrownBy(() -> SessionFile.read(other))
        .hasMessageContaining("is no Halflight session");
    assertThatThrownBy(() -> SessionFile.read(later)).hasMessageContaining("a later Halflight");
    assertThatThrownBy(() -> SessionFile.read(empty))
        .hasMessageContaining("is no Halflight session");
    assertThatThrownBy(() -> SessionFile.read(folder.resolve("none")))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("There is no file");
  }
}
