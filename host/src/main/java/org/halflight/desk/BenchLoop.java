package org.halflight.desk;

import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.Function;
import org.halflight.bench.AimMeter;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LiveFeed;
import org.halflight.desk.view.BenchModel;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.Cue;
import org.halflight.desk.view.LightTestText;
import org.halflight.desk.view.Message;
import org.halflight.files.FaultLog;
import org.halflight.session.SessionEvent;
import org.halflight.session.Source;
import org.halflight.signal.Channel;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The bench thread: takes what the rig says and what the person does, one after the other, and
 * tells the window what there is to show. The window's own thread never waits for it.
 */
final class BenchLoop implements AutoCloseable {
  private static final long CLOSE_WAIT_MILLIS = 5000;

  /** So many steps in a row with a fault: then the thread leaves the computer some rest. */
  private static final int MOST_FAULTS_IN_A_ROW = 20;

  private static final long FAULT_PAUSE_NANOS = 50_000_000;

  private final Source source;
  private final LiveFeed feed;
  private final BenchDriver driver;
  private final BenchModel model;
  private final BenchActions hands;
  private final Consumer<BenchView> window;
  private final Consumer<Cue> sounds;
  private final Archive archive;
  private final FaultLog faults;
  private final Queue<Function<BenchActions, List<SessionEvent>>> asked =
      new ConcurrentLinkedQueue<>();
  private final Thread thread = new Thread(this::run, "halflight-bench");
  private volatile boolean ending;
  private volatile boolean leaving;

  // On the bench thread only.
  private boolean faulty;
  private Map<Channel, Long> shownReadings = Map.of();
  private int faultsInARow;

  /**
   * @param source whose bench it is
   * @param window takes views on this thread
   * @param sounds takes sounds on this thread
   * @param faults takes what must not happen
   */
  BenchLoop(
      Source source,
      LiveFeed feed,
      BenchDriver driver,
      BenchModel model,
      BenchActions hands,
      Consumer<BenchView> window,
      Consumer<Cue> sounds,
      Archive archive,
      FaultLog faults) {
    this.source = source;
    this.feed = feed;
    this.driver = driver;
    this.model = model;
    this.hands = hands;
    this.window = window;
    this.sounds = sounds;
    this.archive = archive;
    this.faults = faults;
    thread.setDaemon(true);
    hands
        .rig()
        .joins(
            this::meanwhile, this::happenedMeanwhile, doing -> does(benchActions -> doing.run()));
    hands.ports().joins(doing -> does(benchActions -> doing.run()));
  }

  void start() {
    thread.start();
  }

  /** Whose bench it is. */
  Source source() {
    return source;
  }

  /** Lets the person do something on the bench thread, soon; from any thread. */
  void ask(Function<BenchActions, List<SessionEvent>> doing) {
    asked.add(doing);
    feed.wake();
  }

  /** The same for what brings no news. */
  void does(Consumer<BenchActions> doing) {
    ask(
        h -> {
          doing.accept(h);
          return List.of();
        });
  }

  /** Says something to the person; from any thread. */
  void say(Message said) {
    does(h -> model.say(said));
  }

  /** Leaves the session: a run that is under way can be gone on with. */
  void leave() {
    leaving = true;
    close();
  }

