package org.halflight.cli;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightSentences;
import org.halflight.bench.LightSetting;
import org.halflight.extratest.Linkage;
import org.halflight.session.FiringResult;
import org.halflight.session.Question;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.FiringsWanted;
import org.halflight.words.DecisionWords;
import org.halflight.words.EventSentences;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.LinkageWords;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.CameraOperator;

/** Leads the person through setting the light and through a run, line by line. */
final class BenchTalk {
  /** A model camera that has been open for so long is closed by operator. */
  private static final double HANGS_SECONDS = 5;

  private final BenchDriver driver;
  private final Terminal terminal;
  private final CameraOperator operator;
  private boolean stopped;
  private boolean readMeanwhile;
  private int saidOpenSeconds;

  BenchTalk(BenchDriver driver, Terminal terminal, CameraOperator operator) {
    this.driver = driver;
    this.terminal = terminal;
    this.operator = operator;
  }

  /** Waits until the rig has greeted, or the person gives up. */
  boolean waitForRig() {
    while (driver.workbench().fold().greeting().isEmpty() && !stopped) {
      step();
      listen(typed -> stopped |= typed.equals("q"));
    }
    return !stopped;
  }

  /**
   * Sets the light.
   *
   * @return whether it is set; false when the person gave up
   * @throws Trouble when the light cannot be used
   */
  boolean setLight() {
    terminal.say(Words.say("light.close"));
    LightSetting setting = driver.setLight();
    boolean asked = false;
    while (!stopped) {
      step();
      switch (setting.step()) {
        case OPEN_THE_SHUTTER -> {
          if (!asked) {
            asked = true;
            terminal.say(Words.say("light.open"));
            if (operator.works()) {
              operator.hold(true);
              shutterIsOpen();
            }
          }
          listen(
              typed -> {
                if (typed.equals("q")) {
                  stopped = true;
                } else if (setting.step() == LightSetting.Step.OPEN_THE_SHUTTER) {
                  shutterIsOpen();
                }
              });
        }
        case DONE -> {
          terminal.say(LightSentences.done(setting));
          operator.hold(false);
          waitForQuiet();
          return true;
        }
        case REFUSED -> {
          operator.hold(false);
          throw new Trouble(LightSentences.refused(setting.refusal().orElseThrow()));
        }
        case DARK, FULL, TRIPS, THRESHOLDS -> listen(typed -> stopped |= typed.equals("q"));
      }
    }
    return false;
  }

  private void shutterIsOpen() {
    driver.shutterIsOpen();
    terminal.say(Words.say("light.keepOpen"));
  }

  private void waitForQuiet() {
    while (!session().isQuiet() && !stopped) {
      step();
      listen(typed -> stopped |= typed.equals("q"));
    }
  }

  /**
   * Begins a run, or goes on with the same one where it was stopped, until it is done or stopped
   * again.
   */
  void run(RunSetup setup) {
    boolean goesOn =
        session().setup().filter(setup::asksTheSameAs).isPresent() && !session().isRunDone();
    terminal.say(
        Words.say(goesOn ? "run.goesOn" : operator.works() ? "run.begins.practice" : "run.begins"));
    if (!operator.works()) {
      terminal.say(Words.say("run.keys"));
    }
    report(driver.handle(new SessionInput.RunBegins(setup)));
    stay();
  }

  private void stay() {
    boolean waiting = false;
    while (!session().isRunDone() && !stopped) {
      Optional<UntimedTest> test = session().untimedTest().filter(UntimedTest::isOfTheLight);
      if (test.isPresent()) {
        testLight(test.get());
        waiting = false;
        continue;
      }
      if (operator.works() && !waiting) {
        operator.fire(session().setting());
        waiting = true;
      }
      List<SessionEvent> news = step();
      waiting &= news.stream().noneMatch(SessionEvent.Settled.class::isInstance);
      if (operator.works() && news.stream().anyMatch(BenchTalk::hangs)) {
        report(driver.handle(new SessionInput.ClosedByHand()));
        operator.hold(false);
      }
      listen(this::typed);
      // A firing that came meanwhile was none of the run: the practice camera fires again.
      waiting &= !readMeanwhile;
      readMeanwhile = false;
    }
    if (!stopped && session().isFullLightWanted()) {
      terminal.say(Words.say("run.fullLight"));
      measureFullLight();
    }
    report(driver.handle(new SessionInput.Ends()));
    if (stopped) {
      terminal.say(Words.say("run.stopped", driver.workbench().path()));
    }
  }

