package org.halflight.desk;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.util.concurrent.CountDownLatch;
import javax.swing.JOptionPane;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Opens the window. */
public final class Desk {
  private static final int WORDS_COLUMNS = 48;

  private Desk() {}

  /** Tells the system how its menus are to be shown; before anything of the screen is touched. */
  public static void prepare() {
    SystemMenu.properties(System.getProperty("os.name", "")).forEach(System::setProperty);
  }

  /**
   * Opens the window and stays until it is closed.
   *
   * @throws Trouble when no session can be begun, as where the folder cannot be written to
   */
  public static void open(DeskSurroundings surroundings) {
    CountDownLatch closed = new CountDownLatch(1);
    DeskSettings settings = DeskSettings.of(surroundings.folder());
    DeskWindow[] window = new DeskWindow[1];
    boolean opened = false;
    try {
      SwingUtilities.invokeAndWait(() -> window[0] = new DeskWindow(surroundings, settings));
      Thread.setDefaultUncaughtExceptionHandler(window[0]::fault);
      BenchLoop bench = window[0].beginBench();
      SwingUtilities.invokeAndWait(
          () -> {
            window[0]
                .frame()
                .addWindowListener(
                    new WindowAdapter() {
                      @Override
                      public void windowClosed(WindowEvent event) {
                        closed.countDown();
                      }
                    });
            window[0].open(null, bench);
          });
      opened = true;
      closed.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } catch (InvocationTargetException failed) {
      if (failed.getCause() instanceof RuntimeException fault) {
        throw fault;
      }
      throw new IllegalStateException(failed.getCause());
    } finally {
      if (!opened && window[0] != null) {
        // No window, so nobody could close it: the record must not stay taken.
        abandon(window[0]);
      }
    }
  }

  private static void abandon(DeskWindow window) {
    try {
      SwingUtilities.invokeAndWait(window::close);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } catch (InvocationTargetException failed) {
      throw new IllegalStateException(failed.getCause());
    }
  }

  /**
   * Says in a window of its own why the program did not start, and waits until it was read.
   *
   * @param sentence what happened and what to do
   */
  public static void sayItDidNotStart(String sentence) {
    JTextArea words = new JTextArea(sentence, 0, WORDS_COLUMNS);
    words.setLineWrap(true);
    words.setWrapStyleWord(true);
    words.setEditable(false);
    words.setOpaque(false);
    words.setSize(words.getPreferredSize());
    JOptionPane.showMessageDialog(null, words, Words.say("start.title"), JOptionPane.ERROR_MESSAGE);
  }
}
