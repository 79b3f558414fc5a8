package org.halflight.workflow;

import java.util.Optional;
import org.halflight.bench.LightPlan;
import org.halflight.firstlight.FirstStep;
import org.halflight.session.Assembly;
import org.halflight.session.DialSetting;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;

/**
 * Who works the camera on the bench: the person, or the operator of the practice rig's invented
 * camera. As it stands here it is the person, of whom all is asked and for whom nothing is done.
 */
public interface CameraOperator {
  /** The person works the camera. */
  CameraOperator PERSON = new CameraOperator() {};

  /** Whether it works the camera; else the person does. */
  default boolean works() {
    return false;
  }

  /** Whether it also answers what the person would be asked, so that nobody needs to be there. */
  default boolean answers() {
    return false;
  }

  /** Sets what is shown, where something is, and fires; at B and T until the shutter is shut. */
  default void fire(Optional<DialSetting> shown) {}

  /** Presses as a step of the linkage test asks for, or taps the camera. */
  default void press(LinkageStep step) {}

  /** Tries the wind, and turns it where it is free; empty where only the person knows. */
  default Optional<WindState> wind() {
    return Optional.empty();
  }

  /** Makes the camera ready for a press, also where its wind was locked. */
  default void getReady() {}

  /**
   * Adjusts the linkage, where the test says that it is wrong.
   *
   * @return whether it did
   */
  default boolean adjusts() {
    return false;
  }

  /** Will hold B and T open for so long, in seconds, where it fires by itself. */
  default void willHold(double seconds) {}

  /** The same with a short press at B. */
  default void tap(Optional<DialSetting> shown) {
    fire(shown);
  }

  /** Puts the camera together as far as a stage of assembly wants it. */
  default void assemble(Assembly now) {}

  /** The stage after another one, for whoever needs nobody; empty where that was the last. */
  default Optional<Assembly> nextStage(Assembly now) {
    return Optional.empty();
  }

  /** Holds the shutter open, or lets it close. */
  default void hold(boolean open) {}

  /** Does with camera and lamp what a step of a light test asks for. */
  default void prepare(LightPlan.Step step) {}

  /** Puts all back as it was before the light test: lamp on, shutter shut, its own aperture. */
  default void putBack() {}

  /**
   * Hears what the screen shows while it is checked whether its light reaches the sensor.
   *
   * @param white or black; empty where it shows the window again
   */
  default void screen(Optional<Boolean> white) {}

  /** Does with a hand what a step of first light asks for. */
  default void tryInput(FirstStep step) {}

  /** Puts a turning slotted disc before the light, or takes it away. */
  default void turnDisc(boolean turns) {}

  /** Whether what it was asked for last is done by now. */
  default boolean isDone() {
    return true;
  }

  /**
   * Whether the press that it was asked for last is over, with the quiet after it.
   *
   * @param seenTicks how far the rig's lines were read, in ticks of its counter: what the press
   *     brought may be on its way still
   */
  default boolean isPressOver(long seenTicks) {
    return true;
  }

  /** Nothing is going on: lets time pass where it does not pass by itself. */
  default void idle() {}
}
