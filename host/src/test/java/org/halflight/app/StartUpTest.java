package org.halflight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.halflight.files.FaultLog;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StartUpTest {
  @TempDir private Path folder;

  private final List<String> shown = new ArrayList<>();

  @Test
  void whatKeepsTheProgramFromStartingIsShown() {
    assertThat(
            run(
                () -> {
                  throw new Trouble("The folder cannot be written to. Give permission.");
                }))
        .isEqualTo(1);
    assertThat(shown).containsExactly("The folder cannot be written to. Give permission.");
    assertThat(folder.resolve(FaultLog.NAME)).doesNotExist();
  }

  @Test
  void aFaultIsASentenceWithoutTheNameOfAClass() throws Exception {
    for (Throwable fault : List.of(new IllegalStateException("odd"), new StackOverflowError())) {
      shown.clear();
      assertThat(
              run(
                  () -> {
                    if (fault instanceof Error error) {
                      throw error;
                    }
                    throw (RuntimeException) fault;
                  }))
          .isEqualTo(1);
      assertThat(shown).hasSize(1);
      assertThat(shown.get(0))
          .contains("while starting")
          .contains(FaultLog.NAME)
          .doesNotContain("Exception")
          .doesNotContain("Error");
      assertThat(Files.readString(folder.resolve(FaultLog.NAME)))
          .contains(fault.getClass().getName());
    }
  }

  @Test
  void aProgramThatEndsInOrderSaysNothing() {
    assertThat(run(() -> {})).isZero();
    assertThat(shown).isEmpty();
  }

  private int run(Runnable program) {
    return new StartUp(new FaultLog(folder, () -> Instant.EPOCH), shown::add).run(program);
  }
}
