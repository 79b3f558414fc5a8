package org.halflight.desk;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.util.concurrent.CountDownLatch;
import javax.swing.SwingUtilities;
import org.halflight.trouble.Trouble;

/** Opens the window. */
public final class Desk {
  private Desk() {}

  /**
   * Opens the window and stays until it is closed.
   *
   * @throws Trouble when no session can be begun, as where the folder cannot be written to
   */
  public static void open(DeskSurroundings surroundings) {
    CountDownLatch closed = new CountDownLatch(1);
    DeskSettings settings = DeskSettings.of(surroundings.folder());
    try {
      DeskWindow[] window = new DeskWindow[1];
      SwingUtilities.invokeAndWait(() -> window[0] = new DeskWindow(surroundings, settings));
      BenchLoop bench = window[0].beginBench();
      SwingUtilities.invokeLater(
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
      closed.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } catch (InvocationTargetException failed) {
      throw new IllegalStateException(failed.getCause());
    }
  }
}
