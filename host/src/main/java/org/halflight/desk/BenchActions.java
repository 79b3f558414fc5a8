package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;
import org.halflight.bench.BenchDriver;
import org.halflight.desk.view.AdjustingMark;
import org.halflight.desk.view.BenchModel;
import org.halflight.desk.view.Message;
import org.halflight.session.Question;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.speeds.Dial;
import org.halflight.words.Words;
import org.halflight.workflow.PracticeOperator;

/** What the person does at the bench, done to rig and session. For the bench thread only. */
final class BenchActions {
  /** The model shutter is open well before. */
  private static final long OPENING_NANOS = 300_000_000;

  private final BenchDriver driver;
  private final BenchModel model;
  private final Optional<PracticeOperator> camera;
  private final Archive archive;
  private final RigActions rig;
  private final LightTestHands lightTest;
  private OptionalLong openFromNanos = OptionalLong.empty();

  BenchActions(
      BenchDriver driver,
      BenchModel model,
      Optional<PracticeOperator> camera,
      Archive archive,
      RigActions rig,
      LightTestHands lightTest) {
    this.lightTest = lightTest;
    this.rig = rig;
    this.archive = archive;
    this.driver = driver;
    this.model = model;
    this.camera = camera;
  }

  /** What can be done to the rig itself. */
  RigActions rig() {
    return rig;
  }

  /** Leak test and stop check. */
  LightTestHands lightTest() {
    return lightTest;
  }

  /** The model camera, on the practice rig only. */
  Optional<PracticeOperator> camera() {
    return camera;
  }

  List<SessionEvent> beginRun(RunSetup setup) {
    lightTest.stop();
    camera.ifPresent(model -> model.useDial(BenchActions.dial(setup)));
    model.runBegins();
    List<SessionEvent> news = driver.handle(new SessionInput.RunBegins(setup));
    archive.runBegan(session().run(), setup);
    return news;
  }

  /** The person has done what was asked, or lets firings stay as shown. */
  List<SessionEvent> accept() {
    return lightTest.accept() ? List.of() : handle(new SessionInput.AcceptedAsShown());
  }

  List<SessionEvent> handle(SessionInput input) {
    return driver.handle(input);
  }

  /** The last firing of the run is not counted. */
  List<SessionEvent> reject() {
    return driver.reject(Words.say("run.noReason"));
  }

  /** What was done last is undone. */
  List<SessionEvent> undo() {
    return turn(driver::undo);
  }

  /** What was undone last is done again. */
  List<SessionEvent> redo() {
    return turn(driver::redo);
  }

  private List<SessionEvent> turn(Supplier<List<SessionEvent>> doing) {
    if (rig.isAtWork() || lightTest.isUnderWay()) {
      sayAtWork();
      return List.of();
    }
    List<SessionEvent> news = doing.get();
    // The run may be another one now, or none.
    session()
        .setup()
        .ifPresent(
            setup -> {
              camera.ifPresent(model -> model.useDial(BenchActions.dial(setup)));
              archive.runBegan(session().run(), setup);
            });
    return news;
  }

  /** The open question is answered: the firings belong to the other speed. */
  List<SessionEvent> move() {
    Optional<Question> question = session().question();
    return question.isPresent() ? driver.handle(question.get().move()) : List.of();
  }

  List<SessionEvent> closedByHand() {
    List<SessionEvent> news = driver.handle(new SessionInput.ClosedByHand());
    camera.ifPresent(model -> model.hold(false));
    return news;
  }

  List<SessionEvent> learnCocking() {
    boolean begins = !session().isLearningCocking();
    if (begins) {
      model.say(new Message(Message.Kind.NEWS, Words.say("desk.say.learning")));
    }
    return driver.handle(new SessionInput.CockingLearnt(begins));
  }

  List<SessionEvent> lensCap() {
    boolean on = !session().isCapOn();
    model.say(new Message(Message.Kind.NEWS, Words.say(on ? "desk.say.capOn" : "desk.say.capOff")));
    return driver.handle(new SessionInput.LensCap(on));
  }

  void mark(String words) {
    AdjustingMark mark = model.mark(words);
    archive.adjusted(mark);
  }

  /** The camera on the bench was named. */
  void named(String label, Dial dial) {
    model.named(label, dial);
  }

  void isNobodys() {
    model.isNobodys();
  }

  /** Measures full light again. */
  void fullLight() {
    if (rig.isAtWork() || lightTest.isUnderWay()) {
      sayAtWork();
    } else {
      lightTest.fullLight();
    }
  }

  void setLight() {
    if (rig.isAtWork() || lightTest.isUnderWay()) {
      sayAtWork();
      return;
    }
    model.lightBegan(driver.setLight());
  }

  /** The person holds the shutter open; the model shutter needs a moment until it is. */
  void shutterIsOpen() {
    if (camera.isEmpty()) {
      driver.shutterIsOpen();
      return;
    }
    camera.get().hold(true);
    openFromNanos = OptionalLong.of(driver.workbench().now() + OPENING_NANOS);
  }

  /** Does what waits for its time. */
  void waitedFor() {
    if (openFromNanos.isPresent() && driver.workbench().now() >= openFromNanos.getAsLong()) {
      openFromNanos = OptionalLong.empty();
      driver.shutterIsOpen();
    }
  }

  private void sayAtWork() {
    model.say(
        new Message(
            Message.Kind.ATTENTION,
            Words.say(rig.isAtWork() ? "desk.rig.atWork" : "desk.tried.atWork")));
  }

  void fire() {
    if (rig.isAtWork() || lightTest.isUnderWay()) {
      sayAtWork();
      return;
    }
    camera.ifPresent(its -> its.press(session().setting()));
  }

  void cock() {
    camera
        .filter(model -> !rig.isAtWork() && !lightTest.isUnderWay())
        .ifPresent(PracticeOperator::cockWithLight);
  }

  private static List<org.halflight.speeds.MarkedSpeed> dial(RunSetup setup) {
    return setup.markings().speeds();
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
