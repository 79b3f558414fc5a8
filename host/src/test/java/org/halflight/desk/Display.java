package org.halflight.desk;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A display of its own for programs with a window, by Xvfb. Where Xvfb is missing the tests that
 * need it are left out with one line; where {@code CI=true} stands in the environment nothing is
 * left out.
 */
public final class Display implements ExecutionCondition, AutoCloseable {
  private static final String LEFT_OUT =
      "LEFT OUT: the tests of the window, because Xvfb is missing."
          + " To get it on Debian: apt-get install xvfb";

  private static boolean told;

  private final String screen;
  private Process server;

  /** As large as a usual screen. */
  public Display() {
    this("1920x1080");
  }

  /**
   * @param screen width and height in pixels
   */
  Display(String screen) {
    this.screen = screen;
  }

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    Optional<String> leftOut = leftOut();
    leftOut.ifPresent(Display::reportOnce);
    return leftOut
        .map(ConditionEvaluationResult::disabled)
        .orElseGet(() -> ConditionEvaluationResult.enabled("Xvfb is here, or must be"));
  }

  /** What is left out and why; empty where Xvfb is here or must be. */
  public static Optional<String> leftOut() {
    return isThere() || "true".equals(System.getenv("CI"))
        ? Optional.empty()
        : Optional.of(LEFT_OUT);
  }

  private static synchronized void reportOnce(String line) {
    // Where the build has told it before, it has told it for all processes of tests.
    if (!told && System.getProperty("halflight.leftOut") == null) {
      told = true;
      System.err.println(line);
    }
  }

  private static boolean isThere() {
    String path = System.getenv("PATH");
    return path != null
        && Stream.of(path.split(java.io.File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, "Xvfb")));
  }

  /**
   * Runs a program of the tests on a new display.
   *
   * @return what it printed, its exit code in the last line
   */
  String run(Class<?> program, String... words) throws IOException, InterruptedException {
    return run(List.of(), program, words);
  }

  /** The same with options of the JVM. */
  String run(List<String> options, Class<?> program, String... words)
      throws IOException, InterruptedException {
    String display = start();
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.addAll(
        List.of(
            "--enable-native-access=ALL-UNNAMED",
            "-cp",
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
            program.getName()));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("DISPLAY", display);
    Process process = builder.start();
    process.getOutputStream().close();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return printed + "exit code " + process.waitFor();
  }

  /** The server picks a free display itself and says which. */
  private String start() throws IOException {
    server =
        new ProcessBuilder(
                "Xvfb", "-displayfd", "1", "-screen", "0", screen + "x24", "-nolisten", "tcp")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader said =
        new BufferedReader(
            new InputStreamReader(server.getInputStream(), StandardCharsets.US_ASCII));
    String number = said.readLine();
    if (number == null) {
      throw new IOException("Xvfb gave no display; is it installed?");
    }
    return ":" + number.strip();
  }

  @Override
  public void close() {
    if (server != null) {
      server.destroy();
      try {
        server.waitFor();
      } catch (InterruptedException interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
