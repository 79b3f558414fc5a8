package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import javax.swing.JRadioButton;
import javax.swing.JTable;
import org.halflight.box.BenchInABox;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.Message;
import org.halflight.export.CsvTable;
import org.halflight.link.serial.SerialPorts;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Question;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;

/**
 * A run as found at the window, with real keys, on the real firmware in its simulator: everything
 * that may go wrong once; then close, open again, history, tables. {@link DeskWhole} does a whole
 * repair there. All figures are simulated.
 *
 * <p>A program of its own, because it needs a display: {@link DeskOnTheBoardTest} gives it one.
 */
final class DeskOnTheBoard {
  private static final String SPEEDS = "1/2, 1/4, 1/8, 1/15, 1/30";
  private static final int EACH = 5;
  private static final double RAMP_SECONDS = 0.001;

  /** Three firings of a shutter are never quite alike. */
  private static final double[] SCATTER = {0.99, 1, 1.01};

  private final Path folder;
  private final BenchInABox box;
  private final DeskHand hand;
  private int fired;

  private DeskOnTheBoard(Path folder, BenchInABox box) {
    this.folder = folder;
    this.box = box;
    this.hand = new DeskHand(() -> box.limit()::isOver);
  }

  /** Does it all; ends with 0 when everything was as expected. */
  public static void main(String[] args) {
    Path folder = Path.of(args[0]);
    try (BenchInABox box =
        BenchInABox.start(
            Files.createDirectories(folder.resolve("box")),
            List.of("light all 40 4000", BenchInABox.NAMED))) {
      new DeskOnTheBoard(folder, box).run();
      System.out.println("ON THE BOARD: done");
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
    System.exit(0);
  }

  private void run() throws Exception {
    curves();
    DeskSurroundings surroundings =
        new DeskSurroundings(
            folder.resolve("data"),
            () -> new SerialPorts(List.of(box.port())),
            box::nanos,
            Clock.systemUTC(),
            "test",
            1);
    hand.open(surroundings, new Dimension(1366, 768), false);
    setLight();
    nameCamera();
    learnCocking();
    asFound();
    List<FiringResult> results = view().results();
    hand.shot(folder.resolve("screens"), "on-the-board");
    hand.close();

    hand.open(surroundings, new Dimension(1366, 768), false);
    history(results);
    hand.close();
  }

  /** Curves by marked speed, and those of the mishaps. */
  private void curves() throws IOException {
    for (MarkedSpeed speed : Dial.custom(SPEEDS).orElseThrow().speeds()) {
      for (int i = 0; i < SCATTER.length; i++) {
        box.curve(curve(speed) + i, shutter(speed.exactSeconds() * SCATTER[i]));
      }
    }
    box.curve("flash", new LightCurve(new double[] {0, 0.002, 0.004}, new double[] {0, 0.9, 0}));
    double[] once = shutter(1.0 / 16).seconds();
    double again = once[3] + 0.03;
    box.curve(
        "twice",
        new LightCurve(
            new double[] {
              once[0],
              once[1],
              once[2],
              once[3],
              again,
              again + once[1],
              again + once[2],
              again + once[3]
            },
            new double[] {0, 1, 1, 0, 0, 1, 1, 0}));
  }

  private static LightCurve shutter(double effectiveSeconds) {
    double end = effectiveSeconds + RAMP_SECONDS;
    return new LightCurve(
        new double[] {0, RAMP_SECONDS, end - RAMP_SECONDS, end}, new double[] {0, 1, 1, 0});
  }

  private static String curve(MarkedSpeed speed) {
    return "s" + speed.label().replace('/', '_') + "-";
  }

  private void setLight() {
    hand.await("the board is known", v -> v.link().isUp());
    hand.key(KeyEvent.VK_F3);
    hand.click("setLight");
    hand.await("the open shutter is asked for", v -> v.light().isAsking());
    say("hold +0 1");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("the light is set", v -> v.light().set().isPresent());
    say("hold +0 0");
    hand.await(
        "the opening is not counted",
        v -> v.results().stream().anyMatch(f -> f.outcome() == Outcome.HELD_FOR_LIGHT));
  }

  private void nameCamera() {
    hand.key(KeyEvent.VK_F4);
    hand.fill("cameraLabel", "Invented No. 2");
    hand.fill("cameraJob", "J-18");
    hand.fill("cameraSpeeds", SPEEDS);
    hand.click("keepCamera");
    hand.await("the camera is named", v -> v.camera().equals("Invented No. 2"));
  }

  private void learnCocking() {
    hand.key(KeyEvent.VK_F2);
    hand.key(KeyEvent.VK_K);
    hand.await("learning", v -> v.cocking() == BenchView.Cocking.LEARNING);
    for (int i = 0; i < 3; i++) {
      settle("flash");
    }
    hand.await("learnt", v -> v.cocking() == BenchView.Cocking.LEARNT);
  }

  private void asFound() {
    begin(Phase.AS_FOUND, SPEEDS);
    done("1/2", n -> onlyThird(n, this::movedStop));
    done("1/4", n -> onlyThird(n, this::hang));
    done(
        "1/8",
        n -> {
          if (n == 0) {
            forgottenDial("1/4");
          } else {
            fire();
          }
        });
    done("1/15", n -> onlyThird(n, this::openedTwice));
    done(
        "1/30",
        n -> {
          if (n == 1) {
            settle("flash");
            check(last().outcome() == Outcome.LIGHT_WHILE_COCKING, "while cocking, not " + last());
          }
          fire();
        });
    hand.await("the run is done", BenchView::runDone);
  }

  private void onlyThird(int n, Runnable mishap) {
    if (n == 2) {
      mishap.run();
    } else {
      fire();
    }
  }

  private void movedStop() {
    say("lamp +0 0.85");
    fire();
    hand.await(
        "the moved stop is noticed",
        v -> v.said().filter(s -> s.kind() == Message.Kind.ATTENTION).isPresent());
    check(last().notes().lightDoubtful(), "the firing is marked: " + last());
    say("lamp +0 1");
    reject();
  }

  private void hang() {
    int before = view().results().size();
    say("hold +0 1");
    hand.await("it says that it is open", v -> v.openSeconds().orElse(0) > 2.1);
    hand.key(KeyEvent.VK_C);
    say("hold +0.1 0");
    hand.await("it settles", v -> v.results().size() > before);
    check(last().outcome() == Outcome.STUCK_OPEN, "stuck open, not " + last());
  }

  private void forgottenDial(String previous) {
    settle(curve(MarkedSpeed.parse(previous)) + 1);
    BenchView asked = hand.await("a question", v -> v.question().isPresent());
    check(
        asked.question().get().kind() == Question.Kind.DIAL_NOT_TURNED, "not " + asked.question());
    hand.key(KeyEvent.VK_M);
    hand.await("answered", v -> v.question().isEmpty());
    check(last().shown().orElseThrow().label().equals(previous), "moved to " + previous);
  }

  private void openedTwice() {
    settle("twice");
    check(last().outcome() == Outcome.DOUBLE, "double, not " + last());
    reject();
  }

  private void reject() {
    hand.key(KeyEvent.VK_BACK_SPACE);
    hand.await("not counted", v -> lastOf(v).rejection().isPresent());
  }

  private void history(List<FiringResult> before) {
    hand.key(KeyEvent.VK_F7);
    JTable cameras = (JTable) hand.find("cameras");
    hand.await("the camera is listed", v -> cameras.getRowCount() == 1);
    JTable drifts = hand.window().cameras().drifts().table();
    hand.await("its history is there", v -> drifts.getRowCount() == 5);
    hand.click("exportCamera");
    Path firings = folder.resolve("data/tables/Invented-No-2-1-firings.csv");
    Path speeds = folder.resolve("data/tables/Invented-No-2-1-speeds.csv");
    hand.await("the tables are written", v -> Files.exists(firings) && Files.exists(speeds));
    CsvTable table = CsvTable.read(firings);
    long ofRuns = before.stream().filter(f -> f.run() > 0).count();
    check(
        table.rows().size() == ofRuns,
        ofRuns + " firings of runs, " + table.rows().size() + " rows");
    int source = table.headings().indexOf("source");
    check(
        table.rows().stream().allMatch(row -> row.get(source).equals("simulator")),
        "all from the simulator");
  }

  private void begin(Phase phase, String speeds) {
    hand.key(KeyEvent.VK_F5);
    JRadioButton button = (JRadioButton) hand.find("phase." + phase);
    hand.click("phase." + phase);
    hand.await(phase + " is chosen", v -> button.isSelected());
    hand.fill("runSpeeds", speeds);
    hand.click("beginRun");
    hand.await(phase + " begins", v -> v.setup().filter(s -> s.phase() == phase).isPresent());
  }

  /** Fires until a speed has what it needs. */
  private void done(String speed, java.util.function.IntConsumer firing) {
    hand.await(speed + " is shown", v -> isShown(v, speed));
    for (int n = 0; n < 2 * EACH + 2 && isShown(view(), speed); n++) {
      firing.accept(n);
    }
    check(!isShown(view(), speed), speed + " is done");
  }

  private static boolean isShown(BenchView view, String speed) {
    return !view.runDone() && view.shown().filter(shown -> shown.label().equals(speed)).isPresent();
  }

  /** Fires the speed that is shown. */
  private void fire() {
    MarkedSpeed shown = view().shown().flatMap(setting -> setting.speed()).orElseThrow();
    settle(curve(shown) + (fired++ % SCATTER.length));
  }

  private void settle(String curve) {
    int before = view().results().size();
    say("fire +0.02 " + curve);
    hand.await("the firing of " + curve, v -> v.results().size() > before);
  }

  private void say(String line) {
    try {
      box.say(line);
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  private BenchView view() {
    return DeskHand.onScreen(() -> hand.window().view().orElseThrow());
  }

  private FiringResult last() {
    return lastOf(view());
  }

  private static FiringResult lastOf(BenchView view) {
    return view.results().get(view.results().size() - 1);
  }

  private static void check(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("not as expected: " + what);
    }
  }
}
