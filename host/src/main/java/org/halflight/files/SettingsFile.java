package org.halflight.files;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import java.util.function.Consumer;

/** What the person likes, kept in one text file beside the record. */
public final class SettingsFile {
  private SettingsFile() {}

  private static Path in(Path folder) {
    return folder.resolve("settings.properties");
  }

  /** All that is kept; nothing where there is no file, or it cannot be read. */
  public static Properties read(Path folder) {
    Properties kept = new Properties();
    if (Files.exists(in(folder))) {
      try (Reader reader = Files.newBufferedReader(in(folder))) {
        kept.load(reader);
      } catch (IOException | IllegalArgumentException unreadable) {
        kept.clear();
      }
    }
    return kept;
  }

  /** Changes some of it. The rest stays, also what another version of the program wrote. */
  public static void change(Path folder, Consumer<Properties> changes) throws IOException {
    Properties kept = read(folder);
    changes.accept(kept);
    PrivateFiles.makeFolderOf(in(folder));
    StringWriter text = new StringWriter();
    kept.store(text, null);
    Placing.replace(in(folder), text.toString().getBytes(StandardCharsets.UTF_8));
  }
}
