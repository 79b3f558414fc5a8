package org.halflight.words;

import java.util.Locale;
import org.halflight.light.Aim;
import org.halflight.light.LampLight;
import org.halflight.light.Needle;
import org.halflight.light.ScreenLight;
import org.halflight.signal.Channel;

/** What is said while the light is aimed. */
public final class AimWords {
  private AimWords() {}

  /** The next thing to do, in one sentence. */
  public static String move(Aim aim) {
    if (aim.move() == Aim.Move.OTHER_LAMP) {
      return aim.lamp()
          .filter(LampLight.MainsFlicker.class::isInstance)
          .map(found -> Words.say("aim.move.other-lamp", ((LampLight.MainsFlicker) found).hertz()))
          .orElseGet(() -> Words.say("aim.move.other-lamp.fast"));
    }
    return Words.of("aim.move", aim.move());
  }

  /** What one of the three lamps says, in a few words that need no colour. */
  public static String lamp(Aim aim, Aim.Lamp lamp) {
    Aim.State state = aim.of(lamp);
    return lamp == Aim.Lamp.STRAY && state == Aim.State.BAD && aim.strayShare().isPresent()
        ? Words.say("aim.stray.bad.percent", Numbers.percent(aim.strayShare().getAsDouble()))
        : Words.of("aim." + Words.key(lamp), state);
  }

  /** What the three lamps are called. */
  public static String name(Aim.Lamp lamp) {
    return Words.of("aim.lamp", lamp);
  }

  /** What a sensor is called. */
  public static String sensor(Channel sensor) {
    return Words.say(
        switch (sensor) {
          case OUTER_A -> "aim.sensor.outerA";
          case OUTER_B -> "aim.sensor.outerB";
          default -> "aim.sensor.centre";
        });
  }

  /** Where a needle is, in words. */
  public static String needle(Needle needle) {
    double counts = needle.counts();
    String key =
        needle.clips()
            ? "clips"
            : counts < Aim.LEAST_LIGHT_COUNTS
                ? "dark"
                : counts < Aim.WANTED_FROM_COUNTS
                    ? "low"
                    : counts > Aim.WANTED_TO_COUNTS ? "high" : "wanted";
    return Words.say("aim.needle." + key, volts(counts));
  }

  /** Counts of the converter as volts, to a tenth. */
  public static String volts(double counts) {
    return tenths(counts / Aim.COUNTS_PER_VOLT);
  }

  /** What the check of the screen came to. */
  public static String screen(ScreenLight light) {
    return Words.of("aim.screen", light.finding(), Numbers.percent(Math.max(0, light.share())));
  }

  private static String tenths(double number) {
    return String.format(Locale.ROOT, "%.1f", number);
  }
}
