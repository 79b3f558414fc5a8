package org.halflight.app;

import java.util.function.Consumer;
import org.halflight.files.FaultLog;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** The last line of defence around the whole program: whatever goes wrong is a sentence. */
final class StartUp {
  private final FaultLog faults;
  private final Consumer<String> says;

  /**
   * @param says takes a sentence for the person
   */
  StartUp(FaultLog faults, Consumer<String> says) {
    this.faults = faults;
    this.says = says;
  }

  /**
   * Runs the program.
   *
   * @return 0 when it ended in order, 1 when it did not start
   */
  int run(Runnable program) {
    try {
      program.run();
      return 0;
    } catch (Trouble trouble) {
      says.accept(trouble.getMessage());
    } catch (RuntimeException | Error fault) {
      says.accept(faults.ends(fault, Words.say("fault.at.start")));
    }
    return 1;
  }
}
