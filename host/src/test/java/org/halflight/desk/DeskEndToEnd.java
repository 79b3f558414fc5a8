package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import javax.swing.JRadioButton;
import javax.swing.JTable;
import javax.swing.text.JTextComponent;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.LightTestView;
import org.halflight.desk.view.Message;
import org.halflight.desk.view.NumeralsText;
import org.halflight.desk.view.ScreenView;
import org.halflight.export.CsvTable;
import org.halflight.light.Aim;
import org.halflight.light.ScreenLight;
import org.halflight.link.LinkState;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Question;
import org.halflight.session.UntimedTest;
import org.halflight.words.Words;

/**
 * A whole piece of work at the window, with real keys on the practice rig: as found with everything
 * that may go wrong once, adjusting, as left, close, open again, history, tables. Writes pictures
 * of every screen. Its figures are those of an invented shutter.
 *
 * <p>A program of its own, because it needs a display: {@link DeskTest} gives it one.
 */
final class DeskEndToEnd {
  private static final String SPEEDS = "1, 1/2, 1/4, 1/8, 1/15, 1/30, 1/60, 1/125, 1/250";
  private static final int EACH = 5;
  private static final long SEED = 20;

  private static final Dimension SMALL = new Dimension(1366, 768);
  private static final Dimension LARGE = new Dimension(1920, 1080);

  private final Path folder;
  private final Path shots;
  private final DeskHand hand = new DeskHand();

  private DeskEndToEnd(Path folder) {
    this.folder = folder;
    this.shots = folder.resolve("screens");
  }

