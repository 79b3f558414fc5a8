package org.halflight.desk.view;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.LightPlan;
import org.halflight.bench.RigCheckRun;
import org.halflight.calibration.ControlLimits;
import org.halflight.calibration.RigCheck;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.TripPoints;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.firstlight.Seen;
import org.halflight.firstlight.TaskJudge;
import org.halflight.light.Aim;
import org.halflight.link.LinkState;
import org.halflight.rig.RigMessage;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Adjuster;
import org.halflight.session.Assembly;
import org.halflight.session.CurtainStep;
import org.halflight.session.DialSetting;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.TwoSpeeds;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ModelShutter;
import org.halflight.signal.Channel;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.workflow.Answer;
import org.halflight.workflow.Prompt;

/**
 * What the window may have to show, by name: made on the practice rig in virtual time, so that each
 * is the same whenever and wherever it is made. All figures are those of invented shutters.
 */
public final class FitViews {
  /** The session of a whole piece of work, for the record. */
  public static final String HISTORY = "history.session";

  private static final String[] DIAL = {
    "1", "1/2", "1/4", "1/8", "1/15", "1/30", "1/60", "1/125", "1/250", "1/500"
  };

  private static final String LONG_NAME = "Invented rangefinder of the second series, chrome";

  private final Path folder;
  private final Map<String, BenchView> views = new LinkedHashMap<>();
  private int works;

  private FitViews(Path folder) {
    this.folder = folder;
  }

  /**
   * @param folder for session files, {@link #HISTORY} among them
   */
  public static Map<String, BenchView> of(Path folder) {
    FitViews all = new FitViews(folder);
    all.light();
    all.aiming();
    all.asFound();
    all.adjusting();
    all.stages();
    all.curtains();
    all.checks();
    all.rig();
    return all.views;
  }

  private void light() {
    try (PracticeWork work = work(dirty())) {
      keep("start", work);
      work.light.set();
      work.until(() -> work.view().light().isAsking());
      keep("light asking", work);
      work.rig.holdOpen(true);
      work.rig.rest(0.5);
      work.light.answer(Answer.DONE);
      work.until(() -> work.view().light().set().isPresent());
      keep("light set", work);
      work.rig.holdOpen(false);
      work.until(() -> !work.view().results().isEmpty());
      work.fire(Optional.of(MarkedSpeed.parse("1/60")), PracticeMishap.NONE);
      keep("fired without a run", work);
    }
  }

  private void aiming() {
    try (PracticeWork work = work(dirty())) {
      work.light.showMeter(true);
      work.until(() -> aims(work, Aim.Move.OPEN));
      work.rig.holdOpen(true);
      work.until(() -> aims(work, Aim.Move.SET));
      keep("light aiming", work);
    }
  }

  private static boolean aims(PracticeWork work, Aim.Move move) {
    return work.view().light().aim().filter(its -> its.move() == move).isPresent();
  }

  private void asFound() {
    try (PracticeWork work = work(dirty())) {
      work.model.named(LONG_NAME, Dial.custom(String.join(", ", DIAL)).orElseThrow());
      work.begin(Phase.AS_FOUND, 3, DIAL);
      keep("begun", work);
      fire(work);
      work.fire(work.view().shown().flatMap(s -> s.speed()), PracticeMishap.DOUBLE);
      keep("opened twice", work);
      while (work.view().shown().flatMap(s -> s.speed()).orElseThrow().seconds(Reference.EXACT)
          > 1 / 40.0) {
        fire(work);
      }
      work.fire(Optional.of(MarkedSpeed.parse("1/30")), PracticeMishap.NONE);
      work.until(() -> work.view().question().isPresent());
      keep("question", work);
      work.handle(work.view().question().orElseThrow().move());
      fire(work);
      keep("half way", work);
      work.fireOnly(work.view().shown().flatMap(s -> s.speed()), PracticeMishap.HANG);
      work.until(() -> work.view().openSeconds().orElse(0) > 2.5);
      keep("hang", work);
      int before = work.view().results().size();
      work.handle(new SessionInput.ClosedByHand());
      work.rig.holdOpen(false);
      work.until(() -> work.view().results().size() > before);
      keep("hung", work);
      fireAll(work);
      keep("as found done", work);
      work.link(LinkState.LOST);
      keep("lost", work);
    }
  }

