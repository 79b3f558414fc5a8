package org.halflight.desk;

import java.io.IOException;
import java.nio.file.Path;
import org.halflight.export.CsvTable;
import org.halflight.files.PrivateFiles;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Writes tables into the folder for them. */
final class Tables {
  private Tables() {}

  /**
   * Writes a table.
   *
   * @return the file
   * @throws Trouble when it cannot be written
   */
  static Path write(CsvTable table, Path base, String ending) {
    Path file = base.resolveSibling(base.getFileName() + ending);
    folder(file.toAbsolutePath().getParent());
    table.write(file);
    return file;
  }

  /**
   * Makes the folder if it is not there.
   *
   * @throws Trouble when it cannot be made
   */
  static void folder(Path folder) {
    try {
      PrivateFiles.makeFolder(folder);
    } catch (IOException e) {
      throw new Trouble(Words.say("desk.cameras.noFolder", folder, e.getMessage()), e);
    }
  }
}