  /** A test of the light of the run: the readings, what they come to, and on. */
  private void testLight(UntimedTest check) {
    LightPlan plan = LightPlan.of(check, session().setup().orElseThrow().criteria().stops());
    ReadingTalk.End end = ReadingTalk.lead(plan, driver, terminal, operator);
    stopped |= end == ReadingTalk.End.STOPPED;
    if (end == ReadingTalk.End.DONE) {
      if (check == UntimedTest.STOPS && !operator.works()) {
        terminal.say(Words.say("reading.letClose"));
      }
      waitForQuiet();
      plan.found(session().readings(), session().runs(), session().run())
          .ifPresent(found -> terminal.say(ExtraTestWords.lines(found)));
      report(driver.handle(new SessionInput.LightTestEnds(check)));
    } else if (end == ReadingTalk.End.LEFT) {
      report(driver.handle(new SessionInput.NextChosen()));
    }
  }

  private static boolean hangs(SessionEvent news) {
    return news instanceof SessionEvent.StillOpen open && open.seconds() > HANGS_SECONDS;
  }

  private List<SessionEvent> step() {
    Optional<BenchDriver.Happening> happened = driver.step();
    if (happened.isEmpty()) {
      operator.idle();
    }
    happened.flatMap(BenchDriver.Happening::change).ifPresent(c -> terminal.say(c.sentence()));
    List<SessionEvent> news = happened.map(BenchDriver.Happening::news).orElse(List.of());
    report(news);
    return news;
  }

  private void typed(String typed) {
    String[] words = typed.split("\\s+", 2);
    switch (words[0]) {
      case "q" -> stopped = true;
      case "n" -> report(driver.handle(new SessionInput.NextChosen()));
      case "p" -> report(driver.handle(new SessionInput.PreviousChosen()));
      case "k" -> answer(Question::keep);
      case "m" -> answer(Question::move);
      case "r" -> report(driver.reject(words.length > 1 ? words[1] : Words.say("run.noReason")));
      case "u" -> report(driver.undo());
      case "y" -> report(driver.redo());
      case "g" -> measureFullLight();
      case "c" -> report(driver.handle(new SessionInput.ClosedByHand()));
      case "" -> {
        // Enter alone says nothing: a hand that slipped must not change the run.
      }
      default -> terminal.say(Words.say("run.keys"));
    }
  }

  /** Full light again: what firings wait for whose light stayed below it. */
  private void measureFullLight() {
    ReadingTalk.End end = ReadingTalk.lead(LightPlan.full(), driver, terminal, operator);
    stopped |= end == ReadingTalk.End.STOPPED;
    readMeanwhile = true;
    if (!stopped) {
      if (!operator.works()) {
        terminal.say(Words.say("reading.letClose"));
      }
      waitForQuiet();
    }
  }

  private void answer(Function<Question, SessionInput> how) {
    session()
        .question()
        .map(how)
        .ifPresentOrElse(
            answer -> report(driver.handle(answer)),
            () -> terminal.say(Words.say("run.noQuestion")));
  }

  private void report(List<SessionEvent> news) {
    news.forEach(this::report);
  }

  private void report(SessionEvent news) {
    if (news instanceof SessionEvent.Settled settled) {
      saidOpenSeconds = 0;
      terminal.say(Words.say("run.settled", Sentences.firing(settled.result())));
      FiringsWanted.after(settled.result(), session().results(), session().runs())
          .map(DecisionWords::wanted)
          .ifPresent(said -> terminal.say(Words.say("run.settled", said)));
      linkage(settled.result()).ifPresent(said -> terminal.say(Words.say("run.settled", said)));
    } else if (news instanceof SessionEvent.StillOpen open) {
      int seconds = (int) open.seconds();
      if (seconds > saidOpenSeconds) {
        saidOpenSeconds = seconds;
        terminal.say(Words.say("run.stillOpen", Numbers.time(open.seconds())));
      }
    } else {
      EventSentences.of(news).ifPresent(terminal::say);
    }
    if (operator.works() && session().question().isPresent()) {
      // Who fires by itself has turned the dial.
      answer(Question::keep);
    }
  }

  /** The interval of a trial of the linkage; or what to do about sounds without one. */
  private Optional<String> linkage(FiringResult newest) {
    return Linkage.with(newest, session().results(), session().runs())
        .map(LinkageWords::newest)
        .or(() -> LinkageWords.heardNothingOpen(newest));
  }

  private void listen(java.util.function.Consumer<String> to) {
    terminal.typed().ifPresent(to);
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
