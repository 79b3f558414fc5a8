package org.halflight.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.halflight.files.SettingsFile;

/**
 * The port that the person chose, kept with the settings until it is gone.
 *
 * @param folder of the settings
 */
record RememberedPort(Path folder) {
  private static final String PORT = "port";

  Optional<String> path() {
    return Optional.of(SettingsFile.read(folder).getProperty(PORT, ""))
        .filter(path -> !path.isBlank());
  }

  /** Keeps it, where the folder can be written to. */
  void keep(Optional<String> path) {
    try {
      SettingsFile.change(
          folder,
          kept ->
              path.ifPresentOrElse(one -> kept.setProperty(PORT, one), () -> kept.remove(PORT)));
    } catch (IOException notKept) {
      // It is chosen for this time, and is asked for again.
      return;
    }
  }
}
