package org.halflight.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.extratest.Holds;
import org.halflight.session.Outcome;
import org.halflight.session.UntimedTest;

/** B and T in sentences. */
public final class HoldWords {
  private HoldWords() {}

  /** How they are, and what else there is to know. */
  public static List<String> lines(Holds holds) {
    List<String> lines = new ArrayList<>();
    for (UntimedTest check : List.of(UntimedTest.B, UntimedTest.T)) {
      if (!holds.of(check).isEmpty()) {
        add(lines, check, holds.of(check));
      }
    }
    if (!holds.isReleaseWired()) {
      lines.add(Words.say("hold.noRelease"));
    }
    return lines;
  }

  private static void add(List<String> lines, UntimedTest check, List<Holds.Shot> shots) {
    String name = Sentences.untimedTest(check);
    if (has(shots, Outcome.STUCK_OPEN)) {
      lines.add(Words.say("hold.stuck", name));
    }
    if (has(shots, Outcome.DID_NOT_OPEN)) {
      lines.add(Words.say("hold.shut", name));
    }
    if (has(shots, Outcome.DID_NOT_HOLD)) {
      lines.add(Words.say(check == UntimedTest.B ? "hold.lost.b" : "hold.lost.t"));
    }
    OptionalDouble closing = most(shots, Holds.Shot::closingDelaySeconds);
    if (closing.orElse(0) > Holds.HANG_SECONDS) {
      lines.add(Words.say("hold.hangs", name, Numbers.time(closing.getAsDouble())));
    }
    shots.stream()
        .filter(shot -> shot.outcome() == Outcome.OPENS_HOLDS_CLOSES)
        .max(Comparator.comparingDouble(shot -> shot.openSeconds().orElse(0)))
        .ifPresent(
            shot ->
                lines.add(
                    Words.say("hold.works", name, Numbers.running(shot.openSeconds().orElse(0)))));
    OptionalDouble opening = most(shots, Holds.Shot::openingDelaySeconds);
    if (opening.isPresent() && closing.isPresent()) {
      lines.add(
          Words.say(
              check == UntimedTest.B ? "hold.delays.b" : "hold.delays.t",
              Numbers.time(opening.getAsDouble()),
              Numbers.time(closing.getAsDouble())));
    }
  }

  private static boolean has(List<Holds.Shot> shots, Outcome outcome) {
    return shots.stream().anyMatch(shot -> shot.outcome() == outcome);
  }

  private static OptionalDouble most(
      List<Holds.Shot> shots, Function<Holds.Shot, OptionalDouble> figure) {
    return shots.stream()
        .map(figure)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .max();
  }
}
