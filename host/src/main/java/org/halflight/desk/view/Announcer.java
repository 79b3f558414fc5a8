package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.UntimedTest;
import org.halflight.verdict.FiringsWanted;
import org.halflight.words.DecisionWords;
import org.halflight.words.EventSentences;
import org.halflight.words.StageWords;
import org.halflight.words.Words;

/**
 * What is announced of the bench: its sounds, and the sentence that was said last. For the bench
 * thread only.
 */
final class Announcer {
  /** A shutter that hangs open is heard of so often. Our own choice. */
  static final double OPEN_AGAIN_SECONDS = 3;

  private final Supplier<Session> session;
  private final BooleanSupplier isHeldOpen;
  private final HeldCues held = new HeldCues();
  private Optional<Message> said = Optional.empty();
  private boolean remindsOfCheck;

  /** How long the shutter had been open when that was heard last; 0 where it was not. */
  private double openSeconds;

  /**
   * @param session the session of the moment; after an undo it is another one
   * @param isHeldOpen whether the shutter is held open for a test of the light
   */
  Announcer(Supplier<Session> session, BooleanSupplier isHeldOpen) {
    this.session = session;
    this.isHeldOpen = isHeldOpen;
  }

  /** The last sentence. */
  Optional<Message> said() {
    return said;
  }

  /** Something is said to the person. */
  void say(Message sentence) {
    said = Optional.of(sentence);
    remindsOfCheck = false;
  }

  /** What was said is over. */
  void forget() {
    said = Optional.empty();
    remindsOfCheck = false;
  }

  /** A rig check that was made needs no reminder. */
  void forgetMadeCheck() {
    if (remindsOfCheck && !session.get().isRigCheckDue()) {
      forget();
    }
  }

