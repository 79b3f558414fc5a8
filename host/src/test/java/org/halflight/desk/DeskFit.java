package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.KeyboardFocusManager;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import javax.swing.JComboBox;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import javax.swing.MenuSelectionManager;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.FitViews;
import org.halflight.desk.view.UserAction;
import org.halflight.fixtures.Turns;
import org.halflight.record.DataFolder;
import org.halflight.record.WorkshopRecord;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;

/**
 * Goes through all places of the window and the states that matter, in several sizes, light and
 * dark, and prints the faults of each. What is shown comes from the practice rig in virtual time,
 * so that nothing waits for a clock. A program of its own, because it needs a display and one JVM
 * for each scale of the screen: {@link DeskFitTest} gives it both.
 */
final class DeskFit {
  private static final Dimension KEPT_SIZE = new Dimension(1366, 768);

  /** States whose screens are compared with kept ones, and the names of those. */
  private static final Map<String, String> KEPT =
      Map.of(
          "bench, half way", "bench",
          "bench, half way, dark", "bench-dark",
          "light, light asking", "light",
          "camera, empty", "camera",
          "run", "run",
          "checks, checks", "checks",
          "history", "history",
          "rig, rig checked", "rig");

  /** With the longest words, or the most on the screen. */
  private static final Set<String> MAIN =
      Set.of(
          "bench, half way",
          "bench, question",
          "bench, two",
          "bench, linkage done",
          "bench, stages",
          "bench, curtains adjusting",
          "details",
          "light, light asking",
          "camera, long words",
          "camera, curtains",
          "camera, empty",
          "run",
          "run, curtains",
          "run, open",
          "checks, checks",
          "history",
          "rig, rig checked",
          "keys");

  private static final String LONG_WORDS =
      "An invented camera with more words than any field has room for, \u30b7\u30e3\u30c3\u30bf\u30fc, 1954";

  private static final Instant NOW = Instant.parse("2026-03-10T09:00:00Z");

  private final Path folder;
  private final List<Dimension> sizes = new ArrayList<>();
  private final Map<String, List<String>> faults = new LinkedHashMap<>();
  private final AtomicLong nanos = new AtomicLong();
  private Map<String, BenchView> views = Map.of();
  private DeskWindow window;
  private boolean shots;
  private boolean mainOnly;
  private boolean keeps;
  private int looked;

  private DeskFit(Path folder) {
    this.folder = folder;
  }

