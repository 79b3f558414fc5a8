package org.halflight.cli;

import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Tests how evenly the panel of light fills the lens. */
@Command(name = "panel")
final class PanelCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private LightTestOptions test = new LightTestOptions();

  PanelCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    return test.lead(LightPlan.panel(), surroundings).isPresent() ? 0 : 1;
  }
}
