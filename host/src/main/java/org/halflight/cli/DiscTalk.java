package org.halflight.cli;

import java.util.Optional;
import org.halflight.bench.RigWork;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.DiscReadingWork;
import org.halflight.workflow.Prompt;

/** Shows at the terminal how the reading of a disc goes on, and hears the person. */
final class DiscTalk {
  /** Light and levels take this beside the edges, in seconds. */
  private static final int LIGHT_SECONDS = 3;

  private final Terminal terminal;
  private final DiscReadingWork reading;
  private final String begins;
  private final boolean practice;
  private final Quarters quarters;
  private Optional<Prompt> shown = Optional.empty();

  /**
   * @param seconds how long edges are taken
   * @param practice whether an invented disc turns, and nobody has to do anything about it
   */
  DiscTalk(Terminal terminal, DiscReadingWork reading, double seconds, boolean practice) {
    this.terminal = terminal;
    this.reading = reading;
    this.practice = practice;
    begins = Words.say("disc.begin", Math.round(seconds) + LIGHT_SECONDS);
    quarters = new Quarters(terminal);
  }

  /** Leads through it on a rig that was lent to it. */
  void lead(RigWork work) {
    work.meanwhile(
        () -> {
          show(reading.prompt());
          onPrompt(reading.prompt());
        });
    while (reading.prompt().state() != Prompt.State.OVER) {
      reading.advance();
      work.changes().forEach(change -> terminal.say(change.sentence()));
    }
  }

  private void show(Prompt now) {
    boolean step = now.step() > 0;
    boolean works = now.state() == Prompt.State.WORKING;
    // What came of it stands below, in a table.
    if ((step || works) && isNew(now.remark(), shown.map(Prompt::remark))) {
      terminal.say(now.remark());
    }
    if (shown.isEmpty()) {
      terminal.say(Words.say(practice ? "disc.practice" : "disc.steps"));
    }
    if (works && shown.map(Prompt::state).filter(now.state()::equals).isEmpty()) {
      terminal.say(begins);
    }
    if (!(step && practice) && isNew(now.sentence(), shown.map(Prompt::sentence))) {
      terminal.say(step ? Words.say("disc.step", now.step(), now.sentence()) : now.sentence());
    }
    if (works) {
      quarters.accept(now.progress());
    }
    shown = Optional.of(now);
  }

  private static boolean isNew(String words, Optional<String> before) {
    return !words.isEmpty() && !before.equals(Optional.of(words));
  }

  private void onPrompt(Prompt now) {
    Optional<String> typed = terminal.typed();
    if (typed.filter("q"::equals).isPresent()) {
      reading.answer(Answer.STOP);
    } else if (now.state() == Prompt.State.ASKING
        && (practice || now.step() == 0 || typed.isPresent() || terminal.isOver())) {
      // The last thing is only said: no session takes the rig back.
      reading.answer(Answer.DONE);
    }
  }
}
