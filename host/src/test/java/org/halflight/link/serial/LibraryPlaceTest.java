package org.halflight.link.serial;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From where the machine code of the serial library comes. */
@Tag("kill")
class LibraryPlaceTest {
  @TempDir private Path folder;
  private Path shared;
  private Path home;
  private Path cache;

  private String version;

  @BeforeEach
  void make() throws IOException {
    SerialLibrary.start();
    version = SerialPort.getVersion();
    shared = Files.createDirectory(folder.resolve("shared"));
    home = Files.createDirectory(folder.resolve("home"));
    cache = folder.resolve("cache");
  }

  @Test
  void aLibraryThatSomebodyPlantedIsNotLoaded() throws Exception {
    List<Path> planted =
        List.of(
            plant(shared.resolve("jSerialComm/./" + version)),
            plant(home.resolve(".jSerialComm/./" + version)));
    List<String> said = child();
    assertThat(said).contains("DONE").contains("HOME " + home);
    for (Path each : planted) {
      // Neither loaded nor written over.
      assertThat(each).hasContent("code of others");
    }
    List<String> loaded = said.stream().filter(line -> line.startsWith("LOADED ")).toList();
    if (isLinux()) {
      Path own = cache.toRealPath().resolve("native");
      assertThat(loaded).isNotEmpty().allMatch(line -> line.startsWith("LOADED " + own));
    }
  }

  @Test
  void theFolderGoesWithTheProcess() throws Exception {
    assertThat(child()).contains("DONE");
    if (isLinux()) {
      assertThat(left()).isEmpty();
    }
  }

  @Test
  void whatAKilledProcessLeftIsRemovedByTheNext() throws Exception {
    Process killed = start("stay");
    try {
      List<String> said = new ArrayList<>();
      BufferedReader lines = lines(killed);
      for (String line = lines.readLine();
          line != null && !line.equals("DONE");
          line = lines.readLine()) {
        said.add(line);
      }
      assertThat(said).anyMatch(line -> line.startsWith("FOLDER "));
      killed.toHandle().destroyForcibly();
      assertThat(killed.waitFor(60, TimeUnit.SECONDS)).isTrue();
    } finally {
      killed.destroyForcibly();
    }
    assertThat(left()).hasSize(1);
    Path leftover = left().get(0);
    assertThat(child()).contains("DONE");
    assertThat(leftover).doesNotExist();
  }

  private List<Path> left() throws IOException {
    try (Stream<Path> folders = Files.list(cache.resolve("native"))) {
      return folders.toList();
    }
  }

  private static Path plant(Path where) throws IOException {
    Files.createDirectories(where);
    return Files.writeString(
        where.resolve(System.mapLibraryName("jSerialComm").replace(".dylib", ".jnilib")),
        "code of others");
  }

  private List<String> child(String... more) throws Exception {
    Process process = start(more);
    try {
      List<String> said = lines(process).lines().toList();
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      return said;
    } finally {
      process.destroyForcibly();
    }
  }

  private Process start(String... more) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx64m", "-XX:TieredStopAtLevel=1"));
    command.add("-Djava.io.tmpdir=" + shared);
    command.add("-Duser.home=" + home);
    command.addAll(List.of("-cp", classPath(), LibraryPlaceChild.class.getName()));
    command.add(cache.toString());
    command.addAll(List.of(more));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }

  private static BufferedReader lines(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  private static String classPath() {
    return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
  }

  private static boolean isLinux() {
    return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("linux");
  }
}
