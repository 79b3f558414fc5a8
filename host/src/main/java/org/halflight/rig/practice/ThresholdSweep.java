package org.halflight.rig.practice;

import org.halflight.rig.RigCommand.SweepThreshold;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/**
 * A sweep of a threshold through the light, whatever the light is: up in steps of one fine code and
 * back down, each code looked at once a millisecond for 5 ms.
 */
final class ThresholdSweep {
  /** Reading threshold and light behind a switch. */
  private static final int READING_TICKS = 12 * LightMeter.TICKS_PER_BLOCK;

  private static final int LOOKS_PER_CODE = 5;

  private final SweepThreshold wanted;
  private final BoardLife life;
  private final BoardInputs inputs;
  private final LightMeter meter;
  private final Sender sender;
  private final Runnable whenOver;
  private int step;
  private int look;
  private boolean tripped;
  private boolean reported;

  ThresholdSweep(
      SweepThreshold wanted,
      BoardLife life,
      BoardInputs inputs,
      LightMeter meter,
      Sender sender,
      Runnable whenOver) {
    this.wanted = wanted;
    this.life = life;
    this.inputs = inputs;
    this.meter = meter;
    this.sender = sender;
    this.whenOver = whenOver;
  }

  /** How long a sweep takes. */
  static long ticks(SweepThreshold wanted) {
    return 2L * steps(wanted) * LOOKS_PER_CODE * LightMeter.TICKS_PER_BLOCK + 2L * READING_TICKS;
  }

  private static int steps(SweepThreshold wanted) {
    return wanted.toCode() - wanted.fromCode() + 1;
  }

  void begin() {
    life.world().reach(life.now() + ticks(wanted));
    look();
  }

  private void look() {
    if (step >= 2 * steps(wanted)) {
      whenOver.run();
      return;
    }
    Channel channel = wanted.channel();
    Thresholds thresholds = inputs.thresholds();
    if (look == 0) {
      thresholds.setFine(channel, fineCode(), life.now());
    }
    life.later(
        life.now() + LightMeter.TICKS_PER_BLOCK,
        () -> {
          boolean before = inputs.isHigh(channel);
          inputs.compareAll();
          if (isDecided(before, inputs.isHigh(channel))) {
            int level = meter.thresholdSum(thresholds.millivolts(channel, life.now()));
            // The threshold stands while it is read, and then the light.
            life.later(
                life.now() + READING_TICKS,
                () -> {
                  reportTrip(level);
                  next();
                });
          } else {
            next();
          }
        });
  }

  private boolean isRising() {
    return step < steps(wanted);
  }

  private int fineCode() {
    return isRising() ? wanted.fromCode() + step : wanted.toCode() - (step - steps(wanted));
  }

  /**
   * Takes a look at the comparator.
   *
   * @return whether there is something to report: it switched, or this way ends without
   */
  private boolean isDecided(boolean wasOn, boolean isOn) {
    if (reported) {
      return false;
    }
    // A threshold on its way up switches a comparator off.
    tripped = isRising() ? wasOn && !isOn : !wasOn && isOn;
    boolean lastOfTheWay = look == LOOKS_PER_CODE - 1 && (step + 1) % steps(wanted) == 0;
    reported = tripped || lastOfTheWay;
    return reported;
  }

  private void reportTrip(int level) {
    int light = meter.block(Channel.CENTRE_LOW, life.now() - LightMeter.TICKS_PER_BLOCK).sum();
    int code = tripped ? fineCode() : 0;
    boolean rising = isRising();
    sender.send(at -> new RigMessage.TripPoint(at, wanted.channel(), rising, code, level, light));
  }

  private void next() {
    look++;
    if (look == LOOKS_PER_CODE) {
      look = 0;
      step++;
      if (step == steps(wanted)) {
        reported = false;
        tripped = false;
      }
    }
    look();
  }
}
