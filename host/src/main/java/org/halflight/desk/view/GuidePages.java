package org.halflight.desk.view;

import java.util.List;
import org.halflight.words.Words;

/** Which pages the guide has, and which of them belongs to which place of the window. */
public final class GuidePages {
  private static final String BENCH = "at-the-bench.md";

  /** The pages in the order in which they are worth reading. */
  public static final List<String> ALL =
      List.of(
          "first-five-minutes.md",
          BENCH,
          "building-the-rig.md",
          "full-rig.md",
          "curtain-sensors.md",
          "install.md",
          "record.md",
          "glossary.md",
          "command-line.md",
          "slotted-disc.md",
          "method.md",
          "validation.md",
          "reliability.md",
          "file-formats.md",
          "protocol.md",
          "changelog.md");

  private GuidePages() {}

  /** The page about a place, with the heading where it begins. */
  public static String of(UserAction place) {
    return switch (place) {
      case TO_BENCH -> BENCH + "#fire";
      case TO_LIGHT -> BENCH + "#set-the-light-f3";
      case TO_CAMERA -> BENCH + "#name-the-camera-f4";
      case TO_RUN -> BENCH + "#set-up-a-run-f5";
      case TO_TRIED -> BENCH + "#checks-f6";
      case TO_CAMERAS -> BENCH + "#history-f7";
      case TO_RIG -> BENCH + "#the-rig-f8";
      case TO_FIRST_LIGHT -> "building-the-rig.md#first-light";
      case DETAILS -> BENCH + "#details-d";
      case KEYS -> BENCH + "#keys";
      default -> ALL.get(0);
    };
  }

  /** What a page is called in a list. */
  public static String title(String page) {
    return Words.say("desk.help.page." + page.replace(".md", ""));
  }

  /** The page of a link, without the heading. */
  public static String page(String link) {
    int at = link.indexOf('#');
    return at < 0 ? link : link.substring(0, at);
  }

  /** The heading of a link; empty where it names none. */
  public static String heading(String link) {
    int at = link.indexOf('#');
    return at < 0 ? "" : link.substring(at + 1);
  }
}
