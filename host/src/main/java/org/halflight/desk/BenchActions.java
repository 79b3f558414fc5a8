package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.desk.view.BenchModel;
import org.halflight.desk.view.Message;
import org.halflight.session.Assembly;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.BenchLight;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.RunActions;

/** What the person does at the bench, done to rig and session. For the bench thread only. */
final class BenchActions {
  private final BenchDriver driver;
  private final BenchModel model;
  private final Optional<PracticeOperator> camera;
  private final Archive archive;
  private final RigActions rig;
  private final BenchLight light;
  private final RunActions run;
  private final PortActions ports;

  BenchActions(
      BenchDriver driver,
      BenchModel model,
      Optional<PracticeOperator> camera,
      Archive archive,
      RigActions rig,
      BenchLight light,
      RunActions run,
      PortActions ports) {
    this.driver = driver;
    this.model = model;
    this.camera = camera;
    this.archive = archive;
    this.rig = rig;
    this.light = light;
    this.run = run;
    this.ports = ports;
  }

  /** What can be done to the rig itself. */
  RigActions rig() {
    return rig;
  }

  /** Setting and testing the light. */
  BenchLight light() {
    return light;
  }

  /** Which port is used, and which bench. */
  PortActions ports() {
    return ports;
  }

  /** To the rig, or to the practice rig. */
  void changeBench() {
    if (isAtWork()) {
      sayAtWork();
    } else {
      ports.change();
    }
  }

  /** What is done in a run. */
  RunActions run() {
    return run;
  }

  /** The operator of the invented camera, on the practice rig only. */
  Optional<PracticeOperator> camera() {
    return camera;
  }

  List<SessionEvent> beginRun(RunSetup setup) {
    useDial(setup);
    model.runBegins();
    List<SessionEvent> news = run.begin(setup);
    archive.runBegan(session().run(), session().setup().orElse(setup));
    return news;
  }

  /** A switch of a run in stages is flipped; outside of one it says so. */
  List<SessionEvent> flip(Assembly.Switch one) {
    if (isAtWork()) {
      sayAtWork();
      return List.of();
    }
    if (run.stage().isEmpty()) {
      model.say(new Message(Message.Kind.ATTENTION, Words.say("stage.none.desk")));
      return List.of();
    }
    model.runBegins();
    List<SessionEvent> news = run.flip(one);
    session().setup().ifPresent(setup -> archive.runBegan(session().run(), setup));
    return news;
  }

  private void useDial(RunSetup setup) {
    camera.ifPresent(its -> its.useDial(setup.markings().speeds()));
  }

  List<SessionEvent> handle(SessionInput input) {
    return driver.handle(input);
  }

  /** The last firing of the run is not counted. */
  List<SessionEvent> reject() {
    return driver.reject(Words.say("run.noReason"));
  }

  /** A rejected firing gets another reason. */
  List<SessionEvent> changeReason(int firing, String reason) {
    return driver.changeReason(OptionalInt.of(firing), reason);
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
    if (isAtWork()) {
      sayAtWork();
      return List.of();
    }
    List<SessionEvent> news = doing.get();
    // The run may be another one now, or none.
    session()
        .setup()
        .ifPresent(
            setup -> {
              useDial(setup);
              archive.runBegan(session().run(), setup);
            });
    followTurns();
    return news;
  }

  /** The practice camera is turned as the person says to have turned it. */
  private void followTurns() {
    camera.ifPresent(its -> its.follow(session().turns()));
  }

  List<SessionEvent> learnCocking() {
    return driver.handle(new SessionInput.CockingLearnt(!session().isLearningCocking()));
  }

  List<SessionEvent> lensCap() {
    boolean on = !session().isCapOn();
    model.say(new Message(Message.Kind.NEWS, Words.say(on ? "desk.say.capOn" : "desk.say.capOff")));
    return driver.handle(new SessionInput.LensCap(on));
  }

  /** Something was adjusted. */
  List<SessionEvent> adjusted(String words) {
    List<SessionEvent> news = driver.handle(new SessionInput.Adjusted(words));
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.AdjustmentMarked marked) {
        archive.adjusted(marked.adjusted());
      }
    }
    if (run.linkage().isDue()) {
      run.linkage().answer(Answer.ADJUSTED);
    }
    followTurns();
    return news;
  }

  /** The speed shown and another are adjusted at once, or one at a time again. */
  List<SessionEvent> two(Optional<MarkedSpeed> looked) {
    if (session().two().isPresent()) {
      return driver.handle(new SessionInput.TwoChosen(Optional.empty()));
    }
    Optional<MarkedSpeed> shown = session().shown().or(() -> looked);
    Optional<TwoSpeeds> pair =
        shown.flatMap(
            speed ->
                looked
                    .filter(other -> !other.equals(speed))
                    .map(other -> TwoSpeeds.of(speed, other))
                    .or(() -> TwoSpeeds.with(speed, dial())));
    if (pair.isEmpty()) {
      model.say(new Message(Message.Kind.ATTENTION, Words.say("run.twoSpeeds")));
      return List.of();
    }
    return driver.handle(new SessionInput.TwoChosen(pair));
  }

  /** All speeds of the camera: a run of adjusting may have but one. */
  private List<MarkedSpeed> dial() {
    return model
        .dial()
        .or(() -> session().setup().map(RunSetup::markings))
        .map(Dial::speeds)
        .orElse(List.of());
  }

  /** The camera on the bench was named. */
  void named(String label, Dial dial) {
    model.named(label, dial);
  }

  void isNobodys() {
    model.isNobodys();
  }

  /** A screw plunger was read: what is said of it, or why the readings are none. */
  void plunger(String advance, String shutter) {
    model.news(run.plunger(advance, shutter));
  }

  /** Measures full light again. */
  void fullLight() {
    if (isAtWork()) {
      sayAtWork();
      return;
    }
    light.test(LightPlan.full());
    if (!light.isTesting()) {
      model.say(new Message(Message.Kind.ATTENTION, light.testPrompt().sentence()));
    }
  }

  /** The light is aimed, also where it is set already. */
  void aim() {
    if (isAtWork()) {
      sayAtWork();
    } else {
      light.aim();
    }
  }

  /** Looks whether the screen reaches the sensor. */
  void checkScreen() {
    if (isAtWork()) {
      sayAtWork();
    } else {
      light.checkScreen();
    }
  }

  void setLight() {
    if (isAtWork()) {
      sayAtWork();
    } else {
      light.set();
    }
  }

  private boolean isAtWork() {
    return rig.isAtWork() || light.isTesting();
  }

  private void sayAtWork() {
    model.say(
        new Message(
            Message.Kind.ATTENTION,
            Words.say(rig.isAtWork() ? "desk.rig.atWork" : "desk.tried.atWork")));
  }

  void fire() {
    if (isAtWork()) {
      sayAtWork();
      return;
    }
    if (run.linkage().underWay().isPresent()) {
      run.linkage().press();
    } else {
      camera.ifPresent(its -> its.press(session().setting()));
    }
  }

  void cock() {
    camera.filter(model -> !isAtWork()).ifPresent(PracticeOperator::cockWithLight);
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
