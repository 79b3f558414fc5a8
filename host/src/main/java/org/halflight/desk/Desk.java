package org.halflight.desk;

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
    Trouble[] trouble = new Trouble[1];
    SwingUtilities.invokeLater(
        () -> {
          try {
            DeskWindow window = new DeskWindow(surroundings, Look.install(false));
            window.open(null);
            window
                .frame()
                .addWindowListener(
                    new java.awt.event.WindowAdapter() {
                      @Override
                      public void windowClosed(java.awt.event.WindowEvent event) {
                        closed.countDown();
                      }
                    });
          } catch (Trouble failed) {
            trouble[0] = failed;
            closed.countDown();
          }
        });
    try {
      closed.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    if (trouble[0] != null) {
      throw trouble[0];
    }
  }
}
