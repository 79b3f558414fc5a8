package org.halflight.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.link.LinkState;
import org.halflight.session.Assembly;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.TurnCount;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.FiringsWanted;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.ConditionWords;
import org.halflight.words.CurtainWords;
import org.halflight.words.DecisionWords;
import org.halflight.words.EventSentences;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.StageWords;
import org.halflight.words.TwoWords;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.BenchLight;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.ConditionKey;
import org.halflight.workflow.GuidedWork;
import org.halflight.workflow.LightSettingWork;
import org.halflight.workflow.LightTestWork;
import org.halflight.workflow.LinkageWork;
import org.halflight.workflow.RunActions;

/** The bench on the terminal: prints what happens and what is asked, and takes the keys. */
final class BenchTerminal {
  private static final Pattern REASON = Pattern.compile("(?:(\\d{1,9})\\s+)?(\\S.*)");

  private final BenchDriver driver;
  private final Terminal terminal;
  private final CameraOperator operator;
  private final BenchLight light;
  private final RunActions run;
  private final GuidedTerminal guide;
  private Optional<LightTestWork> ended = Optional.empty();
  private boolean stopped;
  private boolean isHeard;
  private boolean saysWhatIsMissing;
  private int saidOpenSeconds;

  BenchTerminal(BenchDriver driver, Terminal terminal, CameraOperator operator) {
    this.driver = driver;
    this.terminal = terminal;
    this.operator = operator;
    light = new BenchLight(driver, operator);
    run = new RunActions(driver, operator, light);
    guide = new GuidedTerminal(terminal);
  }

  /**
   * Waits until the rig has greeted, or the person gives up. A session that goes on has a greeting
   * of earlier; what is begun then needs the rig all the same.
   */
  boolean waitForRig() {
    while ((!isHeard || driver.workbench().fold().greeting().isEmpty()) && !stopped) {
      step(this::onlyStops);
    }
    return !stopped;
  }

  /**
   * Sets the light.
   *
   * @return whether it is set; false when the person gave up, or the light cannot be used
   */
  boolean setLight() {
    light.set();
    lead();
    return light.setting().filter(LightSettingWork::isSet).isPresent();
  }

  /**
   * Leads through a light test.
   *
   * @return empty when it could not be begun, or the person left or stopped it
   */
  Optional<LightTestWork> test(LightPlan plan) {
    waitForQuiet();
    ended = Optional.empty();
    begin(plan);
    lead();
    return ended.filter(LightTestWork::isComplete);
  }

  private void begin(LightPlan plan) {
    light.test(plan);
    if (!light.isTesting()) {
      terminal.say(light.testPrompt().sentence());
    }
  }

  /**
   * Begins a run, or goes on with the same one where it was stopped, until it is done or stopped
   * again.
   */
  void run(RunSetup setup) {
    run(setup, Optional.empty());
  }

  /** The same; in a run of adjusting two speeds may be fired in turn. */
  void run(RunSetup setup, Optional<TwoSpeeds> two) {
    boolean goesOn =
        session().setup().filter(setup::asksTheSameAs).isPresent() && !session().isRunDone();
    String begins = operator.answers() ? "run.begins.practice" : "run.begins";
    terminal.say(Words.say(goesOn ? "run.goesOn" : begins));
    if (!operator.answers()) {
      terminal.say(Words.say("run.keys"));
    }
    report(run.begin(setup));
    two.filter(its -> !session().two().equals(two))
        .ifPresent(its -> report(driver.handle(new SessionInput.TwoChosen(two))));
    while ((!session().isRunDone() || run.isStageToFollow()) && !stopped) {
      report(run.advance(step(this::typed)));
      sayWhatIsMissing();
    }
    if (!stopped && session().isFullLightWanted()) {
      terminal.say(Words.say("run.fullLight"));
      test(LightPlan.full());
    }
    report(driver.handle(new SessionInput.Ends()));
    if (stopped && !session().isRunDone()) {
      terminal.say(Words.say("run.stopped", driver.workbench().path()));
    }
  }

