package org.halflight.desk;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.NextText;
import org.halflight.session.CurtainStep;
import org.halflight.session.Phase;
import org.halflight.speeds.ShutterKind;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainAdvice.Act;

/**
 * A camera with curtains, repaired in the window by real keys and mouse on the practice rig: what
 * it has, the light of three sensors, as found, the led steps of adjusting, as left, and what is
 * written of it. Its screws follow what is said to have been turned.
 */
final class CurtainRepair {
  private static final int TURNS_MOST = 6;
  private static final String COLUMNS =
      "\"first_travel_ms\",\"second_travel_ms\",\"travel_difference_ms\",\"start_effective_ms\","
          + "\"end_effective_ms\",\"slope_stops\",\"range_stops\",\"slit_mm\",\"window_ms\","
          + "\"capped\",\"end_bounce_ms\"";
  private static final String NO_FIGURES = ",,,,,,,,,,,";

  private final DeskWhole whole;
  private final Path folder;
  private final DeskHand hand;
  private boolean undone;

  CurtainRepair(DeskWhole whole, Path folder, DeskHand hand) {
    this.whole = whole;
    this.folder = folder;
    this.hand = hand;
  }

  void repair() throws IOException {
    whole.open();
    practice("camera", "cloth-36");
    intake();
    hand.click("place.TO_LIGHT");
    whole.setLight();
    shot("c02-light-set");
    asFound();
    adjusting();
    asLeft();
    written();
    hand.close();
  }

  /** Chooses an entry of a menu in the practice menu, by the keyboard alone. */
  private void practice(String menu, String entry) {
    hand.key(KeyEvent.VK_F9);
    hand.walk(KeyEvent.VK_DOWN, "practice." + menu);
    hand.key(KeyEvent.VK_RIGHT);
    hand.walk(KeyEvent.VK_DOWN, "practice." + menu + "." + entry);
    hand.key(KeyEvent.VK_ENTER);
  }

  private void intake() {
    hand.key(KeyEvent.VK_F4);
    hand.fill("cameraLabel", "Aunt Mo");
    hand.fill("cameraJob", "J-18");
    hand.choose(
        "cameraShutter", List.of(ShutterKind.values()).indexOf(ShutterKind.CURTAIN_LONG_SIDE));
    hand.fill("cameraSpeeds", "1, 1/2, 1/4, 1/8, 1/15, 1/30, 1/60, 1/125, 1/250, 1/500, 1/1000");
    hand.fill("cameraFrame", "36x24");
    hand.fill("cameraXSpeed", "1/30");
    hand.fill("cameraTravel", "17");
    hand.click("keepCamera");
    hand.reads("A time alone cannot be compared");
    shot("c01-span-missing");
    hand.fill("cameraTravel", "17/36");
    hand.click("adjuster.first-brake");
    hand.click("keepCamera");
    hand.await("the camera is named", v -> hand.find("handBack").isEnabled());
    shot("c01-intake");
  }

  private void asFound() {
    hand.key(KeyEvent.VK_F5);
    whole.choose(Phase.AS_FOUND);
    shot("c03-run");
    whole.begin();
    whole.fire();
    shot("c04-first");
    whole.fireAll();
    shot("c05-as-found");
  }

  /** Step by step: cleaned and counted, then each screw as the window says. */
  private void adjusting() {
    hand.key(KeyEvent.VK_F5);
    whole.choose(Phase.ADJUSTING);
    hand.click("run.contact");
    shot("c06-run");
    whole.begin();
    shot("c07-clean");
    mark("3");
    mark("3 1/4");
    hand.mishap("clean");
    for (CurtainStep step : CurtainStep.values()) {
      if (step != CurtainStep.NEXT_DAY) {
        step(step);
      }
    }
  }

  private void step(CurtainStep step) {
    if (step != CurtainStep.CLEAN) {
      hand.key(KeyEvent.VK_B);
      hand.await(step + " is open", v -> v.step().equals(Optional.of(step)));
    }
    String name = "c1" + step.number() + "-" + CurtainStep.WORDS.word(step);
    for (int turns = 0; turns <= TURNS_MOST; turns++) {
      count();
      hand.await("it is worked out", v -> hand.window().bench().isUpToDate());
      Optional<CurtainAdvice> advice = hand.window().bench().curtainAdvice();
      if (turns == 0) {
        shot(name);
      }
      if (advice.isEmpty() || !isOf(step, advice.get().step())) {
        break;
      }
      if (step == CurtainStep.AGAIN) {
        // Half of what a key turns, by words; the line has begun with what is advised.
        mark("1/16");
      } else {
        turn(Objects.requireNonNull(KEYS.get(advice.get().act()), advice.get().toString()));
      }
    }
    shot(name + "-done");
  }