  /** Says what there is to say of some news; gives the sounds that go with them. */
  List<Cue> announce(List<SessionEvent> news) {
    List<Cue> cues = new ArrayList<>();
    Optional<DialSetting> before = Optional.empty();
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.Settled settled) {
        before = settled.result().setting();
        AdjustingCue.of(session.get(), settled.result())
            .or(() -> ofFiring(settled.result()))
            .ifPresent(cues::add);
        openSeconds = 0;
      } else if (each instanceof SessionEvent.PressCounted counted) {
        forget();
        before = Optional.of(new DialSetting.Untimed(UntimedTest.LINKAGE));
        cues.add(counted.press().counts() ? Cue.COUNTED : Cue.NOT_COUNTED);
      } else if (each instanceof SessionEvent.Rejected) {
        cues.add(Cue.NOT_COUNTED);
      } else if (each instanceof SessionEvent.StillOpen open && isOpenAgain(open.seconds())) {
        cues.add(Cue.OPEN);
      }
      Optional<Cue> alone = alone(each, before);
      if (alone.isPresent()) {
        // What an adjustment did is heard all the same, before where the work goes on.
        boolean asks = alone.get() == Cue.QUESTION;
        cues.removeIf(cue -> asks || cue.kind() != SoundKind.ADJUSTING);
        cues.add(alone.get());
      }
      sentence(each).ifPresent(this::say);
      if (each instanceof SessionEvent.ProfileStands && session.get().isRigCheckDue()) {
        remindOfCheck();
      }
    }
    // The click sensor would hear them, and it cannot tell them from the camera.
    boolean listens =
        session.get().untimedTest().filter(UntimedTest::isForTheEar).isPresent()
            || news.stream().anyMatch(SessionEvent.PressCounted.class::isInstance);
    return held.release(cues, listens, session.get().secondsSinceEdge());
  }

  /** Whether a shutter that hangs open at a marked speed has not been heard of for a while. */
  private boolean isOpenAgain(double seconds) {
    boolean first = openSeconds == 0 || seconds < openSeconds;
    boolean hangs = session.get().shown().isPresent() && !isHeldOpen.getAsBoolean();
    if (hangs && (first || seconds >= openSeconds + OPEN_AGAIN_SECONDS)) {
      openSeconds = seconds;
      return true;
    }
    return false;
  }

  private static Optional<Cue> ofFiring(FiringResult result) {
    if (result.untimedTest().equals(Optional.of(UntimedTest.LINKAGE))) {
      // A press counts by its wind key.
      return Optional.empty();
    }
    return switch (result.outcome()) {
      case HELD_FOR_LIGHT, NOT_A_SHUTTER_EVENT, LIGHT_WHILE_COCKING -> Optional.empty();
      case OPENS_HOLDS_CLOSES -> Optional.of(Cue.COUNTED);
      default -> Optional.of(result.answersTheQuestion() ? Cue.COUNTED : Cue.NOT_COUNTED);
    };
  }

  /** The sound that takes the place of all others. */
  private static Optional<Cue> alone(SessionEvent news, Optional<DialSetting> before) {
    if (news instanceof SessionEvent.RunDone) {
      return Optional.of(Cue.RUN_DONE);
    }
    if (news instanceof SessionEvent.QuestionAsked) {
      return Optional.of(Cue.QUESTION);
    }
    boolean moves =
        before.isPresent() && shownBy(news).filter(next -> !next.equals(before.get())).isPresent();
    return moves ? Optional.of(Cue.SPEED_DONE) : Optional.empty();
  }

  /** What the dial is to be set to from here on, where some news are of that. */
  static Optional<DialSetting> shownBy(SessionEvent news) {
    return news instanceof SessionEvent.SettingShown shown
        ? Optional.of(shown.setting())
        : Optional.empty();
  }

  /** What comes of each press of the linkage test is said by its prompts. */
  private boolean isOfAPress(SessionEvent news) {
    return news instanceof SessionEvent.PressCounted
        || (news instanceof SessionEvent.IsTheSelfTimerOn
            && session.get().untimedTest().equals(Optional.of(UntimedTest.LINKAGE)))
        || (news instanceof SessionEvent.Settled settled
            && settled.result().untimedTest().equals(Optional.of(UntimedTest.LINKAGE)));
  }

  private Optional<Message> sentence(SessionEvent news) {
    if (news instanceof SessionEvent.Settled settled && !isOfAPress(news)) {
      FiringResult result = settled.result();
      boolean plain =
          (result.outcome() == Outcome.TIMED || result.outcome() == Outcome.OPENS_HOLDS_CLOSES)
              && !result.notes().lightDoubtful();
      return ExtraTestsText.ofCheck(session.get().results(), session.get().runs(), result)
          .or(() -> EventSentences.of(news))
          .map(text -> text + wanted(result))
          .map(text -> new Message(plain ? Message.Kind.NEWS : Message.Kind.ATTENTION, text));
    }
    if (news instanceof SessionEvent.RunDone
        && session.get().setup().filter(RunSetup::isStage).isPresent()) {
      return StageWords.lastInShort(session.get().results(), session.get().runs())
          .map(text -> new Message(Message.Kind.NEWS, text));
    }
    if (news instanceof SessionEvent.RunDone) {
      return session
          .get()
          .setup()
          .filter(setup -> setup.phase() == Phase.AS_LEFT)
          .map(left -> new Message(Message.Kind.NEWS, Words.say("desk.say.leftDone")));
    }
    if (news instanceof SessionEvent.StillOpen
        || news instanceof SessionEvent.TwoFired
        || shownBy(news).isPresent()
        || isOfAPress(news)) {
      return Optional.empty();
    }
    boolean matters =
        news instanceof SessionEvent.QuestionAsked
            || news instanceof SessionEvent.NotDone
            || news instanceof SessionEvent.KnobContact
            || news instanceof SessionEvent.PlateauOff
            || news instanceof SessionEvent.IsTheSelfTimerOn
            || news instanceof SessionEvent.FlashContactInUse
            || news instanceof SessionEvent.LeakWhileCocking
            || news instanceof SessionEvent.SetBeforeCocking
            || news instanceof SessionEvent.StageBegins
            || news instanceof SessionEvent.EnoughToKnow
            || news instanceof SessionEvent.LightForgotten
            || (news instanceof SessionEvent.ProfileStands stands && !stands.use().isCalibrated())
            || news instanceof SessionEvent.ClocksDisagree
            || news instanceof SessionEvent.LinkGap;
    return EventSentences.of(news)
        .map(text -> new Message(matters ? Message.Kind.ATTENTION : Message.Kind.NEWS, text));
  }

  /** Behind the third firing of a speed, how many the decision takes. */
  private String wanted(FiringResult result) {
    return FiringsWanted.after(result, session.get().results(), session.get().runs())
        .map(wanted -> " " + DecisionWords.wanted(wanted))
        .orElse("");
  }

  /** Once, as the rig with its profile comes; the place of the rig goes on saying it. */
  private void remindOfCheck() {
    String before =
        said.filter(it -> it.kind() != Message.Kind.TROUBLE).map(it -> it.text()).orElse("");
    Message.Kind kind = said.map(Message::kind).orElse(Message.Kind.NEWS);
    if (kind != Message.Kind.TROUBLE) {
      say(new Message(kind, (before + " " + Words.say("desk.rig.checkDue")).strip()));
      remindsOfCheck = true;
    }
  }
}
