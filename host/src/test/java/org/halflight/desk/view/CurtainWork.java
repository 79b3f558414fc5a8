package org.halflight.desk.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.CameraCustoms;
import org.halflight.session.CurtainStep;
import org.halflight.session.OwnTravel;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.SpringSettling;
import org.halflight.shuttermodel.CurtainScrew;
import org.halflight.shuttermodel.CurtainShutter;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.verdict.CurtainTrials;
import org.halflight.workflow.CurtainPlan;

/** Work on an invented camera with curtains, on the practice rig in virtual time. */
final class CurtainWork {
  static final MarkedSpeed X = MarkedSpeed.parse("1/30");
  static final Dial DIAL =
      Dial.custom("1, 1/2, 1/4, 1/8, 1/15, 1/30, 1/60, 1/125, 1/250, 1/500, 1/1000").orElseThrow();

  private CurtainWork() {}

  /** As it came in: gummed, with slack springs, a late latch and an early contact. */
  static CurtainShutter found() {
    return InventedCurtains.CLOTH_36.found(DIAL.speeds(), 7);
  }

  static RunSetup setup(Phase phase) {
    boolean found = phase == Phase.AS_FOUND;
    List<MarkedSpeed> order =
        found ? CurtainPlan.asFound(DIAL, Optional.of(X)) : CurtainPlan.adjusting(DIAL);
    return new RunSetup(
        new ShutterUnderTest(
            "Invented with curtains",
            InventedCurtains.CLOTH_36.kind(),
            DIAL.key(),
            Reference.EXACT,
            CameraCustoms.NONE),
        phase,
        new RunPlan(order, found ? CurtainPlan.FOUND_FIRINGS : 5, List.of()),
        new RunConditions(
            OptionalDouble.empty(),
            Map.of(
                RunOption.FRAME.name(), "36 x 24",
                RunOption.CURTAIN_GAP.name(), "5",
                RunOption.LAMP_DISTANCE.name(), "300")),
        AcceptanceCriteria.USUAL
            .with(RunOption.OWN_TRAVEL, Optional.of(new OwnTravel(17, 36)))
            .with(RunOption.X_SPEED, Optional.of(X)));
  }

  static void begin(PracticeWork work, Phase phase) {
    work.begin(setup(phase));
  }

  /** Opens a step, turns, settles the spring and fires what counts. */
  static void turn(PracticeWork work, CurtainStep step, Adjuster adjuster, double turns) {
    turn(
        work,
        step,
        adjuster,
        turns,
        (adjuster.isTension() ? SpringSettling.FIRINGS : 0) + CurtainTrials.FIRINGS);
  }

  /** Opens a step, turns, and fires so often. */
  static void turn(
      PracticeWork work, CurtainStep step, Adjuster adjuster, double turns, int firings) {
    work.handle(new SessionInput.StepChosen(step));
    work.handle(new SessionInput.Adjusted(AdjusterTurn.turned(adjuster, turns).text()));
    CurtainScrew screw = CurtainScrew.valueOf(adjuster.name());
    work.rig.adjustShutter(((CurtainShutter) work.rig.shutter()).turn(screw, turns, 0));
    for (int i = 0; i < firings; i++) {
      work.fire(work.view().shown().flatMap(s -> s.speed()), PracticeMishap.NONE);
    }
  }
}
