package org.halflight.cli;

import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Looks for light through shut blades. */
@Command(
    name = "leak",
    description =
        "Leak test: reads the light through the shut blades, not cocked and cocked, against the"
            + " covered lamp. Kept in the session file.")
final class LeakCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private LightTestOptions test = new LightTestOptions();

  LeakCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    return test.lead(LightPlan.leak(), surroundings).isPresent() ? 0 : 1;
  }
}