  /** Whether the person has given up. */
  boolean isStopped() {
    return stopped;
  }

  /** A run that has come to a light test waits for the light to be set. */
  private void sayWhatIsMissing() {
    boolean misses = light.due().isPresent() && session().light().isEmpty();
    if (misses && !saysWhatIsMissing) {
      terminal.say(light.testPrompt().sentence());
    }
    saysWhatIsMissing = misses;
  }

  /** Goes on until what is done about the light is over, or the person has given up. */
  private void lead() {
    while ((light.underWay().isPresent() || light.isAboutToSet()) && !stopped) {
      step(this::onlyStops);
    }
    waitForQuiet();
  }

  private void waitForQuiet() {
    while (!session().isQuiet() && !stopped) {
      step(this::onlyStops);
    }
  }

  /**
   * Takes one thing that happened, and what the person typed.
   *
   * @param keys takes what is typed while nothing is asked
   * @return what the session has reported
   */
  private List<SessionEvent> step(Consumer<String> keys) {
    Optional<GuidedWork> work = run.underWay();
    Optional<BenchDriver.Happening> happened = driver.step();
    if (happened.isEmpty()) {
      operator.idle();
    }
    happened.flatMap(BenchDriver.Happening::change).ifPresent(c -> terminal.say(c.sentence()));
    isHeard |= happened.filter(BenchTerminal::isOfTheRig).isPresent();
    List<SessionEvent> news = happened.map(BenchDriver.Happening::news).orElse(List.of());
    report(news.stream().filter(this::isToReport).toList());
    work.ifPresent(its -> guide.show(its.prompt()));
    terminal
        .typed()
        .ifPresent(
            line -> work.ifPresentOrElse(its -> answers(line, its, keys), () -> keys.accept(line)));
    run.goOn();
    work.ifPresent(its -> guide.show(its.prompt()));
    light.pollEnded().ifPresent(this::came);
    reportOfWork(run.drainEvents());
    return news;
  }

  /** Whatever is no change of the link comes from a rig. */
  private static boolean isOfTheRig(BenchDriver.Happening happened) {
    return happened.change().filter(change -> change.state() != LinkState.CONNECTED).isEmpty();
  }

  /** What else led work brings is said by its prompts. */
  private boolean isToReport(SessionEvent news) {
    return light.isTesting()
        ? news instanceof SessionEvent.PlateauOff || news instanceof SessionEvent.Changed
        : !isOfAPress(news);
  }

  /** What comes of each press of the linkage test is said by its prompts. */
  private boolean isOfAPress(SessionEvent news) {
    return run.linkage().isDue()
        && (news instanceof SessionEvent.Settled
            || news instanceof SessionEvent.PressCounted
            || news instanceof SessionEvent.SettingShown
            || news instanceof SessionEvent.IsTheSelfTimerOn);
  }

  private void reportOfWork(List<SessionEvent> news) {
    report(news.stream().filter(each -> !isOfAPress(each)).toList());
  }

  /** While the linkage is tested, the other keys of a run work too. */
  private void answers(String line, GuidedWork work, Consumer<String> keys) {
    Optional<Answer> answer =
        work instanceof LinkageWork
            ? GuidedTerminal.answer(line).filter(its -> its != Answer.ADJUSTED)
            : guide.typed(line, work.prompt());
    answer.ifPresentOrElse(
        its -> {
          List<SessionEvent> news = run.answer(its);
          guide.show(work.prompt());
          reportOfWork(news);
        },
        () -> {
          if (work instanceof LinkageWork) {
            keys.accept(line);
          }
        });
    stopped |= answer.equals(Optional.of(Answer.STOP));
  }

