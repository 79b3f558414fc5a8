package org.halflight.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The folder that files of one sort go into: the one that the person chose, which the settings
 * keep, else the usual one.
 *
 * @param path of the folder
 * @param isChosen whether the person chose it
 */
public record OutFolder(Path path, boolean isChosen) {
  private static final String KEY = "folder-";

  /**
   * Where files of a sort go.
   *
   * @param settings the folder of the settings
   * @param sort such as {@code tables}, as the settings name it
   * @param usual where the person has chosen none
   */
  public static OutFolder of(Path settings, String sort, Path usual) {
    String kept = SettingsFile.read(settings).getProperty(KEY + sort, "");
    try {
      return kept.isBlank() ? new OutFolder(usual, false) : new OutFolder(Path.of(kept), true);
    } catch (InvalidPathException noPath) {
      return new OutFolder(usual, false);
    }
  }

  /**
   * Keeps the folder that the person has chosen.
   *
   * @throws Trouble when files cannot go there, or it cannot be kept
   */
  public static OutFolder choose(Path settings, String sort, Path folder) {
    OutFolder chosen = new OutFolder(folder, true);
    chosen.ready();
    keep(settings, sort, folder);
    return chosen;
  }

  /** Keeps a folder that somebody else looks after. */
  public static void keep(Path settings, String sort, Path folder) {
    try {
      SettingsFile.change(settings, kept -> kept.setProperty(KEY + sort, folder.toString()));
    } catch (IOException notKept) {
      throw new Trouble(Words.say("workshop.notKept", settings), notKept);
    }
  }

  /**
   * The folder, made where it is the usual one and not there yet.
   *
   * @throws Trouble when it is gone, cannot be made or cannot be written into
   */
  public Path ready() {
    if (isChosen && !Files.isDirectory(path)) {
      throw new Trouble(Words.say("file.folderGone", path));
    }
    try {
      PrivateFiles.makeFolder(path);
    } catch (IOException e) {
      throw new Trouble(Words.say("desk.cameras.noFolder", path, Reasons.of(e)), e);
    }
    if (!Files.isWritable(path)) {
      throw new Trouble(Words.say("file.folderShut", path));
    }
    return path;
  }
}
