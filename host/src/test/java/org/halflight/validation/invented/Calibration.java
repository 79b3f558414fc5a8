package org.halflight.validation.invented;

import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/** A rig profile as docs/file-formats.md has it, with what a calibration cannot know better. */
final class Calibration {
  private static final double TRIP_COUNTS = 0.3;
  private static final double DELAY_SECONDS = 0.1e-6;
  private static final double CLOCK_PPM = 20;

  private Calibration() {}

  /** The text of a profile of a rig, off by as much as it says that it may be. */
  static String of(Rig rig, Draws draws) {
    StringBuilder text = new StringBuilder("halflight rig profile 1\n");
    put(text, "rig", SessionText.RIG);
    put(text, "kind", "full");
    put(text, "firmware", SessionText.FIRMWARE);
    put(text, "date", SessionText.DAY);
    put(text, "light-counts", numbers(rig.dark(), 250, 950));
    double clock = rig.clockFast() * 1e6 + CLOCK_PPM * draws.normal();
    put(text, "clock-fast-ppm", numbers(clock, CLOCK_PPM, 40) + " pulse-per-second");
    put(text, "trip-counts.low", trip(rig.lowOffset(), rig.lowHysteresis(), draws));
    put(text, "trip-counts.high", trip(rig.highOffset(), rig.highHysteresis(), draws));
    put(text, "delay-seconds.low", delay(rig.lowRiseSeconds(), rig.lowFallSeconds(), draws));
    put(text, "delay-seconds.high", delay(rig.highRiseSeconds(), rig.highFallSeconds(), draws));
    put(text, "check-sum", sum(text.toString()));
    return text.toString();
  }

  private static String trip(double offset, double hysteresis, Draws draws) {
    return numbers(
        offset + hysteresis / 2 + TRIP_COUNTS * draws.normal(),
        offset - hysteresis / 2 + TRIP_COUNTS * draws.normal(),
        TRIP_COUNTS);
  }

  private static String delay(double rise, double fall, Draws draws) {
    return numbers(
        rise + DELAY_SECONDS * draws.normal(),
        DELAY_SECONDS,
        fall + DELAY_SECONDS * draws.normal(),
        DELAY_SECONDS);
  }

  private static void put(StringBuilder text, String name, String value) {
    text.append(name).append(" = ").append(value).append('\n');
  }

  private static String numbers(double... numbers) {
    StringBuilder text = new StringBuilder();
    for (double number : numbers) {
      text.append(text.length() == 0 ? "" : " ").append(number);
    }
    return text.toString();
  }

  private static String sum(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.UTF_16BE));
    return String.format("%08X", sum.getValue());
  }
}
