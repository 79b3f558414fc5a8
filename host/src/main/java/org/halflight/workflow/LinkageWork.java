package org.halflight.workflow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.BenchDriver;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.session.FiringResult;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.signal.Channel;
import org.halflight.words.EventSentences;
import org.halflight.words.LinkageWorkWords;
import org.halflight.words.PressWords;
import org.halflight.words.Words;

/**
 * Leads the person through the linkage test, press by press. Which press is due follows from those
 * that the session has: what is undone is asked for again, and a test that was broken off goes on
 * where it was. A rest check begins a new round.
 */
public final class LinkageWork extends GuidedWork {
  private final BenchDriver driver;
  private final CameraOperator operator;
  private final int run;
  private final Set<LinkageStep> skipped = EnumSet.noneOf(LinkageStep.class);
  private final List<SessionEvent> news = new ArrayList<>();

  /** Presses of the run before the round that is led. */
  private int before;

  private int seen;
  private boolean isSetUp;
  private boolean isOver;
  private boolean isPressed;
  private boolean asksOnceMore;
  private Optional<LinkageJudgement.Fault> offered = Optional.empty();
  private Optional<WindState> found = Optional.empty();

  /** What came of the press before. */
  private String came = "";

  /** What to do before what is asked for. */
  private String doFirst = "";

  private Prompt prompt;

  /** The round that was judged last: it is asked for at every step, and seldom changes. */
  private List<LinkagePress> judgedRound = List.of();

  private LinkageJudgement judged = LinkageJudgement.ofLastRound(List.of());

  /** Begins a round, or goes on with the one that was broken off in this run. */
  LinkageWork(BenchDriver driver, CameraOperator operator) {
    this.driver = driver;
    this.operator = operator;
    run = session().run();
    seen = presses().size();
    boolean goesOn = !round().isEmpty() && judgement().next().isPresent();
    before = goesOn ? 0 : seen;
    isSetUp = goesOn;
    prompt = shown();
  }

  /** The presses of the round, in order. */
  public List<LinkagePress> round() {
    List<LinkagePress> all = presses();
    return LinkagePress.lastRound(all.subList(Math.min(before, all.size()), all.size()));
  }

  /** What they come to so far. */
  public LinkageJudgement judgement() {
    List<LinkagePress> now = round();
    if (!now.equals(judgedRound)) {
      judgedRound = now;
      judged = LinkageJudgement.ofLastRound(now);
    }
    return judged;
  }

  /** The step that is due; empty while the camera is set up, and once all are done or skipped. */
  public Optional<LinkageStep> step() {
    return isSetUp && !isOver ? due() : Optional.empty();
  }

  /** Whether each step was made or skipped, and the test neither left nor stopped. */
  public boolean isComplete() {
    return due().isEmpty();
  }

  /** Whether a step was left out. */
  boolean isCutShort() {
    return !skipped.isEmpty();
  }

  /** Presses of a step that were made in this round. */
  public int made(LinkageStep step) {
    return step.presses() - judgement().missing(step);
  }

  /** Whether it waits for the person to say how the wind is. */
  public boolean asksForWind() {
    return prompt.answers().contains(Answer.TURNS);
  }

  /** What to do before what the prompt asks for; may be empty. Its remark has it too. */
  public String doFirst() {
    return doFirst;
  }

  /** What the session has to report because of it, once. */
  List<SessionEvent> drainEvents() {
    List<SessionEvent> once = List.copyOf(news);
    news.clear();
    return once;
  }

  @Override
  public Prompt prompt() {
    return prompt;
  }

  @Override
  void onAnswer(Answer answer) {
    came = "";
    doFirst = "";
    switch (answer) {
      case DONE -> {
        isSetUp = true;
        operator.getReady();
      }
      case TURNS -> judge(WindState.TURNS);
      case LOCKED -> judge(WindState.LOCKED);
      case ADJUSTED -> beginAgain();
      case SKIP -> step().ifPresent(skipped::add);
      case LEAVE, STOP -> isOver = true;
    }
    goOn();
  }

  @Override
  void onAnswerNotOffered(Answer answer) {
    if (!isOver && (answer == Answer.TURNS || answer == Answer.LOCKED)) {
      doFirst = Words.say("linkageWork.setUpFirst");
      prompt = shown();
    }
  }

  /** The practice camera's button is pressed, as the step asks for. */
  void press() {
    if (step().isPresent() && operator.works() && !isPressed) {
      isPressed = true;
      operator.press(step().get());
    } else if (isPressed) {
      doFirst = Words.say("linkageWork.tryTheWind");
    }
    prompt = shown();
  }

  @Override
  void goOn() {
    noticePresses();
    if (isPressed
        && found.isEmpty()
        && session().isQuiet()
        && operator.isPressOver(session().latestTicks())) {
      found = operator.wind();
      doFirst = found.map(wind -> Words.of("linkageWork.practice", wind)).orElse(doFirst);
    }
    if (operator.answers() && !isOver && due().isPresent()) {
      answerItself();
    }
    prompt = shown();
  }

  private void answerItself() {
    if (!isSetUp) {
      isSetUp = true;
      operator.getReady();
    } else if (!isPressed) {
      press();
    } else if (found.isPresent()) {
      judge(found.get());
      noticePresses();
    }
  }

