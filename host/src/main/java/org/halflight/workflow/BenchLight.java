package org.halflight.workflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.bench.AimMeter;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightSentences;
import org.halflight.bench.ScreenCheck;
import org.halflight.light.Aim;
import org.halflight.rig.RigMessage;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * What is done about the light at the bench, one thing at a time: it is set, tested, measured
 * again. A run that comes to a light test begins it by itself, and a test that the run has gone on
 * from is left. For one thread.
 */
public final class BenchLight {
  private final BenchDriver driver;
  private final CameraOperator operator;
  private Optional<LightSettingWork> setting = Optional.empty();
  private Optional<LightTestWork> test = Optional.empty();

  /** What the run showed when it asked for the test that goes on; empty where a person did. */
  private Optional<DialSetting> askedBy = Optional.empty();

  /** Where the run was when the person stopped its test; it is not begun again by itself. */
  private Optional<RunPoint> stoppedAt = Optional.empty();

  private Optional<LightTestWork> ended = Optional.empty();
  private final List<SessionEvent> news = new ArrayList<>();
  private String said = Words.say("lightTest.ready");

  /** Whether the light is to be aimed as soon as the rig is free for it. */
  private boolean wantsAim;

  /** Whether it is to be set once the operator has let the shutter close. */
  private boolean setsSoon;

  private Optional<ScreenCheck> screen = Optional.empty();

  /** A shutter that is held open for the light is so for longer. Our own limit. */
  private static final double HELD_SECONDS = 1.5;

  private record RunPoint(int run, Optional<DialSetting> setting) {}

  /** The light of a driver's rig, with whoever works the camera before it. */
  public BenchLight(BenchDriver driver, CameraOperator operator) {
    this.driver = driver;
    this.operator = operator;
  }

  /** The setting or the test that goes on. */
  public Optional<GuidedWork> underWay() {
    return isBeingSet() ? setting.map(GuidedWork.class::cast) : test.map(GuidedWork.class::cast);
  }

  /** The setting that goes on or was made last. */
  public Optional<LightSettingWork> setting() {
    return setting;
  }

  private boolean isBeingSet() {
    return setting.filter(its -> its.prompt().state() != Prompt.State.OVER).isPresent();
  }

  /** Whether a test goes on. */
  public boolean isTesting() {
    return test.isPresent();
  }

  /** The setting that goes on or was made last; else how the light is. */
  public Prompt settingPrompt() {
    return setting
        .map(GuidedWork::prompt)
        .orElseGet(
            () ->
                over(
                    session()
                        .light()
                        .map(set -> LightSentences.done(set, session().hasFixedLevel()))
                        .orElseGet(() -> Words.say("light.notSet"))));
  }

  /** The test that goes on; else what came of the last one, or why none was begun. */
  public Prompt testPrompt() {
    return test.map(GuidedWork::prompt).orElseGet(() -> over(said));
  }

  private static Prompt over(String sentence) {
    return new Prompt(Prompt.State.OVER, sentence, "", 0, 0, 0, Set.of());
  }

  /** The readings of the test that goes on. */
  public Optional<LightPlan> plan() {
    return test.map(LightTestWork::plan);
  }

  /** Begins to set the light, unless something goes on. */
  public void set() {
    if (underWay().isEmpty()) {
      endScreenCheck();
      if (driver.light().isAiming()) {
        driver.light().endAim();
        operator.hold(false);
      }
      setsSoon = true;
      setNow();
    }
  }

  /** Whether it waits for an invented shutter to close before it sets the light. */
  public boolean isAboutToSet() {
    return setsSoon;
  }

  private void setNow() {
    if (setsSoon && operator.isDone()) {
      setsSoon = false;
      setting = Optional.of(new LightSettingWork(driver, operator));
    }
  }

