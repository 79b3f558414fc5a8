package org.halflight.desk;

import java.awt.AWTEvent;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Toolkit;
import java.awt.Window;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import org.halflight.link.Ports;
import org.halflight.record.DataFolder;
import org.halflight.record.WorkshopRecord;

/** A start of the window that fails, and faults on its threads. Run on a display by a test. */
final class DeskStart {
  private static final long MOST_SECONDS = 60;

  private DeskStart() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    aStartThatFailsLetsGoOfTheRecord(folder.resolve("fails"));
    whatKeptItFromStartingIsShown();
    aFaultOnTheWindowsThreadIsSaid(folder.resolve("faults"));
    System.out.print("DESK START: done\n");
    System.exit(0);
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