  private void judge(WindState wind) {
    LinkageStep step = step().orElseThrow();
    if (isBeforeThePress() && !asksOnceMore) {
      asksOnceMore = true;
      doFirst = Words.say("linkageWork.pressFirst");
      return;
    }
    for (SessionEvent each : driver.handle(new SessionInput.PressJudged(step, wind))) {
      if (each instanceof SessionEvent.NotDone) {
        doFirst = EventSentences.of(each).orElseThrow();
      } else {
        news.add(each);
      }
    }
  }

  /** A rig with a release sensor that has seen no press since the last wind key. */
  private boolean isBeforeThePress() {
    List<FiringResult> all =
        session().results().stream()
            .filter(firing -> firing.run() == run)
            .filter(f -> f.untimedTest().equals(Optional.of(UntimedTest.LINKAGE)))
            .toList();
    List<FiringResult> judged = presses().stream().flatMap(p -> p.firings().stream()).toList();
    return step().filter(step -> step != LinkageStep.REST).isPresent()
        && session().isQuiet()
        && judged.stream().anyMatch(LinkageWork::sawThePress)
        && all.stream().filter(f -> !judged.contains(f)).noneMatch(LinkageWork::sawThePress);
  }

  private static boolean sawThePress(FiringResult firing) {
    return !firing.firing().of(Channel.RELEASE).isEmpty();
  }

  private void noticePresses() {
    List<LinkagePress> all = presses();
    if (all.size() == seen) {
      return;
    }
    boolean isNew = all.size() > seen;
    seen = all.size();
    before = Math.min(before, seen);
    isPressed = false;
    asksOnceMore = false;
    found = Optional.empty();
    if (isNew) {
      LinkagePress last = all.get(seen - 1);
      came = EventSentences.of(new SessionEvent.PressCounted(last)).orElseThrow();
      doFirst = LinkageWorkWords.before(last);
      offerToStop();
      operator.getReady();
    }
  }

  /** Once it is sure that something is wrong, the rest of the round is not needed. */
  private void offerToStop() {
    Optional<LinkageJudgement.Fault> fault = judgement().fault();
    if (fault.isPresent() && !fault.equals(offered) && due().isPresent()) {
      offered = fault;
      came = joined(came, LinkageWorkWords.certain(judgement()));
      if (operator.adjusts()) {
        beginAgain();
      } else if (!operator.answers()) {
        doFirst = joined(doFirst, Words.say("linkageWork.mayAdjust"));
      }
    }
  }

  private void beginAgain() {
    before = seen;
    skipped.clear();
    offered = Optional.empty();
    isOver = false;
    isSetUp = true;
    doFirst = Words.say("linkageWork.again");
    operator.getReady();
  }

  private static String joined(String one, String two) {
    return (one + " " + two).strip();
  }

  /** A round begins with the rest check, and ends when no step is left. */
  private Optional<LinkageStep> due() {
    LinkageJudgement judged = judgement();
    return Arrays.stream(LinkageStep.values())
        .filter(step -> judged.missing(step) > 0 && !skipped.contains(step))
        .findFirst();
  }

  private Prompt shown() {
    LinkageJudgement judged = judgement();
    isOver |= due().isEmpty();
    double progress = Math.min(1, (double) round().size() / LinkageStep.PRESSES);
    if (isOver) {
      return new Prompt(
          Prompt.State.OVER, LinkageWorkWords.ended(judged), came, 0, 0, progress, Set.of());
    }
    Set<Answer> answers = EnumSet.of(Answer.LEAVE, Answer.STOP);
    if (operator.answers()) {
      return at(Prompt.State.WORKING, asked(judged), answers, progress);
    }
    if (!isSetUp) {
      answers.add(Answer.DONE);
      return at(Prompt.State.ASKING, Words.say("linkageWork.setUp"), answers, progress);
    }
    answers.addAll(EnumSet.of(Answer.TURNS, Answer.LOCKED, Answer.SKIP));
    if (!judged.faults().isEmpty() || isAdjusting()) {
      answers.add(Answer.ADJUSTED);
    }
    return at(Prompt.State.ASKING, asked(judged), answers, progress);
  }

  private boolean isAdjusting() {
    return session().setup().map(RunSetup::phase).equals(Optional.of(Phase.ADJUSTING));
  }

  private Prompt at(Prompt.State state, String sentence, Set<Answer> answers, double progress) {
    List<LinkageStep> steps = List.of(LinkageStep.values());
    int number = steps.indexOf(due().orElseThrow()) + 1;
    return new Prompt(
        state, sentence, joined(came, doFirst), number, steps.size(), progress, answers);
  }

  /** What to do in whole at the first press of a step, and in short at the others. */
  private String asked(LinkageJudgement judged) {
    LinkageStep step = due().orElseThrow();
    if (operator.answers()) {
      return Words.say("linkageWork.practice.step", PressWords.step(step));
    }
    int made = step.presses() - judged.missing(step);
    return Words.of(
        made == 0 ? "linkageWork.ask" : "linkageWork.askAgain", step, made + 1, step.presses());
  }

  private List<LinkagePress> presses() {
    return session().presses().stream().filter(press -> press.run() == run).toList();
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
