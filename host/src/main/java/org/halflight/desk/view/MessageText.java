package org.halflight.desk.view;

import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.link.LinkState;
import org.halflight.session.DialSetting;
import org.halflight.session.Outcome;
import org.halflight.session.Question;
import org.halflight.session.SessionEvent;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.ShutterKind;
import org.halflight.words.EventSentences;
import org.halflight.words.QuickWords;
import org.halflight.words.Words;

/**
 * The one sentence of the bench, for what the column does not say already: a question before
 * trouble, trouble before news; often there is none.
 *
 * @param text whole sentences
 * @param kind how it is shown
 */
public record MessageText(String text, Kind kind) {
  /** How a sentence is shown. */
  public enum Kind {
    QUESTION,
    TROUBLE,
    ATTENTION,
    NEWS,
    HINT
  }

  /** There is nothing to say. */
  private static final MessageText NOTHING = new MessageText("", Kind.HINT);

  /** The sentence of a view. */
  public static MessageText of(BenchView view) {
    if (view.question().isPresent()) {
      return new MessageText(question(view.question().get()), Kind.QUESTION);
    }
    boolean trouble = view.said().filter(s -> s.kind() == Message.Kind.TROUBLE).isPresent();
    Optional<MessageText> ofTest =
        trouble ? Optional.empty() : LightTestText.say(view).or(() -> LinkageText.say(view));
    if (ofTest.isPresent()) {
      return ofTest.get();
    }
    if (view.openSeconds().isPresent() && view.link().isUp()) {
      return view.shown().flatMap(DialSetting::untimedTest).filter(UntimedTest::holds).isPresent()
          ? new MessageText(Words.say("desk.say.openAsAsked"), Kind.HINT)
          : NOTHING;
    }
    if (!view.link().isUp() && view.link().state() == LinkState.SEARCHING) {
      return new MessageText(view.link().sentence(), Kind.HINT);
    }
    Optional<Message> said = view.said().filter(its -> !saysWhatNextSays(view, its.text()));
    if (said.isPresent() && isShownAlready(view, said.get())) {
      return NOTHING;
    }
    if (said.isPresent() && said.get().kind() != Message.Kind.NEWS) {
      return new MessageText(
          mayBeAFlap(view)
              ? said.get().text() + " " + Words.say("desk.say.flap")
              : said.get().text(),
          said.get().kind() == Message.Kind.TROUBLE ? Kind.TROUBLE : Kind.ATTENTION);
    }
    if (said.isEmpty() || (isOfTheLastFiring(view, said.get()) && view.two().isEmpty())) {
      // The numerals say all of it.
      return hint(view);
    }
    String text = said.get().text();
    String last = ofTheLastFiring(view).orElse("");
    if (view.two().isEmpty() && !last.isEmpty() && text.startsWith(last)) {
      return new MessageText(text.substring(last.length()).strip(), Kind.NEWS);
    }
    return new MessageText(
        isOfTheLastFiring(view, said.get()) ? Words.say("desk.say.lastFiring", text) : text,
        Kind.NEWS);
  }

  /** With what a run that is done looks like, where nothing has to be read before that. */
  public MessageText with(String hints) {
    return hints.isEmpty() || !(kind == Kind.NEWS || kind == Kind.HINT)
        ? this
        : new MessageText(hints.contains(text) ? hints : (text + " " + hints).strip(), Kind.NEWS);
  }

  /** Whether the first of two openings may have been of a flap that nobody told of. */
  private static boolean mayBeAFlap(BenchView view) {
    return view.last()
            .flatMap(LastFiring::over)
            .filter(firing -> firing.outcome() == Outcome.DOUBLE && firing.rejection().isEmpty())
            .isPresent()
        && view.setup()
            .filter(setup -> setup.shutter().kind() != ShutterKind.LEAF_REFLEX)
            .isPresent();
  }

  /**
   * Whether the column says as NEXT what a sentence says, or the sentence is about the light, which
   * is set at its own place.
   */
  private static boolean saysWhatNextSays(BenchView view, String sentence) {
    return sentence.equals(Words.say("firing.heldForLight"))
        || sentence.equals(Words.say("news.two.fired"))
        || Stream.concat(
                view.repeat().map(QuickWords::repeat).stream(),
                view.shown().map(QuickWords::shown).stream())
            .anyMatch(sentence::equals);
  }

  /** Whether the column says all of a sentence: that it hung, and for how long. */
  private static boolean isShownAlready(BenchView view, Message said) {
    return isOfTheLastFiring(view, said)
        && view.last()
            .flatMap(LastFiring::over)
            .filter(firing -> firing.outcome() == Outcome.STUCK_OPEN)
            .filter(firing -> firing.rejection().isEmpty())
            .filter(firing -> firing.notes().movedFrom().isEmpty())
            .filter(firing -> !firing.notes().lightDoubtful())
            .isPresent();
  }

  private static boolean isOfTheLastFiring(BenchView view, Message said) {
    return ofTheLastFiring(view).equals(Optional.of(said.text()));
  }

  private static Optional<String> ofTheLastFiring(BenchView view) {
    return view.last()
        .flatMap(LastFiring::over)
        .flatMap(firing -> EventSentences.of(new SessionEvent.Settled(firing)));
  }

  /** Why the light is as it is: what to do about it is in the column. */
  private static MessageText hint(BenchView view) {
    if (view.setup().isEmpty() || view.runDone() || view.light().set().isPresent()) {
      return NOTHING;
    }
    return new MessageText(
        Words.say(view.setup().get().isQuick() ? "desk.hint.runQuick" : "desk.hint.runNoLight"),
        Kind.HINT);
  }

  private static String question(Question question) {
    return question.kind() == Question.Kind.DIAL_NOT_TURNED
        ? Words.say("desk.question.dial", question.shown(), question.other())
        : Words.say(
            "desk.question.neighbour",
            question.shown(),
            question.other(),
            question.firings().size());
  }
}
