package org.halflight.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.Workbench;
import org.halflight.workflow.CameraOperator;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Sets the light of a session. */
@Command(name = "light")
final class LightCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(paramLabel = "SESSION")
  private Path session;

  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();

  LightCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Workbench workbench = Sessions.open(session, surroundings);
    try (BenchDriver driver =
        new BenchDriver(
            workbench,
            rig.feed(surroundings, workbench::now),
            profiles.live(surroundings),
            surroundings.today())) {
      BenchTerminal bench =
          new BenchTerminal(driver, surroundings.terminal(), CameraOperator.PERSON);
      return bench.waitForRig() && bench.setLight() ? 0 : 1;
    }
  }
}
