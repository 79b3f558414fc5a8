package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Map;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SessionFileTest {
  private static final BenchEvent FIRST = new BenchEvent.Received(1, "E 0001 0 1 8F3C22A0#4623");
  private static final BenchEvent.Mark SECOND =
      new BenchEvent.Mark(2, "speed", Map.of("is", "1/60"));

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
    assertThat(contents.events()).containsExactly(FIRST, SECOND.numbered(1));
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
    assertThat(contents.events()).containsExactly(FIRST, SECOND.numbered(1));
    assertThat(contents.damagedLines()).isEqualTo(1);
  }

  @Test
  void neverWritesOverASession() {
    Path path = folder.resolve("a.session");
    SessionFile.create(path).close();
    assertThatThrownBy(() -> SessionFile.create(path))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("already exists");
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
    assertThatThrownBy(() -> SessionFile.read(other))
        .hasMessageContaining("is not a Halflight session");
    assertThatThrownBy(() -> SessionFile.read(later)).hasMessageContaining("a later Halflight");
    assertThatThrownBy(() -> SessionFile.read(folder.resolve("none")))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("There is no file");
  }

  @Test
  void whatAStartThatFailedLeftIsGoneOnWith() throws IOException {
    String heading = SessionForm.newest().heading();
    for (int length = 0; length <= heading.length() + 1; length++) {
      Path path =
          Files.writeString(
              folder.resolve(length + ".session"), (heading + "\n").substring(0, length));
      assertThat(SessionFile.read(path).events()).isEmpty();
      try (SessionFile file = SessionFile.resume(path)) {
        assertThat(file.before()).isEmpty();
        file.add(FIRST);
      }
      assertThat(SessionFile.read(path).events())
          .as("after %d bytes", length)
          .containsExactly(FIRST);
      assertThat(SessionFile.read(path).damagedLines()).isZero();
    }
  }

  @Test
  void aStartThatFailsLeavesNothing() {
    assertThatThrownBy(() -> SessionFile.create(Path.of("/dev/full/a.session")))
        .isInstanceOf(Trouble.class);
    Path path = folder.resolve("a.session");
    SessionFile.create(path).close();
    assertThat(folder.toFile().list()).containsExactly("a.session");
  }

  @Test
  void aSessionOfTheFirstFormIsReadAndGoneOnWithInIt() throws IOException {
    Path path =
        Files.writeString(
            folder.resolve("old.session"),
            "halflight-session 1\nM 0 begins version=1\nR 5 E 0001 0 1 8F3C22A0#4623\n");
    try (SessionFile file = SessionFile.resume(path)) {
      assertThat(file.before()).hasSize(2);
      assertThat(file.form()).isEqualTo(SessionForm.FIRST);
      file.add(SECOND);
    }
    assertThat(Files.readString(path)).endsWith("#4623\nM 2 speed is=1/60\n");
    assertThat(SessionFile.read(path).events()).hasSize(3).endsWith(SECOND);
  }

  @Test
  void aNewFileIsOfTheSecondForm() throws IOException {
    Path path = folder.resolve("a.session");
    try (SessionFile file = SessionFile.create(path)) {
      file.add(SECOND);
      file.add(FIRST);
    }
    assertThat(Files.readString(path))
        .isEqualTo(
            "halflight-session 2\nM 1 2 speed is=1/60 "
                + crc("M 1 2 speed is=1/60")
                + "\nR 1 E 0001 0 1 8F3C22A0#4623 "
                + crc("R 1 E 0001 0 1 8F3C22A0#4623")
                + "\n");
  }

  @Test
  void aMarkThatIsMissingOrStandsThereTwiceIsDamage() throws IOException {
    Path path = folder.resolve("a.session");
    try (SessionFile file = SessionFile.create(path)) {
      for (int i = 0; i < 4; i++) {
        file.add(SECOND);
      }
    }
    java.util.List<String> lines = Files.readAllLines(path);
    Files.write(path, java.util.List.of(lines.get(0), lines.get(1), lines.get(4)));
    assertThat(SessionFile.read(path).damagedLines()).isEqualTo(2);
    assertThat(SessionFile.read(path).events()).hasSize(2);
    Files.write(path, java.util.List.of(lines.get(0), lines.get(1), lines.get(1), lines.get(2)));
    assertThat(SessionFile.read(path).damagedLines()).isEqualTo(1);
    assertThat(SessionFile.read(path).events()).hasSize(2);
    Files.write(path, java.util.List.of(lines.get(0), lines.get(1), "M 2 x", lines.get(3)));
    assertThat(SessionFile.read(path).damagedLines()).isEqualTo(1);
    try (SessionFile file = SessionFile.resume(path)) {
      assertThat(((BenchEvent.Mark) file.add(SECOND)).number()).isEqualTo(4);
    }
  }

  @Test
  void theEndIsReadWithoutTheRest() {
    Path path = folder.resolve("a.session");
    try (SessionFile file = SessionFile.create(path)) {
      for (int i = 0; i < 2_000; i++) {
        file.add(FIRST);
      }
      file.add(SECOND);
    }
    assertThat(SessionFile.readEnd(path)).hasSizeBetween(100, 1_000).endsWith(SECOND.numbered(1));
  }

  private static String crc(String text) {
    java.util.zip.CRC32 crc = new java.util.zip.CRC32();
    crc.update(text.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    return String.format(Locale.ROOT, "%08X", crc.getValue());
  }
}
