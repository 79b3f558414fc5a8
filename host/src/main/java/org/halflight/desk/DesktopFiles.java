package org.halflight.desk;

import java.awt.Desktop;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import org.halflight.files.Reasons;
import org.halflight.words.Words;

/** Has the desktop open a file or show where it is; where it cannot, the path is said. */
final class DesktopFiles {
  private DesktopFiles() {}

  /**
   * Opens a file with the program that the desktop has for it.
   *
   * @param says takes what went wrong, on the window's own thread
   */
  static void open(Path file, Consumer<String> says) {
    asks(file, file, Desktop.Action.OPEN, says);
  }

  /** Shows a file in its folder, or at least the folder. */
  static void showInFolder(Path file, Consumer<String> says) {
    Path folder = file.toAbsolutePath().getParent();
    asks(file, folder == null ? file : folder, Desktop.Action.BROWSE_FILE_DIR, says);
  }

  private static void asks(Path file, Path folder, Desktop.Action action, Consumer<String> says) {
    if (!Files.exists(file)) {
      says.accept(Words.say("desk.files.gone", file));
      return;
    }
    if (!Desktop.isDesktopSupported() || !Desktop.getDesktop().isSupported(Desktop.Action.OPEN)) {
      says.accept(Words.say("desk.files.noDesktop", file));
      return;
    }
    // Some desktops answer only when the other program is up.
    Thread asks =
        new Thread(
            () -> {
              try {
                Desktop desktop = Desktop.getDesktop();
                if (action == Desktop.Action.BROWSE_FILE_DIR && desktop.isSupported(action)) {
                  desktop.browseFileDirectory(file.toFile());
                } else {
                  desktop.open(new File(folder.toString()));
                }
              } catch (IOException | RuntimeException refused) {
                SwingUtilities.invokeLater(
                    () ->
                        says.accept(Words.say("desk.files.notOpened", file, Reasons.of(refused))));
              }
            },
            "halflight-opens");
    asks.setDaemon(true);
    asks.start();
  }
}