  /** Once more goes through the three before it. */
  private static boolean isOf(CurtainStep open, CurtainStep advised) {
    return advised == open
        || (open == CurtainStep.AGAIN && advised.number() > 0 && advised.number() < open.number());
  }

  private static final Map<Act, Integer> KEYS =
      Map.of(
          Act.MORE_FIRST, KeyEvent.VK_PAGE_UP,
          Act.MORE_SECOND, KeyEvent.VK_PAGE_UP,
          Act.LESS_FIRST, KeyEvent.VK_PAGE_DOWN,
          Act.LESS_SECOND, KeyEvent.VK_PAGE_DOWN,
          Act.NARROWER_SLIT, KeyEvent.VK_PAGE_DOWN,
          Act.WIDER_SLIT, KeyEvent.VK_PAGE_UP,
          Act.MORE_SECOND_BRAKE, KeyEvent.VK_PAGE_UP,
          Act.CONTACT_LATER, KeyEvent.VK_PAGE_UP,
          Act.CONTACT_SOONER, KeyEvent.VK_PAGE_DOWN);

  private void turn(int key) {
    int before = view().turns().size();
    hand.key(key);
    hand.await("it is turned", v -> v.turns().size() == before + 1);
    if (!undone) {
      undone = true;
      hand.key(KeyEvent.VK_Z, KeyEvent.VK_CONTROL);
      hand.await("it is turned back", v -> v.turns().size() == before);
      hand.key(KeyEvent.VK_Y, KeyEvent.VK_CONTROL);
      hand.await("and turned again", v -> v.turns().size() == before + 1);
    }
  }

  private void count() {
    int from = view().results().size();
    for (int i = 0; i < 5 && !isCounted(); i++) {
      whole.fire();
      // Far off, as before adjusting, it looks like another speed.
      if (view().question().isPresent()) {
        whole.answer();
      }
    }
    check(isCounted(), "three count after " + from);
  }

  private boolean isCounted() {
    return DeskHand.onScreen(() -> NextText.of(view()).good() >= 3);
  }

  private void mark(String turns) {
    int before = view().turns().size();
    hand.key(KeyEvent.VK_A);
    hand.await("words are asked for", v -> hand.window().bench().markField().isFocusOwner());
    hand.type(turns);
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it is noted", v -> v.turns().size() == before + 1);
  }

  private void asLeft() {
    hand.key(KeyEvent.VK_F5);
    whole.choose(Phase.AS_LEFT);
    hand.choose("runFirings", 0);
    hand.fill("runSpeeds", "1/1000, 1/250, 1/30, 1/8");
    shot("c20-run");
    whole.begin();
    whole.fireAll();
    shot("c21-as-left");
  }

  /** The owner reads neither mm nor screws; the tables have all figures of the curtains. */
  private void written() throws IOException {
    hand.key(KeyEvent.VK_F7);
    String text = whole.page();
    for (String each :
        List.of("Aunt Mo", "J-18", "Whole picture", "1/1000: ", "even", "up to 1/30", "fold")) {
      check(text.contains(each), each + " is on the page: " + text);
    }
    check(!text.matches("(?i).*\\d ?mm\\b.*|.*m/s.*|.*eccentric.*"), "for the owner: " + text);
    check(
        text.contains("As left, all 4 speeds that were fired are within tolerance."),
        "it is right: " + text);
    shot("c30-history");
    hand.reads("As found", "Adjusting since the last mark", "As left");
    hand.click("exportCamera");
    Path tables = folder.resolve("data/tables");
    hand.await("the tables are written", v -> !named(tables, "firings.csv").isEmpty());
    List<String> firings = Files.readAllLines(named(tables, "firings.csv").get(0));
    check(firings.get(0).endsWith(COLUMNS), firings.get(0));
    check(firings.stream().noneMatch(line -> line.endsWith(NO_FIGURES)), "each has its figures");
  }

  private static List<Path> named(Path folder, String end) {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(file -> file.toString().endsWith(end)).toList();
    } catch (IOException gone) {
      return List.of();
    }
  }

  private BenchView view() {
    return whole.view();
  }

  private void shot(String name) {
    whole.shot(name);
  }

  private static void check(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("not as expected: " + what);
    }
  }
}
