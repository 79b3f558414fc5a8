package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JRadioButton;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.NextText;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.Proposal;
import org.halflight.desk.view.TwoText;
import org.halflight.desk.view.UserAction;
import org.halflight.files.SettingsFile;
import org.halflight.light.Aim;
import org.halflight.photo.PhotoInbox;
import org.halflight.session.Assembly;
import org.halflight.session.FiringCondition;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.InventedFit;
import org.halflight.verdict.StageRuns;
import org.halflight.words.StageWords;

/**
 * The whole job of one repair by real keys and mouse, on the practice rig or on the real firmware
 * in its simulator: what the owner says, a quick look as found, the strip sheet, stages of
 * assembly, two speeds adjusted at once, the linkage, the speeds as left, the page for the owner,
 * the dry run of the next day, and a return a year later. With a pedal, the work at the bench by
 * whatever a pedal can. A program of its own, because it needs a display: {@link DeskWholeTest} and
 * {@link DeskOnTheBoardTest} give it one.
 */
final class DeskWhole {
  private static final Dimension SMALL = new Dimension(1366, 768);
  private static final int PEDAL = KeyEvent.VK_PAUSE;
  private static final int BACK = KeyEvent.VK_SCROLL_LOCK;
  private static final int PRESSES_MOST = 600;
  private static final int FIRINGS_MOST = 14;
  private static final int A_YEAR = 365;

  /** Firings wanted of a speed: the first that can be chosen. */
  private static final int FEWEST = 0;

  /** The shutter was left alone for a day, in the list of rests. */
  private static final int A_DAY = 3;

  private static final long TAP_NANOS = 300_000_000;
  private static final long HOLD_NANOS = 1_500_000_000;

  private final Path folder;
  private final boolean byPedal;
  private final boolean isPractice;
  private final RepairCamera camera;
  private final DeskHand hand;
  private final TurnedCalendar calendar;
  private final CameraByHand papers;

  private DeskWhole(Path folder, RepairCamera camera, boolean byPedal) {
    this.folder = folder;
    this.byPedal = byPedal;
    this.camera = camera;
    isPractice = camera instanceof PracticeCameraByHand;
    hand = camera.hand();
    calendar = new TurnedCalendar(camera::nanos);
    papers = new CameraByHand(folder, hand, calendar);
  }

