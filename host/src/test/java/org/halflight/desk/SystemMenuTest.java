package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Desktop;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.halflight.desk.view.AboutText;
import org.junit.jupiter.api.Test;

/** What a system's own menu does, as far as the system takes part; without a display. */
class SystemMenuTest {
  private final List<String> log = new ArrayList<>();

  @Test
  void onMacOsTheMenusAreAtTheTopOfTheScreenAndElsewhereInTheWindow() {
    assertThat(SystemMenu.properties("Mac OS X"))
        .containsEntry("apple.laf.useScreenMenuBar", "true")
        .containsEntry("apple.awt.application.name", "Halflight");
    assertThat(SystemMenu.properties("Linux")).isEmpty();
    assertThat(SystemMenu.isOnScreen("Windows 11")).isFalse();
  }

  @Test
  void whatTheSystemOffersIsTakenUpAndNothingElse() {
    SystemMenu.register(
        system(Desktop.Action.APP_ABOUT, Desktop.Action.APP_QUIT_HANDLER),
        () -> log.add("about"),
        () -> log.add("quit"));
    assertThat(log).containsExactly("about", "quit");
    log.clear();
    SystemMenu.register(system(Desktop.Action.OPEN), () -> log.add("about"), () -> log.add("quit"));
    assertThat(log).isEmpty();
  }

  @Test
  void aboutSaysWhatAQuestionNeeds() {
    assertThat(AboutText.lines("1.2", name -> "<" + name + ">", "/data", "R-0001"))
        .containsExactly(
            "Halflight 1.2",
            "Licence: Apache 2.0",
            "Java <java.version> (<java.vendor>)",
            "<os.name> <os.version>, <os.arch>",
            "Record, sessions and settings: /data",
            "Rig: R-0001");
    assertThat(AboutText.lines("1.2", name -> "", "/data", "")).endsWith("Rig: none connected");
  }

  /** A system that chooses its own entry as soon as it knows what it does. */
  private static SystemMenu.Seam system(Desktop.Action... actions) {
    return new SystemMenu.Seam() {
      @Override
      public boolean supports(Desktop.Action action) {
        return Set.of(actions).contains(action);
      }

      @Override
      public void onAbout(Runnable about) {
        about.run();
      }

      @Override
      public void onQuit(Runnable quit) {
        quit.run();
      }
    };
  }
}
