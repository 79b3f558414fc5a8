package org.halflight.cli;

import org.halflight.bench.LightPlan;
import org.halflight.extratest.FNumber;

/**
 * Does what the tests of the light ask for: nobody on a real rig, where the person does, and the
 * model camera on the practice rig.
 */
interface LightHand {
  /** Leaves camera and lamp to the person. */
  LightHand OF_THE_PERSON =
      new LightHand() {
        @Override
        public void cover(boolean covered) {}

        @Override
        public void cock() {}

        @Override
        public void hold(boolean open) {}

        @Override
        public void stop(FNumber number, boolean opening) {}

        @Override
        public void panel(boolean moved) {}

        @Override
        public void isAtRest() {}

        @Override
        public void idle() {}

        @Override
        public boolean works() {
          return false;
        }
      };

  /** Covers the lamp, or takes the cover off. */
  void cover(boolean covered);

  /** Cocks the shutter and leaves it shut. */
  void cock();

  /** Holds the shutter open, or lets it close. */
  void hold(boolean open);

  /** Turns the stop to a marking. */
  void stop(FNumber number, boolean opening);

  /** Moves the panel of light sideways, or puts it back in place. */
  void panel(boolean moved);

  /** Does what a step of a test asks for. */
  default void does(LightPlan.Step step) {
    switch (step.what()) {
      case LAMP_COVERED -> cover(true);
      case SHUT_UNCOCKED -> cover(false);
      case SHUT_COCKED -> cock();
      case FULL -> hold(true);
      case STOP -> {
        if (step.needed()) {
          hold(true);
        }
        stop(new FNumber(step.at()), step.opening());
      }
      case PANEL_IN_PLACE -> {
        if (step.needed()) {
          hold(true);
        }
        panel(false);
      }
      case PANEL_MOVED -> panel(true);
    }
  }

  /** The test is over: the lamp is on, the shutter shut, the stop where it was. */
  void isAtRest();

  /** Nothing is going on: lets time pass where it does not pass by itself. */
  void idle();

  /** Whether it does so by itself. */
  boolean works();
}
