package org.halflight.campaign;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Another process with the same classes: small, quickly there, and gone by SIGKILL. */
final class Child implements AutoCloseable {
  private final Process process;
  private final BufferedReader lines;
  private final BufferedWriter input;

  /**
   * @param folder for its temporary files
   */
  Child(Path folder, Class<?> main, String... words) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of("-Xmx64m", "-Xshare:auto", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    command.add("-Djava.io.tmpdir=" + folder);
    command.addAll(List.of("-cp", classPath(), main.getName()));
    command.addAll(List.of(words));
    process = new ProcessBuilder(command).redirectErrorStream(true).start();
    lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    input =
        new BufferedWriter(
            new OutputStreamWriter(process.getOutputStream(), StandardCharsets.UTF_8));
  }

  /** The next line; empty when it has ended. */
  Optional<String> line() throws IOException {
    return Optional.ofNullable(lines.readLine());
  }

  /** Tells it to go on. */
  void say(String line) throws IOException {
    input.write(line + "\n");
    input.flush();
  }

  /**
   * From here on its files may grow to this size.
   *
   * @param bytes a number, or {@code unlimited}
   */
  void limit(String bytes) throws IOException, InterruptedException {
    int code =
        new ProcessBuilder(
                "prlimit", "--pid", "" + process.pid(), "--fsize=" + bytes + ":unlimited")
            .inheritIO()
            .start()
            .waitFor();
    if (code != 0 && process.isAlive()) {
      throw new IllegalStateException("prlimit ended with " + code);
    }
  }

  /** Ends it as {@code kill -9} does; gives the lines that were still on the way. */
  List<String> kill() throws IOException, InterruptedException {
    process.toHandle().destroyForcibly();
    List<String> rest = new ArrayList<>();
    for (Optional<String> line = line(); line.isPresent(); line = line()) {
      rest.add(line.get());
    }
    process.waitFor();
    return rest;
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }

  /** As the program has it, without the logging interface that only test libraries bring. */
  private static String classPath() {
    String own =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    return Arrays.stream(own.split(File.pathSeparator, -1))
        .filter(entry -> !entry.contains("slf4j"))
        .collect(Collectors.joining(File.pathSeparator));
  }
}