  /** Ends the session: what was under way is settled, and everything is on the disk. */
  @Override
  public void close() {
    ending = true;
    feed.wake();
    try {
      thread.join(CLOSE_WAIT_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    guarded(this::show);
    guarded(hands.ports()::list);
    while (!ending) {
      step();
    }
    guarded(hands.ports()::close);
    guarded(hands.rig()::stop);
    if (!leaving || !InterruptedRun.goesOn(driver.workbench().fold().session())) {
      guarded(() -> news(driver.handle(new org.halflight.session.SessionInput.Ends())));
    }
    guarded(driver::close);
  }

  private void step() {
    // Each by itself: a fault of one must not keep the lines of the rig from their file.
    doWhatIsAsked();
    guarded(() -> driver.step().ifPresent(this::happened));
    guarded(this::goOnWithLight);
    guarded(this::lookAtPorts);
    if (faultsInARow > MOST_FAULTS_IN_A_ROW) {
      LockSupport.parkNanos(FAULT_PAUSE_NANOS);
    }
    faultsInARow = faulty ? faultsInARow + 1 : 0;
    faulty = false;
  }

  private void goOnWithLight() {
    if (hands.run().goOn()) {
      news(hands.run().drainEvents());
      hands.run().linkage().pollEnded().ifPresent(this::says);
      hands
          .light()
          .pollEnded()
          .flatMap(LightTestText::ended)
          .ifPresent(
              came -> {
                model.say(came);
                show();
              });
    }
  }

  private void lookAtPorts() {
    if (hands.ports().poll()) {
      show();
    }
  }

  private void doWhatIsAsked() {
    Function<BenchActions, List<SessionEvent>> next = asked.poll();
    while (next != null) {
      Function<BenchActions, List<SessionEvent>> now = next;
      guarded(() -> news(now.apply(hands)));
      next = asked.poll();
    }
  }

  private void happened(BenchDriver.Happening happening) {
    if (isOfTheMeterAlone(happening)) {
      return;
    }
    model.happened(happening).forEach(sounds);
    show();
    archive(happening.news());
  }

  /** Six hundred lines a second come while the light is aimed; few of them move a needle. */
  private boolean isOfTheMeterAlone(BenchDriver.Happening happening) {
    Map<Channel, Long> readings = driver.light().meter().map(AimMeter::readingsOf).orElse(Map.of());
    boolean moved = !readings.equals(shownReadings);
    shownReadings = readings;
    return driver.light().isAiming()
        && !moved
        && happening.change().isEmpty()
        && happening.news().isEmpty();
  }

  /** While the rig works for itself: wishes are heard, and the window is told how it goes on. */
  private void meanwhile() {
    if (ending) {
      hands.rig().stop();
    }
    doWhatIsAsked();
    if (hands.rig().moved()) {
      show();
    }
  }

  /** A line of a rig at work is no news of a shutter. */
  private void happenedMeanwhile(BenchDriver.Happening happening) {
    if (happening.change().isPresent() || !happening.news().isEmpty()) {
      happened(happening);
    }
  }

  private void news(List<SessionEvent> news) {
    model.news(news).forEach(sounds);
    show();
    archive(news);
  }

  private void archive(List<SessionEvent> news) {
    archive.happened(news);
    if (news.stream().anyMatch(BenchLoop::mayChangePresses)) {
      BenchView view = model.view();
      archive.linkage(view.presses(), view.plungers());
    }
  }

  private static boolean mayChangePresses(SessionEvent news) {
    return news instanceof SessionEvent.PressCounted
        || news instanceof SessionEvent.PlungerWasRead
        || news instanceof SessionEvent.Undone
        || news instanceof SessionEvent.Redone;
  }

  private void show() {
    window.accept(model.view());
  }

  private void guarded(Runnable step) {
    try {
      step.run();
    } catch (Trouble trouble) {
      saysTrouble(trouble.getMessage());
    } catch (RuntimeException | Error fault) {
      faulty = true;
      saysTrouble(faults.goesOn(fault, Words.say("fault.at.bench")));
    }
  }

  private void says(String sentence) {
    model.say(new Message(Message.Kind.NEWS, sentence));
    show();
  }

  private void saysTrouble(String sentence) {
    try {
      model.say(new Message(Message.Kind.TROUBLE, sentence));
      show();
    } catch (RuntimeException | Error cannotShow) {
      // The lines of the rig still reach their file, and the log has both faults.
      faulty = true;
      faults.goesOn(cannotShow, Words.say("fault.at.bench"));
    }
  }
}