  /**
   * @param args a folder, sizes such as 1366x768, "main" for the main states alone in every size,
   *     "shots" for a picture of every screen, "keep" for those that are compared with kept ones
   */
  public static void main(String[] args) {
    try {
      ShippedLetters.install();
      DeskFit fit = new DeskFit(Path.of(args[0]));
      for (int i = 1; i < args.length; i++) {
        if (args[i].equals("shots")) {
          fit.shots = true;
        } else if (args[i].equals("main")) {
          fit.mainOnly = true;
        } else if (args[i].equals("keep")) {
          fit.keeps = true;
        } else {
          String[] size = args[i].split("x", -1);
          fit.sizes.add(new Dimension(Integer.parseInt(size[0]), Integer.parseInt(size[1])));
        }
      }
      fit.run();
      fit.faults.forEach((fault, at) -> System.out.println("FAULT " + fault + " " + at));
      System.out.println("FIT: " + fit.looked + " screens, " + fit.faults.size() + " faults");
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run() throws IOException {
    Path data = folder.resolve("data");
    Files.createDirectories(data);
    views = FitViews.of(Files.createDirectories(folder.resolve("views")));
    try (WorkshopRecord record =
        WorkshopRecord.open(
            data.resolve(DataFolder.RECORD_FILE), Clock.fixed(NOW, ZoneOffset.UTC))) {
      record.importSession(folder.resolve("views").resolve(FitViews.HISTORY));
    }
    open(data);
    for (boolean dark : new boolean[] {false, true}) {
      if (dark) {
        act(UserAction.THEME);
      }
      bench(dark);
      places(dark);
    }
    onScreen(window::close);
  }

  private void open(Path data) {
    DeskSurroundings surroundings =
        new DeskSurroundings(
            data,
            NoPorts::new,
            () -> nanos.addAndGet(100_000_000),
            Clock.fixed(NOW, ZoneOffset.UTC),
            "test",
            20);
    onScreen(
        () -> {
          window = new DeskWindow(surroundings, new DeskSettings(data, false, true, 90));
          window.frame().setSize(sizes.get(0));
          window.frame().setVisible(true);
          window.show(views.get("start"));
        });
  }

  private void bench(boolean dark) {
    act(UserAction.TO_BENCH);
    for (String name :
        List.of(
            "start",
            "fired without a run",
            "begun",
            "opened twice",
            "half way",
            "question",
            "hang",
            "hung",
            "as found done",
            "lost",
            "adjusting",
            "two",
            "linkage",
            "linkage done",
            "stages",
            "curtains as found",
            "curtains settling",
            "curtains adjusting",
            "as left done")) {
      show(name);
      look("bench, " + name, dark);
    }
    show("half way");
    act(UserAction.TABLES);
    look("bench, tables", dark);
    act(UserAction.TABLES);
    act(UserAction.MARK);
    look("bench, mark", dark);
    for (UserAction turned :
        List.of(UserAction.CONDITIONS, UserAction.CURVE, UserAction.FAR_VIEW)) {
      act(turned);
      look("bench, " + turned, dark);
      act(turned);
    }
    for (UserAction opens : List.of(UserAction.MENU, UserAction.PRACTICE)) {
      act(opens);
      look("bench, " + opens, dark);
      onScreen(MenuSelectionManager.defaultManager()::clearSelectedPath);
    }
    act(UserAction.DETAILS);
    look("details", dark);
    act(UserAction.DETAILS);
  }

  private void places(boolean dark) {
    act(UserAction.TO_LIGHT);
    for (String name : List.of("start", "light aiming", "light asking", "light set")) {
      show(name);
      look("light, " + name, dark);
    }
    act(UserAction.TO_CAMERA);
    look("camera, empty", dark);
    onScreen(
        () -> {
          for (JTextField field : all(window.frame(), JTextField.class)) {
            if (field.isShowing() && field.isEditable()) {
              field.setText(LONG_WORDS);
              field.setCaretPosition(0);
            }
          }
        });
    look("camera, long words", dark);
    choose("cameraShutter", List.of(ShutterKind.values()).indexOf(ShutterKind.CURTAIN_LONG_SIDE));
    look("camera, curtains", dark);
    choose("cameraShutter", 0);
    for (JTabbedPane tabs : all(window.frame(), JTabbedPane.class)) {
      for (int i = 1; tabs.isShowing() && i < tabs.getTabCount(); i++) {
        int tab = i;
        onScreen(() -> tabs.setSelectedIndex(tab));
        look("camera, " + tabs.getTitleAt(i), dark);
      }
    }
    act(UserAction.TO_RUN);
    look("run", dark);
    onScreen(() -> all(window.frame(), Fold.class).forEach(fold -> fold.open(true)));
    look("run, open", dark);
    choose("runDial", Dial.names().indexOf("curtain"));
    look("run, curtains", dark);
    choose("runDial", 0);
    onScreen(() -> all(window.frame(), Fold.class).forEach(fold -> fold.open(false)));
    act(UserAction.TO_TRIED);
    for (String name : List.of("start", "checks", "checks asking")) {
      show(name);
      look("checks, " + name, dark);
    }
    act(UserAction.TO_CAMERAS);
    await("history is read", () -> window.cameras().drifts().table().getRowCount() > 0);
    look("history", dark);
    act(UserAction.TO_RIG);
    for (String name : List.of("start", "rig checked", "rig calibrating")) {
      show(name);
      look("rig, " + name, dark);
    }
    act(UserAction.TO_FIRST_LIGHT);
    for (String name : List.of("start", "first light", "first light, inputs over")) {
      show(name);
      look("first, " + name, dark);
    }
    act(UserAction.KEYS);
    look("keys", dark);
    for (UserAction said : List.of(UserAction.HELP, UserAction.ABOUT)) {
      act(said);
      look("said, " + said, dark);
    }
  }

  private void choose(String name, int index) {
    onScreen(
        () ->
            all(window.frame(), JComboBox.class).stream()
                .filter(box -> name.equals(box.getName()))
                .forEach(box -> box.setSelectedIndex(index)));
  }

  private void show(String name) {
    BenchView view = views.get(name);
    if (view == null) {
      throw new AssertionError("no view " + name);
    }
    onScreen(() -> window.show(view));
  }

  private void act(UserAction act) {
    onScreen(() -> window.act(act));
  }

  /**
   * Looks for faults, at the main states in every size. In the dark only colours differ, so there
   * the main states in the first size will do.
   */
  private void look(String state, boolean dark) {
    boolean main = MAIN.contains(state);
    if ((dark || mainOnly) && !main) {
      return;
    }
    for (Dimension size : dark || !main ? sizes.subList(0, 1) : sizes) {
      onScreen(
          () -> {
            window.frame().setSize(size);
            window.frame().validate();
          });
      // What a new size asks for may ask for another layout.
      for (int i = 0; i < 2; i++) {
        await(state + " is drawn", this::isDrawn);
        onScreen(window.frame()::validate);
      }
      String at = state + " " + size.width + "x" + size.height + (dark ? " dark" : "");
      onScreen(
          () -> {
            List<String> found = new ArrayList<>(LayoutFaults.of(window.frame().getRootPane()));
            found.addAll(TabWalk.of(window.frame()));
            for (String fault : found) {
              faults.computeIfAbsent(fault, f -> new ArrayList<>()).add(at);
            }
          });
      looked++;
      String kept = KEPT.get(state + (dark ? ", dark" : ""));
      if (shots) {
        shot("screens", at.replaceAll("[ ,]+", "-"));
      }
      if (keeps && kept != null && size.equals(KEPT_SIZE)) {
        shot(KeptScreens.ACTUAL, kept);
      }
    }
  }

  /** A caret blinks, and who has the focus is for the display to say. */
  private void shot(String into, String name) {
    onScreen(KeyboardFocusManager.getCurrentKeyboardFocusManager()::clearGlobalFocusOwner);
    onScreen(
        () -> {
          Component root = window.frame().getRootPane();
          BufferedImage image =
              new BufferedImage(root.getWidth(), root.getHeight(), BufferedImage.TYPE_INT_RGB);
          root.paint(image.createGraphics());
          KeptScreens.write(image, folder.resolve(into).resolve(name + ".png"));
        });
  }

  private boolean isDrawn() {
    return window.bench().isUpToDate()
        && window.details().isUpToDate()
        && window.rig().isUpToDate()
        && window.tried().isUpToDate()
        && window.cameras().map().canvas().isUpToDate();
  }

  private void await(String what, BooleanSupplier holds) {
    Turns.await(this, () -> DeskHand.onScreen(holds::getAsBoolean), () -> "in vain: " + what);
  }

  /** All components of a kind. */
  private static <T extends Component> List<T> all(Container in, Class<T> kind) {
    List<T> found = new ArrayList<>();
    for (Component each : in.getComponents()) {
      if (kind.isInstance(each)) {
        found.add(kind.cast(each));
      }
      if (each instanceof Container inner) {
        found.addAll(all(inner, kind));
      }
    }
    return found;
  }

  private static void onScreen(Runnable doing) {
    DeskHand.onScreen(
        () -> {
          doing.run();
          return null;
        });
  }
}
