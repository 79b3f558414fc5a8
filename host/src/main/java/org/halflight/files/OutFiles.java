package org.halflight.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The files that one command writes. It refuses to replace what the command reads, anything of
 * another kind (a session, a record, a profile, a file of some other program), and what was already
 * written by the same command. A file of the same kind is replaced only where the person said so.
 *
 * <p>Ask for all files before long work, so that a bad name costs no firing. For one thread.
 */
public final class OutFiles {
  private static final int MOST_NAMES = 10_000;

  /** So many headings tell one table from another, whatever later versions add behind them. */
  private static final int TELLING_HEADINGS = 4;

  private final boolean replaces;
  private final List<Path> inputs;
  private final List<Path> claimed = new ArrayList<>();
  private final List<Path> written = new ArrayList<>();

  private OutFiles(boolean replaces, Collection<Path> inputs) {
    this.replaces = replaces;
    this.inputs = List.copyOf(inputs);
  }

  /**
   * Files of a command that reads others.
   *
   * @param replaces whether a file of the same kind may be replaced
   * @param inputs what the command reads
   */
  public static OutFiles of(boolean replaces, Collection<Path> inputs) {
    return new OutFiles(replaces, inputs);
  }

  /** Files that never replace anything. */
  public static OutFiles neverReplacing() {
    return new OutFiles(false, List.of());
  }

  /**
   * A file to write.
   *
   * @throws Trouble when it must not be written: nothing was changed
   */
  public OutFile file(Path named, FileKind kind) {
    return file(named, kind, List.of());
  }

  /**
   * A table to write. Only a table of the same sort may be replaced: one whose first headings are
   * the same.
   *
   * @throws Trouble when it must not be written: nothing was changed
   */
  public OutFile table(Path named, List<String> headings) {
    return file(
        named, FileKind.TABLE, headings.subList(0, Math.min(headings.size(), TELLING_HEADINGS)));
  }

  private OutFile file(Path named, FileKind kind, List<String> headings) {
    try {
      String begins = String.join(",", headings);
      Path target = target(named, kind, begins);
      if (isAmong(claimed, target)) {
        throw new Trouble(Words.say("file.twice", named));
      }
      claimed.add(target);
      return new OutFile(this, named, target, kind, begins);
    } catch (IOException e) {
      throw unwritable(named, e);
    }
  }

  /**
   * A file to write, under the first of these names that is free: {@code page.pdf}, {@code
   * page-2.pdf}, {@code page-3.pdf}.
   *
   * @throws Trouble when none can be written
   */
  public OutFile free(Path named, FileKind kind) {
    return file(free(named), kind);
  }

  /** The first of the names {@code page.pdf}, {@code page-2.pdf} and so on that is free. */
  public static Path free(Path named) {
    String name = String.valueOf(named.getFileName());
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String end = dot > 0 ? name.substring(dot) : "";
    Path free = named;
    for (int count = 2;
        count < MOST_NAMES && Files.exists(free, LinkOption.NOFOLLOW_LINKS);
        count++) {
      free = named.resolveSibling(stem + "-" + count + end);
    }
    return free;
  }

  /** The file itself behind a name, looked at anew. */
  private Path target(Path named, FileKind kind, String begins) throws IOException {
    if (String.valueOf(named.getFileName()).isEmpty()) {
      throw new Trouble(Words.say("file.noName"));
    }
    Path target = behindLinks(named);
    if (Files.isDirectory(target)) {
      throw new Trouble(Words.say("file.folder", named));
    }
    if (isAmong(inputs, target)) {
      throw new Trouble(Words.say("file.input", named));
    }
    Optional<FileKind> keptFor = FileKind.keptName(target).filter(other -> other != kind);
    if (keptFor.isPresent() && !Files.exists(target)) {
      throw new Trouble(
          Words.say("file.name", named, keptFor.get().spoken(), kind.spoken(), kind.ending()));
    }
    if (Files.exists(target)) {
      mayReplace(named, target, kind, begins);
    }
    return target;
  }

  private void mayReplace(Path named, Path target, FileKind kind, String begins)
      throws IOException {
    if (!Files.isRegularFile(target)) {
      throw new Trouble(Words.say("file.special", named));
    }
    FileKind there = FileKind.of(target);
    FileKind held = there == FileKind.EMPTY ? FileKind.keptName(target).orElse(kind) : there;
    if (held == FileKind.EDGES) {
      throw new Trouble(Words.say("file.edges", named));
    }
    if (held == kind && there == FileKind.TABLE && !FileKind.headings(target).startsWith(begins)) {
      throw new Trouble(Words.say("file.otherTable", named));
    }
    if (held != kind) {
      throw new Trouble(Words.say("file.otherKind", named, held.spoken(), kind.spoken()));
    }
    if (!replaces) {
      throw new Trouble(Words.say("file.there", named));
    }
  }

  private static Path behindLinks(Path named) throws IOException {
    if (Files.exists(named)) {
      return named.toRealPath();
    }
    if (Files.isSymbolicLink(named)) {
      throw new Trouble(Words.say("file.deadLink", named));
    }
    Path folder = named.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new Trouble(Words.say("file.noFolder", folder == null ? named : folder));
    }
    return folder.toRealPath().resolve(named.getFileName());
  }

  /** The same for a name of which nothing is asked. */
  private static Path real(Path named) throws IOException {
    Path folder = named.toAbsolutePath().getParent();
    return folder != null && Files.isDirectory(folder)
        ? folder.toRealPath().resolve(named.getFileName())
        : named.toAbsolutePath().normalize();
  }

  private static boolean isAmong(List<Path> files, Path target) throws IOException {
    for (Path file : files) {
      boolean bothThere = Files.exists(file) && Files.exists(target);
      if (bothThere ? Files.isSameFile(file, target) : real(file).equals(target)) {
        return true;
      }
    }
    return false;
  }

  /** Looks once more before a file is written: what lies there may have changed meanwhile. */
  void look(OutFile file) throws IOException {
    Path now = target(file.path(), file.kind(), file.begins());
    // On some systems two names that differ in their capitals are one file.
    if (Files.exists(now) && isAmong(written, now)) {
      throw new Trouble(Words.say("file.twice", file.path()));
    }
    if (!now.equals(file.target())) {
      throw new Trouble(Words.say("file.there", file.path()));
    }
  }

  void wrote(Path target) {
    written.add(target);
  }

  boolean replaces() {
    return replaces;
  }

  static Trouble unwritable(Path named, IOException why) {
    return new Trouble(Words.say("file.unwritable", named, Reasons.of(why)), why);
  }
}
