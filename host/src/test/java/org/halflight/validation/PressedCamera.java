package org.halflight.validation;

import java.util.ArrayList;
import java.util.List;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.extratest.RawSqueeze;
import org.halflight.extratest.UnlockSign;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.halflight.validation.invented.Button;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.Finger;
import org.halflight.validation.invented.Pace;
import org.halflight.validation.invented.Press;

/**
 * One invented camera led through the linkage test by one invented person. What the program gets is
 * what a rig sees and a person says; the millimetres stay here.
 *
 * @param kind of the camera
 * @param tripDrop of the load, in newton
 * @param presses as the program gets them
 * @param seen the same presses, as they were
 */
record PressedCamera(
    Button.Kind kind, double tripDrop, List<JudgedPress> presses, List<Press> seen) {
  /** What tells when the advance unlocks. */
  enum Sensor {
    LIGHT_AND_KEY("light and key"),
    CLICK("click sensor"),
    CLICK_AND_BUTTON("click sensor, button wired"),
    KNOB("knob contact");

    private final String words;

    Sensor(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /**
   * How a test is led.
   *
   * @param stop how the person presses who is to stop
   * @param sensor besides the light
   * @param wrongKeys how often the person presses the other of the two wind keys
   * @param nature of cameras and people
   */
  record Led(Pace stop, Sensor sensor, double wrongKeys, Button.Nature nature) {
    Led(Pace stop, Sensor sensor, double wrongKeys) {
      this(stop, sensor, wrongKeys, Button.Nature.USUAL);
    }
  }

  static PressedCamera of(double gapMm, Button.Kind kind, Led led, Draws draws) {
    Button camera = Button.drawn(gapMm, kind, led.nature(), draws);
    Finger finger = new Finger(led.nature(), draws);
    List<JudgedPress> presses = new ArrayList<>();
    List<Press> seen = new ArrayList<>();
    for (LinkageStep step : LinkageStep.values()) {
      for (int i = 0; i < step.presses(); i++) {
        if (step == LinkageStep.REST) {
          // A tap on the camera does not move the button of these cameras.
          presses.add(new JudgedPress(step, false, WindState.LOCKED));
          continue;
        }
        Press press =
            switch (step) {
              case STOP -> finger.press(camera, led.stop(), true);
              case SQUEEZE -> finger.press(camera, Pace.SQUEEZE, false);
              default -> finger.press(camera, Pace.TAP, false);
            };
        boolean turns = press.windTurns() != draws.chance(led.wrongKeys());
        seen.add(press);
        presses.add(
            new JudgedPress(
                step,
                press.fired(),
                turns ? WindState.TURNS : WindState.LOCKED,
                false,
                step == LinkageStep.SQUEEZE
                    ? sign(press, camera, led.sensor(), draws)
                    : UnlockSign.NONE));
      }
    }
    return new PressedCamera(kind, camera.tripDrop(), presses, seen);
  }

  LinkageJudgement judged() {
    return new LinkageJudgement(presses);
  }

  /** The same by somebody who ends the test after a step. */
  LinkageJudgement judgedAfter(LinkageStep last) {
    return new LinkageJudgement(
        presses.stream().filter(press -> press.step().compareTo(last) <= 0).toList());
  }

  /** What a rig makes of a press, from its edges. */
  private static UnlockSign sign(Press press, Button camera, Sensor sensor, Draws draws) {
    if (!press.fired() || sensor == Sensor.LIGHT_AND_KEY) {
      return UnlockSign.NONE;
    }
    RawSqueeze squeeze = new RawSqueeze(press.light(), press.dark());
    if (sensor == Sensor.KNOB) {
      if (!Double.isNaN(press.unlocked())) {
        // The band takes a moment to pull the wind off the wire.
        squeeze.knobMoves(press.unlocked() + draws.around(0.01, 0.5));
      }
      return squeeze.sign();
    }
    if (sensor == Sensor.CLICK_AND_BUTTON) {
      squeeze.button(press.unlocked() - 1, press.returned());
    }
    squeeze.click(press.tripped());
    squeeze.click(press.dark());
    if (!camera.silent() && !Double.isNaN(press.unlocked())) {
      squeeze.click(press.unlocked());
    }
    if (camera.knocks()) {
      squeeze.click(press.bottomed());
      squeeze.click(press.returned());
    }
    return squeeze.sign();
  }
}
