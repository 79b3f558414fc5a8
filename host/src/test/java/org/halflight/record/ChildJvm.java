package org.halflight.record;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Another Java process with the same classes, whose lines can be waited for. */
public final class ChildJvm implements AutoCloseable {
  private final Process process;
  private final BufferedReader lines;

  public ChildJvm(Class<?> main, String... arguments) throws IOException {
    this(List.of(), main, arguments);
  }

  private ChildJvm(List<String> before, Class<?> main, String... arguments) throws IOException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-Xmx128m",
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-XX:-UsePerfData",
            "--enable-native-access=ALL-UNNAMED",
            "-cp"));
    command.add(classPath());
    command.add(main.getName());
    command.addAll(List.of(arguments));
    process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /** One that is started by a command, such as a shell that limits what it may do. */
  public static ChildJvm behind(List<String> command, Class<?> main, String... arguments)
      throws IOException {
    return new ChildJvm(command, main, arguments);
  }

  /** The next line; empty when the child has ended. */
  public Optional<String> line() throws IOException {
    return Optional.ofNullable(lines.readLine());
  }

  /**
   * Ends it as the system's {@code kill -9} does, and gives the lines that were still on the way.
   */
  public List<String> kill() throws IOException, InterruptedException {
    // By its handle: Process.destroyForcibly would close the pipe too, and with it what was said.
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

  /** As the program has it: without the logging interface that only a test library brings. */
  private static String classPath() {
    String own =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    return Arrays.stream(own.split(File.pathSeparator, -1))
        .filter(entry -> !entry.contains("slf4j"))
        .collect(Collectors.joining(File.pathSeparator));
  }
}
