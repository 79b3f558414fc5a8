package org.halflight.desk.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.bench.RigCalibration;
import org.halflight.calibration.RigCheck;
import org.halflight.chart.DiscChart;
import org.halflight.chart.Picture;
import org.halflight.chart.PulseFitChart;
import org.halflight.chart.RigCheckChart;
import org.halflight.firstlight.FirstLight;
import org.halflight.rig.RigMessage;
import org.halflight.session.Session;
import org.halflight.upload.FirmwareImages;
import org.halflight.upload.UploadStep;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.CalibrationSentences;
import org.halflight.workflow.DiscFinding;
import org.halflight.workflow.FirmwareWork;
import org.halflight.workflow.FirstLightInSession;
import org.halflight.workflow.FirstLightWork;
import org.halflight.workflow.Prompt;
import org.halflight.workflow.ShippedFirmware;

/** Turns what happens to the rig into what the window shows. For the bench thread only. */
public final class RigModel {
  private static final List<RigCalibration.Stage> STAGES = List.of(RigCalibration.Stage.values());

  private static final List<UploadStep> UPLOAD_STEPS = List.of(UploadStep.values());

  /** Seconds that the stages of a calibration take, the clock left out. */
  private static final double[] STAGE_SECONDS = {3, 6, 16, 3};

  private static final double CHECK_SECONDS = 4;
  private static final double STEP = 0.01;

  private final Optional<FirmwareImages> firmware = ShippedFirmware.ifWhole();
  private RigView.Doing doing = RigView.Doing.NOTHING;
  private String sentence = ready();
  private Optional<RigCalibration.Stage> stage = Optional.empty();
  private double stageFromSeconds;
  private double clockSeconds;
  private double progress;
  private FirstLightView first = FirstLightView.NOTHING;
  private int firingsBefore;
  private Optional<Picture> check = Optional.empty();
  private Optional<Picture> fit = Optional.empty();
  private Optional<Picture> residuals = Optional.empty();
  private Optional<Picture> disc = Optional.empty();

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
   * The reading of a disc shows something.
   *
   * @return whether the window has something new to show
   */
  public boolean shows(Prompt now) {
    String words =
        now.step() > 0
            ? Words.say("desk.rig.disc.step", now.step(), now.steps(), now.sentence())
            : now.sentence();
    String says = now.remark().isEmpty() ? words : now.remark() + " " + words;
    RigView.Doing next =
        now.state() == Prompt.State.ASKING ? RigView.Doing.DISC_ASKED : RigView.Doing.DISC_READING;
    boolean moved =
        next != doing || !says.equals(sentence) || Math.abs(now.progress() - progress) >= STEP;
    if (moved) {
      doing = next;
      sentence = says;
      progress = now.progress();
    }
    return moved;
  }

  /** A disc was read: what it says of the rig. */
  public void discRead(DiscFinding found) {
    disc =
        Optional.of(
            new DiscChart(found.comparison(), Sentences.source(found.edges().rig().serial())));
  }

  /**
   * First light begins.
   *
   * @param ofFirings how many firings the session has
   */
  public void firstLightBegins(int ofFirings) {
    firingsBefore = ofFirings;
    begin(RigView.Doing.FIRST_LIGHT, Words.say("desk.rig.firstLight"), 0);
  }

  /**
   * First light shows something.
   *
   * @return whether the window has something new to show
   */
  public boolean shows(FirstLightWork now) {
    Optional<Prompt> prompt =
        Optional.of(now.prompt()).filter(its -> its.state() != Prompt.State.OVER);
    FirstLightView next =
        new FirstLightView(
            Optional.of(now.state()),
            prompt,
            Optional.of(now.step()),
            now.live(),
            now.asksForVolts());
    boolean moved = !next.equals(first);
    first = next;
    progress = now.prompt().progress();
    return moved;
  }

  /** A page was written, which may be the first one. */
  public void paged(Path page) {
    first =
        new FirstLightView(
            first.state().map(state -> FirstLightInSession.paged(state, page)),
            first.prompt(),
            first.step(),
            first.live(),
            first.asksForVolts());
  }

  /** First light with what the session has seen since. */
  private FirstLightView firstLight(Session session) {
    if (first.isUnderWay() || first.state().isEmpty()) {
      return first;
    }
    FirstLight state = FirstLightInSession.of(first.state().get(), session, firingsBefore);
    return new FirstLightView(
        Optional.of(state), Optional.empty(), state.next(), first.live(), false);
  }

  /** The board is looked for, to put firmware on it. */
  public void uploadBegins() {
    begin(RigView.Doing.UPLOADING, Words.say("desk.rig.upload.searching"), 0);
  }

  /**
   * The upload goes on.
   *
   * @param fraction of all that is to be written and read back, 0 to 1
   */
  public void uploadAt(UploadStep step, double fraction) {
    sentence =
        Words.say(
            "desk.rig.upload.progress",
            UPLOAD_STEPS.indexOf(step) + 1,
            UPLOAD_STEPS.size(),
            Words.of("upload.step", step));
    progress = fraction;
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
    double whole = CHECK_SECONDS;
    double before = 0;
    double own = CHECK_SECONDS;
    if (doing == RigView.Doing.CALIBRATING) {
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

  /** A rig was checked. */
  public void checked(RigCheck found, String serial) {
    check = Optional.of(new RigCheckChart(found, Sentences.source(serial)));
    says(String.join(" ", CalibrationSentences.check(found)));
  }

  /** A rig was calibrated. */
  public void calibrated(RigCalibration.Calibrated done) {
    fit = Optional.of(chart(done, false));
    residuals = Optional.of(chart(done, true));
    // What was found against the profile of before says nothing about this one.
    check = Optional.empty();
    String missing = CalibrationSentences.clockMissing(done, clockSeconds).orElse("");
    says((Words.say("desk.rig.calibrated") + " " + missing).strip());
  }

  private static PulseFitChart chart(RigCalibration.Calibrated done, boolean left) {
    return new PulseFitChart(
        done.pulses(), done.fit(), left, Sentences.source(done.profile().rig().serial()));
  }

  private static String ready() {
    return Words.say("desk.rig.ready");
  }

  private static String ready(Optional<RigMessage.Greeting> greeting, boolean due) {
    if (greeting.isEmpty()) {
      return Words.say(due ? "desk.rig.checkDue" : "desk.rig.noneYet");
    }
    if (!greeting.get().board().referenceLed()) {
      return Words.say("desk.rig.ready.noLed");
    }
    return due ? Words.say("desk.rig.checkDue") : ready();
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
        sentence.equals(ready()) ? ready(greeting, due) : sentence,
        progress,
        greeting
            .map(rig -> Words.say("desk.rig.heading", rig.serial(), rig.kind(), rig.firmware()))
            .orElseGet(() -> Words.say("desk.rig.none")),
        standing(greeting, session),
        clock,
        due,
        session.profileUse().profile().map(ProfileWords::lines).orElse(List.of()),
        check,
        fit,
        residuals,
        disc,
        firstLight(session));
  }

  /** Whether firings count as calibrated, and what there is to say of the firmware. */
  private String standing(Optional<RigMessage.Greeting> greeting, Session session) {
    return Stream.concat(
            ProfileWords.standing(session.profileUse()).stream(),
            firmware
                .flatMap(images -> greeting.flatMap(rig -> FirmwareWork.ageSentence(images, rig)))
                .stream())
        .collect(Collectors.joining(" "));
  }
}