  private void came(LightTestWork test) {
    ended = Optional.of(test);
    test.result().stream()
        .filter(line -> !test.prompt().sentence().contains(line))
        .forEach(terminal::say);
  }

  private void onlyStops(String typed) {
    stopped |= typed.equals("q");
  }

  private void typed(String typed) {
    String[] words = typed.split("\\s+", 2);
    String command = words[0].toLowerCase(Locale.ROOT);
    switch (command) {
      case "q" -> stopped = true;
      case "n" -> report(driver.handle(new SessionInput.NextChosen()));
      case "p" -> report(driver.handle(new SessionInput.PreviousChosen()));
      case "k" -> answer(run::accept);
      case "m" -> answer(run::move);
      case "r" -> report(driver.reject(words.length > 1 ? words[1] : Words.say("run.noReason")));
      case "e" -> changeReason(words.length > 1 ? words[1] : "");
      case "u" -> report(driver.undo());
      case "y" -> report(driver.redo());
      case "f" -> operator.fire(session().setting());
      case "g" -> begin(LightPlan.full());
      case "l" -> light.set();
      case "cover", "cells", "place" -> flip(command, words.length > 1 ? words[1].strip() : "");
      case "c" -> report(run.closedByHand());
      case "plunger" -> plunger(words.length > 1 ? words[1] : "");
      case "a" -> adjusted(words.length > 1 ? words[1] : Words.say("run.noAdjustment"));
      case "v" -> two(words.length > 1 ? words[1] : "");
      case "" -> {
        // Enter alone says nothing: a hand that slipped must not change the run.
      }
      case "h" -> sayConditions();
      default ->
          ConditionKey.of(words[0])
              .ifPresentOrElse(
                  key -> report(run.condition(key)), () -> terminal.say(Words.say("run.keys")));
    }
  }

  private void plunger(String typed) {
    String[] both = typed.strip().split("\\s+", 2);
    try {
      report(run.plunger(both[0], both.length > 1 ? both[1] : ""));
    } catch (Trouble notUnderstood) {
      terminal.say(notUnderstood.getMessage());
    }
  }

  private void sayConditions() {
    for (ConditionKey key : ConditionKey.values()) {
      terminal.say(
          Words.say(
              "run.conditions.key",
              key.digit(),
              Words.say("desk.keyLong.condition-" + Words.key(key))));
    }
    terminal.say(
        Words.say(
            "run.conditions.now",
            ConditionWords.list(session().conditions()),
            session()
                .lastFiring()
                .map(FiringResult::conditions)
                .map(ConditionWords::list)
                .orElseGet(() -> Words.say("condition.none"))));
  }

  /** A number before the reason names the firing; else it is the last one that is not counted. */
  private void changeReason(String typed) {
    Matcher words = REASON.matcher(typed);
    if (words.matches()) {
      OptionalInt number =
          Optional.ofNullable(words.group(1)).stream().mapToInt(Integer::parseInt).findFirst();
      report(driver.changeReason(number, words.group(2)));
    } else {
      terminal.say(Words.say("run.changeReasonHow"));
    }
  }

  /** A switch of the assembly goes on by one, or to where it is wanted. */
  private void flip(String name, String to) {
    if (run.stage().isEmpty()) {
      terminal.say(Words.say("stage.none"));
      return;
    }
    Assembly.Switch one = Assembly.Switch.find(name).orElseThrow();
    Assembly now = run.stage().get().assembly();
    if (!now.switches().contains(one)) {
      terminal.say(Words.say("stage.curtains.none", name));
      return;
    }
    Optional<Assembly> wanted =
        to.isEmpty() ? Optional.of(one.flipped(now)) : StageWords.typed(one, now, to);
    if (wanted.isEmpty()) {
      terminal.say(Words.of("stage.typed", one, to));
    } else if (wanted.get().equals(now)) {
      terminal.say(Words.say("stage.is-so", StageWords.of(one, now)));
    } else {
      report(run.assemble(wanted.get()));
    }
  }

