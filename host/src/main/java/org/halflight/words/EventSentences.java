package org.halflight.words;

import java.util.Optional;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Question;
import org.halflight.session.SessionEvent;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.MarkedSpeed;

/** What a session has to tell, in sentences. */
public final class EventSentences {
  private EventSentences() {}

  /** The sentence of some news; empty for news that only change what a screen draws. */
  public static Optional<String> of(SessionEvent news) {
    if (news instanceof SessionEvent.Settled settled) {
      return Optional.of(Sentences.firing(settled.result()));
    }
    if (news instanceof SessionEvent.Rejected rejected) {
      return Optional.of(rejected(rejected.result()));
    }
    if (news instanceof SessionEvent.FiringIsUnder under) {
      return Optional.of(ConditionWords.ofFiring(under.result()));
    }
    if (news instanceof SessionEvent.ConditionsHold hold) {
      return Optional.of(ConditionWords.fromNow(hold.conditions()));
    }
    if (news instanceof SessionEvent.ReasonChanged changed) {
      return say(
          "run.reasonChanged",
          changed.result().number(),
          changed.result().rejection().orElse(""),
          changed.result().notes().firstReason().orElse(""));
    }
    if (news instanceof SessionEvent.CurtainsAtTheCentre centre) {
      return Optional.of(Words.of("curtain.centreOnly", centre.why()));
    }
    if (news instanceof SessionEvent.CurtainsNoted noted) {
      return Optional.of(CurtainWords.note(noted.note()));
    }
    if (news instanceof SessionEvent.OneLevelRig rig) {
      return say(rig.fixed() ? "news.starterRig" : "news.oneLevelRig");
    }
    if (news instanceof SessionEvent.Changed changed) {
      // With a small rig each firing moves the others of its speed a little; that is no news.
      return changed.result().oneLevel().isPresent()
          ? Optional.empty()
          : say("news.changed", changed.result().number(), Sentences.firing(changed.result()));
    }
    if (news instanceof SessionEvent.CurveAdded added) {
      return Sentences.decided(added.result());
    }
    if (news instanceof SessionEvent.FullLightRead read) {
      return say("news.fullLight", Numbers.percent(read.share()));
    }
    if (news instanceof SessionEvent.LightWasRead read) {
      return Optional.of(ReadingWords.of(read.reading()));
    }
    if (news instanceof SessionEvent.LightForgotten) {
      return say("news.lightForgotten");
    }
    if (news instanceof SessionEvent.StillOpen open) {
      return say("news.stillOpen", Numbers.running(open.seconds()));
    }
    if (news instanceof SessionEvent.LinkGap gap) {
      return gap.seconds().isPresent()
          ? say("news.gap", Numbers.time(gap.seconds().getAsDouble()))
          : say("news.gap.unknown");
    }
    return ofRun(news).or(() -> ofQuestion(news)).or(() -> ofCocking(news)).or(() -> ofUndo(news));
  }

  private static Optional<String> ofRun(SessionEvent news) {
    if (news instanceof SessionEvent.SettingShown shown) {
      return Optional.of(shown(shown));
    }
    if (news instanceof SessionEvent.AdjustmentMarked marked) {
      return say(
          marked.adjusted().isFound() ? "news.found" : "news.adjusted",
          WorkWords.done(marked.adjusted().words()));
    }
    if (news instanceof SessionEvent.TwoShown shown) {
      return shown
          .two()
          .map(two -> say("news.two", two.first(), two.second(), TwoSpeeds.FIRINGS))
          .orElseGet(() -> say("news.two.off"));
    }
    if (news instanceof SessionEvent.StepShown shown) {
      return Optional.of(CurtainWords.how(shown.step()));
    }
    if (news instanceof SessionEvent.TwoFired) {
      return say("news.two.fired");
    }
    if (news instanceof SessionEvent.RepeatAsked asked) {
      return Optional.of(QuickWords.repeat(asked.repeat()));
    }
    if (news instanceof SessionEvent.LightWasHeld held) {
      return Optional.of(QuickWords.held(held.seen()));
    }
    if (news instanceof SessionEvent.StageBegins stage) {
      return Optional.of(StageWords.begins(stage));
    }
    if (news instanceof SessionEvent.SetBeforeCocking set) {
      return say("news.setBeforeCocking", set.speed());
    }
    if (news instanceof SessionEvent.EnoughToKnow enough) {
      return say("run.enough", enough.speed(), enough.tries(), enough.good());
    }
    if (news instanceof SessionEvent.EnoughOfUntimedTest enough) {
      return say("news.enoughCheck", Sentences.untimedTest(enough.test()), enough.tries());
    }
    if (news instanceof SessionEvent.PressCounted counted) {
      return Optional.of(PressWords.counted(counted.press()));
    }
    if (news instanceof SessionEvent.KnobContact contact) {
      return Optional.of(Words.of("linkage.knob", contact.what()));
    }
    if (news instanceof SessionEvent.PlungerWasRead read) {
      return Optional.of(PressWords.plunger(read.reading()));
    }
    if (news instanceof SessionEvent.ProfileStands stands) {
      return Optional.of(String.join(" ", ProfileWords.standing(stands.use())));
    }
    if (news instanceof SessionEvent.ClocksDisagree apart) {
      return Optional.of(ClockWords.disagree(apart.kept(), apart.live()));
    }
    return news instanceof SessionEvent.RunDone ? say("run.done") : Optional.empty();
  }

