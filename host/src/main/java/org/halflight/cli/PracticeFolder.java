package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.export.ComparisonTable;
import org.halflight.export.ExtraTestTable;
import org.halflight.export.FiringTable;
import org.halflight.export.SpeedTable;
import org.halflight.export.StageTable;
import org.halflight.export.StatisticTable;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.files.Reasons;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The folder of a practice run. What an earlier practice run has left in it may be replaced; it is
 * known by its session file.
 */
final class PracticeFolder {
  private static final String SESSION = "practice.session";

  private static final Map<String, List<String>> TABLES =
      Map.of(
          "stages.csv",
          StageTable.headings(),
          "firings.csv",
          FiringTable.headings(),
          "speeds.csv",
          SpeedTable.headings(),
          "everyday.csv",
          ExtraTestTable.headings(),
          "comparison.csv",
          ComparisonTable.headings(),
          "statistics.csv",
          StatisticTable.headings());

  private static final List<String> OTHERS =
      List.of(
          "speed-map.png",
          "firing-row-as-found.png",
          "firing-row-adjusting.png",
          "firing-row-as-left.png",
          "stages.png",
          "hand-over.pdf");

  private final Path folder;
  private final Map<String, OutFile> files = new HashMap<>();

  /**
   * Makes the folder where it is not there, and looks whether a run may be left in it.
   *
   * @param force replace files of the same kind that are not of a practice run
   * @throws Trouble when it may not; nothing was changed
   */
  PracticeFolder(Path folder, boolean force) {
    this.folder = folder;
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw unwritable(e);
    }
    boolean before = Files.exists(session(), LinkOption.NOFOLLOW_LINKS);
    if (before && !isOfPractice(session())) {
      throw new Trouble(Words.say("practice.other", session()));
    }
    OutFiles out = OutFiles.of(before || force, List.of(session()));
    TABLES.forEach((name, headings) -> files.put(name, out.table(folder.resolve(name), headings)));
    for (String name : OTHERS) {
      FileKind kind = name.endsWith(".png") ? FileKind.PICTURE : FileKind.PAGE;
      files.put(name, out.file(folder.resolve(name), kind));
    }
  }

  /** Takes the session of an earlier practice run away: the same seed makes it again. */
  void beginAfresh() {
    try {
      Files.deleteIfExists(session());
    } catch (IOException e) {
      throw unwritable(e);
    }
  }

  Path session() {
    return folder.resolve(SESSION);
  }

  /** A file that a practice run leaves. */
  OutFile file(String name) {
    return Objects.requireNonNull(files.get(name));
  }

  private Trouble unwritable(IOException e) {
    return new Trouble(Words.say("practice.folder", folder, Reasons.of(e)), e);
  }

  /** Whether a session file holds nothing but a practice run of this command. */
  private static boolean isOfPractice(Path session) {
    if (!Files.isRegularFile(session, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    try {
      SessionReducer fold = SessionReducer.replay(SessionFile.read(session).events());
      return fold.greeting().stream().allMatch(rig -> Source.of(rig.serial()) == Source.PRACTICE)
          && fold.session().results().stream()
              .allMatch(firing -> Source.of(firing.key().rigSerial()) == Source.PRACTICE)
          && fold.session().runs().stream()
              .allMatch(run -> run.camera().equals(Words.say("practice.camera")));
    } catch (Trouble noSession) {
      return false;
    }
  }
}