  private void adjusting() {
    try (PracticeWork work = work(dirty())) {
      work.begin(Phase.ADJUSTING, 3, "1/2", "1/15");
      fire(work);
      fire(work);
      work.handle(new SessionInput.Adjusted("retard engaged a quarter turn less than before"));
      work.rig.setShutter(InventedShutters.cleanedSlowTrain(InventedShutters.dial(), 21));
      fire(work);
      fire(work);
      keep("adjusting", work);
      work.handle(
          new SessionInput.TwoChosen(
              Optional.of(new TwoSpeeds(MarkedSpeed.parse("1/2"), MarkedSpeed.parse("1/15")))));
      fire(work);
      fire(work);
      fire(work);
      fire(work);
      keep("two", work);
      BenchView linkage =
          with(work.view(), "shown", Optional.of(new DialSetting.Untimed(UntimedTest.LINKAGE)));
      linkage = with(linkage, "two", Optional.empty());
      views.put("linkage", with(linkage, "linkage", linkage(Prompt.State.ASKING, 7)));
      views.put("linkage done", with(linkage, "linkage", linkage(Prompt.State.OVER, 14)));
    }
    Path file = folder.resolve("work-" + works).resolve("work.session");
    try (PracticeWork work = work(dirty())) {
      for (Phase phase : List.of(Phase.AS_FOUND, Phase.AS_LEFT)) {
        work.begin(phase, 2, DIAL);
        fireAll(work);
        work.rig.setShutter(InventedShutters.cleanedSlowTrain(InventedShutters.dial(), 21));
      }
      keep("as left done", work);
    }
    try {
      Files.copy(file, folder.resolve(HISTORY));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static LinkageView linkage(Prompt.State state, int presses) {
    List<JudgedPress> judged = new ArrayList<>();
    for (LinkageStep step : LinkageStep.values()) {
      for (int i = 0; i < step.presses() && judged.size() < presses; i++) {
        boolean rest = step == LinkageStep.REST;
        judged.add(
            new JudgedPress(step, !rest && i != 1, rest ? WindState.LOCKED : WindState.TURNS));
      }
    }
    return new LinkageView(
        new Prompt(
            state,
            state == Prompt.State.OVER
                ? "The linkage test is done."
                : "Press slowly to the end of the stroke.",
            "",
            1,
            4,
            0,
            Set.of(Answer.TURNS, Answer.LOCKED)),
        "",
        state == Prompt.State.OVER ? Optional.empty() : Optional.of(LinkageStep.SQUEEZE),
        1,
        state != Prompt.State.OVER,
        new LinkageJudgement(judged));
  }

  private void stages() {
    try (PracticeWork work = work(dirty())) {
      RunSetup setup =
          new RunSetup(
                  "invented",
                  Phase.ADJUSTING,
                  "leaf",
                  Arrays.stream(DIAL).map(MarkedSpeed::parse).toList(),
                  Reference.EXACT,
                  3)
              .withCriteria(AcceptanceCriteria.USUAL.with(RunOption.STAGES, true));
      Assembly tight = new Assembly(true, Assembly.Cells.BOTH, Assembly.Place.TIGHT);
      for (Assembly assembly : List.of(Assembly.BARE, tight)) {
        work.model.runBegins();
        work.handle(new SessionInput.RunBegins(setup.with(assembly)));
        fireAll(work);
        work.rig.setShutter(InventedShutters.allSlow(InventedShutters.dial(), 21));
      }
      keep("stages", work);
    }
  }

  private void checks() {
    try (PracticeWork work = work(InventedShutters.bouncing(InventedShutters.dial(), 7))) {
      work.handle(new SessionInput.LightSet(new LightLevels(20, 820, 220, 620), TripPoints.EXACT));
      work.begin(Phase.AS_LEFT, 1, "1/60", "1/125");
      fireAll(work);
      read(work, What.LAMP_COVERED, "", 20);
      read(work, What.SHUT_COCKED, "", 30);
      read(work, What.SHUT_UNCOCKED, "", 20);
      for (String[] stop :
          new String[][] {{"2.8", "820"}, {"4", "490"}, {"5.6", "160"}, {"8", "90"}}) {
        read(work, What.STOP, stop[0], Double.parseDouble(stop[1]));
      }
      keep("checks", work);
      LightPlan plan = LightPlan.leak();
      Prompt prompt =
          new Prompt(
              Prompt.State.ASKING,
              plan.steps().get(1).asked(),
              "",
              2,
              plan.steps().size(),
              0,
              Set.of(Answer.DONE, Answer.STOP));
      views.put(
          "checks asking",
          with(work.view(), "lightTest", new LightTestView(prompt, Optional.of(plan))));
    }
  }

  private static void read(PracticeWork work, What what, String at, double counts) {
    work.handle(new SessionInput.LightRead(LightReading.of(what, at, false, counts, 0.3, 1000, 1)));
  }

  private void rig() {
    RigModel model = new RigModel();
    model.checkBegins(0);
    double[] shifted = new double[RigCheckRun.PULSES];
    Arrays.fill(shifted, 5e-6);
    model.checked(RigCheck.of(new ControlLimits(0, 1e-6), shifted), "R-0001");
    model.idle();
    views.put(
        "rig checked",
        with(views.get("start"), "rig", model.view(Optional.empty(), new Session(), List.of())));
    model.calibrationBegins(0, 120);
    model.now(30);
    views.put(
        "rig calibrating",
        with(views.get("start"), "rig", model.view(Optional.empty(), new Session(), List.of())));
    firstLight();
  }

  /** A rig whose comparator is wired the wrong way round; and one that has come to its light. */
  private void firstLight() {
    RigMessage.Greeting rig =
        new RigMessage.Greeting(0, 1, 16_000_000, "full", 0xFF, "R-0001", 3, "power", "1.3.0", 0);
    FirstLight state = FirstLight.of(rig).with(FirstStep.SUPPLY, TaskJudge.supply(4.98));
    Finding wrong =
        new Finding(
            Finding.Outcome.CHECK,
            Optional.of(Fault.LEVEL_INVERTED),
            Optional.of(Channel.CENTRE_LOW),
            List.of(
                new Seen.Light(Channel.CENTRE_LOW, 8, 780),
                new Seen.Changes(Channel.CENTRE_LOW, 2, 2)));
    Prompt asks =
        new Prompt(
            Prompt.State.ASKING,
            FirstLightWords.toDo(FirstStep.CENTRE, rig.board()),
            FirstLightWords.remark(FirstStep.CENTRE, wrong, rig.board()),
            3,
            15,
            0.2,
            Set.of(Answer.DONE, Answer.SKIP, Answer.STOP));
    firstLight(
        "first light",
        new FirstLightView(
            Optional.of(state),
            Optional.of(asks),
            Optional.of(FirstStep.CENTRE),
            FirstLightWords.seen(wrong.seen()),
            false));
    FirstLight over = state.with(FirstStep.CENTRE, wrong);
    for (FirstStep step : over.steps()) {
      if (step.compareTo(FirstStep.CENTRE) > 0 && step.compareTo(FirstStep.LIGHT) < 0) {
        over = over.with(step, Finding.passed(List.of()));
      }
    }
    firstLight(
        "first light, inputs over",
        new FirstLightView(Optional.of(over), Optional.empty(), over.next(), "", false));
  }

  private void firstLight(String name, FirstLightView first) {
    RigView rig = new RigModel().view(Optional.empty(), new Session(), List.of());
    views.put(name, with(views.get("start"), "rig", with(rig, "firstLight", first)));
  }

  private void curtains() {
    try (PracticeWork work = work(CurtainWork.found())) {
      CurtainWork.begin(work, Phase.AS_FOUND);
      fireAll(work);
      keep("curtains as found", work);
      CurtainWork.begin(work, Phase.ADJUSTING);
      CurtainWork.turn(work, CurtainStep.FIRST_TENSION, Adjuster.FIRST_TENSION, 0.125, 1);
      keep("curtains settling", work);
      CurtainWork.turn(work, CurtainStep.SECOND_TENSION, Adjuster.SECOND_TENSION, 0.125);
      CurtainWork.turn(work, CurtainStep.SECOND_TENSION, Adjuster.SECOND_TENSION, -0.125);
      keep("curtains adjusting", work);
    }
  }

  private static LeafShutter dirty() {
    return InventedShutters.dirtySlowTrain(InventedShutters.dial(), 20);
  }

  private PracticeWork work(ModelShutter shutter) {
    try {
      return new PracticeWork(Files.createDirectories(folder.resolve("work-" + works++)), shutter);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void keep(String name, PracticeWork work) {
    views.put(name, work.view());
  }

  /** Fires once, and closes by hand what hangs by itself. */
  private static void fire(PracticeWork work) {
    int before = work.view().results().size();
    work.fireOnly(work.view().shown().flatMap(s -> s.speed()), PracticeMishap.NONE);
    work.until(
        () -> work.view().results().size() > before || work.view().openSeconds().orElse(0) > 4);
    if (work.view().results().size() == before) {
      work.handle(new SessionInput.ClosedByHand());
      work.rig.holdOpen(false);
      work.until(() -> work.view().results().size() > before);
    }
  }

  private static void fireAll(PracticeWork work) {
    while (!work.view().runDone()) {
      if (work.view().shown().flatMap(s -> s.speed()).isPresent()) {
        fire(work);
      } else {
        int before = work.view().results().size();
        work.rig.holdOpen(true);
        work.rig.rest(2);
        work.rig.holdOpen(false);
        work.until(() -> work.view().results().size() > before);
      }
      if (work.view().question().isPresent()) {
        work.handle(new SessionInput.AcceptedAsShown());
      }
    }
  }

  /** The same view with another value of one of its parts. */
  private static <R extends Record> R with(R view, String part, Object value) {
    @SuppressWarnings("unchecked")
    Class<R> type = (Class<R>) view.getClass();
    RecordComponent[] parts = type.getRecordComponents();
    try {
      Object[] values = new Object[parts.length];
      Class<?>[] types = new Class<?>[parts.length];
      for (int i = 0; i < parts.length; i++) {
        types[i] = parts[i].getType();
        values[i] = parts[i].getName().equals(part) ? value : parts[i].getAccessor().invoke(view);
      }
      Constructor<R> constructor = type.getDeclaredConstructor(types);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }
}
