package org.halflight.cli;

import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Looks for light through shut blades. */
@Command(name = "leak")
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
