package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;

/** How the runs of a session go on: which setting is shown, when it is done, and which is next. */
final class RunProgress {
  /** A tap, then a press that is held. */
  private static final int BULB_PRESSES_OF_STAGE = 2;

  private final FiringLog log;
  private final PressBook presses;
  private final DialQuestions questions;
  private final VerdictIsIn verdictIsIn;
  private final QuickLook quick;

  private final List<RunSetup> runs = new ArrayList<>();
  private final List<AdjustedAt> adjusted = new ArrayList<>();
  private final List<AdjusterTurn> turns = new ArrayList<>();
  private Optional<TwoSpeeds> two = Optional.empty();
  private Optional<CurtainStep> step = Optional.empty();
  private final Set<UntimedTest> lightTestsDone = EnumSet.noneOf(UntimedTest.class);
  private SpeedQueue queue = SpeedQueue.EMPTY;
  private Optional<DialSetting> shown = Optional.empty();
  private int firstRunOfCamera;
  private String camera = "";
  private boolean staysHere;

  /** In a quick look: B was held as long as it takes, or the person goes on without. */
  private boolean heldOpen;

  private boolean doneIsSaid;

  /** Whether the light was read in the run that goes on. */
  private boolean isRead;

  RunProgress(FiringLog log, PressBook presses, DialQuestions questions, VerdictIsIn verdictIsIn) {
    this.log = log;
    this.presses = presses;
    this.questions = questions;
    this.verdictIsIn = verdictIsIn;
    quick = new QuickLook(log, verdictIsIn);
  }

  List<RunSetup> runs() {
    return Collections.unmodifiableList(runs);
  }

  /** Counts the runs from 1; 0 before one was begun. */
  int run() {
    return runs.size();
  }

  /** The run under way or done. */
  Optional<RunSetup> setup() {
    return runs.isEmpty() ? Optional.empty() : Optional.of(runs.get(runs.size() - 1));
  }

  Optional<DialSetting> shown() {
    return shown;
  }

  /** Where in the work a release belongs that comes now. */
  FiringPlace place(Optional<DialSetting> setting, boolean afterRest) {
    return new FiringPlace(
        run(),
        setting,
        setup().map(RunSetup::reference).orElse(Reference.EXACT),
        setup().map(RunSetup::phase),
        afterRest);
  }

  /** The time that the shown speed should have, in seconds. */
  Optional<Double> wantedSeconds() {
    Reference reference = setup().map(RunSetup::reference).orElse(Reference.EXACT);
    return shown.flatMap(DialSetting::speed).map(speed -> speed.seconds(reference));
  }

  /**
   * A run begins, or goes on with another number of tries.
   *
   * @return whether it is another camera's
   */
  boolean begin(RunSetup asked, List<SessionEvent> events) {
    // What nobody says is as it was in the stage before.
    Assembly before =
        setup().filter(asked::isStageOf).map(RunSetup::assembly).orElse(Assembly.BARE);
    RunSetup begun = asked.isStage() ? asked.with(before.with(asked.conditions())) : asked;
    Optional<StageSwitch> stage =
        Optional.of(begun)
            .filter(RunSetup::isStage)
            .map(its -> StageSwitch.of(runs, its, isUntouched()));
    stage.filter(StageSwitch::dropsTheLast).ifPresent(its -> runs.remove(run() - 1));
    boolean goesOn =
        setup().filter(begun::asksTheSameAs).isPresent()
            && (stage.filter(its -> its.how() == StageSwitch.How.GOES_ON).isPresent()
                || !isRunDone());
    boolean otherCamera =
        !goesOn && !camera.isBlank() && !begun.camera().isBlank() && !camera.equals(begun.camera());
    if (goesOn) {
      runs.set(run() - 1, begun);
    } else {
      runs.add(begun);
      lightTestsDone.clear();
      heldOpen = false;
      two = Optional.empty();
      step = Optional.empty();
      firstRunOfCamera = otherCamera ? run() : firstRunOfCamera;
      camera = begun.camera().isBlank() ? camera : begun.camera();
      questions.runBegins(firstRunOfCamera, events);
    }
    isRead = false;
    queue = new SpeedQueue(begun.settings());
    reopen();
    stage.map(its -> its.event(begun)).ifPresent(events::add);
    shown
        .filter(here -> goesOn && !isDone(here))
        .or(() -> queue.nextOpen(Optional.empty(), this::isDone))
        .ifPresent(setting -> show(setting, events));
    return otherCamera;
  }

  /** The light is read in the run that goes on. */
  void lightRead() {
    isRead = true;
  }