  /**
   * The light meter comes into sight, or goes out of it. Light that is not set yet is aimed at
   * once, but in a run only if the person wants it: till then every opening is a firing.
   */
  public void showMeter(boolean shown) {
    wantsAim = shown && session().light().isEmpty() && !isInARun();
    if (shown) {
      driver.light().showMeter();
    } else {
      endScreenCheck();
      driver.light().hideMeter();
    }
  }

  private boolean isInARun() {
    return session().setup().isPresent() && !session().isRunDone();
  }

  /** The light is aimed, also where it is set already. */
  public void aim() {
    wantsAim = driver.light().meter().isPresent();
    setting = setting.filter(its -> its.prompt().state() != Prompt.State.OVER);
  }

  /** Why the light could not be set when that was tried last. */
  public Optional<String> refusal() {
    return setting
        .filter(its -> its.prompt().state() == Prompt.State.OVER && !its.isSet())
        .map(its -> its.prompt().sentence());
  }

  /** Whether the light is being aimed. */
  public boolean isAiming() {
    return driver.light().isAiming();
  }

  /** How the light is aimed; empty while nobody looks at the meter. */
  public Optional<Aim> meter() {
    return driver.light().meter().map(AimMeter::aim);
  }

  /** Begins to look whether the light of the screen reaches the sensor. */
  public void checkScreen() {
    if (underWay().isEmpty() && driver.light().meter().isPresent()) {
      wantsAim = true;
      screen =
          Optional.of(
              new ScreenCheck(
                  session()
                      .light()
                      .map(its -> its.fullCounts() - its.darkCounts())
                      .orElse(Aim.WANTED_COUNTS)));
    }
  }

  /** The check of the screen that goes on or was made last, while the meter is in sight. */
  public Optional<ScreenCheck> screen() {
    return screen;
  }

  /** The whole window is as the check of the screen wants it in a turn. */
  public void screenIsPainted(int turn) {
    screen.ifPresent(its -> its.isPainted(turn));
    operator.screen(screen.flatMap(ScreenCheck::shown));
  }

  private void endScreenCheck() {
    screen = Optional.empty();
    operator.screen(Optional.empty());
  }

  /** What is to be said of an opening that was no firing since the light is aimed. */
  public Optional<String> ofOpening(SessionEvent news) {
    return news instanceof SessionEvent.Settled settled
            && isAiming()
            && settled.result().outcome() == Outcome.HELD_FOR_LIGHT
            && seconds(settled.result()) < HELD_SECONDS
        ? Optional.of(Words.say("aim.notMeasured"))
        : Optional.empty();
  }

  private TickRate rate() {
    return driver
        .workbench()
        .fold()
        .greeting()
        .map(RigMessage.Greeting::board)
        .orElse(BoardTraits.USUAL)
        .rate();
  }

  private double seconds(FiringResult opening) {
    List<Edge> edges = opening.firing().of(Channel.CENTRE_LOW);
    return edges.isEmpty()
        ? HELD_SECONDS
        : rate().seconds(edges.get(edges.size() - 1).ticks() - edges.get(0).ticks());
  }

  private boolean goOnAiming() {
    wantsAim &= setting.filter(LightSettingWork::isSet).isEmpty();
    if (wantsAim && underWay().isEmpty() && !setsSoon && !isAiming() && driver.canAim()) {
      driver.light().aim();
      return true;
    }
    boolean moved = false;
    if (screen.isPresent() && isAiming()) {
      moved = screen.get().goOn(driver.light().meter().orElseThrow());
      screen.filter(ScreenCheck::isOver).ifPresent(over -> operator.screen(Optional.empty()));
    }
    return moved;
  }

  /** Begins a test, unless the rig has something else to do; then it says so. */
  public void test(LightPlan plan) {
    if (underWay().isPresent()) {
      return;
    }
    wantsAim = false;
    driver.light().endAim();
    // Held open already, the shutter is as full light wants it.
    boolean open = plan.kind() == LightPlan.Kind.FULL && session().seesLight();
    if (session().light().isEmpty()) {
      said = Words.say("lightTest.noLight");
    } else if (!driver.isFree() && !(open && !driver.light().isUnderWay())) {
      said = Words.say("lightTest.notNow");
    } else {
      LightTestWork begun = new LightTestWork(driver, operator, plan);
      test = Optional.of(begun);
      if (open || (plan.kind() == LightPlan.Kind.FULL && operator.works())) {
        begun.done();
      }
    }
  }

