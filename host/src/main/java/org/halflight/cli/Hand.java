package org.halflight.cli;

import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;

/**
 * Works the camera: nobody on a real rig, where the person does, and the model camera on the
 * practice rig.
 */
interface Hand {
  /** Leaves the camera to the person. */
  Hand OF_THE_PERSON =
      new Hand() {
        @Override
        public void fire(MarkedSpeed shown) {}

        @Override
        public void tryOut(UntimedTest check) {}

        @Override
        public void hold(boolean open) {}

        @Override
        public LightHand light() {
          return LightHand.OF_THE_PERSON;
        }

        @Override
        public void idle() {}

        @Override
        public boolean works() {
          return false;
        }
      };

  /** Turns the dial to a speed and fires. */
  void fire(MarkedSpeed shown);

  /** Does with the camera what a check asks for. */
  void tryOut(UntimedTest check);

  /** Holds the shutter open, or lets it close. */
  void hold(boolean open);

  /** The hand for tests of the light. */
  LightHand light();

  /** Nothing is going on: lets time pass where it does not pass by itself. */
  void idle();

  /** Whether it fires by itself. */
  boolean works();
}
