package org.halflight.workflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.BenchDriver;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;

/**
 * The linkage test at the bench: it begins by itself when the run comes to it, and is left when the
 * run goes on. For one thread.
 */
public final class BenchLinkage {
  private final BenchDriver driver;
  private final CameraOperator operator;
  private final BenchLight light;
  private final List<SessionEvent> news = new ArrayList<>();
  private Optional<LinkageWork> work = Optional.empty();
  private int runOfWork;
  private boolean isEndSaid;

  /** The run in which the person stopped it; there it is not begun again by itself. */
  private int stoppedInRun;

  /** The linkage test of a driver's session, with whoever works the camera. */
  public BenchLinkage(BenchDriver driver, CameraOperator operator, BenchLight light) {
    this.driver = driver;
    this.operator = operator;
    this.light = light;
  }

  /** The test that goes on. */
  public Optional<LinkageWork> underWay() {
    return work.filter(its -> its.prompt().state() != Prompt.State.OVER);
  }

  /** The test that goes on, or the last one of this run. */
  public Optional<LinkageWork> last() {
    return work.filter(its -> runOfWork == session().run());
  }

  /** Whether the run has come to the linkage. */
  public boolean isDue() {
    return session().untimedTest().equals(Optional.of(UntimedTest.LINKAGE));
  }

  /** Answers the test that goes on; a run goes on from one that was left. */
  public void answer(Answer answer) {
    if (underWay().isEmpty() && answer == Answer.ADJUSTED && isDue()) {
      begin();
    } else {
      boolean leaves = answer == Answer.LEAVE && underWay().isPresent();
      stoppedInRun = answer == Answer.STOP ? session().run() : stoppedInRun;
      underWay().ifPresent(its -> its.answer(answer));
      work.ifPresent(its -> news.addAll(its.drainEvents()));
      boolean cutShort = last().filter(LinkageWork::isCutShort).isPresent() && underWay().isEmpty();
      if (leaves || (cutShort && answer == Answer.SKIP)) {
        news.addAll(driver.handle(new SessionInput.NextChosen()));
      }
    }
  }

  /** The key for 'done': what the test asked for, or the test that was stopped begins again. */
  public boolean accept() {
    if (underWay().isPresent()) {
      answer(Answer.DONE);
      return true;
    }
    boolean wasStopped = isDue() && stoppedInRun == session().run();
    if (wasStopped) {
      begin();
    }
    return wasStopped;
  }

  /** Presses the button of the practice camera, as the test asks for. */
  public void press() {
    underWay().ifPresent(LinkageWork::press);
  }

  /** How the linkage is, once, as the test has come to its end. */
  public Optional<String> pollEnded() {
    Optional<String> once =
        last()
            .filter(its -> !isEndSaid && its.isComplete() && underWay().isEmpty())
            .map(its -> its.prompt().sentence());
    isEndSaid |= once.isPresent();
    return once;
  }

  /** What the session has to report because of it, once. */
  public List<SessionEvent> drainEvents() {
    List<SessionEvent> once = List.copyOf(news);
    news.clear();
    return once;
  }

  /**
   * Goes on with the test, and with the run.
   *
   * @return whether there is anything else to show
   */
  public boolean advance() {
    if (underWay().isPresent() && runOfWork != session().run()) {
      work = Optional.empty();
    }
    boolean moved = underWay().filter(GuidedWork::advance).isPresent();
    work.ifPresent(its -> news.addAll(its.drainEvents()));
    if (underWay().isPresent() && !isDue()) {
      underWay().ifPresent(its -> its.answer(Answer.LEAVE));
      return true;
    }
    boolean begins =
        underWay().isEmpty()
            && isDue()
            && !session().isRunDone()
            && last().filter(LinkageWork::isComplete).isEmpty()
            && stoppedInRun != session().run()
            && light.underWay().isEmpty();
    if (begins) {
      begin();
    }
    return moved || begins || !news.isEmpty();
  }

  private void begin() {
    stoppedInRun = 0;
    isEndSaid = false;
    runOfWork = session().run();
    work = Optional.of(new LinkageWork(driver, operator));
    if (session().isRunDone()) {
      // Shown by the person's own choice, it stays on the screen.
      news.addAll(driver.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE)));
    }
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
