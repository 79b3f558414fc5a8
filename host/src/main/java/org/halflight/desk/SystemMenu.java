package org.halflight.desk;

import java.awt.Desktop;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.halflight.words.Words;

/**
 * What a system asks of a program in its own menu: on macOS the menus are at the top of the screen,
 * and it has entries of its own for about and quit.
 */
final class SystemMenu {
  /** The desktop of the system, as far as it takes part. */
  interface Seam {
    boolean supports(Desktop.Action action);

    void onAbout(Runnable about);

    void onQuit(Runnable quit);
  }

  private SystemMenu() {}

  /** Whether a system shows the menus of a program at the top of its screen. */
  static boolean isOnScreen(String system) {
    return system.toLowerCase(Locale.ROOT).startsWith("mac");
  }

  /** What must be set before the first window is made. */
  static Map<String, String> properties(String system) {
    return isOnScreen(system)
        ? Map.of(
            "apple.laf.useScreenMenuBar",
            "true",
            "apple.awt.application.name",
            Words.say("desk.title"))
        : Map.of();
  }

  /** Has the system's own entries do what the program's do, where it has any. */
  static void register(Seam seam, Runnable about, Runnable quit) {
    if (seam.supports(Desktop.Action.APP_ABOUT)) {
      seam.onAbout(about);
    }
    if (seam.supports(Desktop.Action.APP_QUIT_HANDLER)) {
      seam.onQuit(quit);
    }
  }

  /** The desktop of this system. */
  static Seam ofThisSystem() {
    Optional<Desktop> desktop =
        Desktop.isDesktopSupported() ? Optional.of(Desktop.getDesktop()) : Optional.empty();
    return new Seam() {
      @Override
      public boolean supports(Desktop.Action action) {
        return desktop.filter(its -> its.isSupported(action)).isPresent();
      }

      @Override
      public void onAbout(Runnable about) {
        desktop.ifPresent(its -> its.setAboutHandler(event -> about.run()));
      }

      @Override
      public void onQuit(Runnable quit) {
        desktop.ifPresent(
            its ->
                its.setQuitHandler(
                    (event, response) -> {
                      quit.run();
                      response.performQuit();
                    }));
      }
    };
  }
}
