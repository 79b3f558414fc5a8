package org.halflight.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.halflight.export.CsvTable;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.files.PrivateFiles;
import org.halflight.files.Reasons;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Writes tables into the folder for them, to be opened in a spreadsheet. Those of before stay: the
 * next ones are numbered.
 */
final class Tables {
  private static final String FIRINGS = "-firings";
  private static final String SPEEDS = "-speeds";
  private static final String VISITS = "-visits";
  private static final String ENDING = ".csv";

  private Tables() {}

  /**
   * Writes the tables of a camera, all under the same number.
   *
   * @param name what all names begin with
   * @return the table of firings
   * @throws Trouble when they cannot be written
   */
  static Path write(Path folder, String name, CsvTable firings, CsvTable speeds, CsvTable visits) {
    folder(folder);
    String number = "";
    for (int count = 2; isThere(folder, name, number); count++) {
      number = "-" + count;
    }
    OutFiles files = OutFiles.neverReplacing();
    OutFile first = files.file(folder.resolve(name + FIRINGS + number + ENDING), FileKind.TABLE);
    OutFile second = files.file(folder.resolve(name + SPEEDS + number + ENDING), FileKind.TABLE);
    OutFile third = files.file(folder.resolve(name + VISITS + number + ENDING), FileKind.TABLE);
    firings.write(first, CsvTable.Dialect.SPREADSHEET);
    speeds.write(second, CsvTable.Dialect.SPREADSHEET);
    visits.write(third, CsvTable.Dialect.SPREADSHEET);
    return first.path();
  }

  private static boolean isThere(Path folder, String name, String number) {
    return Stream.of(FIRINGS, SPEEDS, VISITS)
        .map(each -> folder.resolve(name + each + number + ENDING))
        .anyMatch(file -> Files.exists(file, LinkOption.NOFOLLOW_LINKS));
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
      throw new Trouble(Words.say("desk.cameras.noFolder", folder, Reasons.of(e)), e);
    }
  }
}