  /**
   * Takes a folder, and what it is done with: keys, pedal or board; or that its camera has
   * curtains.
   */
  public static void main(String[] args) {
    Path folder = Path.of(args[0]);
    boolean onBoard = args[1].equals("board");
    try (RepairCamera camera =
        onBoard ? new BoardCameraByHand(folder.resolve("box")) : new PracticeCameraByHand()) {
      DeskWhole whole = new DeskWhole(folder, camera, args[1].equals("pedal"));
      if (whole.byPedal) {
        whole.atTheBench();
      } else if (args[1].equals("curtains")) {
        new CurtainRepair(whole, folder, whole.hand).repair();
      } else {
        whole.repair();
      }
      System.out.println("WHOLE: done");
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
    System.exit(0);
  }

  void open() {
    hand.open(
        new DeskSurroundings(
            folder.resolve("data"), camera.ports(), camera::nanos, calendar, "test", 20),
        SMALL,
        false);
  }

  private void atTheBench() {
    open();
    learn();
    pedalUntil("the light is set", v -> v.light().set().isPresent());
    quickLook();
    twoAtOnce();
    linkage();
    asLeft();
    check(
        view().runs().stream()
            .map(RunSetup::phase)
            .distinct()
            .toList()
            .equals(List.of(Phase.AS_FOUND, Phase.ADJUSTING, Phase.AS_LEFT)),
        "all phases are there");
    hand.close();
  }

  private void repair() throws IOException {
    Path inbox = Files.createDirectories(folder.resolve("inbox"));
    SettingsFile.change(folder.resolve("data"), kept -> PhotoInbox.choose(kept, inbox.toString()));
    open();
    aimAndSet();
    hand.key(KeyEvent.VK_F7);
    papers.workshop();
    papers.intake(camera.speeds());
    papers.picturesArrive();
    quickLook();
    papers.strip();
    papers.photos();
    if (isPractice) {
      papers.log();
    }
    twoAtOnce();
    undoAndRedoAtTheBench();
    stages();
    linkage();
    papers.assemble();
    asLeft();
    papers.answer();
    hand.key(KeyEvent.VK_F7);
    hand.reads("J-17 is due for its dry run tomorrow.");
    String wet = page();
    check(wet.contains("still wet from cleaning"), "the page says that it was wet: " + wet);
    nextDay();
    papers.handBack();
    if (isPractice) {
      papers.menu();
      papers.help();
    }
    ownersPage();
    hand.close();
    aYearLater();
  }

  /** The light is aimed by the meter, and set. */
  private void aimAndSet() {
    hand.click("place.TO_LIGHT");
    // Stray light is what comes while the shutter is shut.
    hand.await(
        "it is dark, and seen to be",
        v -> v.light().aim().filter(its -> its.move() == Aim.Move.OPEN).isPresent());
    camera.hold(true);
    hand.await(
        "the light is right",
        v -> v.light().aim().filter(its -> its.move() == Aim.Move.SET).isPresent());
    shot("01-aim");
    camera.hold(false);
    // What is said next takes more lines, and the button moves down with it.
    hand.await(
        "it is dark again",
        v -> v.light().aim().filter(its -> its.move() == Aim.Move.OPEN).isPresent());
    setLight();
    shot("01-light-set");
  }

  void setLight() {
    int before = view().results().size();
    hand.click("setLight");
    hand.await("the open shutter is asked for", v -> v.light().isAsking());
    camera.hold(true);
    hand.key(KeyEvent.VK_SPACE);
    hand.await("the light is set", v -> v.light().set().isPresent());
    camera.hold(false);
    hand.await("it is dark again", v -> v.results().size() > before);
  }

  private void learn() {
    hand.key(KeyEvent.VK_F1);
    hand.click("learn.GO");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("a key that does something is refused", v -> isSaid("has a meaning already"));
    hand.key(PEDAL);
    hand.await("the pedal is learnt", v -> isSaid("is a pedal now"));
    hand.click("learn.BACK");
    hand.key(PEDAL);
    hand.await("not the same for both", v -> isSaid("is the other pedal"));
    hand.key(BACK);
    hand.await("the second is learnt", v -> isSaid("is a pedal now"));
    shot("0-learnt");
    Component keys = hand.find("keysPlace");
    Component list = hand.find("keyList");
    DeskHand.onScreen(
        () -> {
          check(
              keys.getPreferredSize().height <= keys.getHeight(), "the key list is cut off below");
          for (Component each : ((Container) list).getComponents()) {
            check(each.getPreferredSize().width <= each.getWidth(), "cut off: " + each);
          }
          return null;
        });
  }

  private void quickLook() {
    hand.key(KeyEvent.VK_F5);
    hand.choose("runWay", 1);
    choose(Phase.AS_FOUND);
    shot("04-run");
    begin();
    for (String speed : List.of(isPractice ? "1/2" : "1/4", "1/30", "1/125", "1/500")) {
      hand.await(speed + " is shown", v -> isShown(v, speed));
      hand.reads("SET", " " + speed + " 0 of 1 ");
      if (speed.equals("1/30")) {
        shot("05-set-then-wind");
      }
      fire();
    }
    conditions();
    hand.await("B is shown", v -> isShown(v, "B"));
    bulb(true);
    hand.await("it is open for three seconds", v -> v.openSeconds().orElse(0) > 3);
    shot("05-held");
    bulb(false);
    hand.await("the light is set", v -> v.light().set().isPresent());
    hand.await("the largest error is asked for again", v -> v.repeat().isPresent());
    shot("05-repeat");
    hand.reads("Again: the largest error so far");
    fireAll();
    hand.reads("done");
    shot("06-as-found");
  }

  /** A quick tap, and warmed from here on; both of the firing just made. */
  private void conditions() {
    hand.key(KeyEvent.VK_5);
    hand.await("a quick tap", v -> has(v, FiringCondition.QUICK_TAP));
    hand.key(KeyEvent.VK_2);
    hand.await("it is said", v -> v.said().filter(s -> s.text().contains("warmed")).isPresent());
    hand.key(KeyEvent.VK_9);
    hand.await("the last one, too", v -> has(v, FiringCondition.WARMED));
  }

  private static boolean has(BenchView view, FiringCondition condition) {
    return view.results().get(view.results().size() - 1).conditions().has(condition);
  }

  /**
   * The ring of the camera pinches: its stage tells, and a switch that is put back loses nothing.
   */
  private void stages() {
    camera.fits(InventedFit.SOUND);
    hand.key(KeyEvent.VK_F5);
    hand.choose("runWay", 2);
    choose(Phase.ADJUSTING);
    begin();
    stage(1);
    shot("09-stage-1");
    // On the practice rig only the ring pinches; the board is told when it is on.
    camera.fits(InventedFit.PINCHED_CASE);
    hand.key(KeyEvent.VK_U);
    hand.await("loose in the camera", v -> v.runs().size() == 4);
    hand.key(KeyEvent.VK_U);
    hand.await("ring tight; nothing was fired loose", v -> isStage(v, Assembly.Place.TIGHT));
    hand.key(KeyEvent.VK_U);
    hand.await("back on the bench, where it was fired", v -> v.runs().size() == 3 && v.runDone());
    hand.key(KeyEvent.VK_U);
    hand.key(KeyEvent.VK_U);
    hand.await("ring tight", v -> isStage(v, Assembly.Place.TIGHT));
    stage(2);
    List<String> said =
        StageRuns.of(view().results(), view().runs()).get(0).change(2).stream()
            .flatMap(change -> StageWords.sentences(change).stream())
            .toList();
    check(
        said.stream()
            .anyMatch(line -> line.matches(".* cost .* stop at " + slowest() + " (s )?.*")),
        "it says what the ring does: " + said);
    shot("09-stages");
    camera.fits(InventedFit.SOUND);
  }

  private void stage(int number) {
    for (int i = 0; i < FIRINGS_MOST && !view().runDone(); i++) {
      if (isShown(view(), "B")) {
        hold();
      } else {
        fire();
      }
    }
    check(view().runDone(), "stage " + number + " is done");
  }

  /** B is tapped first, and then held. */
  private void hold() {
    int before = view().results().size();
    // A pedal is not heard at once where something new is shown.
    rest(Pedal.UNREAD_NANOS);
    bulb(true);
    rest(view().good() > 0 ? HOLD_NANOS : TAP_NANOS);
    bulb(false);
    hand.await("it has closed", v -> v.results().size() > before);
  }

  private void rest(long least) {
    long begun = camera.nanos();
    hand.await("some time has gone by", v -> camera.nanos() - begun > least);
  }

  private static boolean isStage(BenchView view, Assembly.Place place) {
    return view.setup().filter(s -> s.assembly().place() == place).isPresent();
  }

  private void twoAtOnce() {
    hand.key(KeyEvent.VK_F5);
    check(
        ((JComboBox<?>) hand.find("runWay")).getSelectedIndex() == 0,
        "the quick look is over and done with");
    choose(Phase.ADJUSTING);
    hand.fill("runSpeeds", camera.pair());
    begin();
    hand.key(KeyEvent.VK_V);
    hand.await("two at once", v -> v.two().isPresent());
    check(
        !isPractice || TwoText.of(view()).orElseThrow().sides().get(1).speed().equals("1/15"),
        "the usual pair, whatever was fired last");
    fireBoth();
    shot("08-two");
    hand.key(byPedal ? KeyEvent.VK_MULTIPLY : KeyEvent.VK_A);
    hand.await("the field is there", v -> hand.window().bench().markField().isFocusOwner());
    hand.type("train cleaned");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("marked", v -> v.marks().size() == 1);
    camera.clean();
    fireBoth();
    shot("08-closer");
    hand.reads(isPractice ? "closer" : "enough");
    hand.key(KeyEvent.VK_V);
    hand.await("one at a time", v -> v.two().isEmpty());
  }

  private void fireBoth() {
    for (int i = 0; i < FIRINGS_MOST && !view().two().orElseThrow().isFired(); i++) {
      fire();
    }
    check(view().two().orElseThrow().isFired(), "both are fired");
  }

  /** What was done last at the bench is taken back and done again; another place has its own. */
  private void undoAndRedoAtTheBench() {
    long before = rejected(view());
    hand.key(KeyEvent.VK_BACK_SPACE);
    hand.await("it is taken back", v -> rejected(v) == before + 1);
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("it counts again", v -> rejected(v) == before);
    hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
    hand.await("it is taken back again", v -> rejected(v) == before + 1);
    shot("08-taken-back");
    hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
    hand.await("and counts", v -> rejected(v) == before);
  }

  /** Led press by press; on the practice rig it is found wrong twice, and adjusted. */
  private void linkage() {
    hand.key(KeyEvent.VK_F5);
    choose(Phase.ADJUSTING);
    hand.fill("runSpeeds", " ");
    hand.click("check.LINKAGE");
    begin();
    hand.await("the linkage is led", v -> v.linkage().isUnderWay());
    shot("10-set-up");
    windKeyTooSoon();
    begun(v -> v.linkage().step().isPresent());
    if (isPractice && !byPedal) {
      press();
      hand.await("pause and let go", v -> v.linkage().step().equals(due(LinkageStep.STOP)));
      for (int i = 0; i < 4; i++) {
        press();
      }
      hand.reads("ADVANCE ONLY");
      shot("10-advance-only");
      camera.link(ButtonLinkage.SHUTTER_FIRST);
      adjusted();
      press();
      press();
      hand.reads("SHUTTER ONLY");
      shot("10-shutter-only");
      camera.link(ButtonLinkage.ONE_CLICK);
      adjusted();
    } else {
      camera.link(ButtonLinkage.ONE_CLICK);
    }
    for (int i = 0; i < LinkageStep.PRESSES; i++) {
      press();
      if (i == LinkageStep.STOP.presses() + 3) {
        shot("10-squeeze");
      }
    }
    hand.await("it is over", v -> !v.linkage().isUnderWay());
    hand.reads("ONE CLICK");
    shot("11-one-click");
    if (isPractice && !byPedal) {
      plunger();
    }
  }

  private static Optional<LinkageStep> due(LinkageStep step) {
    return Optional.of(step);
  }

  private void adjusted() {
    hand.key(KeyEvent.VK_A);
    hand.await("words are asked for", v -> hand.window().bench().markField().isFocusOwner());
    hand.type("half a turn");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it begins again", v -> v.linkage().step().equals(due(LinkageStep.REST)));
  }

  private void plunger() {
    hand.key(KeyEvent.VK_F6);
    hand.fill("triedPlungerAdvance", "1.60");
    hand.fill("triedPlungerShutter", "1.65");
    hand.click("triedPlunger");
    hand.await("the plunger is read", v -> v.plungers().size() == 1);
    shot("11-checks");
  }

  /** Two speeds, still wet, with the flash contact; one firing is taken back. */
  private void asLeft() {
    hand.key(KeyEvent.VK_F5);
    choose(Phase.AS_LEFT);
    hand.fill("runSpeeds", camera.twoSpeeds());
    hand.choose("runFirings", FEWEST);
    // The linkage is seen to; it would be asked for again.
    hand.click("check.LINKAGE");
    hand.click("run.contact");
    hand.reveal("run.wet");
    choice("run.wet", "still wet");
    shot("13-form");
    begin();
    fire();
    takeBack();
    fireAll();
    check(NextText.of(view()).done(), NextText.of(view()).spoken());
    hand.reads("done");
    shot("13-as-left");
  }

  private void choice(String name, Object value) {
    JComboBox<?> box = (JComboBox<?>) hand.find(name);
    DeskHand.onScreen(
        () -> {
          box.setSelectedItem(value);
          return null;
        });
  }

  void fireAll() {
    for (int i = 0; i < FIRINGS_MOST && !view().runDone(); i++) {
      fire();
      if (view().question().isPresent()) {
        answer();
      }
    }
    check(view().runDone(), "the run is done");
  }

  /** What is due leads to its run, which is only begun. */
  private void nextDay() {
    calendar.turn(1);
    hand.key(KeyEvent.VK_F2);
    hand.key(KeyEvent.VK_F7);
    hand.reads("J-17 is due for its dry run today.");
    shot("14-due");
    hand.click("dryRun");
    hand.await("the run is set up", v -> hand.find("beginRun").isShowing());
    hand.choose("runRest", A_DAY);
    shot("14-dry-form");
    begin();
    fireAll();
    shot("15-dry");
    hand.key(KeyEvent.VK_F7);
    hand.await("nothing is due", v -> !hand.find("dryRun").isVisible());
  }

  private void ownersPage() throws IOException {
    hand.key(KeyEvent.VK_F7);
    String text = page();
    for (String each :
        List.of(
            "The Workshop",
            CameraByHand.LABEL,
            "J-17",
            CameraByHand.COMPLAINT,
            CameraByHand.ANSWER,
            "train cleaned",
            slowest())) {
      check(text.contains(each), each + " is on the page: " + text);
    }
    check(!text.contains("still wet"), "it is dry: " + text);
    shot("17-page");
  }

  /** Writes a page by the mouse and reads it: one sheet. */
  String page() throws IOException {
    List<Path> before = pages();
    hand.click("pageCamera");
    hand.await("the page is written", v -> pages().size() > before.size());
    hand.reads(".pdf");
    List<Path> written = new ArrayList<>(pages());
    written.removeAll(before);
    try (PDDocument document = Loader.loadPDF(written.get(0).toFile())) {
      check(document.getNumberOfPages() == 1, "one sheet, not " + document.getNumberOfPages());
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private List<Path> pages() {
    Path tables = folder.resolve("data/tables");
    if (!Files.isDirectory(tables)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(tables)) {
      return files.filter(file -> file.toString().endsWith(".pdf")).toList();
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  /** It is slow again, says the owner; the record says whether it has moved. */
  private void aYearLater() throws IOException {
    calendar.turn(A_YEAR);
    open();
    hand.key(KeyEvent.VK_F3);
    setLight();
    hand.key(KeyEvent.VK_F7);
    hand.await("the camera is listed", v -> hand.find("takeCamera").isEnabled());
    shot("18-history");
    hand.click("takeCamera");
    hand.await("it is on the bench", v -> hand.find("handBack").isEnabled());
    hand.fill("detail.COMPLAINT", "slow again");
    hand.click("keepCamera");
    hand.key(KeyEvent.VK_F5);
    choose(Phase.AS_FOUND);
    hand.fill("runSpeeds", camera.twoSpeeds());
    hand.choose("runFirings", FEWEST);
    hand.choose("runRest", A_DAY);
    begin();
    fireAll();
    hand.key(KeyEvent.VK_F4);
    hand.reads("Has it moved since it went back?", "Exercised:", "First after rest:");
    shot("19-moved");
    hand.key(KeyEvent.VK_F7);
    // History shows the visit before until it has read the new one.
    hand.reads("Other checks, visit by visit", "Has it moved since it went back?");
    String text = page();
    check(text.contains("Has it moved since it went back?"), text);
    check(text.contains("slow again"), text);
    shot("19-page");
    hand.close();
  }

  private String slowest() {
    return isPractice ? "1" : "1/4";
  }

  private void takeBack() {
    hand.key(byPedal ? BACK : KeyEvent.VK_BACK_SPACE);
    hand.await("it is taken back and stays", v -> rejected(v) == 1);
    hand.key(KeyEvent.VK_R);
    hand.type("my foot slipped");
    hand.key(KeyEvent.VK_ENTER);
    hand.await(
        "the reason is another",
        v ->
            v.results().stream()
                .anyMatch(f -> f.rejection().filter("my foot slipped"::equals).isPresent()));
  }

  private static long rejected(BenchView view) {
    return view.results().stream().filter(f -> f.rejection().isPresent()).count();
  }

  private void windKeyTooSoon() {
    windKey(WindState.TURNS);
    hand.await("it says what to do first", v -> !v.linkage().prompt().remark().isEmpty());
    check(view().presses().isEmpty(), "no press is counted");
  }

  private void press() {
    int before = view().presses().size();
    windKey(camera.press(view().linkage().step().orElseThrow()));
    hand.await("the press counts", v -> v.presses().size() == before + 1);
  }

  private void windKey(WindState wind) {
    boolean turns = wind == WindState.TURNS;
    if (byPedal) {
      hand.key(turns ? KeyEvent.VK_NUMPAD1 : KeyEvent.VK_NUMPAD0);
    } else {
      hand.key(turns ? KeyEvent.VK_W : KeyEvent.VK_O);
    }
  }

  void choose(Phase phase) {
    JRadioButton button = (JRadioButton) hand.find("phase." + phase);
    hand.click("phase." + phase);
    hand.await(phase + " is chosen", v -> button.isSelected());
  }

  void begin() {
    int before = view().runs().size();
    if (byPedal) {
      pedalUntil("it begins, whatever has the focus", v -> v.runs().size() > before);
    } else {
      hand.click("beginRun");
      hand.await("it begins", v -> v.runs().size() > before);
    }
  }

  void fire() {
    int before = view().results().size();
    if (byPedal) {
      pedalUntil("a firing", v -> v.results().size() > before);
    } else {
      camera.fire(view());
      hand.await("a firing settles", v -> v.results().size() > before);
    }
  }

  /** A pedal does not hear what is newer than a second. */
  private void begun(Predicate<BenchView> holds) {
    if (byPedal) {
      pedalUntil("the camera is set up", holds);
    } else {
      hand.key(KeyEvent.VK_SPACE);
      hand.await("the camera is set up", holds);
    }
  }

  void answer() {
    if (byPedal) {
      pedalUntil("it is answered", v -> v.question().isEmpty());
    } else {
      hand.key(KeyEvent.VK_SPACE);
      hand.await("it is answered", v -> v.question().isEmpty());
    }
  }

  /** At B, by the pedal where it does the same. */
  private void bulb(boolean open) {
    if (byPedal) {
      hand.key(PEDAL);
    } else {
      camera.bulb(open);
    }
  }

  /** Presses the pedal, again whenever there is anything new to see, until something holds. */
  private void pedalUntil(String what, Predicate<BenchView> holds) {
    for (int presses = 0; presses < PRESSES_MOST; presses++) {
      BenchView now = view();
      if (DeskHand.onScreen(() -> holds.test(now))) {
        return;
      }
      hand.key(PEDAL);
      // A camera is not fired again before it is said what came of it.
      boolean fires = Proposal.of(now).equals(Optional.of(UserAction.FIRE));
      hand.await("anything new", after -> isNew(now, after, fires));
    }
    throw new AssertionError("pressed in vain until " + what + "; the window shows " + view());
  }

  /** What is said anew is news, in the same words too: views and sentences are told by identity. */
  @SuppressWarnings("ReferenceEquality")
  private static boolean isNew(BenchView before, BenchView after, boolean fires) {
    return fires ? before.said().orElse(null) != after.said().orElse(null) : before != after;
  }

  private boolean isSaid(String words) {
    return ((JLabel) hand.find("pedalSaid")).getText().contains(words);
  }

  private static boolean isShown(BenchView view, String setting) {
    return view.shown().filter(s -> s.label().equals(setting)).isPresent();
  }

  void shot(String name) {
    hand.shot(folder.resolve("screens"), name);
  }

  BenchView view() {
    return DeskHand.onScreen(() -> hand.window().view().orElseThrow());
  }

  private static void check(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("not as expected: " + what);
    }
  }
}
