package org.halflight.words;

import org.halflight.extratest.LinkageJudgement;
import org.halflight.extratest.PressOutcome;
import org.halflight.session.LinkagePress;

/** What is said while the linkage test is led. */
public final class LinkageWorkWords {
  private LinkageWorkWords() {}

  /** What to do with the camera before the next press; empty where the wind is free. */
  public static String before(LinkagePress last) {
    boolean isStuck = PressOutcome.of(last.trips() > 0, last.wind()) == PressOutcome.SHUTTER_ONLY;
    return isStuck ? Words.say("linkageWork.pressToTheEnd") : "";
  }

  /** What is sure before the round is over, and what the person may do. */
  public static String certain(LinkageJudgement judged) {
    return Words.say(
        "linkageWork.certain", LinkageWords.large(judged), LinkageWords.advice(judged));
  }

  /** How the linkage is, and what to do. */
  public static String ended(LinkageJudgement judged) {
    return Words.say("linkageWork.ended", LinkageWords.large(judged), LinkageWords.advice(judged));
  }
}
