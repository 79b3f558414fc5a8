package org.halflight.workflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.halflight.session.RunOption;
import org.halflight.speeds.Reference;
import org.halflight.words.OptionWords;
import org.halflight.words.Words;

/** What stands in the groups of a run form, each on one line: what is read while it is folded. */
public final class RunFormText {
  private RunFormText() {}

  /**
   * Which speeds are fired, and how their markings are read.
   *
   * @param ofDial the speeds of the dial as they are typed
   */
  public static String speeds(RunForm form, String ofDial) {
    String speeds =
        form.speeds().isBlank()
            ? Words.say("run.form.noSpeeds")
            : form.speeds().equals(ofDial)
                ? Words.say("run.form.allSpeeds", ends(ofDial))
                : form.speeds();
    boolean exact = form.shutter().reference() == Reference.EXACT;
    return joined(speeds, Words.say(exact ? "run.form.exact" : "run.form.literal"));
  }

  private static String ends(String speeds) {
    String[] each = speeds.split(",", -1);
    return Words.say("run.form.ends", each[0].strip(), each[each.length - 1].strip());
  }

  /** What the verdict is about, and which limits it has. */
  public static String criteria(Map<RunOption<?>, String> options) {
    List<String> parts = new ArrayList<>();
    parts.add(OptionWords.brief(RunOption.TOLERANCE, text(options, RunOption.TOLERANCE)));
    parts.add(OptionWords.brief(RunOption.ABOUT, text(options, RunOption.ABOUT)));
    parts.addAll(
        noted(options, List.of(RunOption.STOPS, RunOption.STOP_TOLERANCE, RunOption.LINKAGE_GAP)));
    return joined(parts);
  }

  /**
   * What is noted of the set-up.
   *
   * @param rest how long it has rested, in words; empty where that is not known
   */
  public static String conditions(Map<RunOption<?>, String> options, String rest) {
    List<String> parts = new ArrayList<>();
    parts.addAll(
        noted(
            options,
            RunOption.CONDITIONS.stream().filter(option -> !option.isOfCurtains()).toList()));
    if (!rest.isEmpty()) {
      parts.add(Words.say("run.form.rested", rest));
    }
    return parts.isEmpty() ? Words.say("run.form.nothingNoted") : joined(parts);
  }

  /** What is noted of the curtains, and of where the sensors are behind them. */
  public static String curtains(Map<RunOption<?>, String> options) {
    List<String> parts = noted(options, RunOption.OF_CURTAINS);
    return parts.isEmpty() ? OptionWords.usual(RunOption.FRAME) : joined(parts);
  }

  private static List<String> noted(Map<RunOption<?>, String> options, List<RunOption<?>> which) {
    return which.stream()
        .filter(option -> !text(options, option).isEmpty())
        .map(option -> OptionWords.brief(option, text(options, option)))
        .toList();
  }

  /** What is usual with this shutter, and whether its flash contact is wired. */
  public static String shutter(RunForm form) {
    List<String> parts = new ArrayList<>();
    if (form.shutter().customs().topSpeedBeforeCocking()) {
      parts.add(Words.say("run.form.beforeCocking"));
    }
    if (form.shutter().customs().bladesShutWhileCocking()) {
      parts.add(Words.say("run.form.bladesShut"));
    }
    String contact = text(form.options(), RunOption.CONTACT);
    parts.add(OptionWords.brief(RunOption.CONTACT, contact));
    return joined(parts);
  }

  private static String text(Map<RunOption<?>, String> options, RunOption<?> option) {
    return options.getOrDefault(option, "").strip();
  }

  private static String joined(String one, String other) {
    return joined(List.of(one, other));
  }

  private static String joined(List<String> parts) {
    return String.join(Words.say("run.form.and"), parts);
  }
}
