package org.halflight.desk;

import java.awt.AWTEvent;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Toolkit;
import java.awt.Window;
import java.awt.event.KeyEvent;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import org.halflight.desk.view.BenchView;
import org.halflight.link.LinkState;
import org.halflight.link.Ports;
import org.halflight.record.DataFolder;
import org.halflight.record.WorkshopRecord;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticePorts;

/** A start of the window that fails, and faults on its threads. Run on a display by a test. */
final class DeskStart {
  private static final long MOST_SECONDS = 60;

  private DeskStart() {}

  public static void main(String[] args) {
    try {
      Path folder = Path.of(args[0]);
      aRigIsPluggedInPulledAndPluggedInElsewhere(folder.resolve("plugs"));
      aStartThatFailsLetsGoOfTheRecord(folder.resolve("fails"));
      whatKeptItFromStartingIsShown();
      aFaultOnTheWindowsThreadIsSaid(folder.resolve("faults"));
      System.out.print("DESK START: done\n");
      System.exit(0);
    } catch (Exception | AssertionError failed) {
      // The window's thread would keep the program, and the test that waits for it, for ever.
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private static void aStartThatFailsLetsGoOfTheRecord(Path folder) throws Exception {
    try {
      Desk.open(
          surroundings(
              folder,
              () -> {
                throw new IllegalStateException("an odd thing");
              }));
      throw new AssertionError("it started");
    } catch (IllegalStateException fault) {
      check(fault.getMessage().equals("an odd thing"), "the fault itself comes out: " + fault);
    }
    // Taken by a window that is not there, it would refuse.
    WorkshopRecord.open(folder.resolve(DataFolder.RECORD_FILE), Clock.systemUTC()).close();
    for (Window window : Window.getWindows()) {
      check(!window.isDisplayable(), "no window is left");
    }
  }

  private static void whatKeptItFromStartingIsShown() throws Exception {
    String sentence = "The folder cannot be written to. Give it room or permission. ".repeat(5);
    CompletableFuture<String> read = new CompletableFuture<>();
    Toolkit.getDefaultToolkit()
        .addAWTEventListener(
            event -> {
              if (event.getID() == WindowEvent.WINDOW_OPENED) {
                Window dialog = ((WindowEvent) event).getWindow();
                read.complete(words(dialog));
                dialog.dispose();
              }
            },
            AWTEvent.WINDOW_EVENT_MASK);
    Desk.sayItDidNotStart(sentence);
    check(read.get(MOST_SECONDS, TimeUnit.SECONDS).contains(sentence), "the sentence is shown");
  }

  private static void aFaultOnTheWindowsThreadIsSaid(Path folder) throws Exception {
    DeskSurroundings surroundings = surroundings(folder, NoPorts::new);
    DeskWindow[] window = new DeskWindow[1];
    SwingUtilities.invokeAndWait(
        () -> window[0] = new DeskWindow(surroundings, DeskSettings.of(folder)));
    Thread.setDefaultUncaughtExceptionHandler(window[0]::fault);
    BenchLoop bench = window[0].beginBench();
    CompletableFuture<String> said = new CompletableFuture<>();
    CompletableFuture<String> up = new CompletableFuture<>();
    SwingUtilities.invokeAndWait(
        () -> {
          window[0].onView(
              view -> {
                if (view.link().isUp()) {
                  up.complete("");
                }
                view.said()
                    .filter(each -> each.text().contains("in the window"))
                    .ifPresent(each -> said.complete(each.text()));
              });
          window[0].open(new Dimension(1200, 800), bench);
        });
    up.get(MOST_SECONDS, TimeUnit.SECONDS);
    SwingUtilities.invokeLater(
        () -> {
          throw new IllegalStateException("an odd thing");
        });
    check(said.get(MOST_SECONDS, TimeUnit.SECONDS).contains("halflight.log"), "the log is named");
    SwingUtilities.invokeAndWait(window[0]::close);
    check(!window[0].frame().isDisplayable(), "it closes");
    WorkshopRecord.open(folder.resolve(DataFolder.RECORD_FILE), Clock.systemUTC()).close();
  }

  private static void aRigIsPluggedInPulledAndPluggedInElsewhere(Path folder) throws Exception {
    PlugPorts ports = new PlugPorts();
    DeskHand hand = new DeskHand();
    hand.open(surroundings(folder, () -> ports), new Dimension(1366, 768), false);
    hand.key(KeyEvent.VK_F);
    hand.await("a firing in practice", v -> v.results().size() == 1);
    PracticePorts rig = PlugPorts.rig("R-0001");
    ports.plug("/dev/rig1", rig);
    hand.await("the rig is offered", v -> v.link().isPractice() && v.link().ports().offer());
    hand.key(KeyEvent.VK_Y);
    hand.await("the rig is used", v -> isUp(v) && v.results().isEmpty());
    rig.onBench(its -> its.fire(PracticeMishap.NONE));
    hand.await("its firing", v -> v.results().size() == 1);
    ports.pull("/dev/rig1");
    hand.await("it is missed", v -> v.link().state() == LinkState.LOST);
    ports.plug("/dev/rig7", rig);
    hand.await("it is back", v -> v.link().state() == LinkState.BACK);
    rig.onBench(its -> its.fire(PracticeMishap.NONE));
    hand.await("the session goes on", v -> v.results().size() == 2);
    hand.mishap("change");
    hand.await("practice is chosen", v -> v.link().isPractice() && v.link().isUp());
    hand.mishap("change");
    hand.await("and the rig again", DeskStart::isUp);
    hand.close();
  }

  private static boolean isUp(BenchView view) {
    return view.link().isUp() && view.link().serial().equals("R-0001");
  }

  private static String words(Component of) {
    StringBuilder words = new StringBuilder();
    if (of instanceof JTextArea area) {
      words.append(area.getText());
    }
    if (of instanceof Container container) {
      for (Component each : container.getComponents()) {
        words.append(words(each));
      }
    }
    return words.toString();
  }

  private static void check(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError(what);
    }
  }

  private static DeskSurroundings surroundings(
      Path folder, java.util.function.Supplier<Ports> ports) {
    return new DeskSurroundings(folder, ports, System::nanoTime, Clock.systemUTC(), "test", 20);
  }
}
