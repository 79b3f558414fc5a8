package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import org.halflight.light.Aim;
import org.halflight.words.AimWords;
import org.halflight.words.Words;

/**
 * What the Light place says and which of its acts can be done now.
 *
 * @param mode what the meter does, and whether openings are firings
 * @param sentence the next thing to do
 * @param remarks what else there is to know, a line each
 * @param maySet whether the light can be set now
 * @param mayAim whether the light can be aimed (again)
 * @param mayCheckScreen whether the screen can be checked
 */
public record LightText(
    String mode,
    String sentence,
    List<String> remarks,
    boolean maySet,
    boolean mayAim,
    boolean mayCheckScreen) {
  public LightText {
    remarks = List.copyOf(remarks);
  }

  /** What there is to say now. */
  public static LightText of(BenchView view) {
    LightView light = view.light();
    boolean free = view.link().isUp() && !light.isUnderWay() && !view.lightTest().isUnderWay();
    List<String> remarks = new ArrayList<>();
    String sentence;
    if (light.isUnderWay()) {
      String asked = light.prompt().sentence();
      sentence = light.isAsking() ? Words.say("desk.light.space", asked) : asked;
    } else if (light.isAiming()) {
      sentence = AimWords.move(light.aim().orElseGet(Aim::nothing));
      light.refusal().ifPresent(remarks::add);
    } else if (light.set().isPresent()) {
      sentence = Words.say(view.camera().isBlank() ? "desk.light.next" : "desk.light.nextFire");
      remarks.add(light.prompt().sentence());
    } else {
      sentence = light.prompt().sentence();
    }
    light.screen().flatMap(ScreenView::result).map(AimWords::screen).ifPresent(remarks::add);
    if (!light.isUnderWay()) {
      remarks.add(
          Words.say(view.link().isPractice() ? "desk.light.hint.practice" : "desk.light.hint"));
    }
    String mode =
        Words.say(
            light.isUnderWay()
                ? "desk.light.mode.sets"
                : light.isAiming() ? "desk.light.mode.aims" : "desk.light.mode.watches");
    return new LightText(mode, sentence, remarks, free, free && !light.isAiming(), free);
  }
}