  /** Whether nothing has happened in the run that goes on. */
  private boolean isUntouched() {
    return !isRead && log.all().stream().noneMatch(firing -> firing.run() == run());
  }

  /** The person's own choice stays on the screen where it is done already, or is being adjusted. */
  void choose(DialSetting setting, List<SessionEvent> events) {
    staysHere =
        setup().isPresent()
            && ((setup().get().phase() == Phase.ADJUSTING && !setup().get().isStage())
                || isDone(setting));
    doneIsSaid = false;
    show(setting, events);
  }

  List<AdjustedAt> adjustments() {
    return Collections.unmodifiableList(adjusted);
  }

  List<AdjusterTurn> turns() {
    return Collections.unmodifiableList(turns);
  }

  /** An adjustment was made: what is shown is fired again. What was found changes nothing. */
  void adjusted(String words, List<SessionEvent> events) {
    Optional<AdjusterTurn> turn = AdjusterTurn.find(words);
    turn.ifPresent(turns::add);
    AdjustedAt here = new AdjustedAt(run(), log.size(), words);
    if (here.isFound()) {
      events.add(new SessionEvent.AdjustmentMarked(here));
      return;
    }
    adjusted.add(here);
    events.add(new SessionEvent.AdjustmentMarked(here));
    if (two.isPresent()) {
      goOn(events);
    }
  }

  Optional<TwoSpeeds> two() {
    return two;
  }

  /** Two speeds in turn from here on, or one at a time again; in a run of adjusting only. */
  void two(Optional<TwoSpeeds> chosen, List<SessionEvent> events) {
    if (setup().filter(its -> its.phase() == Phase.ADJUSTING).isEmpty()) {
      events.add(new SessionEvent.NotDone(SessionEvent.NotDone.Why.NOT_ADJUSTING));
      return;
    }
    two = chosen;
    events.add(new SessionEvent.TwoShown(two));
    doneIsSaid = false;
    Optional<MarkedSpeed> here = shown.flatMap(DialSetting::speed);
    two.filter(its -> here.filter(its::has).isEmpty())
        .ifPresentOrElse(
            its -> show(new DialSetting.Speed(its.first()), events), () -> showAgain(events));
  }

  Optional<CurtainStep> step() {
    return step;
  }

  /** A step of adjusting curtains from here on, at its speed; in a run of adjusting only. */
  void step(CurtainStep opened, List<SessionEvent> events) {
    Optional<RunSetup> adjusting = setup().filter(its -> its.phase() == Phase.ADJUSTING);
    if (adjusting.isEmpty()) {
      events.add(new SessionEvent.NotDone(SessionEvent.NotDone.Why.NOT_ADJUSTING));
      return;
    }
    step = Optional.of(opened);
    two = Optional.empty();
    events.add(new SessionEvent.StepShown(opened));
    dial()
        .map(its -> opened.speed(adjusting.get().criteria().get(RunOption.X_SPEED), its.speeds()))
        .ifPresent(speed -> choose(new DialSetting.Speed(speed), events));
  }

  /** Timed firings of a speed since the last adjustment of the run. */
  private int sinceAdjustment(MarkedSpeed speed) {
    int after = SpringSettling.lastUncounted(run(), adjusted, log.all());
    return (int)
        log.tries(run(), new DialSetting.Speed(speed))
            .filter(firing -> firing.number() > after && firing.isGood())
            .count();
  }

  void next(List<SessionEvent> events) {
    if (isQuick()
        && shown.flatMap(DialSetting::untimedTest).filter(UntimedTest::holds).isPresent()) {
      heldOpen = true;
      goOn(events);
      return;
    }
    queue.after(shown).or(() -> shown).ifPresent(next -> choose(next, events));
  }

  void previous(List<SessionEvent> events) {
    queue.before(shown).or(() -> shown).ifPresent(before -> choose(before, events));
  }

  void lightTestEnds(UntimedTest test, List<SessionEvent> events) {
    lightTestsDone.add(test);
    goOn(events);
  }

  /** Of some conditions those that are special within a run. */
  FiringConditions apartFromRun(int run, FiringConditions conditions) {
    return run > 0 ? conditions.within(runs.get(run - 1).conditions()) : conditions;
  }

  /** A firing counts no more with the others, or counts again: its speed may lack one. */
  void countsOtherwise(FiringResult changed, List<SessionEvent> events) {
    boolean lacks =
        changed.setting().filter(its -> changed.run() == run() && !isDone(its)).isPresent();
    if (lacks) {
      showAgain(changed, events);
    } else {
      lacksOne();
      goOn(events);
    }
  }

