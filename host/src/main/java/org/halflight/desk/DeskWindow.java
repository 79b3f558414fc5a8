package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.CriteriaForm;
import org.halflight.desk.view.Message;
import org.halflight.desk.view.RunForm;
import org.halflight.desk.view.UserAction;
import org.halflight.files.FaultLog;
import org.halflight.job.Camera;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.speeds.Dial;
import org.halflight.words.Words;

/** The one window. For the window's own thread. */
final class DeskWindow {
  private static final String DRAWING_THREAD = "halflight-pictures";
  private static final String EVENT_THREAD = "AWT-EventQueue";
  private static final long BETWEEN_FAULTS_NANOS = 2_000_000_000;
  private static final long NEVER = Long.MIN_VALUE;

  private final JFrame frame = new JFrame(Words.say("desk.title"));
  private final BenchFactory benches;
  private final FaultLog faults;
  private final LongSupplier nanos;
  private final AtomicLong saidFaultAt = new AtomicLong(NEVER);
  private DeskSettings settings;
  private final CuePlayer sounds;
  private final ExecutorService drawing =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, DRAWING_THREAD);
            thread.setDaemon(true);
            return thread;
          });
  private final CardLayout cards = new CardLayout();
  private final JPanel places = new JPanel(cards);
  private final Map<UserAction, JComponent> placeOf = new EnumMap<>(UserAction.class);
  private final TopBar top;
  private final BenchPlace bench;
  private final LightPlace light;
  private final RunPlace run;
  private final KeysPlace keys;
  private final DetailsPlace details;
  private final RigPlace rig;
  private final ExtraTestsPlace tried;
  private final Archive archive;
  private final CameraPlace camera;
  private final CamerasPlace cameras;
  private final PracticeMenu practice;
  private final DeskKeys deskKeys;
  private Look look;
  private volatile BenchLoop loop;
  private BenchView view;
  private UserAction place = UserAction.TO_BENCH;
  private boolean tables;
  private Consumer<BenchView> onView = shown -> {};

  DeskWindow(DeskSurroundings surroundings, DeskSettings settings) {
    this.settings = settings;
    this.sounds = new CuePlayer(settings.sounds());
    this.look = Look.install(settings.dark());
    this.benches = new BenchFactory(surroundings);
    this.faults = surroundings.faults();
    this.nanos = surroundings.nanos();
    archive = new Archive(surroundings, said -> says(said));
    top = new TopBar(look, this::act);
    bench = new BenchPlace(look, drawing, surroundings.nanos(), this::act, this::marked);
    light =
        new LightPlace(
            look,
            () -> loop.does(BenchActions::setLight),
            () -> loop.does(BenchActions::shutterIsOpen));
    run = new RunPlace(look, this::beginRun);
    keys = new KeysPlace(look);
    details =
        new DetailsPlace(look, drawing, surroundings.nanos(), () -> goTo(UserAction.TO_BENCH));
    rig = new RigPlace(look, drawing, surroundings, doing -> loop.does(doing));
    tried = new ExtraTestsPlace(look, drawing, surroundings.nanos(), doing -> loop.does(doing));
    camera = new CameraPlace(look, archive, surroundings.clock(), this::named);
    cameras = new CamerasPlace(look, archive, surroundings, drawing, this::take);
    practice = new PracticeMenu(this::onModelCamera);
    add(UserAction.TO_BENCH, bench);
    add(UserAction.TO_LIGHT, light);
    add(UserAction.TO_CAMERA, camera);
    add(UserAction.TO_RUN, run);
    add(UserAction.TO_CAMERAS, cameras);
    add(UserAction.KEYS, keys);
    add(UserAction.DETAILS, details);
    add(UserAction.TO_RIG, rig);
    add(UserAction.TO_TRIED, tried);
    frame.add(top, BorderLayout.NORTH);
    frame.add(places);
    frame.setMinimumSize(new Dimension(Look.px(960), Look.px(600)));
    frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosing(WindowEvent event) {
            close();
          }
        });
    bench.setFocusable(true);
    top.soundsOn(sounds.isOn());
    deskKeys = new DeskKeys(frame, this::isAtBench, this::isPractice, this::act);
    deskKeys.install();
  }

  /**
   * Begins a session on a rig where a board is plugged in, and else on the practice rig. Reads and
   * writes files, so not for the window's own thread.
   */
  BenchLoop beginBench() {
    LatestPost<BenchView> post = new LatestPost<>(SwingUtilities::invokeLater, this::show);
    return benches.isBoardThere()
        ? benches.rig(post, sounds::play, archive)
        : benches.practice(post, sounds::play, archive);
  }

  /** Opens on a bench that has begun. */
  void open(Dimension size, BenchLoop begun) {
    loop = begun;
    archive.onVisit(camera::goesOn);
    if (size == null) {
      // Not every desktop can make a window as large as the screen; none may cut off its edge.
      frame.setBounds(GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds());
      frame.setExtendedState(JFrame.MAXIMIZED_BOTH);
    } else {
      frame.setSize(size);
    }
    goTo(UserAction.TO_BENCH);
    frame.setVisible(true);
    bench.requestFocusInWindow();
    loop.start();
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
  void onModelCamera(Consumer<ModelCamera> doing) {
    loop.does(hands -> hands.camera().ifPresent(doing));
  }

  boolean isDark() {
    return look.dark();
  }

  /** Ends the session and closes the window. */
  void close() {
    List<Runnable> steps =
        List.of(
            deskKeys::remove,
            () -> Optional.ofNullable(loop).ifPresent(BenchLoop::close),
            archive::close,
            () -> settings.with(look.dark(), sounds.isOn()).keep(),
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
    String name = thread.getName();
    String where =
        name.startsWith(EVENT_THREAD)
            ? Words.say("fault.at.window")
            : name.equals(DRAWING_THREAD)
                ? Words.say("fault.at.drawing")
                : Words.say("fault.at.thread", name);
    String sentence = faults.goesOn(fault, where);
    // To say it may bring the same fault again: then it must not go round for ever.
    long now = nanos.getAsLong();
    long last = saidFaultAt.get();
    if ((last == NEVER || now - last > BETWEEN_FAULTS_NANOS)
        && saidFaultAt.compareAndSet(last, now)) {
      says(new Message(Message.Kind.TROUBLE, sentence));
    }
  }

  private void show(BenchView shown) {
    view = shown;
    frame.setTitle(Words.say(shown.link().isPractice() ? "desk.title.practice" : "desk.title"));
    top.show(shown);
    bench.show(shown);
    light.show(shown);
    showDetails();
    rig.show(shown.rig());
    tried.show(shown);
    onView.accept(shown);
  }

  private void act(UserAction act) {
    switch (act) {
      case ACCEPT -> loop.ask(BenchActions::accept);
      case SKIP_READING -> loop.does(hands -> hands.lightTest().skip());
      case STOP_READING -> loop.does(hands -> hands.lightTest().stop());
      case FULL_LIGHT -> loop.does(BenchActions::fullLight);
      case REJECT -> loop.ask(BenchActions::reject);
      case UNDO -> loop.ask(BenchActions::undo);
      case REDO -> loop.ask(BenchActions::redo);
      case NEXT -> loop.ask(hands -> hands.handle(new SessionInput.NextChosen()));
      case PREVIOUS -> loop.ask(hands -> hands.handle(new SessionInput.PreviousChosen()));
      case MOVE -> loop.ask(BenchActions::move);
      case CLOSED_BY_HAND -> loop.ask(BenchActions::closedByHand);
      case LEARN_COCKING -> loop.ask(BenchActions::learnCocking);
      case LENS_CAP -> loop.ask(BenchActions::lensCap);
      case MARK -> bench.askForMark();
      case LOOK_SLOWER, LOOK_FASTER -> {
        bench.lookAlong(act == UserAction.LOOK_SLOWER ? -1 : 1);
        showDetails();
      }
      case CHOOSE ->
          bench
              .looked()
              .ifPresent(
                  speed -> loop.ask(hands -> hands.handle(new SessionInput.SpeedChosen(speed))));
      case TABLES -> {
        tables = !tables;
        bench.asTables(tables);
        cameras.map().asTable(tables);
        details.bars().asTable(tables);
      }
      case SOUNDS -> {
        sounds.setOn(!sounds.isOn());
        top.soundsOn(sounds.isOn());
      }
      case THEME -> look(!look.dark());
      case FIRE -> loop.does(BenchActions::fire);
      case COCK -> loop.does(BenchActions::cock);
      case PRACTICE -> {
        if (isPractice()) {
          practice.open(top.rigButton());
        }
      }
      case DETAILS -> goTo(place == UserAction.DETAILS ? UserAction.TO_BENCH : UserAction.DETAILS);
      case TO_BENCH, TO_LIGHT, TO_CAMERA, TO_RUN, TO_CAMERAS, TO_RIG, TO_TRIED, KEYS -> goTo(act);
    }
  }

  private void goTo(UserAction where) {
    if (where == UserAction.TO_RUN && place != UserAction.TO_RUN) {
      run.suggest(suggestion(), bench.looked());
    }
    if (!placeOf.containsKey(where)) {
      return;
    }
    place = where;
    cards.show(places, where.name());
    top.at(where);
    showDetails();
    switch (where) {
      case TO_LIGHT -> light.first().requestFocusInWindow();
      case TO_RUN -> run.first().requestFocusInWindow();
      case TO_RIG -> rig.first().requestFocusInWindow();
      case TO_TRIED -> {
        if (view != null) {
          tried.show(view);
        }
        tried.first().requestFocusInWindow();
      }
      case TO_CAMERA -> {
        camera.refresh();
        camera.first().requestFocusInWindow();
      }
      case TO_CAMERAS -> {
        cameras.refresh();
        cameras.first().requestFocusInWindow();
      }
      default -> placeOf.get(where).requestFocusInWindow();
    }
  }

  private void showDetails() {
    if (place == UserAction.DETAILS && view != null) {
      details.show(view, bench.looked());
    }
  }

  private boolean isAtBench() {
    return place == UserAction.TO_BENCH || place == UserAction.DETAILS;
  }

  /** After as found comes adjusting, then as left; otherwise the same again. */
  private RunForm suggestion() {
    Optional<RunSetup> before = view == null ? Optional.empty() : view.setup();
    Optional<Camera> here = camera.camera();
    boolean sameCamera =
        before.isPresent()
            && (here.isEmpty()
                || before.get().camera().isBlank()
                || before.get().camera().equals(here.get().label()));
    if (!sameCamera) {
      return RunForm.usual(
              here.map(Camera::label).orElse(""),
              Phase.AS_FOUND,
              here.map(Camera::dial).orElse(Dial.builtIn().get(0)))
          .withCriteria(settings.criteria());
    }
    return RunForm.after(
        before.get(), here.map(Camera::label).orElse(before.get().camera()), view.runDone());
  }

  private void beginRun(RunSetup setup) {
    settings = settings.with(CriteriaForm.of(setup.criteria()));
    loop.ask(hands -> hands.beginRun(setup));
    goTo(UserAction.TO_BENCH);
  }

  private void marked(String words) {
    loop.does(hands -> hands.mark(words));
    loop.say(new Message(Message.Kind.NEWS, Words.say("desk.mark.marked", words)));
  }

  private void named(Camera known) {
    if (known == null) {
      loop.does(BenchActions::isNobodys);
    } else {
      loop.does(hands -> hands.named(known.label(), known.dial()));
      loop.say(new Message(Message.Kind.NEWS, Words.say("desk.camera.isNamed", known.label())));
    }
  }

  private void take(Camera known) {
    camera.take(known);
    goTo(UserAction.TO_CAMERA);
  }

  private void says(Message said) {
    SwingUtilities.invokeLater(
        () -> {
          if (loop != null) {
            loop.say(said);
          }
        });
  }

  private void look(boolean dark) {
    look = Look.install(dark);
    SwingUtilities.updateComponentTreeUI(frame);
    SwingUtilities.updateComponentTreeUI(practice.menu());
    for (LookListener each :
        List.of(top, bench, light, camera, run, cameras, keys, details, rig, tried)) {
      each.look(look);
    }
    if (view != null) {
      show(view);
    }
    frame.repaint();
  }

  private boolean isPractice() {
    return view != null && view.link().isPractice();
  }

  private <T extends JComponent & LookListener> void add(UserAction act, T component) {
    placeOf.put(act, component);
    component.setFocusable(true);
    places.add(component, act.name());
  }
}