  private static String shown(SessionEvent.SettingShown shown) {
    if (shown.quick() && shown.setting().untimedTest().filter(its -> !its.holds()).isEmpty()) {
      return QuickWords.shown(shown.setting());
    }
    if (shown.setting() instanceof DialSetting.Untimed untimed) {
      return Words.say(
          "news.check." + Words.key(untimed.what()), Sentences.untimedTest(untimed.what()));
    }
    MarkedSpeed speed = shown.setting().speed().orElseThrow();
    return shown.wanted() > 0
        ? Words.say("run.fire", speed, shown.good() + 1, shown.wanted())
        : Words.say("news.shown.noRun", speed);
  }

  private static Optional<String> ofQuestion(SessionEvent news) {
    if (news instanceof SessionEvent.QuestionAsked asked) {
      Question question = asked.question();
      return switch (question.kind()) {
        case NEIGHBOUR ->
            say("news.neighbour", question.shown(), question.other(), question.firings().size());
        case DIAL_NOT_TURNED -> say("news.dialNotTurned", question.shown(), question.other());
      };
    }
    if (news instanceof SessionEvent.FlashContactInUse) {
      return Optional.of(ContactWords.caution());
    }
    if (news instanceof SessionEvent.IsTheSelfTimerOn asked) {
      return say("news.selfTimer", Numbers.time(asked.seconds()));
    }
    if (news instanceof SessionEvent.PlateauOff off) {
      return say("news.plateauOff", Numbers.percent(off.share()), off.firings().size());
    }
    return Optional.empty();
  }

  private static Optional<String> ofCocking(SessionEvent news) {
    if (news instanceof SessionEvent.CockingStroke stroke) {
      return say("news.cockingStroke", stroke.strokes(), stroke.wanted());
    }
    if (news instanceof SessionEvent.CockingKnown) {
      return say("news.cockingKnown");
    }
    if (news instanceof SessionEvent.CockingNotKnown unknown) {
      return unknown.strokes() == 0
          ? say("news.cockingNotKnown.none")
          : say("news.cockingNotKnown.some", unknown.strokes());
    }
    return news instanceof SessionEvent.LeakWhileCocking ? say("news.leak") : Optional.empty();
  }

  private static Optional<String> ofUndo(SessionEvent news) {
    if (news instanceof SessionEvent.Undone undone) {
      return say("news.undone", UserActionWords.of(undone.act()));
    }
    if (news instanceof SessionEvent.Redone redone) {
      return say("news.redone", UserActionWords.of(redone.act()));
    }
    return news instanceof SessionEvent.NotDone not
        ? say("news.notDone." + Words.key(not.why()))
        : Optional.empty();
  }

  private static String rejected(FiringResult result) {
    String reason = result.rejection().orElse("");
    return Words.say(
        "run.rejected", result.number(), reason.isBlank() ? Words.say("run.noReason") : reason);
  }

  private static Optional<String> say(String key, Object... parts) {
    return Optional.of(Words.say(key, parts));
  }
}
