package org.halflight.firstlight;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** What is said while a rig that was just built is tried, and of what came of it. */
public final class FirstLightWords {
  private FirstLightWords() {}

  /** What a step is called. */
  public static String name(FirstStep step) {
    return Words.of("firstlight.step", step);
  }

  /** What to do at a step. */
  public static String toDo(FirstStep step, BoardTraits board) {
    return step == FirstStep.THRESHOLDS && board.fixedLevel()
        ? Words.say("firstlight.do.thresholds.fixed")
        : Words.of("firstlight.do", step);
  }

  /** What a step came to: passed with its figures, what to check, or not tested. */
  public static String remark(FirstStep step, Finding finding, BoardTraits board) {
    String seen = seen(finding.seen());
    String said =
        finding
            .fault()
            .map(fault -> fault(step, finding, board))
            .orElseGet(() -> Words.of("firstlight.outcome", finding.outcome()));
    return seen.isEmpty()
        ? Words.say("firstlight.remark", name(step), said)
        : Words.say("firstlight.remark.seen", name(step), said, seen);
  }

  /** What to check, in one sentence; passed or not tested where there is nothing to check. */
  public static String check(FirstStep step, Finding finding, BoardTraits board) {
    return finding.fault().map(fault -> fault(step, finding, board)).orElse("");
  }

  private static String fault(FirstStep step, Finding finding, BoardTraits board) {
    String key = "firstlight.fault." + Words.key(finding.fault().orElseThrow());
    String ofKind = key + "." + BoardTraits.Kind.WORDS.word(board.kind());
    Channel own = step.input().orElse(Channel.CENTRE_LOW);
    Channel its = finding.input().orElse(own);
    boolean level = step == FirstStep.THRESHOLDS;
    return Words.say(
        Words.has(ofKind) ? ofKind : key,
        inWords(own),
        level ? out(its) : pin(its, board),
        level ? back(its) : lightPin(own),
        inWords(its),
        pin(own, board));
  }

  private static String inWords(Channel input) {
    return Words.say("firstlight.input." + input.label());
  }

  private static String out(Channel level) {
    return level == Channel.CENTRE_HIGH ? "D11" : "D3";
  }

  private static String back(Channel level) {
    return level == Channel.CENTRE_HIGH ? "A4" : "A3";
  }

  private static String lightPin(Channel sensor) {
    return switch (sensor) {
      case OUTER_A -> "A1";
      case OUTER_B -> "A2";
      default -> "A0";
    };
  }

  /** The pin of an input, as docs/building-the-rig.md has it. */
  private static String pin(Channel input, BoardTraits board) {
    return switch (input) {
      case CENTRE_LOW ->
          switch (board.kind()) {
            case FULL -> "D8";
            case SMALL -> "D6";
            case STARTER -> "D7";
          };
      case CENTRE_HIGH -> "D6";
      case OUTER_A -> "D4";
      case OUTER_B -> "D5";
      case CONTACT -> "D7";
      case CLICK -> "D2";
      case RELEASE -> "D12";
      case KNOB -> "A5";
    };
  }

  /** Figures, one after the other; empty where there are none. */
  public static String seen(List<Seen> seen) {
    return seen.stream().map(FirstLightWords::figure).collect(Collectors.joining("; "));
  }

  private static String figure(Seen seen) {
    if (seen instanceof Seen.Greeted its) {
      return Words.say("firstlight.seen.greeted", its.kind(), its.firmware(), its.starts());
    } else if (seen instanceof Seen.Supply its) {
      return Words.say("firstlight.seen.supply", hundredths(its.volts()));
    } else if (seen instanceof Seen.Light its) {
      return Words.say(
          "firstlight.seen.light",
          inWords(its.sensor() == Channel.CENTRE_LOW ? Channel.CENTRE_LOW : its.sensor()),
          lightPin(its.sensor()),
          volts(its.leastCounts()),
          volts(its.mostCounts()));
    } else if (seen instanceof Seen.Changes its) {
      return Words.say(
          "firstlight.seen.changes",
          Words.say("firstlight.level." + its.input().label()),
          its.on(),
          its.off());
    } else if (seen instanceof Seen.ReadBack its) {
      return Words.say(
          "firstlight.seen.readBack",
          out(its.level()),
          volts(its.setCounts()),
          back(its.level()),
          volts(its.readCounts()));
    } else if (seen instanceof Seen.Reference its) {
      return Words.say("firstlight.seen.reference", hundredths(its.volts()));
    } else if (seen instanceof Seen.Led its) {
      return Words.say("firstlight.seen.led", volts(its.darkCounts()), volts(its.litCounts()));
    } else if (seen instanceof Seen.Pulses its) {
      return Words.of("firstlight.seen.pulses", its.drive(), its.seen(), its.made());
    } else if (seen instanceof Seen.LightSet its) {
      return Words.say(
          "firstlight.seen.lightSet", volts(its.darkCounts()), volts(its.fullCounts()));
    } else if (seen instanceof Seen.Fired its) {
      return Words.say("firstlight.seen.fired", Numbers.time(its.seconds()));
    }
    return ((Seen.Kept) seen).name();
  }

  private static String volts(double counts) {
    return hundredths(counts * BoardTraits.MILLIVOLTS_PER_COUNT / 1000);
  }

  private static String hundredths(double number) {
    return String.format(Locale.ROOT, "%.2f", number);
  }

  /** How many steps have passed, in a sentence. */
  public static String standing(FirstLight state) {
    return Words.say("firstlight.standing", state.passed(), state.steps().size());
  }

  /** Which rig it is. */
  public static String rig(FirstLight state) {
    return Words.say(
        "firstlight.report.rig", state.rig().serial(), state.rig().kind(), state.rig().firmware());
  }

  /** The report as lines of text: the rig, then a line a step, then what it does not say. */
  public static List<String> report(FirstLight state) {
    List<String> lines = new ArrayList<>();
    lines.add(rig(state));
    lines.add(Sentences.source(state.rig().serial()));
    lines.add(standing(state));
    for (FirstStep step : state.steps()) {
      lines.add(remark(step, state.of(step), state.rig().board()));
    }
    lines.add(notTested(state).orElseGet(() -> Words.say("firstlight.report.allTested")));
    return lines;
  }

  /** Which steps nobody has tested, in a sentence; empty where all were. */
  public static Optional<String> notTested(FirstLight state) {
    String names =
        state.steps().stream()
            .filter(step -> state.of(step).outcome() == Finding.Outcome.NOT_TESTED)
            .map(FirstLightWords::name)
            .collect(Collectors.joining(", "));
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(Words.say("firstlight.report.notTested", names));
  }
}
