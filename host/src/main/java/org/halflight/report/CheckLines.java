package org.halflight.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.MeasuredChecks;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;

/** The lists of what was looked at, filled from what was measured. */
public final class CheckLines {
  private CheckLines() {}

  /**
   * The lists as a person filled them in, with what was measured in the places that were left open.
   * An answer by hand stands; where what was measured says otherwise, the remark says so.
   *
   * @param byHand as the person filled them in
   * @param tried what was tried, in order
   */
  public static List<CheckLine> filled(List<CheckLine> byHand, List<ExtraTest> tried) {
    MeasuredChecks intake = MeasuredChecks.intake(tried);
    MeasuredChecks handBack = MeasuredChecks.handBack(tried);
    List<CheckLine> lines = new ArrayList<>();
    List<CheckItem> listed = new ArrayList<>();
    for (CheckLine line : byHand) {
      line.known().ifPresent(listed::add);
      lines.add(line.known().map(item -> filled(line, item, intake, handBack)).orElse(line));
    }
    for (CheckItem item : CheckItem.values()) {
      boolean measured = intake.items().contains(item) || handBack.items().contains(item);
      if (measured && !listed.contains(item)) {
        CheckLine open =
            new CheckLine(
                Optional.of(item),
                ExtraTestWords.item(item),
                Optional.empty(),
                Optional.empty(),
                "");
        lines.add(filled(open, item, intake, handBack));
      }
    }
    return lines;
  }

  /** A state in a word. */
  static String word(CheckState state) {
    return Words.of("page.check", state);
  }

  private static CheckLine filled(
      CheckLine line, CheckItem item, MeasuredChecks intake, MeasuredChecks handBack) {
    MeasuredChecks.Answer first = intake.answer(item, line.intake().orElse(CheckState.NOT_TESTED));
    MeasuredChecks.Answer last =
        handBack.answer(item, line.handBack().orElse(CheckState.NOT_TESTED));
    List<String> remarks = new ArrayList<>();
    if (!line.remark().isBlank()) {
      remarks.add(line.remark());
    }
    remark(first, "page.check.disagrees.intake", remarks);
    remark(last, "page.check.disagrees.handBack", remarks);
    return new CheckLine(
        line.known(),
        line.item(),
        shown(line.intake(), first),
        shown(line.handBack(), last),
        String.join("; ", remarks),
        isMeasured(first),
        isMeasured(last));
  }

  private static void remark(MeasuredChecks.Answer answer, String key, List<String> remarks) {
    String by =
        answer.by().stream().map(ExtraTestWords::name).distinct().collect(Collectors.joining(", "));
    if (answer.origin() == MeasuredChecks.Origin.DISAGREES) {
      remarks.add(Words.say(key, word(answer.measured()), by));
    } else if (isMeasured(answer) || answer.isPartly()) {
      String said =
          answer.isPartly()
              ? Words.say("page.check.partly", by, ExtraTestWords.lacks(answer.lacks()))
              : Words.say("page.check.by", by);
      if (!remarks.contains(said)) {
        remarks.add(said);
      }
    }
  }

  private static boolean isMeasured(MeasuredChecks.Answer answer) {
    return answer.origin() == MeasuredChecks.Origin.MEASURED
        || answer.origin() == MeasuredChecks.Origin.BOTH;
  }

  private static Optional<CheckState> shown(
      Optional<CheckState> said, MeasuredChecks.Answer answer) {
    boolean open = said.isEmpty() && answer.isPartly();
    return open || answer.origin() == MeasuredChecks.Origin.MEASURED
        ? Optional.of(answer.state())
        : said;
  }
}
