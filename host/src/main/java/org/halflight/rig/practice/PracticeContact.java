package org.halflight.rig.practice;

import org.halflight.shuttermodel.ModelContact;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** The flash contact of the practice camera: what its edges are while the blades move. */
final class PracticeContact {
  /** Less than this no flash contact stays closed. */
  private static final double SECONDS_LEAST = 0.0005;

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private final PracticeWorld world;
  private ModelContact model;
  private boolean closed;
  private boolean chatters;
  private int life;
  private long restedTicks;

  PracticeContact(PracticeWorld world, ModelContact model) {
    this.world = world;
    this.model = model;
    restsAt(world.start());
  }

  /** Another contact comes on the bench, at rest. */
  void is(ModelContact another) {
    life++;
    chatters = false;
    model = another;
    restsAt(world.start());
  }

  private void restsAt(long ticks) {
    boolean rests = model.what() == ModelContact.What.ALWAYS_CLOSED;
    if (rests != closed) {
      change(rests, ticks);
    }
  }

  /**
   * The blades open and stay open for now.
   *
   * @param lightTicks first light
   * @param openSeconds from there to fully open
   * @return when the contact has come to rest
   */
  long touches(long lightTicks, double openSeconds, SeededDraws draws) {
    if (model.what() == ModelContact.What.NEVER
        || model.what() == ModelContact.What.ALWAYS_CLOSED) {
      return lightTicks;
    }
    double millis = model.afterOpenMillis() + model.scatterMillis() * draws.normal();
    long ticks = lightTicks + RATE.ticks(openSeconds + millis * 1e-3);
    if (model.what() == ModelContact.What.CHATTERS) {
      if (!chatters) {
        chatters = true;
        chatter(life, true, ticks);
      }
      return ticks;
    }
    long period = RATE.ticks(model.bounceMillis() * 1e-3);
    for (int i = 0; i < model.bounces(); i++) {
      change(true, ticks + i * period);
      change(false, ticks + i * period + period / 2);
    }
    restedTicks = ticks + model.bounces() * period;
    change(true, restedTicks);
    return restedTicks;
  }

  /** The blades begin to close. */
  void parts(long closingTicks) {
    if (closed && model.what() == ModelContact.What.CLOSES) {
      change(false, Math.max(closingTicks, restedTicks + RATE.ticks(SECONDS_LEAST)));
    }
  }

  private void change(boolean toClosed, long ticks) {
    closed = toClosed;
    world.input(Channel.CONTACT, toClosed, ticks);
  }

  /** Goes on for ever, as far as time goes on; ends with the contact. */
  private void chatter(int itsLife, boolean toClosed, long ticks) {
    world.later(
        ticks,
        () -> {
          if (life == itsLife) {
            change(toClosed, ticks);
            chatter(itsLife, !toClosed, ticks + RATE.ticks(model.bounceMillis() * 1e-3 / 2));
          }
        });
  }
}
