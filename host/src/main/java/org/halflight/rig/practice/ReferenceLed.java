package org.halflight.rig.practice;

import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand.DriveReference;
import org.halflight.rig.RigMessage;
import org.halflight.shuttermodel.LightPath;
import org.halflight.time.TickRate;

/**
 * The reference LED of the practice rig and the light that it gives. All its figures are invented.
 */
final class ReferenceLed {
  /** What it adds, as a share of the full light of the sensors. */
  static final double SHARE = 0.95;

  /** Time constant of the low-pass filter of the ramped drive. */
  private static final double RAMP_SECONDS = 2e-3;

  /** After so many time constants the ramp has arrived but for a third of a thousandth. */
  private static final int RAMP_CONSTANTS = 8;

  private static final int POINTS_PER_CONSTANT = 16;

  /** From the command to the first pulse; invented. */
  private static final long LEAD_TICKS = 800;

  /** It stays off between two pulses for 20 ms at least. */
  private static final long GAP_TICKS_LEAST = 320_000;

  /** It does not stay on for longer than 10 s. */
  private static final long STEADY_TICKS_MOST = 160_000_000;

  private final BoardLife life;
  private final Sender sender;
  private int request;
  private boolean isOn;
  private double lightWithout;

  ReferenceLed(BoardLife life, Sender sender) {
    this.life = life;
    this.sender = sender;
  }

  /** How long it takes to do what it is told. */
  static long ticks(DriveReference drive) {
    return drive.drive().isPulsed() ? drive.count() * periodTicks(drive) : 0;
  }

  private static long periodTicks(DriveReference drive) {
    return drive.widthTicks() + Math.max(drive.widthTicks(), GAP_TICKS_LEAST);
  }

  /** Does what it is told; what it was at before comes to an end. */
  void drive(DriveReference drive) {
    request++;
    PracticeWorld world = life.world();
    long now = life.now();
    if (isOn) {
      isOn = false;
      world.shine(now, off(lightWithout, share()));
    }
    if (drive.drive() == ReferenceDrive.STEADY) {
      lightWithout = world.light().openAt(now);
      isOn = true;
      // One tick on, so that an LED that was on before is seen to go off.
      world.shine(now + 1, on(lightWithout, share()));
      int itsRequest = request;
      life.later(
          now + STEADY_TICKS_MOST,
          () -> {
            if (itsRequest == request) {
              drive(DriveReference.off());
            }
          });
    } else if (drive.drive().isPulsed()) {
      world.reach(now + ticks(drive));
      planPulse(drive, 0, now + LEAD_TICKS, request);
    }
  }

  private void planPulse(DriveReference drive, int index, long beginTicks, int itsRequest) {
    life.later(
        beginTicks,
        () -> {
          if (itsRequest != request) {
            return;
          }
          double base = life.world().light().openAt(beginTicks);
          double seconds = TickRate.BOARD_16_MHZ.seconds(drive.widthTicks());
          life.world()
              .shine(
                  beginTicks,
                  drive.drive() == ReferenceDrive.SQUARE
                      ? square(base, share(), seconds)
                      : ramped(base, share(), seconds));
          long endTicks = beginTicks + drive.widthTicks();
          life.later(
              endTicks,
              () ->
                  sender.send(
                      at ->
                          new RigMessage.PulseMade(
                              at,
                              index,
                              drive.drive(),
                              life.low32(beginTicks),
                              life.low32(endTicks))));
          if (index + 1 < drive.count()) {
            planPulse(drive, index + 1, beginTicks + periodTicks(drive), itsRequest);
          }
        });
  }

  /** What it adds as it is wired. */
  private double share() {
    return life.world().wiring().has(WiringFault.LED_DEAD) ? 0 : SHARE;
  }

  /** On from the start, added to a steady light. */
  private static LightPath on(double base, double share) {
    return new LightPath(new double[] {0, 0}, new double[] {base, base + share});
  }

  /** Off from the start; the light of before remains. */
  private static LightPath off(double base, double share) {
    return new LightPath(new double[] {0, 0}, new double[] {base + share, base});
  }

  /** One square pulse. */
  private static LightPath square(double base, double share, double widthSeconds) {
    return new LightPath(
        new double[] {0, 0, widthSeconds, widthSeconds},
        new double[] {base, base + share, base + share, base});
  }

  /** The same behind a low-pass filter of one pole. */
  private static LightPath ramped(double base, double share, double widthSeconds) {
    int points = RAMP_CONSTANTS * POINTS_PER_CONSTANT;
    double[] seconds = new double[2 * points + 2];
    double[] open = new double[2 * points + 2];
    double risen = Math.min(widthSeconds, RAMP_CONSTANTS * RAMP_SECONDS);
    double top = share * -StrictMath.expm1(-widthSeconds / RAMP_SECONDS);
    for (int i = 0; i <= points; i++) {
      double rising = risen * i / points;
      seconds[i] = rising;
      open[i] = base + share * -StrictMath.expm1(-rising / RAMP_SECONDS);
      double falling = RAMP_CONSTANTS * RAMP_SECONDS * i / points;
      seconds[points + 1 + i] = widthSeconds + falling;
      open[points + 1 + i] =
          i == points ? base : base + top * StrictMath.exp(-falling / RAMP_SECONDS);
    }
    return new LightPath(seconds, open);
  }
}
