package org.halflight.workflow;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.DiscEdges;
import org.halflight.bench.DiscRun;
import org.halflight.bench.RigWork;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.DiscTrouble;
import org.halflight.words.DiscWords;
import org.halflight.words.Words;

/**
 * Leads a person to a disc that turns evenly, reads its slots, and has the motor switched off in
 * the end. The rig is lent for all of it: what the disc does to the light while it is mounted and
 * while it runs down is no firing.
 *
 * <p>{@link #advance()} takes the lines of that rig, one at a time; while the disc is read it comes
 * back only when the reading is over. Who lent the rig sees each of its steps, and looks at the
 * prompt and answers there.
 */
public final class DiscReadingWork extends GuidedWork {
  /** A motor that still runs up gets so many readings. */
  private static final int TRIES = 3;

  /** The part of the whole work that the steps before the reading are. */
  private static final double STEPS_PART = 0.2;

  /** Light and levels take this beside the edges, in seconds. */
  private static final int LIGHT_SECONDS = 3;

  private static final List<String> STEPS = List.of("mount", "fill", "dark", "glasses", "start");
  private static final Set<Answer> MAY_STOP = EnumSet.of(Answer.DONE, Answer.STOP);

  private final RigWork work;
  private final DiscSetup setup;
  private final DiscProfile profile;
  private final CameraOperator operator;
  private int step;
  private boolean isDue;
  private boolean turns;
  private Prompt prompt;
  private String came = Words.say("calibration.refused.stopped");
  private Optional<DiscEdges> edges = Optional.empty();
  private Optional<DiscFinding> finding = Optional.empty();

  /**
   * @param work a rig that has greeted
   * @param setup what is known of the disc
   * @param profile what it is read with
   * @param operator lets an invented disc turn, or no longer; a person does that by hand
   */
  public DiscReadingWork(
      RigWork work, DiscSetup setup, DiscProfile profile, CameraOperator operator) {
    this.work = work;
    this.setup = setup;
    this.profile = profile;
    this.operator = operator;
    prompt = asked(Words.say("disc.caution"));
  }

  /** The raw edges; empty where none were taken. */
  public Optional<DiscEdges> edges() {
    return edges;
  }

  /** What the disc says of the rig; empty where nothing could be read from it. */
  public Optional<DiscFinding> finding() {
    return finding;
  }

  /** What came of it, and what to do where that is nothing. */
  public String came() {
    return came;
  }

  @Override
  public Prompt prompt() {
    return prompt;
  }

  @Override
  void onAnswer(Answer answer) {
    if (prompt.state() == Prompt.State.WORKING) {
      work.stop();
    } else if (step == STEPS.size()) {
      over();
    } else if (answer == Answer.STOP) {
      ends();
    } else {
      stepIsDone();
    }
  }

  private void stepIsDone() {
    step++;
    if (step < STEPS.size()) {
      prompt = asked("");
    } else {
      isDue = true;
      String begins = Words.say("disc.begin", Math.round(setup.seconds()) + LIGHT_SECONDS);
      works(DiscSentences.stage(DiscRun.Stage.LIGHT), begins, 0);
    }
  }

  @Override
  void goOn() {
    if (isDue) {
      isDue = false;
      read();
    } else if (prompt.state() == Prompt.State.ASKING) {
      work.step();
      if (work.isStopped() && step < STEPS.size()) {
        ends();
      } else if (operator.answers()) {
        stepIsDone();
      }
    }
  }

  private Prompt asked(String remark) {
    turns = step == STEPS.size() - 1;
    return new Prompt(
        Prompt.State.ASKING,
        Words.say("disc.step." + STEPS.get(step)),
        remark,
        step + 1,
        STEPS.size(),
        STEPS_PART * step / STEPS.size(),
        operator.answers() ? EnumSet.of(Answer.STOP) : MAY_STOP);
  }

  private void works(String sentence, String remark, double part) {
    // A reading that is made once more does not run the progress back.
    double progress = Math.max(prompt.progress(), STEPS_PART + (1 - STEPS_PART) * part);
    prompt =
        new Prompt(Prompt.State.WORKING, sentence, remark, 0, 0, progress, EnumSet.of(Answer.STOP));
  }

  private void read() {
    operator.turnDisc(true);
    try {
      came = readDisc();
    } finally {
      operator.turnDisc(false);
    }
    ends();
  }

  /** Reads the disc that turns; once more where its speed is not even yet. */
  private String readDisc() {
    for (int tries = 1; ; tries++) {
      DiscRun.Outcome outcome =
          new DiscRun(
                  work,
                  stage -> works(DiscSentences.stage(stage), prompt.remark(), 0),
                  part -> works(prompt.sentence(), prompt.remark(), part))
              .run(setup.seconds(), profile.used(work.rig()));
      if (!(outcome instanceof DiscRun.Taken taken)) {
        return DiscSentences.notTaken(outcome);
      }
      DiscReading.Outcome read = taken.edges().read(setup.disc(), profile.used(work.rig()));
      if (read instanceof DiscReading.Found found) {
        edges = Optional.of(taken.edges());
        finding = Optional.of(new DiscFinding(taken.edges(), found.reading(), profile, setup));
        return String.join(" ", finding.get().brief());
      }
      DiscTrouble why = ((DiscReading.Failed) read).trouble();
      if (tries == TRIES || !(why instanceof DiscTrouble.Wanders)) {
        edges = Optional.of(taken.edges());
        return DiscWords.trouble(why);
      }
      works(prompt.sentence(), DiscWords.trouble(why) + " " + Words.say("disc.again"), 0);
    }
  }

  /** Given back while it still turns, every slot would be a firing. */
  private void ends() {
    step = STEPS.size();
    if (turns && !operator.works()) {
      prompt = new Prompt(Prompt.State.ASKING, Words.say("disc.off"), came, 0, 0, 1, MAY_STOP);
    } else {
      over();
    }
  }

  private void over() {
    String last = turns ? came + " " + Words.say("disc.over") : came;
    prompt = new Prompt(Prompt.State.OVER, last, "", 0, 0, 1, Set.of());
  }
}
