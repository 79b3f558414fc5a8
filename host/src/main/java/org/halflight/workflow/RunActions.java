package org.halflight.workflow;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.bench.BenchDriver;
import org.halflight.session.Assembly;
import org.halflight.session.HeldLight;
import org.halflight.session.Question;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;

/**
 * What is done in a run beside firing: by the person, or by an operator that needs nobody. Each
 * gives what the session has to report because of it.
 */
public final class RunActions {
  /** A shutter of the practice rig that has been open for so long is closed by hand. */
  private static final double HANGS_SECONDS = 5;

  private final BenchDriver driver;
  private final CameraOperator operator;
  private final BenchLight light;
  private final BenchLinkage linkage;
  private boolean isFired;

  /** The run of a driver's session, with whoever works the camera. */
  public RunActions(BenchDriver driver, CameraOperator operator, BenchLight light) {
    this.driver = driver;
    this.operator = operator;
    this.light = light;
    linkage = new BenchLinkage(driver, operator, light);
  }

  /** Begins a run, or goes on with the same one where it was stopped. */
  public List<SessionEvent> begin(RunSetup setup) {
    if (light.isTesting()) {
      light.answer(Answer.STOP);
    }
    isFired = false;
    if (setup.isStage()) {
      operator.assemble(setup.assembly());
    }
    return driver.handle(new SessionInput.RunBegins(setup));
  }

  /** A switch is flipped: the next stage of assembly begins. */
  public List<SessionEvent> flip(Assembly.Switch one) {
    return stage()
        .map(RunSetup::assembly)
        .filter(its -> its.switches().contains(one))
        .map(its -> assemble(one.flipped(its)))
        .orElseGet(List::of);
  }

  /** The next stage of assembly begins; nothing happens outside of one. */
  public List<SessionEvent> assemble(Assembly next) {
    return stage()
        .filter(its -> !its.assembly().equals(next))
        .map(its -> begin(its.with(next)))
        .orElseGet(List::of);
  }

  /** The stage of assembly that goes on or is done. */
  public Optional<RunSetup> stage() {
    return session().setup().filter(RunSetup::isStage);
  }

  /** Whether a stage is done and another one follows, which the person or the operator begins. */
  public boolean isStageToFollow() {
    return stage().isPresent()
        && (!operator.answers() || operator.nextStage(stage().get().assembly()).isPresent());
  }

  /** What led work asked for is done; else the firings of the open question stay as shown. */
  public List<SessionEvent> accept() {
    return light.accept() || linkage.accept()
        ? linkage.drainEvents()
        : driver.handle(new SessionInput.AcceptedAsShown());
  }

  /** The linkage test. */
  public BenchLinkage linkage() {
    return linkage;
  }

  /**
   * A screw plunger was read, in mm as typed.
   *
   * @throws org.halflight.trouble.Trouble where that cannot be understood
   */
  public List<SessionEvent> plunger(String advance, String shutter) {
    return driver.handle(new SessionInput.PlungerRead(TypedPlunger.read(advance, shutter)));
  }

  /** The work that the person is led through now. */
  public Optional<GuidedWork> underWay() {
    return light.underWay().or(linkage::underWay);
  }

  /** Answers that work. */
  public List<SessionEvent> answer(Answer answer) {
    if (light.underWay().isPresent()) {
      light.answer(answer);
      return light.drainEvents();
    }
    linkage.answer(answer);
    return linkage.drainEvents();
  }

  /**
   * Goes on with that work, and begins what the run has come to.
   *
   * @return whether there is anything else to show
   */
  public boolean goOn() {
    boolean lit = light.advance();
    return linkage.advance() || lit;
  }

  /** What the session has to report because of that work, once. */
  public List<SessionEvent> drainEvents() {
    return Stream.concat(light.drainEvents().stream(), linkage.drainEvents().stream()).toList();
  }

  /** The firings of the open question belong to the other speed. */
  public List<SessionEvent> move() {
    return session().question().map(Question::move).map(driver::handle).orElseGet(List::of);
  }

  /** A key of conditions was pressed. */
  public List<SessionEvent> condition(ConditionKey key) {
    return key.press(session())
        .map(driver::handle)
        .orElseGet(() -> List.of(new SessionEvent.NotDone(SessionEvent.NotDone.Why.NO_FIRING_YET)));
  }

  /** The shutter hung open and was closed by hand. */
  public List<SessionEvent> closedByHand() {
    List<SessionEvent> news = driver.handle(new SessionInput.ClosedByHand());
    operator.hold(false);
    return news;
  }

  /**
   * An operator that needs nobody goes on with the run: it fires what is shown when the firing
   * before has settled, closes a shutter that hangs, and has always turned the dial.
   *
   * @param news what the session has just reported
   */
  public List<SessionEvent> advance(List<SessionEvent> news) {
    if (!operator.answers()) {
      return List.of();
    }
    // A firing that came while the light was read was none of the run.
    isFired &=
        underWay().isEmpty() && news.stream().noneMatch(SessionEvent.Settled.class::isInstance);
    if (session().question().isPresent()) {
      return accept();
    }
    if (news.stream().anyMatch(RunActions::hangs)) {
      return closedByHand();
    }
    if (session().isRunDone() && isStageToFollow()) {
      return assemble(operator.nextStage(stage().orElseThrow().assembly()).orElseThrow());
    }
    if (stage().isPresent() && session().light().isEmpty()) {
      light.set();
      return List.of();
    }
    if (!isFired && isFiringDue()) {
      isFired = true;
      if (session().setup().filter(RunSetup::isQuick).isPresent()) {
        operator.willHold(HeldLight.HOLD_SECONDS);
      }
      if (stage().isPresent() && session().goodHere() == 0) {
        operator.tap(session().setting());
      } else {
        operator.fire(session().setting());
      }
    }
    return List.of();
  }

  private boolean isFiringDue() {
    Session now = session();
    return now.setup().isPresent()
        && !now.isRunDone()
        // Both of two speeds are fired: now somebody has to adjust.
        && (now.two().isEmpty() || now.goodHere() < now.wanted())
        && now.isQuiet()
        && underWay().isEmpty()
        && light.due().isEmpty()
        && !linkage.isDue();
  }

  private static boolean hangs(SessionEvent news) {
    return news instanceof SessionEvent.StillOpen open && open.seconds() > HANGS_SECONDS;
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
