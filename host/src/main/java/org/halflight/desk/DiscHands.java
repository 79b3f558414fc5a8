package org.halflight.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.bench.DiscGuide;
import org.halflight.bench.DiscProfile;
import org.halflight.bench.DiscRun;
import org.halflight.bench.DiscSentences;
import org.halflight.bench.RigWork;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.PrintedDisc;
import org.halflight.desk.view.RigModel;
import org.halflight.profile.RigProfile;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.DiscWords;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;

/**
 * Leads the person through the reading of a slotted disc. The rig is lent for all of it: what the
 * disc does to the light while it is mounted and while it runs down is no firing. For the bench
 * thread only.
 */
final class DiscHands {
  /** Standard uncertainty of a tachometer of 0.1 %, evenly spread. */
  private static final double SPEED_PPM = 577;

  private final RigActions rig;
  private final RigModel model;
  private final Optional<PracticeOperator> camera;
  private boolean asking;
  private boolean done;
  private boolean turns;

  /** What the person wrote of the disc. */
  private record Written(PrintedDisc disc, OptionalDouble turnsAMinute) {}

  DiscHands(RigActions rig, RigModel model, Optional<PracticeOperator> camera) {
    this.rig = rig;
    this.model = model;
    this.camera = camera;
  }

  /**
   * Begins, or goes on where the person is asked to say when something is done.
   *
   * @param cut how far an edge may lie beside its place in mm, as the person wrote it
   * @param speed turns a minute as the person wrote them; empty where they are not known
   */
  void goOn(String cut, String speed) {
    if (asking) {
      done = true;
      return;
    }
    Optional<Written> written = written(cut, speed);
    if (!rig.isReady()) {
      model.says(Words.say("desk.rig.notNow"));
    } else if (written.isEmpty()) {
      model.says(Words.say("desk.rig.disc.numbers"));
    } else {
      rig.lent(work -> lead(work, written.get()));
    }
  }

  /** The person wants it to end: the last thing that is asked for counts as done. */
  void stopped() {
    done = asking;
  }

  private static Optional<Written> written(String cut, String speed) {
    try {
      double edge = cut.isBlank() ? PrintedDisc.EDGE_MILLIMETRES : Double.parseDouble(cut.strip());
      OptionalDouble turns =
          speed.isBlank()
              ? OptionalDouble.empty()
              : OptionalDouble.of(Double.parseDouble(speed.strip()));
      if (turns.isPresent() && !(turns.getAsDouble() > 0 && turns.getAsDouble() < 1e5)) {
        return Optional.empty();
      }
      return Optional.of(
          new Written(
              new PrintedDisc(PrintedDisc.SLOT_DEGREES, edge, PrintedDisc.RADIUS_MILLIMETRES),
              turns));
    } catch (IllegalArgumentException noNumber) {
      return Optional.empty();
    }
  }

  private void lead(RigWork work, Written written) {
    turns = false;
    String came = Words.say("calibration.refused.stopped");
    try {
      if (stepsAreDone(work)) {
        camera.ifPresent(its -> its.turnDisc(true));
        model.discBegins(rig.seconds());
        came = read(work, written);
      }
    } finally {
      camera.ifPresent(its -> its.turnDisc(false));
    }
    if (turns && camera.isEmpty()) {
      // Given back while it still turns, every slot would be a firing.
      asks(work, Words.say("desk.rig.disc.off", came), 1, false);
    }
    model.says(came + (turns ? " " + Words.say("desk.rig.disc.over") : ""));
  }

  private boolean stepsAreDone(RigWork work) {
    List<String> steps = DiscGuide.steps();
    for (int i = 0; i < steps.size(); i++) {
      turns = i == steps.size() - 1;
      asks(
          work,
          Words.say("desk.rig.disc.step", i + 1, steps.size(), steps.get(i)),
          (double) i / steps.size(),
          true);
      if (work.isStopped()) {
        return false;
      }
    }
    return true;
  }

  /** Goes on with everything else until the person says that it is done. */
  private void asks(RigWork work, String asked, double part, boolean mayBeStopped) {
    model.discAsks(asked, part);
    done = false;
    asking = true;
    try {
      while (!done && !(mayBeStopped && work.isStopped())) {
        work.step();
      }
    } finally {
      asking = false;
    }
  }

  private String read(RigWork work, Written written) {
    DiscProfile standing = rig.standing();
    DiscGuide.Outcome outcome =
        new DiscGuide(work, model::discStage, model::says, part -> {})
            .read(DiscRun.USUAL_SECONDS, written.disc(), standing);
    if (outcome instanceof DiscGuide.NotTaken none) {
      return DiscSentences.notTaken(none.why());
    }
    DiscGuide.Read read = (DiscGuide.Read) outcome;
    if (read.reading() instanceof DiscReading.Failed failed) {
      return DiscWords.trouble(failed.trouble());
    }
    DiscReading reading = ((DiscReading.Found) read.reading()).reading();
    DiscComparison comparison = DiscComparison.of(reading, standing.knowledge(read.edges()));
    List<String> said = new ArrayList<>(DiscWords.brief(comparison));
    said.add(standing.said(read.edges()));
    written
        .turnsAMinute()
        .ifPresent(
            speed ->
                said.add(
                    DiscWords.clock(
                        reading,
                        speed,
                        SPEED_PPM,
                        standing.used(read.edges().rig()).flatMap(RigProfile::clock))));
    model.discRead(comparison, read.edges().rig().serial(), said);
    return String.join(" ", said);
  }
}
