package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
import org.halflight.validation.invented.CurtainBar;
import org.halflight.validation.invented.CurtainFault;
import org.halflight.validation.invented.CurtainShot;
import org.halflight.validation.invented.CurtainShutter;
import org.halflight.validation.invented.Draws;

/**
 * An invented curtain shutter before an invented bar, fired once at each of its speeds, from slow
 * to fast.
 *
 * @param number hangs all that is drawn on it
 * @param bar with the lamp
 * @param said what is known of it
 * @param shutter that is fired
 * @param shots one for each speed
 */
record CurtainCase(
    int number, CurtainBar bar, CurtainBar.Said said, CurtainShutter shutter, List<Shot> shots) {
  /** Marked speeds with what they stand for. */
  enum Speed {
    EIGHTH("1/8", 8),
    THIRTIETH("1/30", 32),
    SIXTIETH("1/60", 64),
    HUNDRED_TWENTY_FIFTH("1/125", 128),
    TWO_HUNDRED_FIFTIETH("1/250", 256),
    FIVE_HUNDREDTH("1/500", 512),
    THOUSANDTH("1/1000", 1024),
    TWO_THOUSANDTH("1/2000", 2048);

    private final String label;
    private final double seconds;

    Speed(String label, int ofASecond) {
      this.label = label;
      this.seconds = 1.0 / ofASecond;
    }

    String label() {
      return label;
    }

    double seconds() {
      return seconds;
    }
  }

  /** One firing: what truly happened, and what the rig stamped. */
  record Shot(Speed speed, CurtainShot truth, List<CurtainBar.Stamp> stamps) {}

  /** Nobody builds a speed with a narrower slit (our own choice). */
  private static final double LEAST_SLIT_MM = 1;

  private static final double OFF_STOPS = 0.15;
  private static final double SOUND_SHARE = 0.4;

  /** Of any kind, with light at the outer sensors from 0.7 to 1.3 of that at the centre. */
  static CurtainCase of(int number) {
    return of(number, 0.7, 1.3);
  }

  /**
   * The same shutter of any kind before other light.
   *
   * @param least light of an outer sensor over that of the centre
   * @param most likewise
   */
  static CurtainCase of(int number, double least, double most) {
    Draws draws = Draws.of(Validation.SEED, 2L * number);
    CurtainFault[] faults = CurtainFault.values();
    CurtainFault fault =
        draws.chance(SOUND_SHARE)
            ? CurtainFault.NOTHING
            : faults[1 + draws.upTo(faults.length - 2)];
    CurtainShutter shutter = CurtainShutter.drawn(fault, draws);
    return of(number, shutter, speeds(shutter), OFF_STOPS, least, most);
  }

  /**
   * A shutter that is clearly faulty in one way, and else only a little off, fired three times each
   * at its top speed, two steps slower, at 1/60 and at 1/8.
   */
  static CurtainCase clean(CurtainFault fault, int number) {
    Draws draws =
        Draws.of(Validation.SEED + List.of(CurtainFault.values()).indexOf(fault), 2L * number);
    CurtainShutter shutter = CurtainShutter.drawn(fault, 1, draws);
    List<Speed> all = speeds(shutter);
    int top = all.size() - 1;
    TreeSet<Speed> fired =
        new TreeSet<>(List.of(Speed.EIGHTH, Speed.SIXTIETH, all.get(top - 2), all.get(top)));
    List<Speed> thrice =
        fired.stream().flatMap(speed -> Collections.nCopies(3, speed).stream()).toList();
    return of(number, shutter, thrice, 0, 0.7, 1.3);
  }

  /** The same firings before a bar whose geometry is known exactly. */
  CurtainCase withKnownGeometry() {
    Draws draws = Draws.of(Validation.SEED, -1L - number);
    CurtainBar placed = bar.inPlace();
    List<Shot> again =
        shots.stream()
            .map(shot -> new Shot(shot.speed(), shot.truth(), placed.stamps(shot.truth(), draws)))
            .toList();
    return new CurtainCase(number, placed, placed.measured(said), shutter, again);
  }

  private static List<Speed> speeds(CurtainShutter shutter) {
    return Arrays.stream(Speed.values())
        .filter(speed -> speed != Speed.EIGHTH)
        .filter(
            speed -> shutter.frame() / shutter.travelSeconds() * speed.seconds() >= LEAST_SLIT_MM)
        .toList();
  }

  private static CurtainCase of(
      int number,
      CurtainShutter shutter,
      List<Speed> speeds,
      double offStops,
      double least,
      double most) {
    Draws draws = Draws.of(Validation.SEED, 2L * number + 1);
    CurtainBar bar = CurtainBar.drawn(shutter.frame(), least, most, draws);
    CurtainBar.Said said = bar.said(draws);
    double off = offStops * draws.normal();
    List<Shot> shots = new ArrayList<>();
    for (Speed speed : speeds) {
      CurtainShot truth = shutter.fired(speed.seconds() * Math.pow(2, off), draws);
      shots.add(new Shot(speed, truth, bar.stamps(truth, draws)));
    }
    return new CurtainCase(number, bar, said, shutter, shots);
  }
}
