package org.halflight.words;

import org.halflight.session.SessionInput;

/** What the person did, in a few words: for what is undone and done again. */
public final class UserActionWords {
  private UserActionWords() {}

  /** An act in a few words. */
  public static String of(SessionInput.UserAction act) {
    if (act instanceof SessionInput.RunBegins begins) {
      return begins.setup().isStage()
          ? Words.say("act.stage", StageWords.of(begins.setup().assembly()))
          : Words.say("act.run", Sentences.phase(begins.setup().phase()));
    }
    if (act instanceof SessionInput.SpeedChosen chosen) {
      return Words.say("act.speed", chosen.speed());
    }
    if (act instanceof SessionInput.UntimedTestChosen chosen) {
      return Words.say("act.speed", Sentences.untimedTest(chosen.test()));
    }
    if (act instanceof SessionInput.FiringsMoved moved) {
      return Words.say("act.move", moved.firings().size(), moved.to());
    }
    if (act instanceof SessionInput.FiringUnder under) {
      return Words.say("act.firingUnder", ConditionWords.list(under.conditions()));
    }
    if (act instanceof SessionInput.ConditionsAre are) {
      return Words.say("act.conditions", ConditionWords.list(are.lasting()));
    }
    if (act instanceof SessionInput.ReasonChanged changed) {
      return Words.say("act.reason", changed.reason());
    }
    if (act instanceof SessionInput.CockingLearnt learnt) {
      return Words.say(learnt.begins() ? "act.cocking.begins" : "act.cocking.ends");
    }
    if (act instanceof SessionInput.Adjusted adjusted) {
      return Words.say("act.adjusted", WorkWords.done(adjusted.words()));
    }
    if (act instanceof SessionInput.TwoChosen chosen) {
      return chosen
          .two()
          .map(two -> Words.say("act.two", two.first(), two.second()))
          .orElseGet(() -> Words.say("act.two.off"));
    }
    if (act instanceof SessionInput.StepChosen chosen) {
      return Words.say("act.step", CurtainWords.step(chosen.step()));
    }
    if (act instanceof SessionInput.LensCap cap) {
      return Words.say(cap.on() ? "act.cap.on" : "act.cap.off");
    }
    if (act instanceof SessionInput.PressJudged press) {
      return Words.say(
          "act.press",
          Words.of("linkage.step", press.step()),
          Words.of("linkage.wind", press.wind()));
    }
    return Words.say(plain(act));
  }

  private static String plain(SessionInput.UserAction act) {
    if (act instanceof SessionInput.NextChosen) {
      return "act.next";
    }
    if (act instanceof SessionInput.PreviousChosen) {
      return "act.previous";
    }
    if (act instanceof SessionInput.AcceptedAsShown) {
      return "act.accept";
    }
    if (act instanceof SessionInput.PlungerRead) {
      return "act.plunger";
    }
    return act instanceof SessionInput.ClosedByHand ? "act.closedByHand" : "act.reject";
  }
}
