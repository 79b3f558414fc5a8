package org.halflight.words;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.job.WorkEntry;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.TurnCount;
import org.halflight.speeds.DecimalComma;
import org.halflight.speeds.Millimetres;

/** The work log in words. */
public final class WorkWords {
  private WorkWords() {}

  /** What was done, with the value that was measured. */
  public static String text(WorkEntry entry) {
    if (entry.turn().isPresent()) {
      return done(entry.text());
    }
    return entry
        .measured()
        .map(m -> Words.say("desk.log.withValue", entry.text(), m.value(), m.unit()).strip())
        .orElse(entry.text());
  }

  /** What was done, where its words are those of an adjuster in a sentence. */
  public static String done(String words) {
    return AdjusterTurn.find(words).map(WorkWords::turn).orElse(words);
  }

  private static String turn(AdjusterTurn turn) {
    String name = Words.of("turn", turn.adjuster());
    if (turn.isAsFound()) {
      String turns =
          turn.turns().isPresent()
              ? Words.say("turn.count", plain(turn.turns().getAsDouble()))
              : "";
      return Words.say("turn.found", name, (turns + " " + turn.words()).strip());
    }
    double by = turn.turns().orElseThrow();
    String way = turn.adjuster().isTension() ? "tension" : "screw";
    return Words.say("turn." + way + (by > 0 ? ".more" : ".less"), name, plain(Math.abs(by)));
  }

  /** Where each adjuster was found and is now, over a whole work log, and when to stop winding. */
  public static List<String> counts(List<WorkEntry> log) {
    List<AdjusterTurn> turns = log.stream().flatMap(entry -> entry.turn().stream()).toList();
    List<String> said = new ArrayList<>();
    TurnCount.of(turns).forEach((adjuster, count) -> count(adjuster, count).ifPresent(said::add));
    if (TurnCount.isTooFar(turns)) {
      said.add(Words.say("curtain.next.stop-something-drags"));
    }
    return said;
  }

  private static Optional<String> count(Adjuster adjuster, TurnCount count) {
    String name = Words.of("turn", adjuster);
    String change = (count.change() < 0 ? "\u2212" : "+") + plain(Math.abs(count.change()));
    if (count.now().isPresent()) {
      return Optional.of(
          Words.say(
              "turn.now",
              name,
              plain(count.found().orElseThrow()),
              plain(count.now().getAsDouble())));
    }
    return count.change() == 0 ? Optional.empty() : Optional.of(Words.say("turn.by", name, change));
  }

  private static String plain(double turns) {
    return Millimetres.text(Math.rint(turns * 1e3) / 1e3);
  }

  /** Day, kind of work, and what was done. */
  public static String line(WorkEntry entry, ZoneId zone) {
    String line =
        Words.say(
            "desk.log.entry",
            Numbers.shortDate(LocalDate.ofInstant(entry.at(), zone)),
            Words.of("desk.work", entry.kind()),
            text(entry));
    return entry.isStruck() ? Words.say("desk.log.struck", line) : line;
  }

  /** A number as a person types it, with a point or a decimal comma; empty for anything else. */
  public static Optional<BigDecimal> number(String typed) {
    String point = DecimalComma.pointed(typed);
    return point.matches("-?\\d{1,6}(\\.\\d{1,6})?")
        ? Optional.of(new BigDecimal(point))
        : Optional.empty();
  }
}