  /** A firing counts no more or elsewhere: its speed may lack one. */
  void lacksOne() {
    doneIsSaid = false;
  }

  /** The speed of a firing that counts no more is shown again. */
  void showAgain(FiringResult lost, List<SessionEvent> events) {
    reopen();
    lost.setting().ifPresent(setting -> show(setting, events));
  }

  private void reopen() {
    doneIsSaid = false;
    staysHere = false;
  }

  /** Shows what is shown once more, to whoever looks only now. */
  void showAgain(List<SessionEvent> events) {
    shown.ifPresent(setting -> show(setting, events));
  }

  private void show(DialSetting setting, List<SessionEvent> events) {
    boolean other = !shown.equals(Optional.of(setting));
    shown = Optional.of(setting);
    repeat()
        .filter(it -> setting.speed().equals(Optional.of(it.speed())))
        .map(SessionEvent.RepeatAsked::new)
        .ifPresent(events::add);
    events.add(
        new SessionEvent.SettingShown(setting, goodAt(setting), wantedNow(setting), isQuick()));
    setting
        .speed()
        .filter(speed -> other && isToBeSetBeforeCocking(speed))
        .ifPresent(speed -> events.add(new SessionEvent.SetBeforeCocking(speed)));
  }

  private boolean isToBeSetBeforeCocking(MarkedSpeed speed) {
    return setup().filter(s -> s.customs().topSpeedBeforeCocking()).isPresent()
        && dial().filter(its -> its.top().equals(speed)).isPresent();
  }

  /** Shows the setting that is due: this one until it is done, then the next that is not. */
  void goOn(List<SessionEvent> events) {
    if (setup().isEmpty() || shown.isEmpty() || doneIsSaid) {
      return;
    }
    DialSetting here = shown.get();
    if (two.isPresent() && here.speed().isPresent()) {
      MarkedSpeed next = two.get().next(here.speed().get(), this::sinceAdjustment);
      if (sinceAdjustment(next) < TwoSpeeds.FIRINGS || !two.get().has(next)) {
        show(new DialSetting.Speed(next), events);
      } else {
        events.add(new SessionEvent.TwoFired(two.get()));
      }
      return;
    }
    // Moving on while it is asked where the dial stands would only spread the confusion.
    boolean asked =
        questions.open().filter(q -> here.speed().equals(Optional.of(q.shown()))).isPresent()
            && log.triesCount(run(), here) < mostTries(here);
    if (staysHere || asked || !isDone(here)) {
      show(here, events);
      return;
    }
    int tries = log.triesCount(run(), here);
    int good = goodAt(here);
    if (!isQuick() && good < wanted(here)) {
      here.speed()
          .ifPresent(speed -> events.add(new SessionEvent.EnoughToKnow(speed, tries, good)));
      here.untimedTest()
          .ifPresent(test -> events.add(new SessionEvent.EnoughOfUntimedTest(test, tries)));
    }
    Optional<DialSetting> next = queue.nextOpen(shown, this::isDone);
    next.ifPresent(open -> show(open, events));
    if (next.isEmpty()) {
      doneIsSaid = true;
      events.add(new SessionEvent.RunDone());
    }
  }

  /** Whether every setting of the run is done. */
  boolean isRunDone() {
    return setup().isPresent() && two.isEmpty() && queue.settings().stream().allMatch(this::isDone);
  }

  /** Whether what is shown is done. */
  boolean isShownDone() {
    return shown.filter(this::isDone).isPresent();
  }

  /** Firings of the run at a setting that have what was asked for. */
  int goodAt(DialSetting setting) {
    if (isOfTwo(setting)) {
      return sinceAdjustment(setting.speed().orElseThrow());
    }
    if (isQuick() && setting.speed().isPresent()) {
      return quick.fired(run(), setting.speed().get());
    }
    // In a stage a short press of B counts as well as a long one, whatever came of it.
    return isLinkage(setting)
        ? presses.good(run())
        : isBulbOfStage(setting) ? log.triesCount(run(), setting) : log.good(run(), setting);
  }

  private boolean isBulbOfStage(DialSetting setting) {
    return setting.untimedTest().equals(Optional.of(UntimedTest.B))
        && setup().filter(RunSetup::isStage).isPresent();
  }

  private boolean isOfTwo(DialSetting setting) {
    return two.isPresent() && setting.speed().filter(two.get()::has).isPresent();
  }

  /** Whether the run is a quick look. */
  boolean isQuick() {
    return setup().filter(RunSetup::isQuick).isPresent();
  }