  /** Does it all; ends with 0 when everything was as expected. */
  public static void main(String[] args) {
    try {
      new DeskEndToEnd(Path.of(args[0])).run();
      System.out.println("END TO END: done");
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run() throws Exception {
    hand.open(surroundings(), SMALL, false);
    everyWay("1-start");
    fireBeforeNaming();
    setLight();
    calibrate();
    nameCamera();
    learnCocking();
    asFound();
    alsoTried();
    adjust();
    asLeft();
    List<FiringResult> results = DeskHand.onScreen(() -> hand.window().view().get().results());
    hand.close();

    hand.open(surroundings(), SMALL, false);
    history(results);
    hand.key(KeyEvent.VK_F1);
    everyWay("9-keys");
    hand.close();
  }

  private DeskSurroundings surroundings() {
    // Twice as fast as the clock on the wall: nobody's hands have to follow.
    long start = System.nanoTime();
    LongSupplier fast = () -> start + 2 * (System.nanoTime() - start);
    return new DeskSurroundings(
        folder.resolve("data"), NoPorts::new, fast, Clock.systemUTC(), "test", SEED);
  }

  private void fireBeforeNaming() {
    fire();
    check(view().setup().isEmpty() && view().results().size() == 1, "a firing without a run");
    check(view().results().get(0).outcome() == Outcome.TIMED, "it is timed");
    hand.await("its time is drawn", v -> large().contains("without a run"));
    hand.shot(shots, "1-fired");
    check(large().contains("without a run"), "its time is drawn");
  }

  private void setLight() {
    hand.key(KeyEvent.VK_F3);
    hand.await("the light is aimed", v -> v.light().isAiming());
    hand.key(KeyEvent.VK_B, KeyEvent.VK_CONTROL);
    hand.await(
        "the screen is checked", v -> v.light().screen().flatMap(ScreenView::result).isPresent());
    check(
        view().light().screen().flatMap(ScreenView::result).orElseThrow().finding()
            == ScreenLight.Finding.DOES_NOT,
        "no screen shines on the practice rig: " + view().light().screen());
    hand.window().onModelCamera(camera -> camera.hold(true));
    hand.await(
        "the light is right",
        v -> v.light().aim().filter(its -> its.move() == Aim.Move.SET).isPresent());
    everyWay("2-aim");
    hand.click("setLight");
    hand.await("the open shutter is asked for", v -> v.light().isAsking());
    everyWay("2-light");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("the light is set", v -> v.light().set().isPresent());
    // The opening that the light was set by is in the record, but no firing of the shutter.
    hand.await(
        "the openings are not counted",
        v -> v.results().size() == 3 && lastOf(v).outcome() == Outcome.HELD_FOR_LIGHT);
    hand.await(
        "the focus stays at this place", v -> hand.find("lightMode").getParent().isFocusOwner());
    hand.shot(shots, "2-light-set");
  }

  private void nameCamera() {
    hand.key(KeyEvent.VK_F4);
    hand.fill("cameraLabel", "Invented No. 1");
    hand.fill("cameraSerial", "000042");
    hand.fill("cameraJob", "J-17");
    hand.fill("cameraSpeeds", SPEEDS);
    hand.fill("cameraWidest", "2.8");
    hand.fill("cameraFrame", "36 x 24");
    hand.click("keepCamera");
    hand.await("the camera is named", v -> v.camera().equals("Invented No. 1"));
    JTable lists = (JTable) hand.find("lists");
    DeskHand.onScreen(
        () -> {
          lists.requestFocusInWindow();
          lists.changeSelection(1, 1, false, false);
          return null;
        });
    hand.await("the list has the focus", v -> lists.isFocusOwner());
    hand.key(KeyEvent.VK_SPACE);
    hand.key(KeyEvent.VK_SPACE);
    hand.await("oil on the blades is a fault", v -> "fault".equals(lists.getValueAt(1, 1)));
    hand.fill("logText", "oil on two blades");
    hand.click("logAdd");
    hand.await(
        "the entry is in the log",
        v -> ((javax.swing.JList<?>) hand.find("log")).getModel().getSize() == 1);
    everyWay("3-camera");
  }

  /**
   * Calibration, rig check, and the profile out and in again, all of it by the place of the rig.
   */
  private void calibrate() {
    hand.key(KeyEvent.VK_F8);
    everyWay("2-rig");
    int firings = view().results().size();
    hand.choose("rigClock", 2);
    hand.click("rigCalibrate");
    hand.await("it is under way", v -> v.rig().isUnderWay() && v.rig().progress() > 0.1);
    hand.shot(shots, "2-rig-calibrating");
    // The window is quick meanwhile, and a firing waits.
    hand.key(KeyEvent.VK_F2);
    hand.key(KeyEvent.VK_F);
    hand.await("it says why not", v -> v.said().filter(s -> s.text().contains("F8")).isPresent());
    hand.key(KeyEvent.VK_F8);
    hand.await("it is calibrated", v -> v.rig().fit().isPresent() && !v.rig().isUnderWay());
    everyWay("2-rig-calibrated");
    check(view().rig().hasProfile(), "the profile is in use: " + view().rig());
    check(view().results().size() == firings, "reference pulses are no firings");

    hand.click("rigCheck");
    hand.await("the rig was checked", v -> v.rig().check().isPresent() && !v.rig().isUnderWay());
    check(view().rig().sentence().contains("In control"), view().rig().sentence());
    everyWay("2-rig-checked");
    hand.click("rigTables");
    hand.await("its table", v -> hand.window().rig().pictures().get(0).table().getRowCount() == 10);
    hand.shot(shots, "2-rig-table");
    hand.click("rigTables");

    hand.click("rigWrite");
    Path written = folder.resolve("data/my-rig.profile");
    hand.await("the profile is written", v -> Files.exists(written));
    hand.click("rigTake");
    hand.await("it is imported", v -> v.rig().sentence().contains("is imported"));
    hand.click("rigCalibrate");
    hand.await("once more", v -> v.rig().isUnderWay());
    hand.click("rigStop");
    hand.await("it stops", v -> !v.rig().isUnderWay());
    check(view().rig().sentence().contains("You ended it"), view().rig().sentence());
    readDisc();
    check(view().results().size() == firings, "a disc that turns makes no firings");
    hand.key(KeyEvent.VK_F2);
    fire();
    check(last().outcome() == Outcome.TIMED, "the rig sees the shutter again: " + last());
  }

  /** The slotted disc: step by step, read, its picture; and stopped half way. */
  private void readDisc() {
    hand.fill("rigDiscSpeed", "six hundred");
    hand.click("rigDisc");
    hand.await(
        "it says what is no number",
        v -> v.rig().sentence().equals(Words.say("desk.rig.disc.numbers")));
    hand.fill("rigDiscSpeed", "600");
    hand.click("rigDisc");
    hand.await("the first step", v -> v.rig().sentence().contains("step 1 of 5"));
    hand.shot(shots, "2-rig-disc-step");
    for (int step = 2; step <= 5; step++) {
      String next = "step " + step + " of 5";
      hand.key(KeyEvent.VK_SPACE);
      hand.await(next, v -> v.rig().sentence().contains(next));
    }
    hand.key(KeyEvent.VK_SPACE);
    hand.await("it is read", v -> v.rig().progress() > 0.6);
    hand.shot(shots, "2-rig-disc-reading");
    hand.await("it was read", v -> v.rig().disc().isPresent() && !v.rig().isUnderWay());
    check(view().rig().sentence().contains("agrees"), view().rig().sentence());
    check(
        view().rig().sentence().contains(Words.say("profile.clock.source.disc")),
        view().rig().sentence());
    check(view().rig().sentence().endsWith(Words.say("disc.over")), view().rig().sentence());
    everyWay("2-rig-disc");
    hand.click("rigDisc");
    hand.await("once more", v -> v.rig().isAsking());
    hand.click("rigStop");
    hand.await("it stops", v -> !v.rig().isUnderWay());
    check(view().rig().sentence().contains("You ended it"), view().rig().sentence());
  }

  private void learnCocking() {
    hand.key(KeyEvent.VK_F2);
    hand.key(KeyEvent.VK_K);
    hand.await("learning", v -> v.cocking() == BenchView.Cocking.LEARNING);
    for (int i = 0; i < 3; i++) {
      int before = view().results().size();
      hand.key(KeyEvent.VK_J);
      hand.await("a stroke was seen", v -> v.results().size() > before);
    }
    hand.await("learnt", v -> v.cocking() == BenchView.Cocking.LEARNT);
  }

  private void asFound() {
    hand.key(KeyEvent.VK_F5);
    everyWay("4-run");
    hand.fill("run.tolerance", "1/250=1/2, 1/60=0.25");
    hand.click("beginRun");
    hand.await("the run has begun", v -> v.setup().isPresent());
    check(
        view().setup().get().criteria().tolerances().text().equals("1/250=0.5, 1/60=0.25"),
        "the tolerance is the run's: " + view().setup());
    check(view().setup().get().order().size() == 9, "nine speeds, not " + view().setup());
    check(view().setup().get().phase() == Phase.AS_FOUND, "as found");
    hand.shot(shots, "5-begun");

    done("1", () -> fire());
    int[] turn = {0};
    done(
        "1/2",
        () -> {
          if (turn[0]++ == 2) {
            movedStop();
          } else {
            fire();
          }
        });
    turn[0] = 0;
    done(
        "1/4",
        () -> {
          if (turn[0]++ == 2) {
            hang();
          } else {
            fire();
          }
        });
    turn[0] = 0;
    done(
        "1/8",
        () -> {
          if (turn[0]++ == 0) {
            forgottenDial("1/4");
          } else {
            fire();
          }
        });
    turn[0] = 0;
    done(
        "1/15",
        () -> {
          if (turn[0]++ == 1) {
            openedTwice();
          } else {
            fire();
          }
        });
    turn[0] = 0;
    done(
        "1/30",
        () -> {
          if (turn[0]++ == 1) {
            lightWhileCocking();
          }
          fire();
        });
    turn[0] = 0;
    done(
        "1/60",
        () -> {
          if (turn[0]++ == 2) {
            pulledCable();
          }
          fire();
        });
    for (String speed : List.of("1/125", "1/250")) {
      done(speed, () -> fire());
    }
    hand.await("the run is done", BenchView::runDone);
    everyWay("5-as-found");
    for (Outcome once : List.of(Outcome.STUCK_OPEN, Outcome.DOUBLE, Outcome.LIGHT_WHILE_COCKING)) {
      check(
          view().results().stream().filter(f -> f.run() == 1 && f.outcome() == once).count() >= 1,
          once + " is in the run");
    }
    hand.key(KeyEvent.VK_D);
    hand.await("details", v -> hand.window().details().isShowing());
    hand.key(KeyEvent.VK_LEFT);
    hand.await(
        "its budget",
        v ->
            hand.window().details().isUpToDate()
                && hand.window().details().budget().table().getRowCount() >= 9);
    everyWay("5-details");
    hand.key(KeyEvent.VK_D);
    hand.await("the bench again", v -> hand.window().bench().isShowing());
    hand.key(KeyEvent.VK_T);
    hand.await("tables", v -> hand.window().bench().map().table().isShowing());
    hand.key(KeyEvent.VK_RIGHT);
    everyWay("6-tables");
    hand.key(KeyEvent.VK_T);
    hand.key(KeyEvent.VK_H);
    hand.await("the light curve is large", v -> large().startsWith("Light curve"));
    everyWay("6-curve");
    hand.key(KeyEvent.VK_H);
    hand.await("the speed map is back", v -> large().startsWith("Speed map"));
  }

  /** What the large picture says of itself. */
  private String large() {
    String said =
        hand.window().bench().map().canvas().getAccessibleContext().getAccessibleDescription();
    return said == null ? "" : said;
  }

  /** The stop moves; the plateau of a slow firing shows it; the firing is taken out by a key. */
  private void movedStop() {
    hand.mishap("moveStop");
    fire();
    hand.await(
        "the moved stop is noticed",
        v -> v.said().filter(s -> s.kind() == Message.Kind.ATTENTION).isPresent());
    check(last().notes().lightDoubtful(), "the firing is marked: " + last());
    hand.shot(shots, "5-moved-stop");
    hand.mishap("moveStop");
    int before = view().good();
    hand.key(KeyEvent.VK_BACK_SPACE);
    hand.await("the firing is not counted", v -> v.good() == before - 1);
  }

  private void hang() {
    hand.mishap("hang");
    int before = view().results().size();
    hand.key(KeyEvent.VK_F);
    hand.await("it says that it is open", v -> v.openSeconds().orElse(0) > 2.4);
    hand.shot(shots, "5-open");
    hand.key(KeyEvent.VK_C);
    hand.await("it settles", v -> v.results().size() > before);
    check(last().outcome() == Outcome.STUCK_OPEN, "stuck open, not " + last());
  }

  private void forgottenDial(String previous) {
    hand.mishap("forget");
    fire();
    BenchView asked = hand.await("a question", v -> v.question().isPresent());
    check(
        asked.question().get().kind() == Question.Kind.DIAL_NOT_TURNED
            && asked.question().get().other().label().equals(previous),
        "the dial was not turned from " + previous + ", not " + asked.question());
    everyWay("5-question");
    check(hand.find("key.KEYS").isVisible(), "the key list is offered beside a question");
    hand.key(KeyEvent.VK_M);
    hand.await("answered", v -> v.question().isEmpty());
    check(last().shown().get().label().equals(previous), "moved to " + previous);
  }

  private void openedTwice() {
    hand.mishap("double");
    fire();
    check(last().outcome() == Outcome.DOUBLE, "double, not " + last());
    hand.key(KeyEvent.VK_BACK_SPACE);
    hand.await("not counted", v -> lastOf(v).rejection().isPresent());
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("undone", v -> lastOf(v).rejection().isEmpty());
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT);
    hand.await("done again", v -> lastOf(v).rejection().isPresent());
  }

  private void pulledCable() {
    hand.mishap("cable");
    hand.await("the rig is lost", v -> v.link().state() == LinkState.LOST);
    check(
        hand.window().bench().numerals().text().tone() == NumeralsText.Tone.STALE,
        "figures of a lost link are grey");
    hand.shot(shots, "5-lost");
    hand.mishap("cable");
    hand.await("the rig is back", v -> v.link().state() == LinkState.BACK);
  }

  private void lightWhileCocking() {
    int before = view().results().size();
    hand.key(KeyEvent.VK_J);
    hand.await("light while cocking", v -> v.results().size() > before);
    check(last().outcome() == Outcome.LIGHT_WHILE_COCKING, "while cocking, not " + last());
  }

  private void adjust() {
    hand.key(KeyEvent.VK_F5);
    phase(Phase.ADJUSTING);
    hand.fill("runSpeeds", "1/8, 1/250");
    hand.click("beginRun");
    hand.await("adjusting", v -> v.setup().filter(s -> s.phase() == Phase.ADJUSTING).isPresent());
    for (int i = 0; i < 3; i++) {
      fire();
    }
    hand.key(KeyEvent.VK_A);
    hand.await("the field is there", v -> hand.window().bench().markField().isFocusOwner());
    hand.type("train cleaned");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("marked", v -> v.marks().size() == 1);
    hand.mishap("clean");
    for (int i = 0; i < 3; i++) {
      fire();
    }
    everyWay("7-adjusting");
    bounce();
  }

  /** The invented shutter whose blades rebound, and what its firings come to. */
  private void bounce() {
    hand.key(KeyEvent.VK_N);
    hand.await("the other speed is shown", v -> isShown("1/250"));
    hand.mishap("bounce");
    for (int i = 0; i < 3; i++) {
      fire();
    }
    hand.key(KeyEvent.VK_F6);
    javax.swing.JList<?> list = (javax.swing.JList<?>) hand.find("triedList");
    hand.await("the bounce is a fault", v -> place(list, "bounce: fault") >= 0);
    DeskHand.onScreen(
        () -> {
          list.setSelectedIndex(place(list, "bounce: fault"));
          return null;
        });
    everyWay("7-bounce");
    hand.mishap("bounce");
    hand.key(KeyEvent.VK_F2);
  }

  private static int place(javax.swing.JList<?> list, String words) {
    for (int i = 0; i < list.getModel().getSize(); i++) {
      if (list.getModel().getElementAt(i).toString().contains(words)) {
        return i;
      }
    }
    return -1;
  }

  private void asLeft() {
    hand.key(KeyEvent.VK_F5);
    phase(Phase.AS_LEFT);
    hand.fill("runSpeeds", SPEEDS);
    hand.click("check.LEAK");
    hand.click("check.STOPS");
    hand.fill("run.stops", "2.8, 4, 5.6");
    hand.fill("run.stop-tolerance", "4");
    hand.click("beginRun");
    hand.await(
        "it says what is not a tolerance",
        v -> ((JTextComponent) hand.find("runTrouble")).getText().contains("below 3 stops, not 4"));
    hand.fill("run.stop-tolerance", "1/2");
    everyWay("7-run-light");
    hand.click("beginRun");
    hand.await("as left", v -> v.setup().filter(s -> s.phase() == Phase.AS_LEFT).isPresent());
    for (String speed : SPEEDS.split(", ", -1)) {
      done(speed, () -> fire());
    }
    check(
        view().setup().get().criteria().stops().toleranceStops() == 0.5,
        "half a stop is the run's");
    testsOfTheLight();
    hand.await("the run is done", BenchView::runDone);
    everyWay("7-as-left");
    lists();
  }

  /** Leak test and stop check where the run comes to them, by the keys of the bench alone. */
  private void testsOfTheLight() {
    int firings = view().results().size();
    hand.await("the leak test asks", v -> asks(v, UntimedTest.LEAK, 1));
    everyWay("7-leak-asks");
    for (int step = 1; step <= 3; step++) {
      int here = step;
      hand.await("reading " + step, v -> asks(v, UntimedTest.LEAK, here));
      hand.key(KeyEvent.VK_SPACE);
      if (step == 2) {
        hand.await("half of it is read", v -> v.lightTest().prompt().progress() > 0.5);
        hand.shot(shots, "7-leak-reads");
      }
    }
    hand.await("the stop check asks", v -> asks(v, UntimedTest.STOPS, 1));
    everyWay("7-stops-asks");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("the second is asked for", v -> asks(v, UntimedTest.STOPS, 2));
    hand.key(KeyEvent.VK_X);
    hand.await("it is stopped", v -> !v.lightTest().isUnderWay() && !v.runDone());
    hand.shot(shots, "7-stops-stopped");
    hand.key(KeyEvent.VK_SPACE);
    for (int step = 1; step <= 5; step++) {
      int here = step;
      hand.await("reading " + step, v -> asks(v, UntimedTest.STOPS, here));
      hand.key(step == 4 ? KeyEvent.VK_S : KeyEvent.VK_SPACE);
      if (step == 3) {
        // The lamp moves under way: the first stop will not come back.
        hand.await("it is read", v -> v.lightTest().prompt().step() == 4);
        hand.mishap("moveStop");
      }
    }
    hand.await("the run has gone on", v -> v.runDone() && !v.lightTest().isUnderWay());
    String said = view().said().orElseThrow().text();
    check(said.contains("without a verdict") && said.contains("lamp"), "the moved lamp: " + said);
    hand.mishap("moveStop");
    check(
        view().results().subList(firings, view().results().size()).stream()
            .allMatch(f -> f.outcome() == Outcome.HELD_FOR_LIGHT),
        "openings for the light are no firings");
  }

  private static boolean asks(BenchView view, UntimedTest check, int step) {
    LightTestView test = view.lightTest();
    return test.check().equals(Optional.of(check))
        && test.prompt().step() == step
        && test.isAsking();
  }

  /** What was measured stands in the lists, and the person's own answer stands before it. */
  private void lists() {
    hand.key(KeyEvent.VK_F4);
    JTable lists = (JTable) hand.find("lists");
    hand.await("the leak is in the list", v -> lists.getValueAt(0, 2).equals("fault, measured"));
    DeskHand.onScreen(
        () -> {
          lists.changeSelection(0, 2, false, false);
          return null;
        });
    JTextComponent said = (JTextComponent) hand.find("listsMeasured");
    hand.await("it says what was found", v -> said.getText().contains("shut and cocked"));
    check(lists.getValueAt(2, 2).equals("not tested"), "no verdict is no answer");
    everyWay("7-lists");
    hand.focus("lists");
    hand.key(KeyEvent.VK_SPACE);
    hand.await(
        "the person's answer stands", v -> lists.getValueAt(0, 2).equals("OK (measured: fault)"));
    hand.shot(shots, "7-lists-answered");
    hand.key(KeyEvent.VK_SPACE);
    hand.key(KeyEvent.VK_SPACE);
    hand.await("open again", v -> lists.getValueAt(0, 2).equals("fault, measured"));
    hand.key(KeyEvent.VK_F2);
  }

  /** Leak test and stop check, each led through, skipped and stopped, by the keyboard. */
  private void alsoTried() {
    int firings = view().results().size();
    hand.key(KeyEvent.VK_F6);
    everyWay("5-tried-bounce");
    hand.click("triedLeak");
    hand.await("the first reading is asked for", v -> v.lightTest().prompt().step() == 1);
    everyWay("5-tried-asks");
    // Meanwhile nothing is fired: what the rig sees is no release.
    hand.key(KeyEvent.VK_F2);
    hand.key(KeyEvent.VK_F);
    hand.await("it says why not", v -> v.said().filter(s -> s.text().contains("F6")).isPresent());
    hand.key(KeyEvent.VK_F6);
    for (int step = 1; step <= 3; step++) {
      pressDone(step);
    }
    hand.await("the leak test is over", v -> !v.lightTest().isUnderWay());
    check(
        view().lightTest().prompt().sentence().contains("leak test is done: fault"),
        view().lightTest().prompt().sentence());
    hand.await("its line has the focus", v -> hand.find("triedList").isFocusOwner());
    everyWay("5-tried-leak");

    hand.fill("triedMarked", "2.8, 4, wide");
    hand.click("triedStops");
    hand.await(
        "it is not an aperture",
        v -> v.lightTest().prompt().sentence().contains("is not an aperture"));
    hand.fill("triedMarked", "2.8, 4, 5.6, 8");
    hand.click("triedStops");
    for (int step = 1; step <= 7; step++) {
      if (step == 5) {
        hand.await(
            "the fifth is asked for",
            v -> v.lightTest().prompt().step() == 5 && v.lightTest().isAsking());
        hand.click("triedSkip");
        hand.await("skipped", v -> v.lightTest().prompt().step() == 6);
      } else {
        if (step == 6) {
          hand.focus("triedDone");
        }
        pressDone(step);
      }
    }
    hand.await("the stop check is over", v -> !v.lightTest().isUnderWay());
    check(
        view().lightTest().prompt().sentence().contains("check is done"),
        view().lightTest().prompt().sentence());
    everyWay("5-tried-stops");
    hand.click("triedTables");
    hand.await("its table", v -> hand.window().tried().picture().table().getRowCount() == 4);
    hand.shot(shots, "5-tried-table");
    hand.click("triedTables");

    int beforePanel = view().results().size();
    hand.click("triedPanel");
    for (int step = 1; step <= 4; step++) {
      pressDone(step);
    }
    hand.await("the panel test is over", v -> !v.lightTest().isUnderWay());
    check(
        view().lightTest().prompt().sentence().contains("from the middle of the lens"),
        view().lightTest().prompt().sentence());

    hand.await("its opening is over", v -> v.results().size() > beforePanel);
    hand.click("triedStops");
    hand.await("once more", v -> v.lightTest().isUnderWay());
    hand.click("triedStop");
    hand.await("stopped", v -> !v.lightTest().isUnderWay());
    check(
        view().lightTest().prompt().sentence().contains("Too little"),
        view().lightTest().prompt().sentence());
    check(
        view().results().subList(firings, view().results().size()).stream()
            .allMatch(f -> f.outcome() == Outcome.HELD_FOR_LIGHT),
        "openings for the light are no firings");
    hand.key(KeyEvent.VK_F2);
  }

  private void pressDone(int step) {
    hand.await(
        "reading " + step + " is asked for and its button has the focus",
        v ->
            v.lightTest().prompt().step() == step
                && v.lightTest().isAsking()
                && hand.find("triedDone").isFocusOwner());
    hand.key(KeyEvent.VK_SPACE);
    hand.await(
        "it is read, and the window is dark meanwhile",
        v ->
            v.lightTest().isReading()
                ? hand.window().frame().getGlassPane().isVisible()
                : v.lightTest().prompt().step() != step);
  }

  private void history(List<FiringResult> before) {
    hand.key(KeyEvent.VK_F7);
    JTable cameras = (JTable) hand.find("cameras");
    hand.await("the camera is listed", v -> cameras.getRowCount() == 1);
    hand.fill("search", "j-17");
    hand.await("it is found by its job", v -> cameras.getRowCount() == 1);
    JTable drifts = hand.window().cameras().drifts().table();
    hand.await("its history is there", v -> drifts.getRowCount() == 9);
    everyWay("8-history");
    List<String> headings = new ArrayList<>();
    for (int i = 0; i < drifts.getColumnCount(); i++) {
      headings.add(drifts.getColumnName(i));
    }
    check(
        headings.stream().anyMatch(h -> h.startsWith("As found"))
            && headings.stream().anyMatch(h -> h.startsWith("As left")),
        "both runs are in the history, not only " + headings);

    hand.click("exportCamera");
    Path firings = folder.resolve("data/tables/Invented-No-1-1-firings.csv");
    Path speeds = folder.resolve("data/tables/Invented-No-1-1-speeds.csv");
    hand.await("the tables are written", v -> Files.exists(firings) && Files.exists(speeds));
    hand.await(
        "it says where",
        v -> ((JTextComponent) hand.find("exportSaid")).getText().contains("firings.csv"));
    sameFirings(before, CsvTable.read(firings));
    sameMeans(drifts, headings, CsvTable.read(speeds));

    hand.click("pageBench");
    hand.click("pageCamera");
    hand.await(
        "the page is written",
        v -> ((JTextComponent) hand.find("exportSaid")).getText().contains(".pdf"));
    page(folder.resolve("data/tables/Invented-No-1-1.pdf"));
  }

  /** The page of the last visit says what was on the screens. */
  private static void page(Path pdf) {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      String text = new PDFTextStripper().getText(document);
      check(text.contains("Invented No. 1"), "the page names the camera: " + text);
      check(text.contains("too slow"), "the page says what was wrong: " + text);
      check(text.contains("invented shutter"), "the page says that it is practice: " + text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the window showed before it was closed stands in the table, firing by firing. */
  private static void sameFirings(List<FiringResult> before, CsvTable table) {
    int effective = table.headings().indexOf("effective_ms");
    int ticks = table.headings().indexOf("first_ticks");
    int outcome = table.headings().indexOf("outcome");
    Map<String, List<String>> byTicks =
        table.rows().stream().collect(Collectors.toMap(row -> row.get(ticks), row -> row));
    List<FiringResult> ofRuns = before.stream().filter(f -> f.run() > 0).toList();
    check(
        byTicks.size() == ofRuns.size(),
        ofRuns.size() + " firings of runs and " + byTicks.size() + " rows");
    for (FiringResult firing : ofRuns) {
      List<String> row = byTicks.get(String.valueOf(firing.key().firstTicks()));
      check(row != null, "a row of " + firing.key());
      check(
          row.get(outcome)
              .equals(firing.outcome().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')),
          "the outcome of " + firing + " in " + row);
      if (firing.effectiveSeconds().isPresent()) {
        check(
            row.get(effective)
                .equals(
                    String.format(
                        java.util.Locale.ROOT,
                        "%.6f",
                        firing.effectiveSeconds().getAsDouble() * 1e3)),
            "the time of " + firing + " in " + row);
      }
    }
  }

  private static void sameMeans(JTable drifts, List<String> headings, CsvTable table) {
    int speed = table.headings().indexOf("marked_speed");
    int phase = table.headings().indexOf("phase");
    int mean = table.headings().indexOf("mean_error_stops");
    for (List<String> row : table.rows()) {
      String heading = row.get(phase).equals("as-found") ? "As found" : "As left";
      if (row.get(phase).equals("adjusting")) {
        heading = "Adjusting";
      }
      for (int column = 1; column < headings.size(); column++) {
        for (int i = 0; i < drifts.getRowCount(); i++) {
          if (headings.get(column).startsWith(heading)
              && drifts.getValueAt(i, 0).equals(row.get(speed) + " s")) {
            String shown = String.valueOf(drifts.getValueAt(i, column));
            String expected =
                String.format(
                    java.util.Locale.ROOT, "%+.2f stop", Double.parseDouble(row.get(mean)));
            check(shown.startsWith(expected + ", "), heading + " " + row.get(speed) + ": " + shown);
          }
        }
      }
    }
  }

  /** Fires until a speed has what it needs. */
  private void done(String speed, Runnable firing) {
    hand.await(
        speed + " is shown",
        v -> v.shown().filter(s -> s.label().equals(speed)).isPresent() && !v.runDone());
    for (int tries = 0; tries < 2 * EACH + 2 && isShown(speed); tries++) {
      firing.run();
    }
    check(!isShown(speed) || view().runDone(), speed + " is done");
  }

  private boolean isShown(String speed) {
    BenchView now = view();
    return !now.runDone() && now.shown().filter(s -> s.label().equals(speed)).isPresent();
  }

  /** Fires once and waits until it has settled, closing by hand what hangs by itself. */
  private void fire() {
    int before = view().results().size();
    hand.key(KeyEvent.VK_F);
    BenchView after =
        hand.await(
            "a firing settles", v -> v.results().size() > before || v.openSeconds().orElse(0) > 4);
    if (after.results().size() == before) {
      hand.key(KeyEvent.VK_C);
      hand.await("a hang settles", v -> v.results().size() > before);
    }
  }

  private void phase(Phase phase) {
    JRadioButton button = (JRadioButton) hand.find("phase." + phase);
    hand.click("phase." + phase);
    hand.await(phase + " is chosen", v -> button.isSelected());
  }

  /** Small and light, large and dark; {@link DeskFit} looks at the other sizes. */
  private void everyWay(String name) {
    hand.size(SMALL);
    hand.shot(shots, name + "-1366-light");
    hand.key(KeyEvent.VK_F11);
    hand.await("the look is another", v -> hand.window().isDark());
    hand.size(LARGE);
    hand.shot(shots, name + "-1920-dark");
    hand.size(SMALL);
    hand.key(KeyEvent.VK_F11);
    hand.await("light again", v -> !hand.window().isDark());
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
