package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightProbe;
import org.halflight.desk.view.LightTestModel;
import org.halflight.desk.view.Message;
import org.halflight.exposure.LightLevels;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.StopScale;
import org.halflight.job.CheckState;
import org.halflight.session.DialSetting;
import org.halflight.session.LightReading;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.trouble.Trouble;
import org.halflight.words.EventSentences;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;

/**
 * Leak test and stop check at the bench: each reading is asked for, taken, skipped or asked for
 * again. For the bench thread only.
 */
final class LightTestHands {
  /** The model camera has done what was asked well before. */
  private static final long MODEL_NANOS = 300_000_000;

  private final BenchDriver driver;
  private final LightTestModel model;
  private final Optional<PracticeOperator> camera;
  private final BooleanSupplier ready;
  private Optional<LightProbe> probe = Optional.empty();
  private OptionalLong readFromNanos = OptionalLong.empty();

  /** The check of the run that asked for the test that goes on; empty where a button did. */
  private Optional<DialSetting> askedBy = Optional.empty();

  /** Where the run stood when the person stopped its test; it is not begun again by itself. */
  private Optional<Stands> stoppedAt = Optional.empty();

  private Optional<SessionInput.LightTestEnds> ended = Optional.empty();
  private Optional<Message> found = Optional.empty();
  private boolean changed;

  private record Stands(int run, Optional<DialSetting> setting) {}

  /**
   * @param ready whether the rig has nothing else to do
   */
  LightTestHands(
      BenchDriver driver,
      LightTestModel model,
      Optional<PracticeOperator> camera,
      BooleanSupplier ready) {
    this.driver = driver;
    this.model = model;
    this.camera = camera;
    this.ready = ready;
  }

  /** Whether a test goes on. */
  boolean isUnderWay() {
    return model.step().isPresent();
  }

  /** Begins the leak test, unless the rig has something else to do. */
  void leak() {
    begin(LightPlan.leak());
  }

  /**
   * Begins the stop check, unless the rig has something else to do.
   *
   * @param stops as the person wrote them
   */
  void stops(List<String> stops) {
    try {
      begin(LightPlan.stops(LightPlan.numbers(stops)));
    } catch (Trouble noStops) {
      model.says(noStops.getMessage());
    }
  }

  /**
   * Measures full light again, unless the rig has something else to do. Where the shutter is held
   * open already, or the model camera does it, it is read at once; else that is asked for.
   */
  void fullLight() {
    boolean open = session().seesLight();
    begin(LightPlan.full(), () -> open ? !driver.isSettingLight() : ready.getAsBoolean());
    changed = true;
    if (isUnderWay() && (open || camera.isPresent())) {
      done();
    } else if (!isUnderWay()) {
      found = Optional.of(new Message(Message.Kind.ATTENTION, model.view().sentence()));
    }
  }

  /**
   * The key for 'done': reads what was asked for, or begins the test that the run has come to.
   *
   * @return whether there was any such thing
   */
  boolean accept() {
    if (isUnderWay()) {
      done();
      return true;
    }
    stoppedAt = Optional.empty();
    return ofRun().isPresent();
  }

  private void begin(LightPlan plan) {
    begin(plan, ready);
  }

  private void begin(LightPlan plan, BooleanSupplier mayBegin) {
    if (isUnderWay()) {
      return;
    }
    if (session().light().isEmpty()) {
      model.says(Words.say("desk.tried.noLight"));
    } else if (!mayBegin.getAsBoolean()) {
      model.says(Words.say("desk.tried.notNow"));
    } else {
      driver.beginReadings();
      model.begins(plan);
    }
  }

  /** The test of the light that the run has come to. */
  private Optional<UntimedTest> ofRun() {
    return session().isRunDone()
        ? Optional.empty()
        : session().untimedTest().filter(UntimedTest::isOfTheLight);
  }

  /** Begins the test that the run has come to, and leaves that which it has gone on from. */
  private void follow() {
    if (isUnderWay()) {
      if (askedBy.isPresent() && !session().setting().equals(askedBy)) {
        leave();
      }
      return;
    }
    Stands here = new Stands(session().run(), session().setting());
    if (ofRun().isEmpty() || stoppedAt.equals(Optional.of(here))) {
      return;
    }
    String before = model.view().sentence();
    begin(LightPlan.of(ofRun().get(), session().setup().orElseThrow().criteria().stops()));
    if (isUnderWay()) {
      askedBy = here.setting();
    }
    changed |= !model.view().sentence().equals(before);
  }

