package org.halflight.record;

import java.util.Locale;
import java.util.Map;

/** Where a record lies unless the person names a file: each system's place for a user's data. */
public final class DataFolder {
  /** The name of the record in its folder. */
  public static final String RECORD_FILE = "record.sqlite";

  /** The name of the folder of the session files of the window, in the same folder. */
  public static final String SESSIONS = "sessions";

  /** How the systems call one of their places: by a variable, and where that is not set. */
  private record Place(
      String windowsVariable,
      String windowsFolder,
      String macFolder,
      String xdgVariable,
      String xdgFolder) {
    String of(String system, Map<String, String> environment, String home) {
      if (system.startsWith("windows")) {
        String set = environment.getOrDefault(windowsVariable, "");
        return (set.isBlank() ? home + windowsFolder : set) + "\\Halflight";
      }
      if (system.startsWith("mac")) {
        return home + macFolder + "/Halflight";
      }
      String set = environment.getOrDefault(xdgVariable, "");
      return (set.startsWith("/") ? set : home + xdgFolder) + "/halflight";
    }
  }

  private static final Place DATA =
      new Place(
          "APPDATA",
          "\\AppData\\Roaming",
          "/Library/Application Support",
          "XDG_DATA_HOME",
          "/.local/share");

  private static final Place CACHE =
      new Place("LOCALAPPDATA", "\\AppData\\Local", "/Library/Caches", "XDG_CACHE_HOME", "/.cache");

  private DataFolder() {}

  /**
   * The folder for the data of one user.
   *
   * <p>Windows: {@code %APPDATA%\Halflight}. macOS: {@code ~/Library/Application
   * Support/Halflight}. Elsewhere: {@code halflight} in {@code $XDG_DATA_HOME}, or in {@code
   * ~/.local/share} where that is not set; a path there that is not absolute is not heeded (XDG
   * Base Directory Specification 0.8).
   *
   * @param systemName name of the operating system, as in the property {@code os.name}
   * @param environment environment variables by name
   * @param home the user's home folder, as in the property {@code user.home}
   */
  public static String of(String systemName, Map<String, String> environment, String home) {
    return DATA.of(systemName.toLowerCase(Locale.ROOT), environment, home);
  }

  /**
   * The folder for what may be made anew at any time, of one user.
   *
   * <p>Windows: {@code %LOCALAPPDATA%\Halflight}. macOS: {@code ~/Library/Caches/Halflight}.
   * Elsewhere: {@code halflight} in {@code $XDG_CACHE_HOME}, or in {@code ~/.cache}, by the same
   * rules as {@link #of}.
   */
  public static String cache(String systemName, Map<String, String> environment, String home) {
    return CACHE.of(systemName.toLowerCase(Locale.ROOT), environment, home);
  }
}
