package org.halflight.words;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.halflight.extratest.GapVerdict;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.extratest.PressOutcome;
import org.halflight.extratest.SqueezeOrder;
import org.halflight.extratest.UnlockSign;
import org.halflight.session.GapLimits;
import org.halflight.session.LinkageStep;
import org.halflight.session.PlungerReading;

/** The linkage by the states of its presses in sentences: how it is, and what to do. */
public final class LinkageWords {
  private LinkageWords() {}

  static List<String> lines(Linkage linkage) {
    List<String> lines = new ArrayList<>();
    LinkageJudgement judged = linkage.judged();
    if (!judged.presses().isEmpty()) {
      lines.add(verdict(judged));
      for (LinkageStep step : LinkageStep.values()) {
        if (!judged.of(step).isEmpty()) {
          lines.add(step(step, judged.of(step)));
        }
      }
      orders(judged.of(LinkageStep.SQUEEZE), lines);
    }
    linkage.plunger().ifPresent(read -> lines.add(plunger(linkage, read)));
    return lines;
  }

  /** How it is, and what to do. */
  private static String verdict(LinkageJudgement judged) {
    if (judged.verdict() == LinkageJudgement.Verdict.UNDECIDED) {
      return Words.say(
          "linkage.undecided",
          Arrays.stream(LinkageStep.values())
              .filter(step -> judged.missing(step) > 0)
              .map(step -> Words.say("linkage.times", judged.missing(step), PressWords.step(step)))
              .collect(Collectors.joining(", ")));
    }
    return judged.faults().isEmpty()
        ? Words.say("linkage.right")
        : judged.faults().stream()
            .map(
                fault ->
                    Words.say(
                        "linkage.wrong",
                        Words.of("linkage.large", fault),
                        Words.of("linkage.advice", fault)))
            .collect(Collectors.joining(" "));
  }

  /** How it is, in capitals to be read from the bench. */
  public static String large(LinkageJudgement judged) {
    return judged
        .fault()
        .map(fault -> Words.of("linkage.large", fault))
        .orElseGet(() -> Words.of("linkage.large", judged.verdict()));
  }

  /** What to do about it. */
  public static String advice(LinkageJudgement judged) {
    return judged
        .fault()
        .map(fault -> Words.of("linkage.advice", fault))
        .orElseGet(() -> Words.of("linkage.advice", judged.verdict()));
  }

  private static String step(LinkageStep step, List<JudgedPress> presses) {
    return Words.say(
        "linkage.ofStep",
        PressWords.step(step),
        counts(PressOutcome.values(), presses, JudgedPress::outcome, PressWords::outcome));
  }

  private static void orders(List<JudgedPress> squeezes, List<String> lines) {
    if (squeezes.stream().anyMatch(press -> press.order() != SqueezeOrder.NOT_KNOWN)) {
      lines.add(
          Words.say(
              "linkage.orders",
              counts(SqueezeOrder.values(), squeezes, JudgedPress::order, LinkageWords::order)));
    }
    if (squeezes.stream().anyMatch(press -> press.sign().by() == UnlockSign.By.CHATTER)) {
      lines.add(Words.say("linkage.chatter"));
    }
  }

  private static <T> String counts(
      T[] kinds,
      List<JudgedPress> presses,
      Function<JudgedPress, T> kind,
      Function<T, String> name) {
    return Arrays.stream(kinds)
        .filter(each -> presses.stream().anyMatch(press -> kind.apply(press) == each))
        .map(
            each ->
                Words.say(
                    "linkage.times",
                    presses.stream().filter(press -> kind.apply(press) == each).count(),
                    name.apply(each)))
        .collect(Collectors.joining(", "));
  }

  /** Which came first in a slow squeeze. */
  public static String order(SqueezeOrder order) {
    return Words.of("linkage.order", order);
  }

  /**
   * How far apart both came in a squeeze where something tells: the speed of a finger, so without a
   * verdict.
   */
  public static String apart(JudgedPress press) {
    double millis = 1e3 * press.aheadSeconds().orElseThrow();
    return Words.say(
        millis < 0 ? "linkage.apart.after" : "linkage.apart.ahead",
        String.format(Locale.ROOT, "%.0f", inTwoDigits(Math.abs(millis))));
  }

  /** More digits are of the finger. */
  private static double inTwoDigits(double millis) {
    double step = millis < 100 ? 1 : Math.pow(10, Math.floor(Math.log10(millis)) - 1);
    return step * Math.round(millis / step);
  }

  private static String plunger(Linkage linkage, PlungerReading read) {
    String gap = PressWords.plunger(read);
    return linkage.gap().isEmpty()
        ? gap
        : gap + " " + gap(linkage.gap().get(), linkage.limits().orElseThrow());
  }

  private static String gap(GapVerdict verdict, GapLimits limits) {
    return Words.of("linkage.gap", verdict, limits.leastMm(), limits.mostMm());
  }
}