  /** The shutter was held open at B, and nothing more can be had by that. */
  void heldOpen() {
    heldOpen = true;
  }

  /** What a quick look asks for again, once everything was fired once. */
  Optional<QuickRepeat> repeat() {
    return isQuick() && queue.settings().stream().allMatch(this::isFiredOnce)
        ? quick.repeat(run(), setup().orElseThrow())
        : Optional.empty();
  }

  /** How many firings of a setting are wanted by now. */
  int wantedNow(DialSetting setting) {
    if (isOfTwo(setting)) {
      return TwoSpeeds.FIRINGS;
    }
    if (!isQuick() || setting.speed().isEmpty()) {
      return setup()
          .map(
              its ->
                  isBulbOfStage(setting)
                      ? BULB_PRESSES_OF_STAGE
                      : setting.speed().map(its::firingsWanted).orElse(its.firingsPerSpeed()))
          .orElse(0);
    }
    return repeat()
        .filter(it -> setting.speed().equals(Optional.of(it.speed())))
        .map(it -> 1 + Math.max(QuickRepeat.LEAST, it.number()))
        .orElse(1);
  }

  private boolean isFiredOnce(DialSetting setting) {
    if (setting.speed().isPresent()) {
      return quick.isFired(run(), setting.speed().get());
    }
    return setting.untimedTest().filter(UntimedTest::holds).isPresent()
        ? heldOpen || log.triesCount(run(), setting) >= Session.ENOUGH_TRIES
        : isDoneAsPlanned(setting);
  }

  private static boolean isLinkage(DialSetting setting) {
    return setting.untimedTest().equals(Optional.of(UntimedTest.LINKAGE));
  }

  private boolean isDone(DialSetting setting) {
    return isQuick()
        ? isFiredOnce(setting)
            && repeat().filter(it -> setting.speed().equals(Optional.of(it.speed()))).isEmpty()
        : isDoneAsPlanned(setting);
  }

  private boolean isDoneAsPlanned(DialSetting setting) {
    if (isLinkage(setting)) {
      return goodAt(setting) >= LinkageStep.PRESSES;
    }
    if (setting.untimedTest().filter(UntimedTest::isOfTheLight).isPresent()) {
      return lightTestsDone.contains(setting.untimedTest().get());
    }
    int tries = log.triesCount(run(), setting);
    if (goodAt(setting) < wanted(setting)) {
      return tries >= mostTries(setting);
    }
    RunSetup asked = setup().orElseThrow();
    return !asked.criteria().untilDecided()
        || setting.speed().isEmpty()
        || tries >= Math.max(Session.MOST_UNTIL_DECIDED, asked.mostTries())
        || verdictIsIn.of(asked, log.tries(run(), setting).toList());
  }

  private int mostTries(DialSetting setting) {
    if (setting.speed().isPresent()) {
      return setup().orElseThrow().mostTries();
    }
    boolean trials = setting.untimedTest().filter(UntimedTest::isForTheEar).isPresent();
    return trials ? Math.max(Session.ENOUGH_TRIES, 2 * wanted(setting)) : Session.ENOUGH_TRIES;
  }

  private int wanted(DialSetting setting) {
    RunSetup asked = setup().orElseThrow();
    return isBulbOfStage(setting)
        ? BULB_PRESSES_OF_STAGE
        : setting
            .speed()
            .map(asked::firingsWanted)
            .orElseGet(() -> wanted(setting.untimedTest().orElseThrow(), asked.firingsPerSpeed()));
  }

  /**
   * A test that came to its end once is done; wind and release is tried as often as a speed is
   * fired. Tests of the light are no firings.
   */
  private static int wanted(UntimedTest test, int planned) {
    return switch (test) {
      case LINKAGE -> LinkageStep.PRESSES;
      case WIND_AND_RELEASE -> planned;
      case RELEASE_ALONE -> Session.ALONE_FIRINGS;
      case B, T, SELF_TIMER -> 1;
      case LEAK, STOPS -> 0;
    };
  }

  /** The next slower and faster speed of the dial. */
  List<MarkedSpeed> neighbours(MarkedSpeed speed) {
    return dial().stream()
        .flatMap(its -> Stream.of(its.slower(speed), its.faster(speed)))
        .flatMap(Optional::stream)
        .toList();
  }

  /** The dial of the run; empty where nobody knows a speed of it. */
  private Optional<Dial> dial() {
    return setup()
        .filter(its -> !its.order().isEmpty() || Dial.ofKey(its.dial()).isPresent())
        .map(RunSetup::markings);
  }
}
