package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.CalibrationSentences;
import org.halflight.bench.DiscRun;
import org.halflight.bench.DiscSentences;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigCheckRun;
import org.halflight.calibration.RigCheck;
import org.halflight.chart.DiscChart;
import org.halflight.chart.Picture;
import org.halflight.chart.PulseFitChart;
import org.halflight.chart.RigCheckChart;
import org.halflight.rig.RigMessage;
import org.halflight.session.Session;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** Turns what happens to the rig into what the window shows. For the bench thread only. */
public final class RigModel {
  private static final List<RigCalibration.Stage> STAGES = List.of(RigCalibration.Stage.values());

  /** Seconds that the stages of a calibration take, the clock left out. */
  private static final double[] STAGE_SECONDS = {3, 6, 16, 3};

  private static final String READY = Words.say("desk.rig.ready");
  private static final double CHECK_SECONDS = 4;
  private static final double DISC_SECONDS = 4 + DiscRun.USUAL_SECONDS;
  private static final double STEP = 0.01;

  /** The part of all that the steps before a reading are. */
  private static final double DISC_STEPS_PART = 0.4;

  private RigView.Doing doing = RigView.Doing.NOTHING;
  private String sentence = READY;
  private Optional<RigCalibration.Stage> stage = Optional.empty();
  private double stageFromSeconds;
  private double clockSeconds;
  private double progress;
  private Optional<Picture> check = Optional.empty();
  private Optional<Picture> fit = Optional.empty();
  private Optional<Picture> residuals = Optional.empty();
  private Optional<Picture> disc = Optional.empty();
  private double discAsked;
  private boolean discAskShown;

  /** A rig check begins. */
  public void checkBegins(double nowSeconds) {
    begin(RigView.Doing.CHECKING, Words.say("desk.rig.checking"), nowSeconds);
  }

  /**
   * A calibration begins.
   *
   * @param ofClockSeconds how long the clocks will be held against each other
   */
  public void calibrationBegins(double nowSeconds, double ofClockSeconds) {
    begin(RigView.Doing.CALIBRATING, Words.say("desk.rig.calibrating"), nowSeconds);
    clockSeconds = ofClockSeconds;
  }

  /**
   * The person is to do something about a disc.
   *
   * @param asked what
   * @param part of the steps that is done, 0 to 1
   */
  public void discAsks(String asked, double part) {
    doing = RigView.Doing.DISC_ASKED;
    sentence = asked;
    discAsked = DISC_STEPS_PART * part;
    progress = discAsked;
    discAskShown = false;
  }

  /** A disc is read. */
  public void discBegins(double nowSeconds) {
    begin(RigView.Doing.DISC_READING, DiscSentences.stage(DiscRun.Stage.LIGHT), nowSeconds);
    discAsked = DISC_STEPS_PART;
    progress = discAsked;
  }

  /** The reading of a disc goes on with its next stage. */
  public void discStage(DiscRun.Stage next) {
    says(DiscSentences.stage(next));
  }

  /** A disc was read: what it says of the rig. */
  public void discRead(DiscComparison comparison, String serial, List<String> said) {
    disc = Optional.of(new DiscChart(comparison, Sentences.source(serial)));
    says(String.join(" ", said));
  }

  private void begin(RigView.Doing what, String says, double nowSeconds) {
    doing = what;
    sentence = says;
    stage = Optional.empty();
    stageFromSeconds = nowSeconds;
    progress = 0;
  }

  /** A calibration goes on with its next stage. */
  public void stage(RigCalibration.Stage next, double nowSeconds) {
    stage = Optional.of(next);
    stageFromSeconds = nowSeconds;
    sentence = CalibrationSentences.stage(next);
  }

  /**
   * Time goes on.
   *
   * @return whether the window has something new to show
   */
  public boolean now(double nowSeconds) {
    if (doing == RigView.Doing.DISC_ASKED) {
      boolean first = !discAskShown;
      discAskShown = true;
      return first;
    }
    double whole = CHECK_SECONDS;
    double before = 0;
    double own = CHECK_SECONDS;
    if (doing == RigView.Doing.DISC_READING) {
      own = DISC_SECONDS;
      whole = DISC_SECONDS / (1 - discAsked);
      before = whole * discAsked;
    } else if (doing == RigView.Doing.CALIBRATING) {
      int at = stage.map(STAGES::indexOf).orElse(0);
      whole = clockSeconds;
      for (int i = 0; i < STAGE_SECONDS.length; i++) {
        whole += STAGE_SECONDS[i];
        before += i < at ? STAGE_SECONDS[i] : 0;
      }
      own = at < STAGE_SECONDS.length ? STAGE_SECONDS[at] : clockSeconds;
    }
    double gone = Math.min(own, nowSeconds - stageFromSeconds);
    double next = Math.min(1, (before + gone) / Math.max(1, whole));
    boolean moved = next - progress >= STEP;
    progress = Math.max(progress, next);
    return moved;
  }

  /** A rig check came to something. */
  public void checked(RigCheckRun.Outcome outcome, String serial) {
    if (outcome instanceof RigCheckRun.Refused refused) {
      says(CalibrationSentences.refused(refused.refusal()));
      return;
    }
    RigCheck found = ((RigCheckRun.Checked) outcome).check();
    check = Optional.of(new RigCheckChart(found, Sentences.source(serial)));
    says(String.join(" ", CalibrationSentences.check(found)));
  }

  /** A calibration came to something. */
  public void calibrated(RigCalibration.Outcome outcome) {
    if (outcome instanceof RigCalibration.Refused refused) {
      says(CalibrationSentences.refused(refused.refusal()));
      return;
    }
    RigCalibration.Calibrated done = (RigCalibration.Calibrated) outcome;
    fit = Optional.of(chart(done, false));
    residuals = Optional.of(chart(done, true));
    // What was found against the profile of before says nothing about this one.
    check = Optional.empty();
    List<String> said = new ArrayList<>();
    said.add(Words.say("desk.rig.calibrated"));
    if (clockSeconds > 0 && done.profile().clock().isEmpty()) {
      said.add(Words.say("calibration.clock.none"));
    }
    says(String.join(" ", said));
  }

  private static PulseFitChart chart(RigCalibration.Calibrated done, boolean left) {
    return new PulseFitChart(
        done.pulses(), done.fit(), left, Sentences.source(done.profile().rig().serial()));
  }

  /** This is to be said. */
  public void says(String words) {
    sentence = words;
  }

  /** The rig is the session's again. */
  public void idle() {
    doing = RigView.Doing.NOTHING;
    stage = Optional.empty();
  }

  /**
   * What the window shows.
   *
   * @param clock the clocks of rig and computer, a sentence a line
   */
  RigView view(Optional<RigMessage.Greeting> greeting, Session session, List<String> clock) {
    boolean due = session.isRigCheckDue();
    return new RigView(
        doing,
        due && sentence.equals(READY) ? Words.say("desk.rig.checkDue") : sentence,
        progress,
        greeting
            .map(rig -> Words.say("desk.rig.heading", rig.serial(), rig.kind(), rig.firmware()))
            .orElseGet(() -> Words.say("desk.rig.none")),
        String.join(" ", ProfileWords.standing(session.profileUse())),
        clock,
        due,
        session.profileUse().profile().map(ProfileWords::lines).orElse(List.of()),
        check,
        fit,
        residuals,
        disc);
  }
}
