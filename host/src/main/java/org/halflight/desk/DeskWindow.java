package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.AbstractButton;
import javax.swing.BorderFactory;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import org.halflight.desk.view.AboutText;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.ConditionKeys;
import org.halflight.desk.view.CurtainKeys;
import org.halflight.desk.view.MenuList;
import org.halflight.desk.view.Message;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.PlaceUndo;
import org.halflight.desk.view.PortsView;
import org.halflight.desk.view.Proposal;
import org.halflight.desk.view.SessionUndo;
import org.halflight.desk.view.SoundKind;
import org.halflight.desk.view.UndoStack;
import org.halflight.desk.view.UserAction;
import org.halflight.files.FaultLog;
import org.halflight.job.Camera;
import org.halflight.job.Visit;
import org.halflight.session.Assembly;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.RunForm;
import org.jspecify.annotations.Nullable;

/** The one window. For the window's own thread. */
final class DeskWindow {
  private final JFrame frame = new JFrame(Words.say("desk.title"));
  private final BenchChoice choice;
  private final FaultLog faults;
  private final UncaughtFaults uncaught;
  private DeskSettings settings;
  private final CuePlayer sounds;

  /** Pictures that are wanted after it was shut down are for nobody. */
  private final ExecutorService drawing =
      new ThreadPoolExecutor(
          1,
          1,
          0,
          TimeUnit.SECONDS,
          new LinkedBlockingQueue<>(),
          work -> {
            Thread thread = new Thread(work, UncaughtFaults.DRAWING_THREAD);
            thread.setDaemon(true);
            return thread;
          },
          new ThreadPoolExecutor.DiscardPolicy());

  private final Places places;
  private final TopBar top;
  private final BenchPlace bench;
  private final DetailsPlace details;
  private final RigPlace rig;
  private final ExtraTestsPlace tried;
  private final Archive archive;
  private final CameraPlace camera;
  private final CamerasPlace cameras;
  private final PracticeMenu practice;
  private final PracticeScrews screws = new PracticeScrews();
  private final DarkCover cover;
  private final HelpPlace help;
  private final DeskMenu menu = new DeskMenu(new MenuSource(), this::act);
  private final DeskKeys deskKeys;
  private final TypingUndo typing = new TypingUndo();
  private final Pedal pedal;
  private final PedalPanel pedalPanel;
  private final PlaceUndo undo = new PlaceUndo(new SessionActs());
  private final ReadOnlyText below = new ReadOnlyText("undoSaid", Words.say("desk.undo.name"));
  private Look look;
  private @Nullable BenchView view;
  private Optional<RunForm> dryRun = Optional.empty();
  private boolean tables;
  private Consumer<BenchView> onView = shown -> {};

