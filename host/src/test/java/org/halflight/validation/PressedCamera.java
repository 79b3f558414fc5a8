package org.halflight.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.LinkageJudgement;
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
  /** Our choice: a click nearer than this to anything else that sounds tells nothing. */
  private static final double APART_SECONDS = 0.02;

  /** What tells when the advance unlocks. */
  enum Sensor {
    LIGHT_AND_KEY("light and key"),
    CLICK("click sensor"),
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
                ahead(press, camera, led.sensor(), draws)));
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

  private static OptionalDouble ahead(Press press, Button camera, Sensor sensor, Draws draws) {
    if (!press.fired() || Double.isNaN(press.unlocked())) {
      return OptionalDouble.empty();
    }
    return switch (sensor) {
      case LIGHT_AND_KEY -> OptionalDouble.empty();
      // A band takes a moment to pull the wind off the wire.
      case KNOB -> OptionalDouble.of(press.light() - press.unlocked() - draws.around(0.01, 0.5));
      case CLICK -> {
        double click = press.unlocked();
        boolean apart =
            Math.abs(press.light() - click) > APART_SECONDS
                && Math.abs(press.dark() - click) > APART_SECONDS
                && Math.abs(press.returned() - click) > APART_SECONDS;
        yield camera.silent() || !apart
            ? OptionalDouble.empty()
            : OptionalDouble.of(press.light() - click);
      }
    };
  }
}
