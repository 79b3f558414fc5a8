package org.halflight.words;

import java.util.Optional;
import org.halflight.extratest.JudgedPress;
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
    return Words.say("linkageWork.certain", large(judged), advice(judged));
  }

  /** How the linkage is, and what to do. */
  public static String ended(LinkageJudgement judged) {
    return Words.say("linkageWork.ended", large(judged), advice(judged));
  }

  /** How the linkage is, in capitals. */
  public static String large(LinkageJudgement judged) {
    return judged
        .fault()
        .map(fault -> Words.of("linkageWork.fault", fault))
        .orElseGet(() -> Words.of("linkageWork.large", judged.verdict()));
  }

  /** What to do about it. */
  public static String advice(LinkageJudgement judged) {
    Optional<LinkageJudgement.Fault> fault = judged.fault();
    return fault
        .map(its -> Words.of("linkageWork.advice", its))
        .orElseGet(() -> Words.of("linkageWork.verdict", judged.verdict()));
  }

  /** How long before first light the advance was seen to unlock, as what it is: no verdict. */
  public static String ahead(JudgedPress press) {
    return Words.say("linkageWork.ahead", Math.round(1e3 * press.aheadSeconds().orElseThrow()));
  }
}