  /** The person has done what was asked. */
  void done() {
    if (!isUnderWay() || model.isReading()) {
      return;
    }
    camera.ifPresent(its -> its.prepare(model.step().orElseThrow()));
    readFromNanos =
        OptionalLong.of(driver.workbench().now() + (camera.isEmpty() ? 0 : MODEL_NANOS));
    model.reads();
  }

  /** The person skips this reading. */
  void skip() {
    if (isUnderWay()) {
      forget();
      if (!model.skipped()) {
        end(true);
      }
    }
  }

  /** Ends the test; what was read stays. A run stays where it is until the person goes on. */
  void stop() {
    if (isUnderWay()) {
      stoppedAt = Optional.of(new Stands(session().run(), session().setting()));
      leave();
    }
  }

  private void leave() {
    forget();
    end(false);
  }

  private void forget() {
    probe = Optional.empty();
    readFromNanos = OptionalLong.empty();
  }

  private void end(boolean toItsEnd) {
    Optional<UntimedTest> check = model.check();
    camera.ifPresent(PracticeOperator::putBack);
    driver.endReadings();
    Optional<ExtraTest> came = model.ends(session().readings(), session().runs(), session().run());
    boolean asked =
        check.isPresent()
            && session().setup().filter(s -> s.untimedTests().contains(check.get())).isPresent();
    if (toItsEnd && asked && (askedBy.isPresent() || came.isPresent())) {
      ended = check.map(SessionInput.LightTestEnds::new);
    }
    askedBy = Optional.empty();
    found = came.map(this::said);
    changed = true;
  }

  private Message said(ExtraTest tried) {
    String words = ExtraTestWords.lines(tried).get(0);
    boolean open = tried instanceof StopScale && session().seesLight();
    return new Message(
        tried.state() == CheckState.OK ? Message.Kind.NEWS : Message.Kind.ATTENTION,
        open ? Words.say("desk.test.letClose", words) : words);
  }

  /** What a test that has just ended came to, once. */
  Optional<Message> found() {
    Optional<Message> once = found;
    found = Optional.empty();
    return once;
  }

  /**
   * Goes on with the reading that is under way, and with the run.
   *
   * @return what there is to tell because of it; empty where the window has nothing new to show
   */
  Optional<List<SessionEvent>> goesOn() {
    follow();
    goOn();
    if (ended.isPresent()) {
      SessionInput.LightTestEnds told = ended.get();
      ended = Optional.empty();
      return Optional.of(driver.handle(told));
    }
    boolean news = changed;
    changed = false;
    return news ? Optional.of(List.of()) : Optional.empty();
  }

  private void goOn() {
    if (readFromNanos.isPresent() && driver.workbench().now() >= readFromNanos.getAsLong()) {
      readFromNanos = OptionalLong.empty();
      LightPlan.Step step = model.step().orElseThrow();
      probe = Optional.of(driver.readLight(step.what(), step.at(), step.opening()));
    }
    if (probe.isEmpty()) {
      return;
    }
    LightProbe under = probe.get();
    model.progress(under.progress());
    if (under.step() == LightProbe.Step.READING) {
      return;
    }
    probe = Optional.empty();
    changed = true;
    switch (under.step()) {
      case NOT_STILL -> model.again(Words.say("reading.notStill"));
      case NO_ANSWER -> {
        // With the link the session has forgotten that no opening counts.
        driver.beginReadings();
        model.again(Words.say("desk.tried.noAnswer"));
      }
      default -> read(under.reading().orElseThrow());
    }
  }

  private void read(LightReading reading) {
    boolean full = reading.what() == LightReading.What.FULL;
    boolean opens =
        full || (model.step().orElseThrow().needed() && reading.what() == LightReading.What.STOP);
    double dark = session().light().map(light -> light.darkCounts()).orElse(0.0);
    if (opens && reading.counts() - dark < StopScale.LEAST_COUNTS) {
      model.again(Words.say("desk.tried.notOpen"));
    } else if (full) {
      String words =
          Words.say("desk.test.letClose", fullLight(reading, session().light().orElseThrow()));
      end(true);
      model.says(words);
      found = Optional.of(new Message(Message.Kind.NEWS, words));
    } else if (!model.wasRead(
        EventSentences.of(new SessionEvent.LightWasRead(reading)).orElseThrow())) {
      end(true);
    }
  }

  private static String fullLight(LightReading reading, LightLevels set) {
    double share = (reading.counts() - set.darkCounts()) / (set.fullCounts() - set.darkCounts());
    return EventSentences.of(new SessionEvent.FullLightRead(share)).orElseThrow();
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
