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
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.Dial;

/** Opens a session for readings of the light, on a rig or on the practice rig. */
final class LightTests {
  private static final long SEED = 20;

  /** Light that comes through the practice shutter while it is cocked: eight stops down. */
  private static final double PRACTICE_LEAK = 1 / 256.0;

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
    PracticeRig model = practice ? model() : null;
    RigFeed feed =
        practice
            ? new PumpFeed(model, workbench::now)
            : new LiveFeed(surroundings.ports().apply(rig.ports()), rig.wish(), workbench::now);
    try (BenchDriver driver = new BenchDriver(workbench, feed)) {
      Hand hand = practice ? new PracticeHand(model) : Hand.OF_THE_PERSON;
      BenchTalk talk = new BenchTalk(driver, terminal, hand);
      if (!talk.waitForRig()) {
        return 1;
      }
      Session state = workbench.fold().session();
      if (state.light().isEmpty() && !talk.setLight()) {
        return 1;
      }
      return ReadingTalk.lead(plan, driver, terminal, hand.light()) == ReadingTalk.End.DONE ? 0 : 1;
    }
  }

  private PracticeRig model() {
    PracticeRig model =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(Dial.find("leaf").orElseThrow().speeds(), SEED),
            SensorSet.INVENTED,
            SEED,
            PracticeRig.startsBefore(surroundings.date().get()));
    model.leak(0, PRACTICE_LEAK);
    return model;
  }
}
