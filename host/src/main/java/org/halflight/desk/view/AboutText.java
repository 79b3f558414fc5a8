package org.halflight.desk.view;

import java.util.List;
import java.util.function.UnaryOperator;
import org.halflight.words.Words;

/** Which program this is, what it runs on, and what to send with a question. */
public final class AboutText {
  private AboutText() {}

  /**
   * The lines to copy.
   *
   * @param version of the program
   * @param system a property of Java by its name
   * @param folder where record, sessions and settings are
   * @param rig serial number of the rig; empty for none
   */
  public static List<String> lines(
      String version, UnaryOperator<String> system, String folder, String rig) {
    return List.of(
        Words.say("desk.about.program", version),
        Words.say("desk.about.licence"),
        Words.say("desk.about.java", system.apply("java.version"), system.apply("java.vendor")),
        Words.say(
            "desk.about.system",
            system.apply("os.name"),
            system.apply("os.version"),
            system.apply("os.arch")),
        Words.say("desk.about.folder", folder),
        rig.isEmpty() ? Words.say("desk.about.noRig") : Words.say("desk.about.rig", rig));
  }
}
