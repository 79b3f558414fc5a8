package org.halflight.files;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** A file that may be written; see {@link OutFiles}. */
public final class OutFile {
  private final OutFiles files;
  private final Path named;
  private final Path target;
  private final FileKind kind;
  private final String begins;

  OutFile(OutFiles files, Path named, Path target, FileKind kind, String begins) {
    this.files = files;
    this.named = named;
    this.target = target;
    this.kind = kind;
    this.begins = begins;
  }

  FileKind kind() {
    return kind;
  }

  /** What a table in its place must begin with; may be empty. */
  String begins() {
    return begins;
  }

  Path target() {
    return target;
  }

  /** As the person named it. */
  public Path path() {
    return named;
  }

  /**
   * Writes it whole; until then, and where it fails, what was there stays.
   *
   * @throws Trouble when it cannot be written, or something else came under its name meanwhile
   */
  public void write(byte[] content) {
    this.<RuntimeException>write(beside -> Files.write(beside, content));
  }

  /** The same, written by somebody else into a file beside it. */
  public <X extends Exception> void write(Placing.Writing<X> writing) throws X {
    try {
      files.look(this);
      if (files.replaces()) {
        Placing.replace(target, writing);
      } else {
        Placing.create(target, writing);
      }
      files.wrote(target);
    } catch (FileAlreadyExistsException taken) {
      throw new Trouble(Words.say("file.there", named), taken);
    } catch (IOException e) {
      throw OutFiles.unwritable(named, e);
    }
  }
}
