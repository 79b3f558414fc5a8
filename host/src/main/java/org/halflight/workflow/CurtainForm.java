package org.halflight.workflow;

import java.util.LinkedHashMap;
import java.util.Map;
import org.halflight.job.CurtainCamera;
import org.halflight.session.OwnTravel;
import org.halflight.session.RunOption;

/**
 * What is typed and chosen of a camera's curtains, each as its option of a run reads it.
 *
 * @param ownTravel the camera's own travel with its distance
 * @param xSpeed the fastest marked speed for electronic flash
 * @param adjusters what can be adjusted; empty for all
 */
public record CurtainForm(String ownTravel, String xSpeed, String adjusters) {
  /** Nothing is typed. */
  public static final CurtainForm EMPTY = new CurtainForm("", "", "");

  static CurtainForm of(CurtainCamera camera) {
    return new CurtainForm(
        camera.ownTravel().map(OwnTravel::text).orElse(""),
        camera.xSpeed().map(Object::toString).orElse(""),
        RunOption.ADJUSTERS.text(camera.adjusters()));
  }

  /** What is typed, by option, in the order in which it is asked. */
  public Map<RunOption<?>, String> texts() {
    Map<RunOption<?>, String> texts = new LinkedHashMap<>();
    texts.put(RunOption.OWN_TRAVEL, ownTravel);
    texts.put(RunOption.X_SPEED, xSpeed);
    texts.put(RunOption.ADJUSTERS, adjusters);
    return texts;
  }

  /**
   * What it comes to.
   *
   * @throws WrongField where something cannot be understood
   */
  CurtainCamera read() {
    return new CurtainCamera(
        RunForm.value(RunOption.OWN_TRAVEL, ownTravel),
        RunForm.value(RunOption.X_SPEED, xSpeed),
        RunForm.value(RunOption.ADJUSTERS, adjusters));
  }
}
