package org.halflight.box;

import java.io.IOException;
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
 * Lets tests of the real firmware run where its tools are. Without them it says in one line what
 * was left out and how to get it; where {@code CI=true} stands in the environment nothing is left
 * out, so that a missing tool fails the tests.
 */
public final class AvrTools implements ExecutionCondition {
  private static final String LEFT_OUT =
      "LEFT OUT: the tests of the real firmware, because %s is missing."
          + " To get it on Debian: apt-get install $(grep -v '^#' .ci/packages)";

  private static boolean told;

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    Optional<String> leftOut = leftOut();
    leftOut.ifPresent(AvrTools::reportOnce);
    return leftOut
        .map(ConditionEvaluationResult::disabled)
        .orElseGet(() -> ConditionEvaluationResult.enabled("the AVR tools are here, or must be"));
  }

  /** What is left out and why; empty where the tools are here or must be. */
  static Optional<String> leftOut() {
    List<String> missing = missing();
    return missing.isEmpty() || "true".equals(System.getenv("CI"))
        ? Optional.empty()
        : Optional.of(LEFT_OUT.formatted(String.join(", ", missing)));
  }

  private static synchronized void reportOnce(String line) {
    // Where BuildForTests ran before, it has told it for all processes of tests.
    if (!told && System.getProperty("halflight.leftOut") == null) {
      told = true;
      System.err.println(line);
    }
  }

  private static List<String> missing() {
    List<String> missing = new ArrayList<>();
    for (String program : List.of("avr-gcc", "make", "gcc")) {
      if (!onPath(program)) {
        missing.add(program);
      }
    }
    if (!Files.exists(Path.of("/usr/include/simavr/sim_avr.h"))) {
      missing.add("simavr");
    }
    if (!Files.exists(Path.of("/usr/lib/avr/include/avr/io.h"))) {
      missing.add("avr-libc");
    }
    if (!Files.exists(Path.of("/usr/share/arduino/hardware/arduino/avr/bootloaders/optiboot"))) {
      missing.add("arduino-core-avr");
    }
    return missing;
  }

  private static boolean onPath(String program) {
    String path = System.getenv("PATH");
    return path != null
        && Stream.of(path.split(java.io.File.pathSeparator))
            .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }

  /** What {@link #makeKeepingResult} ends with when make succeeded. */
  static final String RAN_WELL = "make: done\n";

  /** Runs make in a folder and fails, with what it printed, unless it succeeds. */
  static void make(String folder, String... goals) throws IOException, InterruptedException {
    String printed = makeKeepingResult(folder, goals);
    if (!printed.endsWith(RAN_WELL)) {
      throw new AssertionError(
          "make -C " + folder + " " + String.join(" ", goals) + ":\n" + printed);
    }
  }

  /** Fails when make would have something to do. */
  static void mustBeMade(String folder, String... goals) throws IOException, InterruptedException {
    List<String> words = new ArrayList<>(List.of(goals));
    words.add(0, "--question");
    if (!makeKeepingResult(folder, words.toArray(new String[0])).endsWith(RAN_WELL)) {
      throw new AssertionError(
          String.join(" ", goals)
              + " in "
              + folder
              + " is not built, or older than its sources. Run: make -C firmware box");
    }
  }

  /** Runs make in a folder and gives back what it printed, whether it succeeded or not. */
  static String makeKeepingResult(String folder, String... goals)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("make", "-C", folder));
    command.addAll(List.of(goals));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int code = process.waitFor();
    return printed + (code == 0 ? RAN_WELL : "make: ended with " + code + "\n");
  }
}