  DeskWindow(DeskSurroundings surroundings, DeskSettings settings) {
    this.settings = settings;
    this.sounds = new CuePlayer(settings.sounds());
    this.look = Look.install(settings.dark());
    this.faults = surroundings.faults();
    this.uncaught = new UncaughtFaults(faults, surroundings.nanos(), this::saysLater);
    pedal = new Pedal(surroundings.nanos(), settings.pedals());
    pedalPanel = new PedalPanel(pedal, onDone(UserAction.KEYS));
    archive = new Archive(surroundings, this::saysLater);
    choice =
        new BenchChoice(
            surroundings,
            () -> new LatestPost<>(SwingUtilities::invokeLater, this::show),
            sounds::play,
            archive,
            begun -> begun.does(hands -> hands.rig().onDone(this::rigDone)));
    top = new TopBar(look, this::act);
    bench =
        new BenchPlace(
            look,
            drawing,
            surroundings.nanos(),
            this::act,
            this::marked,
            (firing, reason) -> asks(hands -> hands.changeReason(firing, reason)),
            () -> pedal.learnt().containsKey(Pedal.Use.GO));
    details = new DetailsPlace(look, drawing, surroundings.nanos(), bench::looked, this::back);
    rig =
        new RigPlace(look, drawing, surroundings, this::does, () -> act(UserAction.TO_FIRST_LIGHT));
    tried = new ExtraTestsPlace(look, drawing, surroundings.nanos(), this::does);
    camera =
        new CameraPlace(
            look,
            archive,
            surroundings.clock(),
            drawing,
            this::named,
            known -> does(hands -> hands.named(known.label(), known.dial())),
            () -> does(BenchActions::isNobodys),
            onDone(UserAction.TO_CAMERA));
    cameras =
        new CamerasPlace(
            look,
            archive,
            surroundings,
            drawing,
            this::onCameraChosen,
            this::dryRun,
            page -> does(hands -> hands.rig().pageWritten(page)),
            onDone(UserAction.TO_CAMERAS));
    help =
        new HelpPlace(
            look,
            drawing,
            () ->
                AboutText.lines(
                    surroundings.version(),
                    name -> System.getProperty(name, ""),
                    surroundings.folder().toString(),
                    view().map(seen -> seen.link().serial()).orElse("")));
    places =
        new Places(
            List.of(
                bench,
                new LightPlace(
                    look,
                    this::act,
                    shown -> does(hands -> hands.light().showMeter(shown)),
                    () -> does(hands -> hands.light().answer(Answer.DONE))),
                camera,
                new RunPlace(look, this::suggestion, bench::toAdjust, this::beginRun),
                cameras,
                new KeysPlace(
                    look,
                    pedalPanel,
                    new SoundsPanel(settings.sounds(), this::soundTurned, onDone(UserAction.KEYS)),
                    pedal::learnsNothing),
                details,
                rig,
                new FirstLightPlace(look, drawing, surroundings, this::does, this::act),
                tried,
                help),
            this::at);
    practice =
        new PracticeMenu(
            this::onModelCamera, onDone(UserAction.PRACTICE), () -> act(UserAction.CHANGE_BENCH));
    cover = new DarkCover(look, turn -> does(hands -> hands.light().screenIsPainted(turn)));
    frame.setGlassPane(cover);
    frame.add(top, BorderLayout.NORTH);
    frame.add(places.panel());
    below.setVisible(false);
    frame.add(below, BorderLayout.SOUTH);
    dressBelow();
    frame.setMinimumSize(new Dimension(Look.px(960), Look.px(600)));
    frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosing(WindowEvent event) {
            close();
          }
        });
    deskKeys =
        new DeskKeys(
            frame,
            () -> places.here().acceptsBenchKeys(),
            this::isPractice,
            this::act,
            new PedalKeys(pedal, this::pedal, this::saysOfPedal, pedalPanel::say));
    deskKeys.install();
    if (SystemMenu.isOnScreen(System.getProperty("os.name", ""))) {
      frame.setJMenuBar(menu.bar());
      top.menuButton().setVisible(false);
    }
    SystemMenu.register(SystemMenu.ofThisSystem(), () -> act(UserAction.ABOUT), this::close);
    typing.install();
  }

  private void atTheLight(Consumer<BenchActions> doing) {
    if (places.here().key() != UserAction.TO_LIGHT) {
      places.goTo(UserAction.TO_LIGHT);
    }
    does(doing);
  }

  /**
   * Begins a session on a rig where a board is plugged in, and else on the practice rig. Reads and
   * writes files, so not for the window's own thread.
   */
  BenchLoop beginBench() {
    return choice.begin();
  }

  /** Opens on a bench that has begun. */
  void open(@Nullable Dimension size, BenchLoop begun) {
    archive.onVisit(this::visitComes);
    if (size == null) {
      // Not every desktop can make a window as large as the screen; none may cut off its edge.
      frame.setBounds(GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds());
      frame.setExtendedState(JFrame.MAXIMIZED_BOTH);
    } else {
      frame.setSize(size);
    }
    places.back();
    frame.setVisible(true);
    bench.requestFocusInWindow();
    choice.start(begun);
  }

  JFrame frame() {
    return frame;
  }

  BenchPlace bench() {
    return bench;
  }

  CamerasPlace cameras() {
    return cameras;
  }

  RigPlace rig() {
    return rig;
  }

  ExtraTestsPlace tried() {
    return tried;
  }

  DetailsPlace details() {
    return details;
  }

  /** What the window shows; empty until the bench has begun. */
  Optional<BenchView> view() {
    return Optional.ofNullable(view);
  }

  /** Hears of every view when the window shows it. */
  void onView(Consumer<BenchView> hearer) {
    onView = hearer;
  }

  /** Does something to the model camera, on the thread of the bench. */
  void onModelCamera(Consumer<PracticeOperator> doing) {
    does(hands -> hands.camera().ifPresent(doing));
  }

  boolean isDark() {
    return look.dark();
  }

  /** Ends the session and closes the window. */
  void close() {
    List<Runnable> steps =
        List.of(
            deskKeys::remove,
            typing::remove,
            choice::close,
            archive::close,
            () -> settings.with(look.dark(), sounds.on(), pedal.learnt()).keep(),
            sounds::close,
            drawing::shutdown,
            // Whatever fails before: a program without a window must not keep the record.
            frame::dispose);
    for (Runnable step : steps) {
      try {
        step.run();
      } catch (RuntimeException | Error fault) {
        faults.goesOn(fault, Words.say("fault.at.closing"));
      }
    }
  }

  /** Says that something went wrong which nobody caught; from any thread. */
  void fault(Thread thread, Throwable fault) {
    uncaught.fault(thread, fault);
  }

  /** Shows a view of the bench. */
  void show(BenchView shown) {
    if (view != null && view.link().isPractice() != shown.link().isPractice()) {
      undo.forget(UserAction.PRACTICE);
      undo.forget(UserAction.TO_RIG);
    }
    view = shown;
    if (shown.link().isPractice()) {
      screws
          .follow(shown.turns())
          .forEach((screw, turns) -> onModelCamera(its -> its.turn(screw, turns)));
    }
    frame.setTitle(Words.say(shown.link().isPractice() ? "desk.title.practice" : "desk.title"));
    top.show(shown);
    places.show(shown);
    cover.show(shown);
    pedal.sees(shown, places.here().key());
    onView.accept(shown);
  }

  /** Does what a key does. */
  void act(UserAction act) {
    switch (act) {
      case ACCEPT -> asks(hands -> hands.run().accept());
      case WIND_TURNS -> asks(hands -> hands.run().answer(Answer.TURNS));
      case WIND_LOCKED -> asks(hands -> hands.run().answer(Answer.LOCKED));
      case SKIP_READING -> asks(hands -> hands.run().answer(Answer.SKIP));
      case STOP_READING -> asks(hands -> hands.run().answer(Answer.STOP));
      case FULL_LIGHT -> does(BenchActions::fullLight);
      case AIM_LIGHT -> atTheLight(BenchActions::aim);
      case SET_LIGHT -> atTheLight(BenchActions::setLight);
      case CHECK_SCREEN -> atTheLight(BenchActions::checkScreen);
      case REJECT -> asks(BenchActions::reject);
      case UNDO -> undo.undo(places.here().key(), sessionUndo()).ifPresent(this::saysOfUndo);
      case REDO -> undo.redo(places.here().key(), sessionUndo()).ifPresent(this::saysOfUndo);
      case NEXT -> asks(hands -> hands.handle(new SessionInput.NextChosen()));
      case PREVIOUS -> asks(hands -> hands.handle(new SessionInput.PreviousChosen()));
      case MOVE -> asks(hands -> hands.run().move());
      case CLOSED_BY_HAND -> asks(hands -> hands.run().closedByHand());
      case LEARN_COCKING -> asks(BenchActions::learnCocking);
      case LENS_CAP -> asks(BenchActions::lensCap);
      case CONDITION_REST,
          CONDITION_WARMED,
          CONDITION_ATTITUDE,
          CONDITION_DIAL,
          CONDITION_QUICK_TAP,
          CONDITION_LONG_PRESS,
          CONDITION_WIDE_OPEN,
          CONDITION_STOPPED_DOWN,
          CONDITION_LAST_TOO ->
          ConditionKeys.of(act).ifPresent(key -> asks(hands -> hands.run().condition(key)));
      case CONDITIONS -> bench.turnConditions();
      case FAR_VIEW -> {
        boolean on = places.here() != bench || !bench.isFar();
        if (places.here() != bench) {
          places.back();
        }
        bench.far(on);
      }
      case TWO -> asks(hands -> hands.two(bench.selected()));
      case SWITCH_COVER -> asks(hands -> hands.flip(Assembly.Switch.COVER));
      case SWITCH_CELLS -> asks(hands -> hands.flip(Assembly.Switch.CELLS));
      case SWITCH_PLACE -> asks(hands -> hands.flip(Assembly.Switch.PLACE));
      case TURN_TIGHTER, TURN_LOOSER ->
          view()
              .flatMap(seen -> CurtainKeys.turn(act, seen, bench.curtainAdvice()))
              .ifPresent(turn -> marked(turn.text()));
      case STEP_NEXT,
          STEP_CLEAN,
          STEP_FIRST_TENSION,
          STEP_SECOND_TENSION,
          STEP_SLIT,
          STEP_AGAIN,
          STEP_BRAKE,
          STEP_CONTACT,
          STEP_ESCAPEMENT,
          STEP_NEXT_DAY ->
          view()
              .flatMap(seen -> CurtainKeys.step(act, seen))
              .ifPresent(step -> asks(hands -> hands.handle(new SessionInput.StepChosen(step))));
      case MARK -> {
        places.back();
        bench.askForMark();
      }
      case REASON -> {
        places.back();
        bench.askForReason();
      }
      case LOOK_SLOWER, LOOK_FASTER -> {
        bench.lookAlong(act == UserAction.LOOK_SLOWER ? -1 : 1);
        details.work();
      }
      case CHOOSE ->
          bench
              .looked()
              .ifPresent(speed -> asks(hands -> hands.handle(new SessionInput.SpeedChosen(speed))));
      case TABLES -> {
        tables = !tables;
        places.asTables(tables);
      }
      case CURVE -> bench.turnCurve();
      case SOUNDS -> {
        sounds.on(sounds.on().turned());
      }
      case THEME -> look(!look.dark());
      case FIRE -> does(BenchActions::fire);
      case COCK -> does(BenchActions::cock);
      case PRACTICE -> practice.open(top.rigButton(), isPractice());
      case CHANGE_BENCH -> does(BenchActions::changeBench);
      case MENU -> menu.open(top.menuButton());
      case HELP -> {
        help.about(places.here().key());
        places.goTo(act);
      }
      case ABOUT -> {
        help.about();
        places.goTo(UserAction.HELP);
      }
      case QUIT -> close();
      case DETAILS -> places.turn(act);
      case TO_BENCH,
          TO_LIGHT,
          TO_CAMERA,
          TO_RUN,
          TO_CAMERAS,
          TO_RIG,
          TO_FIRST_LIGHT,
          TO_TRIED,
          KEYS ->
          places.goTo(act);
    }
  }

  /** Acts at the bench go by the marks of the session. */
  private final class SessionActs implements PlaceUndo.OfSession {
    @Override
    public void undo() {
      asks(BenchActions::undo);
    }

    @Override
    public void redo() {
      asks(BenchActions::redo);
    }
  }

  private final class MenuSource implements DeskMenu.Source {
    @Override
    public MenuList.Now now() {
      UserAction here = places.here().key();
      return new MenuList.Now(
          view(),
          places.here().acceptsBenchKeys(),
          undo.undoWords(here, sessionUndo()),
          undo.redoWords(here, sessionUndo()),
          tables,
          sounds.on().all());
    }

    @Override
    public List<AbstractButton> here() {
      return places.buttons();
    }

    @Override
    public Look look() {
      return look;
    }

    @Override
    public List<PortsView.Line> ports() {
      return view == null ? List.of() : view.link().ports().lines();
    }

    @Override
    public void choosePort(Optional<String> path) {
      does(hands -> hands.ports().choose(path));
    }
  }

  /** Takes what was done at a place, to be undone there. */
  private Consumer<UndoStack.Act> onDone(UserAction place) {
    return act -> undo.done(place, act, sessionUndo());
  }

  /** Something was done to the rig; on the bench thread. */
  private void rigDone(
      String words,
      Optional<String> whyNot,
      Consumer<RigActions> undoing,
      Consumer<RigActions> redoing) {
    UndoStack.Act act =
        new UndoStack.Act(
            words,
            whyNot,
            () -> does(hands -> undoing.accept(hands.rig())),
            () -> does(hands -> redoing.accept(hands.rig())),
            0);
    SwingUtilities.invokeLater(() -> onDone(UserAction.TO_RIG).accept(act));
  }

  private SessionUndo sessionUndo() {
    return view == null ? SessionUndo.NOTHING : view.undo();
  }

  private void saysOfUndo(String sentence) {
    says(new Message(Message.Kind.NEWS, sentence));
    boolean isSaid = places.here().acceptsBenchKeys() || places.here().says(sentence);
    saysBelow(isSaid ? "" : sentence);
  }

  /** Below a place that has no room of its own for a sentence; an empty one takes it away. */
  private void saysBelow(String sentence) {
    below.say(sentence);
    below.setVisible(!sentence.isEmpty());
  }

  private void back() {
    places.back();
  }

  private void at(UserAction place) {
    top.at(place);
    saysBelow("");
    if (view != null) {
      pedal.sees(view, place);
    }
  }

  private void soundTurned(SoundKind kind, boolean on) {
    sounds.on(sounds.on().with(kind, on));
  }

  /** A foot is on the pedal, and both hands may be on the camera. */
  private void pedal(Pedal.Use use) {
    BenchView seen = view;
    if (seen == null) {
      return;
    }
    if (use == Pedal.Use.BACK) {
      act(UserAction.REJECT);
    } else if (!places.here().goOn()) {
      (places.here().acceptsBenchKeys() ? Proposal.of(seen) : Optional.of(Proposal.elsewhere(seen)))
          .ifPresentOrElse(this::act, () -> saysOfPedal(Proposal.nothing(seen)));
    }
  }

  private void saysOfPedal(String sentence) {
    says(new Message(Message.Kind.ATTENTION, sentence));
  }

  private RunForm suggestion() {
    Optional<RunForm> dry =
        dryRun.filter(
            form ->
                camera
                    .camera()
                    .map(its -> its.label().equals(form.shutter().camera()))
                    .orElse(false));
    return dry.orElseGet(this::next);
  }

  private RunForm next() {
    RunForm next =
        RunForm.next(
            view().flatMap(BenchView::setup),
            view().filter(BenchView::runDone).isPresent(),
            camera.camera(),
            settings.options());
    return practice
        .curtains()
        .filter(kind -> isPractice() && camera.camera().isEmpty())
        .map(kind -> next.ofCurtains(kind.kind(), PracticeOperator.said(kind)))
        .orElse(next);
  }

  private void beginRun(RunSetup typed) {
    settings = settings.with(RunForm.texts(typed));
    dryRun = Optional.empty();
    RunSetup setup =
        camera
            .camera()
            .filter(known -> known.label().equals(typed.camera()))
            .map(known -> typed.withShutterKind(known.shutter()))
            .orElse(typed);
    asks(hands -> hands.beginRun(setup));
    places.back();
  }

  private void marked(String words) {
    asks(hands -> hands.adjusted(words));
  }

  private void named(Camera known) {
    does(hands -> hands.named(known.label(), known.dial()));
    says(new Message(Message.Kind.NEWS, Words.say("desk.camera.isNamed", known.label())));
  }

  private void visitComes(Optional<Visit> here) {
    if (here.isEmpty()) {
      undo.forget(UserAction.TO_CAMERA);
    }
    camera.onBench(here);
  }

  private void onCameraChosen(Camera known) {
    camera.onCameraChosen(known, () -> {});
    places.goTo(UserAction.TO_CAMERA);
  }

  /** A camera comes on the bench for its dry run, which only has to be begun. */
  private void dryRun(Camera known, RunForm form) {
    camera.onCameraChosen(
        known,
        () -> {
          dryRun = Optional.of(form);
          places.goTo(UserAction.TO_RUN);
        });
  }

  private void does(Consumer<BenchActions> doing) {
    bench(begun -> begun.does(doing));
  }

  private void asks(Function<BenchActions, List<SessionEvent>> doing) {
    bench(begun -> begun.ask(doing));
  }

  private void says(Message said) {
    bench(begun -> begun.say(said));
  }

  private void saysLater(Message said) {
    SwingUtilities.invokeLater(() -> says(said));
  }

  /** Nothing is done before the bench has begun, and between two benches. */
  private void bench(Consumer<BenchLoop> doing) {
    choice.now().ifPresent(doing);
  }

  private void look(boolean dark) {
    look = Look.install(dark);
    SwingUtilities.updateComponentTreeUI(frame);
    SwingUtilities.updateComponentTreeUI(practice.menu());
    top.look(look);
    dressBelow();
    places.look(look);
    if (view != null) {
      show(view);
    }
    frame.repaint();
  }

  private void dressBelow() {
    below.setBackground(look.shade());
    below.setForeground(look.ink());
    below.setFont(Look.letters(Look.BODY));
    below.setBorder(
        BorderFactory.createEmptyBorder(Look.px(6), Look.px(30), Look.px(6), Look.px(30)));
  }

  private boolean isPractice() {
    return view != null && view.link().isPractice();
  }
}
