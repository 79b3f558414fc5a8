package org.halflight.cli;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.Prompt;

/** Guided work on the terminal: prints what changes of its prompts, and takes keys as answers. */
final class GuidedTerminal {
  private final Terminal terminal;
  private Optional<Prompt> shown = Optional.empty();
  private Set<Answer> explained = Set.of();

  GuidedTerminal(Terminal terminal) {
    this.terminal = terminal;
  }

  /**
   * Prints what is another than before: the remark, what to do with its number, and the keys for
   * it.
   */
  void show(Prompt now) {
    boolean saidAlready = shown.filter(before -> isTheSame(before, now)).isPresent();
    // A remark on a step that is asked for is one on that step; it stands while the rig works.
    boolean remarked =
        (saidAlready || now.state() == Prompt.State.WORKING)
            && shown.map(Prompt::remark).filter(now.remark()::equals).isPresent();
    if (!now.remark().isEmpty() && !remarked) {
      terminal.say(now.remark());
    }
    if (!saidAlready) {
      boolean counted = now.state() == Prompt.State.ASKING && now.steps() > 1;
      terminal.say(counted ? Words.say("guide.step", now.step(), now.sentence()) : now.sentence());
    }
    boolean asks = now.answers().stream().anyMatch(answer -> answer.compareTo(Answer.SKIP) < 0);
    if (asks && !explained.containsAll(now.answers())) {
      explained = now.answers();
      sayKeys(now);
    }
    shown = Optional.of(now);
  }

  private static boolean isTheSame(Prompt before, Prompt now) {
    return before.state() == now.state()
        && before.step() == now.step()
        && before.sentence().equals(now.sentence());
  }

  /** The answer that a typed line is to a prompt; says the keys where it is none. */
  Optional<Answer> typed(String line, Prompt prompt) {
    Optional<Answer> answer = answer(line).filter(prompt.answers()::contains);
    if (answer.isEmpty()) {
      sayKeys(prompt);
    }
    return answer;
  }

  /** The answer that a typed line is, whether or not it is offered now. */
  static Optional<Answer> answer(String line) {
    return Arrays.stream(Answer.values())
        .filter(each -> key(each).equalsIgnoreCase(line))
        .findFirst();
  }

  private void sayKeys(Prompt prompt) {
    String keys =
        prompt.answers().stream()
            .sorted()
            .map(answer -> Words.of("guide.key", answer))
            .collect(Collectors.joining(", "));
    terminal.say(Words.say("guide.keys", keys));
  }

  /** What is typed before Enter. */
  private static String key(Answer answer) {
    return switch (answer) {
      case DONE -> "";
      case TURNS -> "w";
      case LOCKED -> "o";
      case ADJUSTED -> "a";
      case SKIP -> "s";
      case LEAVE -> "n";
      case STOP -> "q";
    };
  }
}
