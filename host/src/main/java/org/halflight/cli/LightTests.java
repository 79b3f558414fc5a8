package org.halflight.cli;

import java.nio.file.Path;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigFeed;
import org.halflight.bench.Workbench;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Session;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.PracticeOperator;

/** Opens a session for readings of the light, on a rig or on the practice rig. */
final class LightTests {
  private static final long SEED = 20;

  private final Surroundings surroundings;
  private final Path session;
  private final RigOptions rig;
  private final boolean practice;

  LightTests(Surroundings surroundings, Path session, RigOptions rig, boolean practice) {
    this.surroundings = surroundings;
    this.session = session;
    this.rig = rig;
    this.practice = practice;
  }

  /**
   * Waits for the rig, sets the light where the session has none, and reads.
   *
   * @param plan the readings
   * @return 0 when it was done, 1 when the person gave up
   */
  int run(LightPlan plan) {
    Workbench workbench = Sessions.open(session, surroundings);
    Terminal terminal = surroundings.terminal();
    PracticeRig model =
        practice ? PracticeOperator.unpacedRig(SEED, surroundings.date().get()) : null;
    RigFeed feed =
        practice
            ? new PumpFeed(model, workbench::now)
            : new LiveFeed(surroundings.ports().apply(rig.ports()), rig.wish(), workbench::now);
    try (BenchDriver driver = new BenchDriver(workbench, feed)) {
      CameraOperator operator =
          practice ? new PracticeOperator(model, SEED) : CameraOperator.PERSON;
      BenchTalk talk = new BenchTalk(driver, terminal, operator);
      if (!talk.waitForRig()) {
        return 1;
      }
      Session state = workbench.fold().session();
      if (state.light().isEmpty() && !talk.setLight()) {
        return 1;
      }
      return ReadingTalk.lead(plan, driver, terminal, operator) == ReadingTalk.End.DONE ? 0 : 1;
    }
  }
}