  /** Begins the aperture check of the stops that a person wrote; says where they are none. */
  public void stops(List<String> written) {
    try {
      test(LightPlan.stops(LightPlan.numbers(written), OptionalDouble.empty()));
    } catch (Trouble noStops) {
      said = noStops.getMessage();
    }
  }

  /**
   * The key for 'done': reads what was asked for, or begins the test that the run has come to.
   *
   * @return whether there was any such thing
   */
  public boolean accept() {
    if (isTesting()) {
      answer(Answer.DONE);
      return true;
    }
    stoppedAt = Optional.empty();
    return due().isPresent();
  }

  /**
   * Answers what goes on. A run stays at a test that was stopped; from one that was left it goes
   * on.
   */
  public void answer(Answer answer) {
    if (answer == Answer.STOP && isTesting()) {
      stoppedAt = Optional.of(here());
    }
    boolean leaves = answer == Answer.LEAVE && askedBy.isPresent();
    underWay().ifPresent(work -> work.answer(answer));
    settle();
    if (leaves) {
      news.addAll(driver.handle(new SessionInput.NextChosen()));
    }
  }

  /** The light test that the run has come to. */
  public Optional<UntimedTest> due() {
    return session().isRunDone()
        ? Optional.empty()
        : session().untimedTest().filter(UntimedTest::isOfTheLight);
  }

  /** What the test came to that has ended, once. */
  public Optional<LightTestWork> pollEnded() {
    Optional<LightTestWork> once = ended;
    ended = Optional.empty();
    return once;
  }

  /** What the session has to report because of it, once. */
  public List<SessionEvent> drainEvents() {
    List<SessionEvent> once = List.copyOf(news);
    news.clear();
    return once;
  }

  /**
   * Goes on with what is under way, and with the run.
   *
   * @return whether there is anything else to show
   */
  public boolean advance() {
    setNow();
    boolean moved = underWay().filter(GuidedWork::advance).isPresent();
    moved |= goOnAiming();
    settle();
    Prompt before = testPrompt();
    follow();
    return moved || ended.isPresent() || !news.isEmpty() || !testPrompt().equals(before);
  }

  /** Begins the test that the run has come to, and leaves that which it has gone on from. */
  private void follow() {
    if (askedBy.isPresent() && !session().setting().equals(askedBy)) {
      test.ifPresent(work -> work.answer(Answer.LEAVE));
      settle();
    }
    if (underWay().isEmpty() && due().isPresent() && !stoppedAt.equals(Optional.of(here()))) {
      test(LightPlan.of(due().get(), session().setup().orElseThrow().criteria().stops()));
      askedBy = test.flatMap(begun -> session().setting());
    }
  }

  private RunPoint here() {
    return new RunPoint(session().run(), session().setting());
  }

  /** A test that is over makes room, and the run that asked for it hears of it. */
  private void settle() {
    Optional<LightTestWork> over = test.filter(work -> work.prompt().state() == Prompt.State.OVER);
    if (over.isEmpty()) {
      return;
    }
    LightTestWork work = over.get();
    Optional<UntimedTest> asked =
        work.plan()
            .check()
            .filter(check -> work.isComplete() && (askedBy.isPresent() || work.found().isPresent()))
            .filter(
                check ->
                    session().setup().filter(s -> s.untimedTests().contains(check)).isPresent());
    said = work.prompt().sentence();
    ended = over;
    test = Optional.empty();
    askedBy = Optional.empty();
    asked.ifPresent(check -> news.addAll(driver.handle(new SessionInput.LightTestEnds(check))));
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