  private void adjusted(String words) {
    report(driver.handle(new SessionInput.Adjusted(words)));
    if (TurnCount.isTooFar(session().turns())) {
      terminal.say(Words.say("curtain.next.stop-something-drags"));
    }
    if (run.linkage().isDue()) {
      reportOfWork(run.answer(Answer.ADJUSTED));
    }
  }

  /**
   * Two speeds at once: those that were typed, else the usual ones to the one shown, or no more.
   */
  private void two(String typed) {
    boolean ends = typed.isBlank() && session().two().isPresent();
    Optional<TwoSpeeds> two =
        ends ? Optional.empty() : typed.isBlank() ? usualPair() : typedPair(typed);
    if (two.isEmpty() && !ends) {
      terminal.say(Words.say("run.twoSpeeds"));
    } else {
      report(driver.handle(new SessionInput.TwoChosen(two)));
    }
  }

  private Optional<TwoSpeeds> typedPair(String typed) {
    List<MarkedSpeed> speeds =
        Arrays.stream(typed.split("[,;\\s]+", -1))
            .flatMap(each -> dial().stream().flatMap(dial -> dial.speed(each).stream()))
            .distinct()
            .toList();
    return speeds.size() == 2
        ? Optional.of(new TwoSpeeds(speeds.get(0), speeds.get(1)))
        : Optional.empty();
  }

  private Optional<TwoSpeeds> usualPair() {
    return session()
        .shown()
        .flatMap(speed -> dial().flatMap(dial -> TwoSpeeds.with(speed, dial.speeds())));
  }

  private Optional<Dial> dial() {
    return session().setup().map(RunSetup::markings);
  }

  private void answer(Supplier<List<SessionEvent>> how) {
    if (session().question().isPresent()) {
      report(how.get());
    } else {
      terminal.say(Words.say("run.noQuestion"));
    }
  }

  private void report(List<SessionEvent> news) {
    news.forEach(this::report);
  }

  private void report(SessionEvent news) {
    if (news instanceof SessionEvent.Settled settled) {
      saidOpenSeconds = 0;
      terminal.say(Words.say("run.settled", Sentences.firing(settled.result())));
      settled.result().exposure().curtains().map(CurtainWords::firing).ifPresent(terminal::say);
      FiringsWanted.after(settled.result(), session().results(), session().runs())
          .map(DecisionWords::wanted)
          .ifPresent(said -> terminal.say(Words.say("run.settled", said)));
      twoAtOnce(settled.result()).ifPresent(said -> terminal.say(Words.say("run.settled", said)));
    } else if (news instanceof SessionEvent.StillOpen open) {
      int seconds = (int) open.seconds();
      if (seconds > saidOpenSeconds) {
        saidOpenSeconds = seconds;
        terminal.say(Words.say("run.stillOpen", Numbers.time(open.seconds())));
      }
    } else if (news instanceof SessionEvent.SettingShown shown
        && run.stage().isPresent()
        && shown.setting().untimedTest().isPresent()) {
      terminal.say(StageWords.bulbAsked(shown.good()));
    } else if (news instanceof SessionEvent.RunDone && run.stage().isPresent()) {
      StageWords.last(session().results(), session().runs()).forEach(terminal::say);
      if (!operator.answers()) {
        terminal.say(StageWords.next(run.stage().get().assembly()));
      }
    } else {
      EventSentences.of(news).ifPresent(terminal::say);
    }
  }

  /** How the two speeds that are adjusted at once stand after a firing of one of them. */
  private Optional<String> twoAtOnce(FiringResult newest) {
    return session()
        .two()
        .filter(two -> newest.shown().filter(two::has).isPresent())
        .map(
            two ->
                TwoWords.line(
                    TwoAtOnce.of(
                        two,
                        session().setup().orElseThrow(),
                        session().run(),
                        session().results(),
                        session().adjusted())));
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
